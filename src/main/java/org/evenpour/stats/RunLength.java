package org.evenpour.stats;

public final class RunLength {
  private RunLength() {}

  public static double cusumLimit(double k, double arl) {
    double lo = 0.1, hi = 30;
    for (int i = 0; i < 80; i++) {
      double h = (lo + hi) / 2, b = h + 1.166, d = -k;
      double one = (Math.exp(-2 * d * b) + 2 * d * b - 1) / (2 * d * d);
      if (one / 2 < arl) lo = h;
      else hi = h;
    }
    return lo;
  }
}
