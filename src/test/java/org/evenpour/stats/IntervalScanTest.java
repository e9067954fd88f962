package org.evenpour.stats;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.evenpour.stats.IntervalScan.Interval;
import org.junit.jupiter.api.Test;

class IntervalScanTest {

  /** Kulldorff (1997): the ratio of binomial likelihoods, by their definition. */
  private static double statistic(int inside, int length, int all, int trials) {
    return Math.sqrt(2 * ratio(inside, length, all, trials))
        - Math.sqrt(2 * (1 + Math.log((double) trials / length)));
  }

  private static double ratio(int inside, int length, int all, int trials) {
    return term(inside, (double) inside / length)
        + term(length - inside, 1 - (double) inside / length)
        + term(all - inside, (double) (all - inside) / (trials - length))
        + term(trials - length - all + inside, 1 - (double) (all - inside) / (trials - length))
        - term(all, (double) all / trials)
        - term(trials - all, 1 - (double) all / trials);
  }

  private static double term(int n, double p) {
    return n == 0 ? 0 : n * Math.log(p);
  }

  @Test
  void findsTheDensestIntervalOfAnyLength() {
    // By hand: four of the five trials 40 to 44 are hit, and three others far apart.
    int[] at = {3, 40, 41, 43, 44, 80, 99};
    Interval its = requireNonNull(new IntervalScan(100).clearest(at, 100));
    assertThat(its.from()).isEqualTo(40);
    assertThat(its.to()).isEqualTo(45);
    assertThat(its.successes()).isEqualTo(4);
    assertThat(its.statistic()).isCloseTo(statistic(4, 5, 7, 100), within(1e-9));
  }

  @Test
  void asksEveryInterval() {
    SplittableRandom random = new SplittableRandom(4);
    for (int run = 0; run < 50; run++) {
      int[] at = random.ints(0, 60).distinct().limit(12).sorted().toArray();
      double most = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < at.length; i++) {
        for (int j = i + 2; j < at.length; j++) {
          int inside = j - i + 1;
          int length = at[j] - at[i] + 1;
          if (length < 60 && (double) inside / length > (double) at.length / 60) {
            most = Math.max(most, statistic(inside, length, at.length, 60));
          }
        }
      }
      assertThat(requireNonNull(new IntervalScan(60).clearest(at, 60)).statistic())
          .isCloseTo(most, within(1e-9));
    }
  }

  @Test
  void ofBatchesItIsTheSameAsOfTheirTrials() {
    Interval its =
        requireNonNull(
            new IntervalScan(400)
                .clearest(new int[] {1, 0, 9, 7, 1, 0}, new int[] {50, 60, 70, 60, 80, 80}, 1));
    assertThat(its.from()).isEqualTo(2);
    assertThat(its.to()).isEqualTo(4);
    assertThat(its.successes()).isEqualTo(16);
    assertThat(its.trials()).isEqualTo(130);
    assertThat(its.statistic()).isCloseTo(Math.sqrt(2 * ratio(16, 130, 18, 400)), within(1e-9));
  }

  @Test
  void saysNothingOfTwo() {
    assertThat(new IntervalScan(100).clearest(new int[] {5, 6}, 100)).isNull();
  }

  /** Where nothing changed it answers yes as often as asked: exactly, but for ties. */
  @Test
  void keepsItsLevel() {
    IntervalScan scan = new IntervalScan(200);
    SplittableRandom random = new SplittableRandom(11);
    int[] ends = {200};
    int runs = 4_000;
    int yes = 0;
    for (int run = 0; run < runs; run++) {
      double seen = scan.byChance(8, ends, b -> 1, random.split()).getAsDouble();
      yes += IntervalScan.beyond(seen, scan.byChance(8, ends, b -> 1, random.split()), 0.1) ? 1 : 0;
    }
    // 400 expected, with a standard deviation of 19.
    assertThat(yes).isBetween(330, 460);
  }

  @Test
  void hitsWhatIsLikelier() {
    IntervalScan scan = new IntervalScan(100);
    // The second batch has a tenth of the trials and is nine times as likely: half of the hits.
    double even = 0;
    double uneven = 0;
    SplittableRandom random = new SplittableRandom(5);
    for (int run = 0; run < 500; run++) {
      even += scan.byChance(6, new int[] {90, 100}, b -> 1, random.split()).getAsDouble();
      uneven +=
          scan.byChance(6, new int[] {90, 100}, b -> b == 0 ? 1 : 9, random.split()).getAsDouble();
    }
    assertThat(uneven).isGreaterThan(1.3 * even);
  }
}
