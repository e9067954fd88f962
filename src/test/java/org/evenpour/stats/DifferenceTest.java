package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class DifferenceTest {
  /**
   * Cushny and Peebles (1905), extra hours of sleep with two drugs, as in "Student" (1908) and in
   * the data set {@code sleep} of R, whose manual page {@code t.test} prints for {@code extra ~
   * group}: t = −1.8608, df = 17.776, p = 0.07939, 95 % −3.3654832 to 0.2054832 (first less
   * second); from memory.
   */
  @Test
  void agreesWithWhatRPrintsForTwoDrugs() {
    Moments one = Moments.of(0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0);
    Moments two = Moments.of(1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4);
    Difference its =
        Difference.ofMeans(
            one.mean(), one.sd() / Math.sqrt(10), 9, two.mean(), two.sd() / Math.sqrt(10), 9);
    assertThat(its.value()).isCloseTo(1.58, within(1e-12));
    assertThat(its.p()).isCloseTo(0.07939, within(5e-6));
    assertThat(its.low()).isCloseTo(-0.2054832, within(5e-8));
    assertThat(its.high()).isCloseTo(3.3654832, within(5e-8));
  }

  /**
   * Newcombe (1998), Interval estimation for the difference between independent proportions,
   * Statistics in Medicine 17, table II, method 10, printed to four decimals (first less second);
   * from memory.
   */
  @Test
  void hasTheLimitsOfNewcombesExamplesForTwoShares() {
    double[][] printed = {
      {56, 70, 48, 80, 0.0524, 0.3339},
      {9, 10, 3, 10, 0.1705, 0.8090},
      {6, 7, 2, 7, 0.0582, 0.8062},
      {5, 56, 0, 29, -0.0381, 0.1926},
      {0, 10, 0, 10, -0.2775, 0.2775},
      {10, 10, 0, 20, 0.6791, 1.0000},
      {10, 10, 0, 10, 0.6075, 1.0000}
    };
    for (double[] each : printed) {
      Proportion a = Proportion.of((long) each[0], (long) each[1], 0.95);
      Proportion b = Proportion.of((long) each[2], (long) each[3], 0.95);
      Difference its =
          Difference.ofIntervals(b.value(), b.low(), b.high(), a.value(), a.low(), a.high());
      assertThat(its.low()).isCloseTo(each[4], within(0.00005));
      assertThat(its.high()).isCloseTo(each[5], within(0.00005));
    }
  }

  /** With even intervals it is the plain one of two independent normal figures: closed form. */
  @Test
  void evenIntervalsGiveTheOrdinaryTest() {
    double z = Normal.quantile(0.975);
    Difference its = Difference.ofIntervals(1, 1 - 3 * z, 1 + 3 * z, 11, 11 - 4 * z, 11 + 4 * z);
    assertThat(its.low()).isCloseTo(10 - 5 * z, within(1e-12));
    assertThat(its.high()).isCloseTo(10 + 5 * z, within(1e-12));
    // Two standard errors: 2·Φ(−2) = 0.04550026, a table's value.
    assertThat(its.p()).isCloseTo(0.04550026, within(5e-9));
  }

  /** An interval ends at 0 where p is 5 %, from either side: the two say the same. */
  @Test
  void anIntervalThatReachesNothingHasAProbabilityOfFivePerCent() {
    for (double sign : new double[] {1, -1}) {
      Difference its = Difference.ofIntervals(0, -3, 3, sign * 5, sign * 5 - 4, sign * 5 + 4);
      assertThat(its.p()).isCloseTo(0.05, within(1e-12));
    }
  }

  /**
   * Coverage and false alarms over simulated records, nothing differing: 95 % and 5 %. 4,000 trials
   * have a standard error of 0.34 points; three of them and one point for what is asymptotic.
   */
  @Test
  void ratiosOfSpreadsHoldForNormalAndForHeavyTails() {
    SplittableRandom random = new SplittableRandom(20260307);
    ToDoubleFunction<SplittableRandom> normal = r -> Normal.quantile(r.nextDouble());
    ToDoubleFunction<SplittableRandom> heavy = r -> StudentT5.of(r);
    assertThat(covered(random, normal)).isBetween(0.93, 0.97);
    assertThat(covered(random, heavy)).isBetween(0.93, 0.975);
  }

  private static double covered(SplittableRandom random, ToDoubleFunction<SplittableRandom> pour) {
    int trials = 4000;
    int held = 0;
    for (int trial = 0; trial < trials; trial++) {
      double[] first = new double[300];
      double[] second = new double[500];
      for (int i = 0; i < first.length; i++) {
        first[i] = pour.applyAsDouble(random);
      }
      for (int i = 0; i < second.length; i++) {
        second[i] = 1.3 * pour.applyAsDouble(random);
      }
      Difference its = Difference.ratioOfSpreads(first, second);
      held += its.low() <= 1.3 && 1.3 <= its.high() ? 1 : 0;
      assertThat(its.p() < 0.05).isEqualTo(its.low() > 1 || its.high() < 1);
    }
    return (double) held / trials;
  }

  /** Student's t with five degrees of freedom: a normal over the root of a χ² over 5. */
  private static final class StudentT5 {
    static double of(SplittableRandom random) {
      double sum = 0;
      for (int i = 0; i < 5; i++) {
        double z = Normal.quantile(random.nextDouble());
        sum += z * z;
      }
      return Normal.quantile(random.nextDouble()) / Math.sqrt(sum / 5);
    }
  }

  @Test
  void whatCannotBeToldIsNotANumber() {
    assertThat(Difference.ofMeans(1, 0, 3, 2, 0, 3).p()).isNaN();
    assertThat(Difference.ratioOfSpreads(new double[] {1}, new double[] {1, 2}).low()).isNaN();
    assertThat(Difference.ratioOfSpreads(new double[] {2, 2}, new double[] {1, 2}).low()).isNaN();
    assertThat(Difference.ofIntervals(1, 1, 1, 1, 1, 1).p()).isEqualTo(1);
  }
}
