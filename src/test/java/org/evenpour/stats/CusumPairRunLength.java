package org.evenpour.stats;

import java.util.Arrays;

/** Average run length of a {@link CusumPair}, from which its table was made. */
final class CusumPairRunLength {
  /** Cells of the grid for one reference value. */
  private static final int CELLS = 6;

  /** Values beyond this many s.d. are counted at it. */
  private static final double FAR = 6;

  private static final int LONGEST = 20_000;
  private static final double SETTLED = 1e-7;

  private final double k;
  private final double h;
  private final double k2;
  private final double h2;

  private CusumPairRunLength(CusumPair pair) {
    k = pair.k();
    h = pair.h();
    k2 = pair.k2();
    h2 = pair.h2();
  }

  /**
   * The pair's average run length, high and low together, from rest.
   *
   * <p>A Markov chain on a grid of both sums (Brook and Evans 1972) whose step is k divided by a
   * whole number, some 0.08; the probabilities of being still silent are summed up until they fall
   * by the same factor at each step. Error about 0.5 %. 10 to 40 ms in control.
   *
   * @param shift of the mean, in s.d.
   */
  static double of(CusumPair pair, double shift) {
    CusumPairRunLength length = new CusumPairRunLength(pair);
    double up = length.oneSided(shift);
    double down = length.oneSided(-shift);
    return 1 / (1 / up + 1 / down);
  }

  /** Between the four nearest grid edges, straight in the logarithm. */
  private double oneSided(double shift) {
    double cell = k / cells();
    double x = h / cell - 0.5;
    double y = h2 / cell - 0.5;
    int a = (int) Math.max(0, Math.floor(x));
    int b = (int) Math.max(0, Math.floor(y));
    double u = x - a;
    double v = y - b;
    return Math.exp(
        (1 - u) * (1 - v) * Math.log(onGrid(a, b, shift))
            + u * (1 - v) * Math.log(onGrid(a + 1, b, shift))
            + (1 - u) * v * Math.log(onGrid(a, b + 1, shift))
            + u * v * Math.log(onGrid(a + 1, b + 1, shift)));
  }

  private int cells() {
    return (int) Math.max(2, Math.round(CELLS * k / 0.5));
  }

  /** The upper pair with the sums' edges at these grid points. */
  private double onGrid(int edge, int edge2, double shift) {
    int cells = cells();
    double w = k / cells;
    int cells2 = (int) Math.round(k2 / w);
    int n1 = edge + 1;
    int n2 = edge2 + 1;
    int from = (int) Math.floor((-FAR + shift) / w);
    int to = (int) Math.ceil((FAR + shift) / w);
    double[] p = new double[to - from + 1];
    double[] above = new double[to - from + 2];
    for (int i = from; i <= to; i++) {
      double low = (i - 0.5) * w - shift;
      double high = (i + 0.5) * w - shift;
      p[i - from] = i == from ? Normal.cdf(high) : Normal.upperTail(low) - Normal.upperTail(high);
      above[i - from] = i == from ? 1 : Normal.upperTail(low);
    }
    double[] now = new double[n1 * n2];
    double[] next = new double[n1 * n2];
    now[0] = 1;
    double silent = 1;
    double sum = 1;
    double before = 0;
    for (int t = 1; t < LONGEST; t++) {
      Arrays.fill(next, 0);
      double alarmed = 0;
      for (int a = 0; a < n1; a++) {
        for (int b = 0; b < n2; b++) {
          double q = now[a * n2 + b];
          if (q < 1e-300) {
            continue;
          }
          // Both sums stay at or below their edges for values up to here.
          int last = Math.min(to, Math.min(n1 - 1 - a + cells, n2 - 1 - b + cells2));
          for (int i = from; i <= last; i++) {
            int a2 = Math.max(0, a + i - cells);
            int b2 = Math.max(0, b + i - cells2);
            next[a2 * n2 + b2] += q * p[i - from];
          }
          alarmed += q * above[Math.max(0, last + 1 - from)];
        }
      }
      // The chance of an alarm at the next value settles; from then on waiting is geometric.
      double hazard = alarmed / silent;
      silent -= alarmed;
      if (silent < 1e-14 || Math.abs(hazard - before) < SETTLED * hazard) {
        return sum + Math.max(0, silent) / hazard;
      }
      before = hazard;
      sum += silent;
      double[] swap = now;
      now = next;
      next = swap;
    }
    return sum + silent / before;
  }
}
