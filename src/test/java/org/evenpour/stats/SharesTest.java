package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SharesTest {
  /** Fisher, The Design of Experiments (1935), chapter 2: eight cups, four of them milk first. */
  @Test
  void theLadyTastingTea() {
    assertThat(Shares.moreThanOthers(4, 4, 4, 8)).isCloseTo(1.0 / 70, within(1e-14));
    assertThat(Shares.moreThanOthers(3, 4, 4, 8)).isCloseTo(17.0 / 70, within(1e-14));
    assertThat(Shares.moreThanOthers(0, 4, 4, 8)).isCloseTo(1, within(1e-12));
  }

  /** The tail as a sum of binomial coefficients, for counts as a wheel has them. */
  @Test
  void isTheHypergeometricTail() {
    double tail = 0;
    for (int x = 12; x <= 60; x++) {
      tail += Math.exp(choose(60, x) + choose(1500 - 60, 120 - x) - choose(1500, 120));
    }
    assertThat(Shares.moreThanOthers(12, 120, 60, 1500))
        .isCloseTo(tail, within(1e-12 + 1e-9 * tail));
  }

  private static double choose(int n, int k) {
    double sum = 0;
    for (int i = 1; i <= k; i++) {
      sum += Math.log(n - k + i) - Math.log(i);
    }
    return sum;
  }

  @Test
  void groupsThatDifferNoMoreThanChanceHaveTheCommonShare() {
    assertThat(shrunk(new int[] {5, 5, 5}, new int[] {100, 100, 100}))
        .containsExactly(0.05, 0.05, 0.05);
    assertThat(shrunk(new int[] {0, 0}, new int[] {40, 60})).containsExactly(0, 0);
    assertThat(shrunk(new int[] {4, 0}, new int[] {40, 0})).containsExactly(0.1, 0.1);
    assertThat(shrunk(new int[] {0}, new int[] {0})[0]).isNaN();
  }

  /** Two groups of a hundred with 10 and 30: by hand, the share between them is 1/31·… */
  @Test
  void isDrawnInByWhatChanceMakes() {
    // between = 0.01, binomial = 0.16, left = 0.5, chance = 0.005: alike = 0.0092/0.0792
    double alike = 0.0092 / 0.0792;
    double strength = (1 - alike) / alike;
    assertThat(shrunk(new int[] {10, 30}, new int[] {100, 100}))
        .containsExactly(
            new double[] {
              (10 + 0.2 * strength) / (100 + strength), (30 + 0.2 * strength) / (100 + strength)
            },
            within(1e-12));
  }

  /** Against groups whose true shares are drawn: nearer to them than what was counted. */
  @Test
  void isNearerToTheTruthThanTheCounts() {
    Random random = new Random(1973);
    double counted = 0;
    double drawn = 0;
    for (int run = 0; run < 200; run++) {
      int[] x = new int[26];
      int[] n = new int[26];
      double[] truth = new double[26];
      for (int i = 0; i < n.length; i++) {
        // 1 to 5 %, evenly: molds that differ as a wheel's do
        truth[i] = 0.01 + 0.04 * random.nextDouble();
        n[i] = 40 + random.nextInt(200);
        for (int k = 0; k < n[i]; k++) {
          x[i] += random.nextDouble() < truth[i] ? 1 : 0;
        }
      }
      double[] shrunk = shrunk(x, n);
      for (int i = 0; i < n.length; i++) {
        counted += Math.pow((double) x[i] / n[i] - truth[i], 2);
        drawn += Math.pow(shrunk[i] - truth[i], 2);
      }
      assertThat(Arrays.stream(shrunk).min().orElseThrow()).isBetween(0.0, 1.0);
    }
    assertThat(drawn).isLessThan(0.6 * counted);
  }

  private static double[] shrunk(int[] successes, int[] trials) {
    Shares.Prior prior = Shares.prior(successes, trials);
    double[] shrunk = new double[trials.length];
    java.util.Arrays.setAll(shrunk, i -> prior.shrunk(successes[i], trials[i]));
    return shrunk;
  }

  /** The same tails by R 4.2: pnbinom and ppois. */
  @Test
  void soManyIsTheUpperTail() {
    assertThat(Shares.soMany(5, 1.3, 0.4)).isCloseTo(0.033283086031794876, within(1e-13));
    assertThat(Shares.soMany(9, 2.5, 2)).isCloseTo(0.073940200351165913, within(1e-13));
    assertThat(Shares.soMany(4, 0.7, 0)).isCloseTo(0.005753457592299584, within(1e-13));
    assertThat(Shares.soMany(0, 0.7, 0)).isEqualTo(1);
  }

  /**
   * By hand: odds 1/49 times e² are 0.1508, a share of 0.1310; the line's slope; no way below 0.
   */
  @Test
  void aShareChangesAlongTheLogisticCurve() {
    double slope = 0.02 * 0.98;
    assertThat(Shares.alongLogistic(0.02, 2 * slope)).isCloseTo(0.1310 - 0.02, within(5e-5));
    assertThat(Shares.alongLogistic(0.02, 1e-9)).isCloseTo(1e-9, within(1e-15));
    assertThat(Shares.alongLogistic(0.02, -5)).isCloseTo(-0.02, within(1e-12));
    assertThat(Shares.alongLogistic(0, 0.01)).isEqualTo(0.01);
  }
}
