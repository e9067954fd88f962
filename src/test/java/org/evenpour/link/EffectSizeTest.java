package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Means weighted by precision, and the Birge ratio, by hand. */
class EffectSizeTest {
  private static final EffectSize ONE = new EffectSize(1, 0.1, 30);

  @Test
  void kindsOfVariationThatAgreeMakeOnePreciseEffect() {
    EffectSize mean =
        new EffectSize.Levels(ONE, EffectSize.UNKNOWN, new EffectSize(1.1, 0.2, 10)).alone();
    // (100·1 + 25·1.1)/125; chi-square 0.2 < 1.
    assertThat(mean.perUnit()).isCloseTo(1.02, within(1e-12));
    assertThat(mean.error()).isCloseTo(1 / Math.sqrt(125), within(1e-12));
    // 125²/(100²/30 + 25²/10)
    assertThat(mean.freedom()).isCloseTo(39.473684210526315, within(1e-9));
  }

  @Test
  void kindsOfVariationThatDifferMakeAnUncertainEffect() {
    EffectSize mean =
        new EffectSize.Levels(ONE, new EffectSize(1.4, 0.2, 10), EffectSize.UNKNOWN).alone();
    // Mean 1.08, chi-square 100·0.0064 + 25·0.1024 = 3.2 with one degree of freedom.
    assertThat(mean.perUnit()).isCloseTo(1.08, within(1e-12));
    assertThat(mean.error()).isCloseTo(Math.sqrt(3.2 / 125), within(1e-12));
  }

  @Test
  void oneKindOfVariationStandsForItself() {
    assertThat(new EffectSize.Levels(EffectSize.UNKNOWN, EffectSize.UNKNOWN, ONE).alone().perUnit())
        .isEqualTo(1);
    assertThat(EffectSize.Levels.UNKNOWN.alone().isKnown()).isFalse();
  }

  @Test
  void whatMovesTogetherCountsAsWithTheOtherHeld() {
    EffectSize pair = new EffectSize(5, 0.01, 30, List.of("other"), false, ONE);
    assertThat(
            new EffectSize.Levels(EffectSize.UNKNOWN, EffectSize.UNKNOWN, pair).alone().perUnit())
        .isEqualTo(1);
  }

  /**
   * The 95 % interval touches zero where p is 0.05; t of 3.2 with 12 degrees of freedom has p =
   * 0.00762 (SciPy {@code 2*t.sf(3.2, 12)}).
   */
  @Test
  void itsChanceIsThatOfStudentsT() {
    assertThat(new EffectSize(1.959963984540054, 1, 7).p()).isCloseTo(0.05, within(1e-9));
    double widened = 2.178812829663418 / 1.959963984540054; // t.ppf(0.975, 12)
    assertThat(new EffectSize(3.2, widened, 12).p()).isCloseTo(0.0076231, within(2e-5));
    assertThat(EffectSize.UNKNOWN.p()).isNaN();
  }
}
