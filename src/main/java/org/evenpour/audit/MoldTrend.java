package org.evenpour.audit;

import org.evenpour.casting.Specification;
import org.evenpour.findings.MoldVerdict.Trend;
import org.evenpour.stats.Autocorrelation;
import org.evenpour.stats.LeastSquares;
import org.evenpour.stats.StudentT;
import org.jspecify.annotations.Nullable;

/** A straight line through a mold's series, and when it meets the tolerance. */
final class MoldTrend {
  private MoldTrend() {}

  /**
   * The line by least squares over the casts, its error widened for autocorrelation.
   *
   * <p>The variance of least squares is multiplied by n/n', with n' the effective sample size of a
   * first-order autoregression with the residuals' lag-one correlation φ, from 0 to 0.9, raised by
   * (2 + 4φ)/n for what fitting a line takes from it (to first order; from memory, after Marriott
   * and Pope 1954); t has n' − 2 degrees of freedom. Casts left are where the line meets the limit,
   * with Fieller's (1954) interval. A trend is clear where its t test with the error shared by all
   * molds (Bonferroni) refuses zero, and a line leaves no larger residuals than the best single
   * step, for a step also has a slope. O(n).
   *
   * @param y one value a cast, on the characteristic's own scale, without NaN
   * @param molds that are asked together
   * @return null with fewer than {@link MoldStandings#FEWEST} values, or no spread
   */
  static @Nullable Trend of(double[] y, Specification specification, int molds) {
    int n = y.length;
    if (n < MoldStandings.FEWEST) {
      return null;
    }
    double[][] x = new double[n][1];
    // About the middle, where level and slope err independently, as Fieller's a and b must.
    double middle = 0.5 * (n - 1);
    double squares = 0;
    for (int i = 0; i < n; i++) {
      x[i][0] = i - middle;
      squares += x[i][0] * x[i][0];
    }
    LeastSquares line = LeastSquares.fit(x, y, true);
    double slope = line.coefficients()[1];
    double mean = line.coefficients()[0];
    double phi = Autocorrelation.lag1(line.residuals());
    if (!(line.residualSd() > 0) || Double.isNaN(phi)) {
      return null;
    }
    // At most 0.9, where n casts are worth n/19: beyond it no trend could be told at all.
    double raised = Math.min(0.9, Math.max(0, phi + (2 + 4 * phi) / n));
    double effective = Autocorrelation.effectiveSampleSize(n, raised);
    double freedom = Math.max(1, effective - 2);
    double variance = line.residualSd() * line.residualSd() * n / effective;
    double error = Math.sqrt(variance / squares);
    double t = StudentT.quantile(0.975, freedom);
    // The step may choose its place and the line may not: a tie goes to caution.
    boolean clear =
        Math.abs(slope) > error * StudentT.quantile(1 - 0.025 / molds, freedom)
            && line.residualSumOfSquares() <= leastOfSteps(y);
    Double limit = slope < 0 ? specification.lower() : specification.upper();
    double[] left =
        clear && limit != null
            ? meets(limit - mean, slope, t * t * variance / n, t * t * variance / squares)
            : new double[] {Double.NaN, Double.NaN, Double.NaN};
    return new Trend(
        100 * slope,
        100 * (slope - t * error),
        100 * (slope + t * error),
        clear,
        casts(left[0], middle),
        casts(left[1], middle),
        casts(left[2], middle));
  }

  /** From the middle of the series to the casts that are still to come. */
  private static @Nullable Double casts(double fromMiddle, double middle) {
    return Double.isNaN(fromMiddle) ? null : (Double) Math.max(0, fromMiddle - middle);
  }

  /**
   * Where a line through the origin with this slope reaches a distance: best, low, high, by
   * (distance − slope·w)² = a + b·w².
   *
   * @param a squared half interval of the level in the middle
   * @param b squared half interval of the slope, below slope²
   */
  private static double[] meets(double distance, double slope, double a, double b) {
    double best = distance / slope;
    double first = slope * slope - b;
    double root = Math.sqrt(Math.max(0, a * first + b * distance * distance));
    double one = (distance * slope - root) / first;
    double other = (distance * slope + root) / first;
    // Where the slope is not clear of 0 the line may never meet the limit: no interval.
    return first > 0
        ? new double[] {best, Math.min(one, other), Math.max(one, other)}
        : new double[] {best, Double.NaN, Double.NaN};
  }

  /** The least sum of squares about two levels, one before and one after some cast. */
  private static double leastOfSteps(double[] y) {
    int n = y.length;
    // Sums about the mean: what is before a cast is what is after it, with the other sign.
    double mean = 0;
    for (double each : y) {
      mean += each / n;
    }
    double total = 0;
    for (double each : y) {
      total += (each - mean) * (each - mean);
    }
    double most = 0;
    double sum = 0;
    for (int i = 0; i < n - 1; i++) {
      sum += y[i] - mean;
      most = Math.max(most, sum * sum * n / ((i + 1.0) * (n - i - 1.0)));
    }
    return total - most;
  }
}
