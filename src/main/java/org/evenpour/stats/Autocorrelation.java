package org.evenpour.stats;

/** Serial dependence of a series, and what it costs. */
public final class Autocorrelation {
  private Autocorrelation() {}

  /**
   * Lag-one autocorrelation: Σ(xᵢ − m)(xᵢ₊₁ − m)/Σ(xᵢ − m)². Where values are missing (NaN), the
   * mean product over the pairs that are whole, times (n − 1)/n, over the mean square. NaN with
   * fewer than one whole pair or no spread.
   */
  public static double lag1(double[] x) {
    Moments moments = Moments.of(x);
    if (moments.count() < 2) {
      return Double.NaN;
    }
    double n = moments.count();
    // The mean in two parts: what a series far from 0 has in common drops out without rounding.
    DoubleDouble mean = moments.exactMean();
    double sum = 0;
    double lost = 0;
    long pairs = 0;
    double before = Double.NaN;
    for (double value : x) {
      double d = (value - mean.high()) - mean.low();
      double product = d * before;
      // Neumaier's sum: products of either sign nearly cancel where nothing is correlated
      if (!Double.isNaN(product)) {
        double t = sum + product;
        lost += Math.abs(sum) >= Math.abs(product) ? (sum - t) + product : (product - t) + sum;
        sum = t;
        pairs++;
      }
      before = d;
    }
    double squares = moments.sumOfSquares().value();
    // What pairs there are stand for all n − 1.
    double covered = pairs / (n - 1);
    return pairs == 0 || squares == 0 ? Double.NaN : (sum + lost) / covered / squares;
  }

  /**
   * How many independent values tell as much about a mean as n values of a first-order
   * autoregression: n/((1 + φ)/(1 − φ) − 2φ(1 − φⁿ)/(n(1 − φ)²)) (Box, Jenkins and Reinsel).
   *
   * @param phi lag-one correlation, above −1 and below 1; NaN otherwise gives NaN
   */
  public static double effectiveSampleSize(long n, double phi) {
    if (!(Math.abs(phi) < 1)) {
      return Double.NaN;
    }
    // The second term takes back the lags that a series of n values doesn't have.
    double inflation =
        (1 + phi) / (1 - phi)
            - 2 * phi * (1 - Math.pow(phi, (double) n)) / ((double) n * (1 - phi) * (1 - phi));
    return (double) n / inflation;
  }
}
