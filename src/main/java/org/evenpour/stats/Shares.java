package org.evenpour.stats;

import java.util.function.IntToDoubleFunction;
import org.hipparchus.random.RandomDataGenerator;

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
   * What is known of a group's share before its own trials are seen: a beta distribution.
   *
   * @param common its mean: the share of all groups
   * @param trials how many trials of a group's own weigh as much; infinite where groups differ no
   *     more than chance makes them
   */
  public record Prior(double common, double trials) {

    /** A group's share drawn in towards the common one by as much as chance may have moved it. */
    public double shrunk(int successes, int ofTrials) {
      return trials < Double.POSITIVE_INFINITY
          ? (successes + common * trials) / (ofTrials + trials)
          : common;
    }
  }

  /**
   * What the groups' shares may be, drawn anew at each asking: gamma with the mean and, for small
   * shares, the variance of the beta distribution that is left of the prior when a group's own
   * trials are seen.
   *
   * @param successes one for each group
   * @param trials one for each group
   */
  public static IntToDoubleFunction drawn(int[] successes, int[] trials, long seed) {
    Prior prior = prior(successes, trials);
    RandomDataGenerator random = new RandomDataGenerator(seed);
    // None has any, or none differs beyond chance: then all are alike.
    return !(prior.common() > 0) || prior.trials() == Double.POSITIVE_INFINITY
        ? group -> 1
        : group ->
            random.nextGamma(successes[group] + prior.common() * prior.trials(), 1)
                / (trials[group] + prior.trials());
  }

  /**
   * By how the groups differ, by weighted moments (Kleinman 1973, with weights n; formula from
   * memory, held to simulated groups). NaN for all without trials. O(groups).
   *
   * @param successes one for each group
   * @param trials one for each group
   */
  public static Prior prior(int[] successes, int[] trials) {
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
    // Not above 0, or not a number: none differ beyond chance, and their own trials count nothing.
    return new Prior(common, alike > 0 ? Math.max(0, 1 / alike - 1) : Double.POSITIVE_INFINITY);
  }

  /**
   * How a share changes along the logistic curve that has a straight line's slope where the share
   * is the usual one: logit p = logit share + change/(share·(1 − share)). A line would lead below
   * none, and grows no faster where more are hit.
   *
   * @param share usual, between 0 and 1; at either end the change is the line's
   * @param change by the straight line
   * @return the new share less the usual one
   */
  public static double alongLogistic(double share, double change) {
    double slope = share * (1 - share);
    return slope > 0 ? share / (share + (1 - share) * Math.exp(-change / slope)) - share : change;
  }

  /**
   * Chance of so many or more where a mean is expected that itself varies: the upper tail of the
   * negative binomial (a Poisson count whose mean is gamma-distributed); of the Poisson where it
   * does not vary.
   *
   * @param count how many were seen
   * @param mean expected, more than 0
   * @param kappa squared coefficient of variation of the mean; 0 or less = it does not vary
   */
  public static double soMany(int count, double mean, double kappa) {
    double ofThese = kappa > 0 ? Math.exp(-Math.log1p(kappa * mean) / kappa) : Math.exp(-mean);
    double fewer = 0;
    for (int k = 0; k < count; k++) {
      fewer += ofThese;
      ofThese *=
          kappa > 0 ? (mean + k * kappa * mean) / (1 + kappa * mean) / (k + 1) : mean / (k + 1);
    }
    return Math.max(0, 1 - fewer);
  }
}
