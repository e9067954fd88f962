package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ProportionTest {

  /**
   * Newcombe (1998), Two-sided confidence intervals for the single proportion, Statistics in
   * Medicine 17, table I, method 3; printed to four decimals, here from memory.
   */
  @Test
  void hasTheLimitsOfNewcombesFourExamples() {
    double[][] printed = {
      {81, 263, 0.2553, 0.3662},
      {15, 148, 0.0624, 0.1605},
      {0, 20, 0.0000, 0.1611},
      {1, 29, 0.0061, 0.1718}
    };
    for (double[] one : printed) {
      Proportion proportion = Proportion.of((long) one[0], (long) one[1], 0.95);
      assertThat(proportion.low()).isCloseTo(one[2], within(0.00005));
      assertThat(proportion.high()).isCloseTo(one[3], within(0.00005));
    }
  }

  /** Both are closed forms in doubles: 1e-12 is a good many rounding errors. */
  @Test
  void agreesWithAnIndependentComputation() {
    for (Reference.Row row : Reference.rows("proportion-intervals.csv")) {
      Proportion proportion =
          Proportion.of(row.whole("successes"), row.whole("trials"), row.number("confidence"));
      assertThat(proportion.low()).isCloseTo(row.number("low"), within(1e-12));
      assertThat(proportion.high()).isCloseTo(row.number("high"), within(1e-12));
    }
  }

  @Test
  void saysNothingWithoutTrials() {
    Proportion none = Proportion.of(0, 0, 0.95);
    assertThat(none.value()).isNaN();
    assertThat(none.low()).isNaN();
    assertThat(none.high()).isNaN();
  }

  @Test
  void refusesMoreSuccessesThanTrials() {
    assertThatThrownBy(() -> Proportion.of(3, 2, 0.95))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("3 successes of 2 trials");
  }
}
