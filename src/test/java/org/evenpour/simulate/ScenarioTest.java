package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

class ScenarioTest {

  @Test
  void refusesWhatTheWheelCannotRunAndSaysWhy() {
    Scenario week = Scenario.week(1);
    refused(() -> week.withDays(0), "days must be 1 to 3660, not 0");
    refused(() -> week.withMolds(15), "molds must be 16 to 40, not 15");
    refused(() -> week.withMolds(41), "molds must be 16 to 40, not 41");
    refused(() -> week.withSides(3), "sides must be 1 or 2, not 3");
    refused(() -> week.withSizeSigmas(Double.NaN), "not NaN");
    refused(() -> week.withSizeSigmas(0), "not 0.0");
  }

  private static void refused(ThrowingCallable call, String message) {
    assertThatThrownBy(call)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(message);
  }
}
