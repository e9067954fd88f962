package org.evenpour.stats;

/**
 * Shares of several groups, side by side: which stand out, and what is left of each when chance is
 * taken out.
 */
public final class Shares {
  private Shares() {}

  /**
   * The chance of so many successes in a group, or more, if the group were like the others:
   * Fisher's (1935) exact test, one-sided, the hypergeometric upper tail given all successes. 1
   * where there are none. O(successes).
   *
   * @param successes of the group, from 0 to {@code trials}
   * @param trials of the group
   * @param allSuccesses of all groups, this one included
   * @param allTrials of all groups
   */
  public static double moreThanOthers(int successes, int trials, int allSuccesses, int allTrials) {
    return ExactShares.fewer(allSuccesses - successes, allTrials - trials, successes, trials);
  }

  /**
   * Each group's share drawn in towards the common one by as much as chance may have moved it: the
   * mean of a beta distribution, (x + a)/(n + a + b), whose a and b come from how the groups
   * differ, by weighted moments (Kleinman 1973, with weights n; formula from memory, held to
   * simulated groups). Where they differ no more than chance makes them, every share is the common
   * one; a group without trials has it too. NaN for all without trials. O(groups).
   *
   * @param successes one for each group
   * @param trials one for each group
   */
  public static double[] shrunk(int[] successes, int[] trials) {
    double all = 0;
    double good = 0;
    for (int i = 0; i < trials.length; i++) {
      all += trials[i];
      good += successes[i];
    }
    double common = good / all;
    double between = 0;
    double left = 0;
    double chance = 0;
    for (int i = 0; i < trials.length; i++) {
      if (trials[i] > 0) {
        double weight = trials[i] / all;
        double off = (double) successes[i] / trials[i] - common;
        between += weight * off * off;
        left += weight * (1 - weight);
        chance += weight * (1 - weight) / trials[i];
      }
    }
    double binomial = common * (1 - common);
    // The share of a single trial's variance that lies between groups.
    double alike = (between - binomial * chance) / (binomial * (left - chance));
    double[] shrunk = new double[trials.length];
    for (int i = 0; i < trials.length; i++) {
      // None differ beyond chance: a and b are without end, and a group's own trials count nothing.
      shrunk[i] =
          alike > 0
              ? (successes[i] + common * (1 - alike) / alike) / (trials[i] + (1 - alike) / alike)
              : common;
    }
    return shrunk;
  }
}
