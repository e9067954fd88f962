package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Functions whose crossing is known, and functions that have none. */
class RootTest {
  @Test
  void findsACrossingThatIsAStep() {
    double found = Root.ofIncreasing(x -> x < 1.25e7 ? -1 : 1, 1e7, 1, -1e300, 1e300);
    assertThat(found / 1.25e7).isCloseTo(1, within(1e-13));
  }

  /** x⁹ is flat about its root: no digits are lost that it has. */
  @Test
  void findsAFlatCrossing() {
    double found = Root.ofIncreasing(x -> Math.pow(x - 3, 9), 10, 1, -1e300, 1e300);
    assertThat(found).isCloseTo(3, within(1e-2));
  }

  @Test
  void isMissingWhereNothingCrosses() {
    assertThat(Root.ofIncreasing(x -> 1, 0, 1, -10, 10)).isNaN();
    assertThat(Root.ofIncreasing(x -> Double.NaN, 0, 1, -10, 10)).isNaN();
    assertThat(Root.ofIncreasing(x -> x, Double.NaN, 1, -10, 10)).isNaN();
    assertThat(Root.ofIncreasing(x -> x, 0.5, 0, -10, 10)).isNaN();
  }
}
