package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Means weighted by precision, and the Birge ratio, by hand. */
class EffectSizeTest {
  private static final EffectSize ONE = new EffectSize(1, 0.1);

  @Test
  void kindsOfVariationThatAgreeMakeOnePreciseEffect() {
    EffectSize mean =
        new EffectSize.Levels(ONE, EffectSize.UNKNOWN, new EffectSize(1.1, 0.2)).alone();
    // (100·1 + 25·1.1)/125; chi-square 0.2 < 1.
    assertThat(mean.perUnit()).isCloseTo(1.02, within(1e-12));
    assertThat(mean.error()).isCloseTo(1 / Math.sqrt(125), within(1e-12));
  }

  @Test
  void kindsOfVariationThatDifferMakeAnUncertainEffect() {
    EffectSize mean =
        new EffectSize.Levels(ONE, new EffectSize(1.4, 0.2), EffectSize.UNKNOWN).alone();
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
    EffectSize pair = new EffectSize(5, 0.01, List.of("other"), false, ONE);
    assertThat(
            new EffectSize.Levels(EffectSize.UNKNOWN, EffectSize.UNKNOWN, pair).alone().perUnit())
        .isEqualTo(1);
  }
}
