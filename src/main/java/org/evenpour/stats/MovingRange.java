package org.evenpour.stats;

/**
 * Mean and mean moving range of a series of individual values, and the limits that follow; one
 * pass, constant memory.
 *
 * <p>sigma = mean |xᵢ − xᵢ₋₁| / d2 with d2 = 2/√π. A NaN is a missing value: it is skipped, and the
 * next range is taken to the last value that was there. Not thread-safe: owned by the thread that
 * adds.
 */
public final class MovingRange {
  private final Moments values = new Moments();
  private final Moments ranges = new Moments();
  private double last = Double.NaN;

  public void add(double x) {
    if (Double.isNaN(x)) {
      return;
    }
    values.add(x);
    if (!Double.isNaN(last)) {
      ranges.add(Math.abs(x - last));
    }
    last = x;
  }

  /** Takes no range from the last value to the next, as across a mold change. */
  public void breakHere() {
    last = Double.NaN;
  }

  /** The moments of the values; live, not a copy. */
  public Moments values() {
    return values;
  }

  /** Number of ranges. */
  public long count() {
    return ranges.count();
  }

  /** NaN with fewer than two values. */
  public double meanRange() {
    return ranges.mean();
  }

  /** Mean moving range / d2; NaN with fewer than two values. */
  public double sigma() {
    return meanRange() / ChartConstants.d2(2);
  }

  /** Limits for the individual values: mean ± 3 sigma. */
  public Limits limits() {
    return Limits.around(values.mean(), sigma(), 3);
  }

  /** The degrees of freedom of this sigma. */
  public double degreesOfFreedom() {
    return degreesOfFreedom(values.count());
  }

  /**
   * Degrees of freedom of the χ that has the same coefficient of variation as the mean moving range
   * of n independent normal values; about 0.61(n − 1).
   *
   * <p>Var(mean range)/E² = ((n−1)(2 − 4/π) + 2(n−2)c)/(n−1)² / (4/π) with c the covariance of
   * neighbouring ranges, 4/π(√3/2 + π/12) − 4/π (Cryer and Ryan 1990 give 0.8264 in the limit);
   * matched by the method of Patnaik (1950). NaN with fewer than two values.
   */
  public static double degreesOfFreedom(long n) {
    if (n < 2) {
      return Double.NaN;
    }
    double squareOfMean = 4 / Math.PI;
    // Two neighbouring ranges share a value, and so each tells less than an independent one.
    double covariance = squareOfMean * (Math.sqrt(0.75) + Math.PI / 12 - 1);
    double m = n - 1.0;
    double relativeVariance =
        (m * (2 - squareOfMean) + 2 * (m - 1) * covariance) / (m * m) / squareOfMean;
    // c4⁻² − 1 is the squared coefficient of variation of a χ: 1/2f where there are many.
    double guess = 0.5 / relativeVariance;
    return Root.ofIncreasing(
        df -> relativeVariance - (Math.pow(ChartConstants.c4OfDegrees(df), -2) - 1),
        guess,
        0.2,
        0.2,
        1e300);
  }
}
