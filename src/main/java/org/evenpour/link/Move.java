package org.evenpour.link;

import org.evenpour.stats.StudentT;

/**
 * Whether a series stood elsewhere during an episode than before it, beyond what its own wandering
 * would give.
 *
 * <p>The difference of the two stretches' means over its standard error, which allows for
 * first-order autocorrelation: {@code n} values count as {@code n·(1 − φ)/(1 + φ)}, φ pooled over
 * both stretches, the first about its mean, the second about its trend, and corrected for its bias
 * (Kendall 1954). Student's t with the effective numbers' degrees of freedom.
 *
 * @param by mean during less mean before
 * @param error standard error of that
 * @param p two-sided probability of a move as large by chance; 1 where it cannot be told
 */
record Move(double by, double error, double p) {
  private static final Move UNKNOWN = new Move(0, Double.NaN, 1);
  private static final double LARGEST_PHI = 0.97;
  private static final int LEAST_BEFORE = 8;

  /**
   * p where a setting that had never moved at all stands elsewhere: a choice, for no scatter gives
   * no scale.
   */
  private static final double STEPPED = 1e-6;

  static Move between(double[] before, double[] during) {
    Stretch b = Stretch.of(before, false);
    Stretch d = Stretch.of(during, true);
    if (b.count < LEAST_BEFORE || d.count < 1) {
      return UNKNOWN;
    }
    double by = d.mean - b.mean;
    double squares = b.squares + d.squares;
    double variance = squares / Math.max(1, b.count + d.count - 2);
    // A scatter of 1e-9 of the level is what rounding leaves of a constant.
    if (variance <= 1e-18 * Math.max(1e-300, b.mean * b.mean)) {
      boolean moved = Math.abs(by) > 1e-9 * Math.abs(b.mean);
      return moved ? new Move(by, 0, STEPPED) : UNKNOWN;
    }
    double phi = (b.products + d.products) / squares;
    double n = b.count + d.count;
    // About an estimated mean φ comes out low by (1 + 3φ)/n (Kendall 1954).
    phi = Math.max(0, Math.min(LARGEST_PHI, phi + (1 + 3 * phi) / n));
    double share = (1 - phi) / (1 + phi);
    // A mean never rests on less than one value, however slowly the setting wanders.
    double effectiveBefore = Math.max(1, b.count * share);
    double effectiveDuring = Math.max(1, d.count * share);
    double error = Math.sqrt(variance * (1 / effectiveBefore + 1 / effectiveDuring));
    // By what the values are worth: the scatter is no better known than the means.
    double freedom = Math.max(1, effectiveBefore + effectiveDuring - 2);
    return new Move(by, error, StudentT.twoSided(Math.abs(by) / error, freedom));
  }

  private record Stretch(int count, double mean, double squares, double products) {
    /**
     * A stretch about its mean, or about its own trend: a drift of the setting is a move and no
     * wandering.
     */
    static Stretch of(double[] x, boolean aboutTrend) {
      int n = 0;
      double sum = 0;
      double time = 0;
      for (int i = 0; i < x.length; i++) {
        if (!Double.isNaN(x[i])) {
          sum += x[i];
          time += i;
          n++;
        }
      }
      double mean = n == 0 ? 0 : sum / n;
      double middle = n == 0 ? 0 : time / n;
      double slope = aboutTrend && n > LEAST_BEFORE ? slope(x, mean, middle) : 0;
      double squares = 0;
      double products = 0;
      double previous = Double.NaN;
      for (int i = 0; i < x.length; i++) {
        double d = x[i] - mean - slope * (i - middle);
        if (!Double.isNaN(d)) {
          squares += d * d;
          if (!Double.isNaN(previous)) {
            products += d * previous;
          }
        }
        // NaN too: a pair across a gap is no pair of neighbors
        previous = d;
      }
      return new Stretch(n, mean, squares, products);
    }

    private static double slope(double[] x, double mean, double middle) {
      double xy = 0;
      double xx = 0;
      for (int i = 0; i < x.length; i++) {
        if (!Double.isNaN(x[i])) {
          xy += (x[i] - mean) * (i - middle);
          xx += (i - middle) * (i - middle);
        }
      }
      return xx == 0 ? 0 : xy / xx;
    }
  }
}
