package org.evenpour.stats;

import org.hipparchus.special.Gamma;

/**
 * Fisher's exact test of two shares (R. A. Fisher, Statistical Methods for Research Workers, 5th
 * ed. 1934, section 21.02): with all four margins held, the count of successes in the first group
 * has the hypergeometric distribution, {@code P(k) = C(n₁,k)·C(n₂,K−k)/C(n₁+n₂,K)}.
 */
public final class ExactShares {
  private ExactShares() {}

  /**
   * The chance of so few successes in the first group, or fewer, where both groups have one share:
   * one-sided. 1 without trials in either group. Terms from log gamma, good to some 10 digits;
   * O(successes in the first group).
   *
   * @param successes in the first group, 0 to {@code trials}
   * @param trials in the first group
   * @param others successes in the second group, 0 to {@code otherTrials}
   * @param otherTrials in the second group
   */
  public static double fewer(long successes, long trials, long others, long otherTrials) {
    if (successes < 0 || successes > trials || others < 0 || others > otherTrials) {
      throw new IllegalArgumentException(
          successes + " of " + trials + ", " + others + " of " + otherTrials);
    }
    long all = successes + others;
    double whole = choose(trials + otherTrials, all);
    double sum = 0;
    for (long k = Math.max(0, all - otherTrials); k <= successes; k++) {
      sum += Math.exp(choose(trials, k) + choose(otherTrials, all - k) - whole);
    }
    return Math.min(1, sum);
  }

  /** The logarithm of the number of ways to choose k of n. */
  private static double choose(long n, long k) {
    return Gamma.logGamma(n + 1.0) - Gamma.logGamma(k + 1.0) - Gamma.logGamma(n - k + 1.0);
  }
}
