package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class FaultTest {

  /** Scripts name faults by these; they never change. */
  @Test
  void namesAreStable() {
    assertThat(Stream.of(Fault.values()).map(Fault::id))
        .containsExactly(
            "pour-rate-drift",
            "starved-spray",
            "thin-wash",
            "ladle-scale-bias",
            "mold-wear",
            "mold-change",
            "melt-temperature",
            "unexplained",
            "late-cut-off",
            "single-bad-pour",
            "over-reduced-melt",
            "wet-wash",
            "idle-setting-step",
            "idle-event",
            "set-point-move");
  }

  @Test
  void isFoundByItsName() {
    for (Fault fault : Fault.values()) {
      assertThat(Fault.ofId(fault.id())).contains(fault);
    }
    assertThat(Fault.ofId("THIN_WASH")).isEmpty();
  }

  @Test
  void causesAreColumnsOrEvents() {
    for (Fault fault : Fault.values()) {
      assertThat(
              fault.cause().isEmpty()
                  || Pour.COLUMNS.contains(fault.cause())
                  || fault.cause().equals("mold_changed")
                  || fault.cause().equals("nozzle_cleaned"))
          .as(fault.id())
          .isTrue();
    }
  }
}
