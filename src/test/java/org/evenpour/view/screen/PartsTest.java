package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PartsTest {

  @Test
  void aNumberStaysWithItsUnit() {
    assertThat(Parts.words("up to −0.44 mm (95 %: −0.5 to −0.4), 25 L/min in 3 turns"))
        .containsExactly(
            "up",
            "to",
            "−0.44 mm",
            "(95 %:",
            "−0.5",
            "to",
            "−0.4),",
            "25 L/min",
            "in",
            "3",
            "turns");
  }
}
