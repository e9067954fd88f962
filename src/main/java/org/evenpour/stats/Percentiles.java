package org.evenpour.stats;

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
   * interpolation (NIST/SEMATECH e-Handbook 7.2.6.2), the ends held. NaN without values.
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
}
