package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;

class DispersedSharesTest {
  /**
   * NIST/SEMATECH e-Handbook, 6.3.3.2: chips with misregistration of 50 on each of 30 wafers;
   * counts from memory, held to the center of 0.2313 and the limits 0.0524 and 0.4102 that are
   * printed there.
   */
  private static final int[] WAFERS = {
    12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12,
    7, 13, 9, 6
  };

  @Test
  void withoutDispersionItIsThePlainChart() {
    int[] trials = new int[WAFERS.length];
    Arrays.fill(trials, 50);
    DispersedShares its = DispersedShares.of(WAFERS, trials);
    assertThat(its.share()).isCloseTo(0.2313, within(5e-5));
    DispersedShares plain = new DispersedShares(its.share(), 1);
    assertThat(plain.upper(50)).isCloseTo(0.4102, within(1e-4));
    assertThat(plain.lower(50)).isCloseTo(0.0524, within(1e-4));
    // The wafers differ by more than chance: R 4.2, mean(abs(diff(z)))/1.128379.
    assertThat(its.sigmaZ()).isCloseTo(1.660308622, within(1e-6));
    assertThat(its.upper(50) - its.share()).isCloseTo(3 * 1.660308622 * 0.0596339, within(1e-5));
  }

  @Test
  void whatChanceMakesIsOneAndChargesThatDifferAreMore() {
    RandomDataGenerator random = new RandomDataGenerator(3);
    int n = 4_000;
    int[] trials = new int[n];
    Arrays.fill(trials, 400);
    int[] alike = new int[n];
    int[] differ = new int[n];
    for (int i = 0; i < n; i++) {
      alike[i] = random.nextPoisson(12);
      differ[i] = random.nextPoisson(12 * random.nextGamma(10, 0.1));
    }
    // A Poisson count in place of a binomial one: its variance is 1/(1 − 0.03) as large.
    assertThat(DispersedShares.of(alike, trials).sigmaZ()).isCloseTo(1.015, within(0.03));
    // Var z = 1 + κ·mean, with κ = 0.1 and 12 expected; skewness takes a little of a mean range.
    assertThat(DispersedShares.of(differ, trials).sigmaZ()).isCloseTo(Math.sqrt(2.2), within(0.06));
  }

  @Test
  void passesOverWhatHasNoTrials() {
    DispersedShares its = DispersedShares.of(new int[] {3, 0, 5}, new int[] {50, 0, 50});
    assertThat(its).isEqualTo(DispersedShares.of(new int[] {3, 5}, new int[] {50, 50}));
    assertThat(DispersedShares.of(new int[] {3}, new int[] {50}).sigmaZ()).isNaN();
  }
}
