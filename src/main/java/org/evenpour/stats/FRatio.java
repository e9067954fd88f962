package org.evenpour.stats;

import org.hipparchus.special.Beta;

/**
 * Fisher's F distribution, for any real degrees of freedom above 0.
 *
 * <p>On Hipparchus' incomplete beta function. Its class for the distribution has no upper tail, and
 * coarser quantiles ({@code OwnDistributionsTest}).
 */
public final class FRatio {
  private FRatio() {}

  /**
   * The probability of a ratio above f, as the incomplete beta function of df2/(df2 + df1·f), which
   * keeps its digits down to the smallest doubles. 0 for an infinite ratio.
   */
  public static double upperTail(double f, double df1, double df2) {
    if (!(f > 0)) {
      return Double.isNaN(f) ? Double.NaN : 1;
    }
    double x = df2 / (df2 + df1 * f);
    return Beta.regularizedBeta(x, 0.5 * df2, 0.5 * df1, 1e-15, Integer.MAX_VALUE);
  }

  public static double cdf(double f, double df1, double df2) {
    if (!(f > 0)) {
      return Double.isNaN(f) ? Double.NaN : 0;
    }
    double x = df1 * f / (df2 + df1 * f);
    return Beta.regularizedBeta(x, 0.5 * df1, 0.5 * df2, 1e-15, Integer.MAX_VALUE);
  }

  /** The ratio with probability p at or below it. */
  public static double quantile(double p, double df1, double df2) {
    if (!(p > 0) || !(p < 1)) {
      return p == 0 ? 0 : p == 1 ? Double.POSITIVE_INFINITY : Double.NaN;
    }
    // The smaller tail is matched: it has all its digits at either end.
    return Math.exp(
        Root.ofIncreasing(
            p < 0.5
                ? y -> cdf(Math.exp(y), df1, df2) - p
                : y -> (1 - p) - upperTail(Math.exp(y), df1, df2),
            0,
            0.5,
            -600,
            600));
  }
}
