package org.evenpour.stats;

public final class ChangePoint {
  private ChangePoint() {}

  public record Step(int index, double meanBefore, double meanAfter, double rss, double f) {}

  public static Step step(double[] x, int from, int to) {
    double t = 0;
    for (int i = from; i < to; i++) t += x[i];
    double s = 0, best = -1;
    int at = from + 1;
    for (int i = from; i < to - 1; i++) {
      s += x[i];
      int n1 = i - from + 1, n2 = to - i - 1;
      double d = s / n1 - (t - s) / n2;
      double g = d * d * n1 * n2 / (double) (n1 + n2);
      if (g > best) {
        best = g;
        at = i + 1;
      }
    }
    return new Step(at, 0, 0, 0, 0);
  }
}
