package org.evenpour.stats;

import java.util.function.DoubleBinaryOperator;
import org.hipparchus.special.Beta;
import org.jspecify.annotations.Nullable;

/**
 * Percentiles of a sample, and capability by them where values are not normal.
 *
 * @param low 0.135 % percentile
 * @param median 50 % percentile
 * @param high 99.865 % percentile
 */
public record Percentiles(double low, double median, double high) {
  private static final double TAIL = 0.00135;

  /** The fewest values that reach the 0.135 % percentile: (n + 1)·0.00135 ≥ 1. */
  public static final int FEWEST = 740;

  /**
   * The percentile at p of values in ascending order without NaN, at rank p(n + 1) with linear
   * interpolation (NIST/SEMATECH e-Handbook 7.2.6.2; Weibull's plotting position), the ends held.
   * NaN without values.
   *
   * <p>Of the usual estimators this is the one whose rank is right for any distribution: a new
   * value falls below the k-th of n with mean probability k/(n + 1). Others lie further in and make
   * the outer percentiles, and so the indices, look better than they are.
   */
  public static double at(double p, double[] ascending) {
    int n = ascending.length;
    if (n == 0) {
      return Double.NaN;
    }
    double rank = p * (n + 1);
    int k = (int) Math.floor(rank);
    if (k < 1) {
      return ascending[0];
    }
    if (k >= n) {
      return ascending[n - 1];
    }
    return ascending[k - 1] + (rank - k) * (ascending[k] - ascending[k - 1]);
  }

  /**
   * The three percentiles of values in ascending order, or null with fewer than {@link #FEWEST}:
   * the outer ones would be mere extremes.
   */
  public static @Nullable Percentiles of(double[] ascending) {
    return ascending.length < FEWEST
        ? null
        : new Percentiles(at(TAIL, ascending), at(0.5, ascending), at(1 - TAIL, ascending));
  }

  /** (upper − lower)/(high − low) (ISO 22514-2); NaN without spread. */
  public double pp(double lower, double upper) {
    return high > low ? (upper - lower) / (high - low) : Double.NaN;
  }

  /**
   * The smaller of (upper − median)/(high − median) and (median − lower)/(median − low) (ISO
   * 22514-2), of those whose limit there is; a side without spread is left out. NaN if none is
   * left.
   */
  public double ppk(@Nullable Double lower, @Nullable Double upper) {
    double below = lower == null ? Double.POSITIVE_INFINITY : (median - lower) / (median - low);
    double above = upper == null ? Double.POSITIVE_INFINITY : (upper - median) / (high - median);
    double nearer = Math.min(below, above);
    return Double.isInfinite(nearer) ? Double.NaN : nearer;
  }

  /**
   * Limits from which nothing but the sample is assumed; null where the sample is too small to
   * reach that far.
   */
  public record Interval(@Nullable Double low, @Nullable Double high) {}

  /**
   * The interval of the percentile at p between two of the values, for any continuous distribution:
   * the highest r with P(B ≤ r − 1) ≤ tail and the lowest s with P(B ≥ s) ≤ tail, B binomial (n, p)
   * (Hahn and Meeker 1991). It covers at least as often as it says. O(log n).
   *
   * @param ascending without NaN
   * @param confidence two-sided, as 0.95
   */
  public static Interval interval(double p, double[] ascending, double confidence) {
    int n = ascending.length;
    double tail = 0.5 * (1 - confidence);
    // atLeast(r) falls from 1 at 0 to 0 at n + 1
    int low = 0;
    int past = n + 1;
    while (past - low > 1) {
      int r = (low + past) >>> 1;
      if (1 - atLeast(r, n, p) <= tail) {
        low = r;
      } else {
        past = r;
      }
    }
    int below = 0;
    int high = n + 1;
    while (high - below > 1) {
      int s = (below + high) >>> 1;
      if (atLeast(s, n, p) <= tail) {
        high = s;
      } else {
        below = s;
      }
    }
    return new Interval(
        low == 0 ? null : ascending[low - 1], high > n ? null : ascending[high - 1]);
  }

  /** P(B ≥ r) of a binomial B, by the incomplete beta function. */
  private static double atLeast(int r, int n, double p) {
    return Beta.regularizedBeta(p, r, n - r + 1.0, 1e-15, Integer.MAX_VALUE);
  }

  /**
   * The interval of {@link #pp}: both outer percentiles at the ends of theirs, each with half of
   * the error (Bonferroni). Cautious, and wide: at 95 % its lower limit needs some 3,250 values.
   *
   * @param ascending the values that the percentiles are of
   */
  public static Interval ppInterval(
      double lower, double upper, double[] ascending, double confidence) {
    double each = 1 - 0.5 * (1 - confidence);
    Interval low = interval(TAIL, ascending, each);
    Interval high = interval(1 - TAIL, ascending, each);
    Double widest = difference(high.high, low.low);
    Double narrowest = difference(high.low, low.high);
    return new Interval(
        widest == null ? null : (upper - lower) / widest,
        narrowest == null ? null : (upper - lower) / narrowest);
  }

  private static @Nullable Double difference(@Nullable Double high, @Nullable Double low) {
    return high == null || low == null || !(high > low) ? null : high - low;
  }

  /**
   * The interval of {@link #ppk}: the three percentiles at the ends of theirs, each with a third of
   * the error, in the combination that is worst and best. At 95 % its lower limit needs some 3,550
   * values.
   */
  public static Interval ppkInterval(
      @Nullable Double lower, @Nullable Double upper, double[] ascending, double confidence) {
    // Bonferroni: three intervals of one sample, however they depend on each other
    double each = 1 - (1 - confidence) / 3;
    Interval middle = interval(0.5, ascending, each);
    Interval below = side(lower, middle, interval(TAIL, ascending, each), (m, l) -> m - l);
    Interval above = side(upper, middle, interval(1 - TAIL, ascending, each), (m, h) -> h - m);
    return new Interval(
        smaller(lower, below.low, upper, above.low), smaller(lower, below.high, upper, above.high));
  }

  private static Interval side(
      @Nullable Double limit, Interval middle, Interval outer, DoubleBinaryOperator distance) {
    // An index that could be anything beyond an unreached percentile has no limit.
    if (limit == null
        || middle.low == null
        || middle.high == null
        || outer.low == null
        || outer.high == null) {
      return new Interval(null, null);
    }
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    // Monotone in each of the two, so that worst and best lie at ends.
    for (double m : new double[] {middle.low, middle.high}) {
      for (double end : new double[] {outer.low, outer.high}) {
        double spread = distance.applyAsDouble(m, end);
        if (!(spread > 0)) {
          return new Interval(null, null);
        }
        double index = distance.applyAsDouble(m, limit) / spread;
        least = Math.min(least, index);
        most = Math.max(most, index);
      }
    }
    return new Interval(least, most);
  }

  /** The smaller of two sides; null where a side that has a limit is not known. */
  private static @Nullable Double smaller(
      @Nullable Double lower,
      @Nullable Double below,
      @Nullable Double upper,
      @Nullable Double above) {
    if ((lower == null && upper == null)
        || (lower != null && below == null)
        || (upper != null && above == null)) {
      return null;
    }
    return Math.min(
        below == null ? Double.POSITIVE_INFINITY : below,
        above == null ? Double.POSITIVE_INFINITY : above);
  }
}
