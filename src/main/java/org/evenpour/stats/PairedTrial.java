package org.evenpour.stats;

/**
 * How well a trial in pairs tells two levels apart: the two-sided t test of the mean of n
 * differences at 5 %.
 *
 * <p>Power {@code 1 − F(t; δ) + F(−t; δ)}, F the noncentral t distribution with n − 1 degrees of
 * freedom, {@code δ = √n·difference/sd}, t the 97.5 % point of Student's t (for example Montgomery,
 * Design and Analysis of Experiments, section 2.5).
 */
public final class PairedTrial {
  private static final double LEVEL = 0.05;

  private PairedTrial() {}

  /**
   * The chance to find a difference.
   *
   * @param pairs at least 2
   * @param difference true mean difference over the s.d. of single differences
   */
  public static double power(int pairs, double difference) {
    int df = pairs - 1;
    double t = StudentT.quantile(1 - LEVEL / 2, df);
    double delta = Math.sqrt(pairs) * Math.abs(difference);
    return 1 - NoncentralT.cdf(t, df, delta) + NoncentralT.cdf(-t, df, delta);
  }

  /**
   * The fewest pairs that find a difference so often.
   *
   * @param difference true mean difference over the s.d. of single differences
   * @param power between 0 and 1
   * @param most pairs to consider
   * @return 0 where even {@code most} are too few
   */
  public static int fewest(double difference, double power, int most) {
    if (most < 2 || !(power(most, difference) >= power)) {
      return 0;
    }
    int low = 1;
    int high = most;
    // Power grows with each pair, so that halving finds the first that is enough.
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (power(middle, difference) >= power) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }
}
