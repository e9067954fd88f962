package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;

/** Against Fisher's lady tasting tea, and whole numbers counted without rounding. */
class ExactSharesTest {
  /** Fisher, The Design of Experiments (1935), section 8: 17 of 70 ways are as good or better. */
  @Test
  void theLadyTastingTea() {
    assertThat(ExactShares.fewer(1, 4, 3, 4)).isCloseTo(17.0 / 70, within(1e-12));
    assertThat(ExactShares.fewer(0, 4, 4, 4)).isCloseTo(1.0 / 70, within(1e-12));
  }

  @Test
  void agreesWithCountsInWholeNumbers() {
    for (int n1 : new int[] {1, 7, 40, 300}) {
      for (int n2 : new int[] {1, 9, 120}) {
        for (int k1 = 0; k1 <= n1; k1 += Math.max(1, n1 / 5)) {
          for (int k2 = 0; k2 <= n2; k2 += Math.max(1, n2 / 4)) {
            BigInteger sum = BigInteger.ZERO;
            int all = k1 + k2;
            for (int k = Math.max(0, all - n2); k <= k1; k++) {
              sum = sum.add(choose(n1, k).multiply(choose(n2, all - k)));
            }
            double expected =
                new java.math.BigDecimal(sum)
                    .divide(
                        new java.math.BigDecimal(choose(n1 + n2, all)),
                        java.math.MathContext.DECIMAL64)
                    .doubleValue();
            assertThat(ExactShares.fewer(k1, n1, k2, n2))
                .isCloseTo(expected, within(1e-9 * expected + 1e-15));
          }
        }
      }
    }
  }

  @Test
  void withoutTrialsNothingIsTold() {
    assertThat(ExactShares.fewer(0, 0, 3, 9)).isEqualTo(1, within(1e-12));
    assertThat(ExactShares.fewer(3, 9, 0, 0)).isEqualTo(1, within(1e-12));
    assertThatThrownBy(() -> ExactShares.fewer(2, 1, 0, 5))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static BigInteger choose(int n, int k) {
    BigInteger ways = BigInteger.ONE;
    for (int i = 0; i < k; i++) {
      ways = ways.multiply(BigInteger.valueOf(n - i)).divide(BigInteger.valueOf(i + 1));
    }
    return ways;
  }
}
