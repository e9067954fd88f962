package org.evenpour.control;

/** The scatter within a turn on a scale on which it is nearly normal. */
final class SpreadScale {
  private SpreadScale() {}

  /**
   * A variance as a standard normal deviate: {@code ((s²/σ²)^⅓ − (1 − 2/(9ν))) / √(2/(9ν))} (Wilson
   * and Hilferty 1931).
   *
   * @param variance observed
   * @param sigma expected s.d.
   * @param freedom degrees of freedom ν of the variance
   */
  static double standardize(double variance, double sigma, double freedom) {
    double c = 2 / (9 * freedom);
    return (Math.cbrt(variance / (sigma * sigma)) - (1 - c)) / Math.sqrt(c);
  }
}
