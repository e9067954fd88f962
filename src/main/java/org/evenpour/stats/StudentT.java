package org.evenpour.stats;

import org.hipparchus.special.Beta;

/**
 * Student's t distribution, for any real degrees of freedom above 0.
 *
 * <p>On Hipparchus' incomplete beta function. Its class for the distribution has quantiles to 1e-9
 * only ({@code OwnDistributionsTest}).
 */
public final class StudentT {
  private StudentT() {}

  /** The probability of a value above t, without loss far out, by the incomplete beta function. */
  public static double upperTail(double t, double df) {
    double beyond =
        0.5 * Beta.regularizedBeta(df / (df + t * t), 0.5 * df, 0.5, 1e-15, Integer.MAX_VALUE);
    return t >= 0 ? beyond : 1 - beyond;
  }

  public static double cdf(double t, double df) {
    return upperTail(-t, df);
  }

  /** The probability of a value further from 0 than t, either side. */
  public static double twoSided(double t, double df) {
    return 2 * upperTail(Math.abs(t), df);
  }

  /** The t with probability p at or below it. */
  public static double quantile(double p, double df) {
    if (!(p > 0) || !(p < 1) || !(df > 0)) {
      return p == 0 ? Double.NEGATIVE_INFINITY : p == 1 ? Double.POSITIVE_INFINITY : Double.NaN;
    }
    double tail = Math.min(p, 1 - p);
    // On the logarithm, for a far tail itself is too flat to be searched.
    double t =
        Root.ofIncreasing(
            x -> Math.log(tail) - Math.log(upperTail(x, df)),
            -Normal.quantile(tail),
            0.5,
            0,
            1e300);
    return p < 0.5 ? -t : t;
  }
}
