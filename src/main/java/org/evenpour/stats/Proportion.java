package org.evenpour.stats;

/**
 * A share of trials that succeeded, with its confidence interval.
 *
 * @param successes 0 to {@code trials}
 * @param trials how many
 * @param low lower end; NaN without trials
 * @param high upper end; NaN without trials
 */
public record Proportion(long successes, long trials, double low, double high) {

  /**
   * A share with its two-sided interval by the score method (Wilson 1927): the proportions p₀ that
   * a test with the standard error √(p₀(1 − p₀)/n) would not refuse,
   *
   * <pre>(p̂ + z²/2n ± z·√(p̂(1 − p̂)/n + z²/4n²)) / (1 + z²/n)</pre>
   *
   * <p>as the e-Handbook (NIST/SEMATECH 7.2.4.1) has it. Its ends stay within 0 and 1, and it holds
   * for few trials and for none or all that succeed. O(1).
   *
   * @param confidence two-sided, as 0.95
   */
  public static Proportion of(long successes, long trials, double confidence) {
    if (successes < 0 || successes > trials) {
      throw new IllegalArgumentException(successes + " successes of " + trials + " trials");
    }
    if (trials == 0) {
      return new Proportion(0, 0, Double.NaN, Double.NaN);
    }
    double z = Normal.quantile(0.5 + confidence / 2);
    double n = trials;
    double p = successes / n;
    double middle = p + z * z / (2 * n);
    double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
    double scale = 1 + z * z / n;
    return new Proportion(
        successes,
        trials,
        successes == 0 ? 0 : (middle - half) / scale,
        successes == trials ? 1 : (middle + half) / scale);
  }

  /** Successes over trials; NaN without trials. */
  public double value() {
    return (double) successes / trials;
  }
}
