package org.evenpour.control;

import java.util.List;

/**
 * What one characteristic of one wheel is judged by: fixed while it is in force.
 *
 * @param source where it comes from, in words
 * @param baseTurns how many turns it rests on
 * @param center mean of the wheel, molds weighing the same
 * @param offsets of the molds from the center, by mold index; NaN where a mold was not in the base
 *     period
 * @param pourSigma s.d. from pour to pour, molds and turns taken out
 * @param pourCorrelation lag-1 autocorrelation of a mold's successive residuals
 * @param wheel the wheel's chart of turn effects
 * @param sides one chart for each contrast of a ladle side against the others; one alone for two
 *     sides
 * @param spread the chart of scatter within a turn
 * @param detection how far each chart may stray
 */
@SuppressWarnings("ArrayRecordComponent") // frozen by its one maker
public record LimitsInForce(
    String source,
    int baseTurns,
    double center,
    double[] offsets,
    double pourSigma,
    double pourCorrelation,
    SeriesLimits wheel,
    List<SeriesLimits> sides,
    SeriesLimits spread,
    Detection detection) {

  /**
   * A series in time that may be autocorrelated.
   *
   * @param center its mean
   * @param sigma its s.d., by overall scatter in the base period
   * @param correlation lag-1 autocorrelation
   * @param movingRangeSigma its s.d. by the moving range, for the classic chart
   */
  public record SeriesLimits(
      double center, double sigma, double correlation, double movingRangeSigma) {

    /** By how much autocorrelation multiplies the variance of long sums of the series. */
    public double inflation() {
      return LimitsInForce.inflation(correlation);
    }
  }

  /**
   * The variance of a long sum of a first-order autoregressive series over that of independent
   * values: {@code (1 + φ)/(1 − φ)}; 1 where φ is small enough to be chance.
   */
  static double inflation(double correlation) {
    double phi = Math.min(0.95, correlation);
    return phi < 0.05 ? 1 : (1 + phi) / (1 - phi);
  }
}
