package org.evenpour.stats;

import org.hipparchus.special.Gamma;

/**
 * The χ² distribution, for any real degrees of freedom above 0.
 *
 * <p>On Hipparchus' incomplete gamma function. Its class for the distribution has no upper tail,
 * and coarser quantiles ({@code OwnDistributionsTest}).
 */
public final class ChiSquare {
  /**
   * From so many degrees of freedom on the incomplete gamma function needs millions of terms, and
   * the approximation of Wilson and Hilferty (1931) is better than 1e-10.
   */
  private static final double MANY = 1e9;

  private ChiSquare() {}

  /** The probability of a value at most x, by the incomplete gamma function. */
  public static double cdf(double x, double df) {
    if (df > MANY) {
      return Normal.cdf(cubeRoot(x, df));
    }
    return x <= 0 ? 0 : Gamma.regularizedGammaP(0.5 * df, 0.5 * x, 1e-15, Integer.MAX_VALUE);
  }

  /** The probability of a value above x, without loss far out. */
  public static double upperTail(double x, double df) {
    if (df > MANY) {
      return Normal.upperTail(cubeRoot(x, df));
    }
    return x <= 0 ? 1 : Gamma.regularizedGammaQ(0.5 * df, 0.5 * x, 1e-15, Integer.MAX_VALUE);
  }

  /** Of Wilson and Hilferty: (x/df)^⅓ is nearly normal. */
  private static double cubeRoot(double x, double df) {
    double variance = 2 / (9 * df);
    return (Math.cbrt(x / df) - (1 - variance)) / Math.sqrt(variance);
  }

  /**
   * The x that a value exceeds with probability 1 − p, by Brent's method on the logarithm of x from
   * the approximation of Wilson and Hilferty (1931).
   */
  public static double quantile(double p, double df) {
    if (!(p > 0) || !(p < 1) || !(df > 0)) {
      return p == 0 ? 0 : p == 1 ? Double.POSITIVE_INFINITY : Double.NaN;
    }
    double spread = Math.sqrt(2 / (9 * df));
    if (df > MANY) {
      return df * Math.pow(1 - spread * spread + Normal.quantile(p) * spread, 3);
    }
    // With few degrees of freedom the approximation passes 0, which has no logarithm.
    double cubeRoot = Math.max(0.05, 1 - spread * spread + Normal.quantile(p) * spread);
    double guess = Math.log(df * Math.pow(cubeRoot, 3));
    // The smaller tail is matched: it has all its digits at either end.
    double log =
        Root.ofIncreasing(
            p < 0.5 ? y -> cdf(Math.exp(y), df) - p : y -> (1 - p) - upperTail(Math.exp(y), df),
            guess,
            0.1 * spread,
            -1e4,
            700);
    return Math.exp(log);
  }
}
