package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Powers by SciPy 1.17.1: {@code 1 - nct.cdf(c, n-1, d*sqrt(n)) + nct.cdf(-c, n-1, d*sqrt(n))}. */
class PairedTrialTest {
  @ParameterizedTest
  @CsvSource({
    "13, 1.0, 0.9107084757398161",
    "12, 1.0, 0.8828916377291325",
    "10, 0.8, 0.6162327634744059",
    "34, 0.57, 0.8971560525185128",
    "5, 2.0, 0.9088848681009404",
    "100, 0.3, 0.8439471027374162"
  })
  void isThePowerOfThePairedTest(int pairs, double difference, double power) {
    assertThat(PairedTrial.power(pairs, difference)).isCloseTo(power, within(1e-9));
    assertThat(PairedTrial.power(pairs, -difference)).isCloseTo(power, within(1e-9));
    assertThat(PairedTrial.fewest(difference, power - 1e-6, 200)).isEqualTo(pairs);
    assertThat(PairedTrial.fewest(difference, power + 1e-6, 200)).isEqualTo(pairs + 1);
    assertThat(PairedTrial.fewest(difference, power, pairs - 1)).isZero();
  }
}
