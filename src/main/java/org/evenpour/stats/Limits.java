package org.evenpour.stats;

/**
 * The lines of one chart.
 *
 * @param center center line
 * @param lower lower limit
 * @param upper upper limit
 * @param sigma standard deviation of what is plotted
 *     <p>All NaN where too few values were there to set limits.
 */
public record Limits(double center, double lower, double upper, double sigma) {
  public static final Limits UNDEFINED = new Limits(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

  /** center ± k·sigma. */
  public static Limits around(double center, double sigma, double k) {
    return new Limits(center, center - k * sigma, center + k * sigma, sigma);
  }
}
