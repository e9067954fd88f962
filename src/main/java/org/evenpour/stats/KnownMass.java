package org.evenpour.stats;

/**
 * Check measurements of a piece whose true value is known, in the order they were made.
 *
 * <p>Bias = mean − truth, with the t interval and the p of no bias. Repeatability is the s.d. about
 * the mean, with its exact χ² interval; where the readings drift it holds the drift as well, and
 * {@code residualSd}, about the fitted line, does not. Drift is the least-squares slope of reading
 * against time. The 95 % intervals suppose independent normal readings.
 *
 * <p>NaN readings are left out with their times. Bias needs one reading, its interval and the
 * repeatability two, the drift three at different times; what is not defined is NaN. O(n).
 *
 * @param count readings that are there
 * @param bias mean − truth
 * @param biasP probability of a bias as large by chance
 * @param repeatability s.d. of the readings
 * @param drift per unit of time
 * @param driftP probability of a drift as large by chance
 * @param residualSd s.d. about the line, n − 2 degrees of freedom
 */
public record KnownMass(
    long count,
    Estimate bias,
    double biasP,
    Estimate repeatability,
    Estimate drift,
    double driftP,
    double residualSd) {
  private static final double TAIL = 0.025;

  /** A value with its 95 % confidence limits. */
  public record Estimate(double value, double low, double high) {
    private static final Estimate UNDEFINED = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    private static Estimate of(double value, double half) {
      return new Estimate(value, value - half, value + half);
    }
  }

  /**
   * @param times when each was read, in any unit
   * @param readings in the unit of truth
   */
  public static KnownMass of(double[] times, double[] readings, double truth) {
    if (times.length != readings.length) {
      throw new IllegalArgumentException(
          "as many times as readings are needed, not " + times.length + " and " + readings.length);
    }
    Moments off = new Moments();
    Moments when = new Moments();
    for (int i = 0; i < readings.length; i++) {
      if (!Double.isNaN(readings[i]) && !Double.isNaN(times[i])) {
        // Off the truth, so that the digits of the mass itself drop out.
        off.add(readings[i] - truth);
        when.add(times[i]);
      }
    }
    long n = off.count();
    double bias = off.mean();
    double sd = off.sd();
    double df = n - 1.0;
    if (n < 2) {
      return new KnownMass(
          n,
          new Estimate(bias, Double.NaN, Double.NaN),
          Double.NaN,
          Estimate.UNDEFINED,
          Estimate.UNDEFINED,
          Double.NaN,
          Double.NaN);
    }
    double error = sd / Math.sqrt((double) n);
    Estimate spread =
        new Estimate(
            sd,
            sd * Math.sqrt(df / ChiSquare.quantile(1 - TAIL, df)),
            sd * Math.sqrt(df / ChiSquare.quantile(TAIL, df)));
    double xx = when.variance() * df;
    if (n < 3 || !(xx > 0)) {
      return new KnownMass(
          n,
          Estimate.of(bias, StudentT.quantile(1 - TAIL, df) * error),
          chance(bias, error, df),
          spread,
          Estimate.UNDEFINED,
          Double.NaN,
          Double.NaN);
    }
    double xy = 0;
    for (int i = 0; i < readings.length; i++) {
      if (!Double.isNaN(readings[i]) && !Double.isNaN(times[i])) {
        xy += (times[i] - when.mean()) * (readings[i] - truth - bias);
      }
    }
    double slope = xy / xx;
    double left = 0;
    for (int i = 0; i < readings.length; i++) {
      if (!Double.isNaN(readings[i]) && !Double.isNaN(times[i])) {
        // One by one: Σy² − slope·Σxy would cancel where readings lie along the line.
        double e = readings[i] - truth - bias - slope * (times[i] - when.mean());
        left += e * e;
      }
    }
    double residualSd = Math.sqrt(left / (n - 2.0));
    // About the line and not about the mean: a drift is no scatter.
    double slopeError = residualSd / Math.sqrt(xx);
    return new KnownMass(
        n,
        Estimate.of(bias, StudentT.quantile(1 - TAIL, df) * error),
        chance(bias, error, df),
        spread,
        Estimate.of(slope, StudentT.quantile(1 - TAIL, n - 2.0) * slopeError),
        chance(slope, slopeError, n - 2.0),
        residualSd);
  }

  private static double chance(double value, double error, double df) {
    if (error == 0) {
      return value == 0 ? 1 : 0;
    }
    return StudentT.twoSided(value / error, df);
  }
}
