package org.evenpour.stats;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Where a series changed, by least squares, which is maximum likelihood for normal values of one
 * standard deviation. NaN are missing: they hold their place in time and count for nothing. O(n)
 * for steps and ramps, O(n log n) for ranks.
 */
public final class ChangePoint {
  private ChangePoint() {}

  /**
   * One step.
   *
   * @param index index in x of the first value of the new level; −1 where there is no step to find
   * @param rss residual sum of squares
   * @param f (TSS − RSS)/(RSS/(n − 2)), the largest F over all places: far beyond the F
   *     distribution by chance, so not for a table; infinite without residual, NaN where nothing
   *     varies
   */
  public record Step(int index, double meanBefore, double meanAfter, double rss, double f) {}

  /**
   * A level that turns into a straight drift, without a jump.
   *
   * @param knot index in x of the last place at the old level; −1 where there is no drift to find
   * @param level the level up to the knot
   * @param slope drift per place after the knot
   * @param rss residual sum of squares
   * @param f (TSS − RSS)/(RSS/(n − 2)), the largest over all knots, as for a step
   */
  public record Ramp(int knot, double level, double slope, double rss, double f) {}

  /**
   * The change point by ranks (Pettitt 1979).
   *
   * @param index index in x of the first value after the change
   * @param k max |U|
   * @param pValue 2·exp(−6k²/(n³ + n²)), at most 1; approximate
   */
  public record Ranks(int index, double k, double pValue) {}

  /**
   * The step that fits x[from … to) best: the place where n·S²/(m(n − m)) is largest, with S the
   * sum of the first m deviations from the mean. Of equal places the first. Fewer than two values
   * have none.
   */
  public static Step step(double[] x, int from, int to) {
    Moments all = momentsOf(x, from, to);
    long n = all.count();
    if (n < 2) {
      return new Step(-1, all.mean(), all.mean(), n == 0 ? Double.NaN : 0, Double.NaN);
    }
    double mean = all.mean();
    double sum = 0;
    long before = 0;
    double best = -1;
    int index = -1;
    for (int i = from; i < to; i++) {
      if (Double.isNaN(x[i])) {
        continue;
      }
      if (before > 0) {
        double gain = sum * sum * n / ((double) before * (n - before));
        if (gain > best) {
          best = gain;
          index = i;
        }
      }
      sum += x[i] - mean;
      before++;
    }
    Moments old = momentsOf(x, from, index);
    Moments later = momentsOf(x, index, to);
    double rss = old.sumOfSquares().plus(later.sumOfSquares()).value();
    double f = best * (n - 2) / rss;
    return new Step(index, old.mean(), later.mean(), rss, f);
  }

  /**
   * The broken line that fits x[from … to) best: level a up to a knot, a + b·(i − knot) after it.
   * Sums over max(0, i − knot) are carried from knot to knot, from the right.
   */
  public static Ramp ramp(double[] x, int from, int to) {
    Moments all = momentsOf(x, from, to);
    long n = all.count();
    double mean = all.mean();
    double after = 0;
    double sumAfter = 0;
    double h = 0;
    double hh = 0;
    double hx = 0;
    double best = -1;
    int knot = -1;
    double slope = 0;
    double level = mean;
    for (int k = to - 2; k >= from; k--) {
      if (!Double.isNaN(x[k + 1])) {
        after++;
        sumAfter += x[k + 1] - mean;
      }
      hh += 2 * h + after;
      h += after;
      hx += sumAfter;
      double spread = hh - h * h / n;
      // without spread all values lie on one side of the knot at one place
      if (spread > 1e-9 * hh && hx * hx / spread > best) {
        best = hx * hx / spread;
        knot = k;
        slope = hx / spread;
        level = mean - slope * h / n;
      }
    }
    double rss = n == 0 ? Double.NaN : 0;
    for (int i = from; i < to; i++) {
      double residual = x[i] - level - slope * Math.max(0, i - knot);
      rss += Double.isNaN(residual) ? 0 : residual * residual;
    }
    return new Ramp(knot, level, slope, rss, knot < 0 ? Double.NaN : best * (n - 2) / rss);
  }

  /**
   * Pettitt's change point of x[from … to): U_m = 2·Σ ranks of the first m − m(n + 1), the place
   * where |U| is largest. Equal values share their mean rank.
   */
  public static Ranks pettitt(double[] x, int from, int to) {
    Integer[] order =
        IntStream.range(from, to)
            .filter(i -> !Double.isNaN(x[i]))
            .boxed()
            .sorted(Comparator.comparingDouble(i -> x[i]))
            .toArray(Integer[]::new);
    int n = order.length;
    double[] rank = new double[to - from];
    Arrays.fill(rank, Double.NaN);
    for (int i = 0; i < n; ) {
      int j = i;
      while (j < n && x[order[j]] == x[order[i]]) {
        j++;
      }
      for (int k = i; k < j; k++) {
        rank[order[k] - from] = 0.5 * (i + 1 + j);
      }
      i = j;
    }
    double u = 0;
    double best = -1;
    int index = -1;
    boolean any = false;
    for (int i = from; i < to; i++) {
      double r = rank[i - from];
      if (Double.isNaN(r)) {
        continue;
      }
      if (any && Math.abs(u) > best) {
        best = Math.abs(u);
        index = i;
      }
      any = true;
      u += 2 * r - (n + 1);
    }
    double cube = (double) n * n * n + (double) n * n;
    double p = n < 2 ? Double.NaN : Math.min(1, 2 * Math.exp(-6 * best * best / cube));
    return new Ranks(index, index < 0 ? Double.NaN : best, p);
  }

  private static Moments momentsOf(double[] x, int from, int to) {
    Moments moments = new Moments();
    for (int i = from; i < to; i++) {
      moments.add(x[i]);
    }
    return moments;
  }
}
