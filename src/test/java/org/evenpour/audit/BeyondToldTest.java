package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.View;
import org.junit.jupiter.api.Test;

class BeyondToldTest {
  private static Instant at(int turn) {
    return Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * turn);
  }

  private static Departure departure(
      String characteristic, int since, int last, boolean open, double size) {
    return new Departure(
        "",
        characteristic,
        List.of("launder_mm"),
        size > 0 ? Direction.HIGH : Direction.LOW,
        since + 5,
        last,
        since,
        at(since),
        at(last),
        open,
        size,
        size - 0.3,
        size + 0.3,
        size,
        List.of(),
        true,
        null);
  }

  private static Signal signal(
      String characteristic, Scope scope, int since, int last, boolean open, double size) {
    return new Signal(
        "S1",
        "",
        characteristic,
        scope,
        scope == Scope.MOLD ? "7" : null,
        scope == Scope.SIDE ? "A" : null,
        since + 3,
        last,
        at(since + 3),
        at(last),
        since,
        at(since),
        open,
        List.of("sustained-shift"),
        size > 0 ? Direction.HIGH : Direction.LOW,
        size,
        size - 1,
        size + 1,
        size,
        null,
        List.of());
  }

  private static List<Departure> told(List<Departure> departures, Signal... signals) {
    List<View> views =
        departures.stream()
            .map(
                one -> new View("", one.characteristic(), List.of(), 1, 200, 1, 0, 2, List.of(one)))
            .toList();
    return new BeyondSettings(BeyondTold.told(views, List.of(signals))).alone();
  }

  @Test
  void whatASignalOfTheWheelOrASideTellsIsNotToldAgain() {
    List<Departure> one = List.of(departure("mass", 180, 220, false, 1.2));
    assertThat(told(one)).hasSize(1);
    assertThat(told(one, signal("mass", Scope.WHEEL, 200, 210, false, 2))).isEmpty();
    assertThat(told(one, signal("mass", Scope.SIDE, 200, 210, false, 2))).isEmpty();
    assertThat(told(one, signal("mass", Scope.WHEEL, 150, 171, false, 2))).isEmpty();
    // Long before, long after, of a mold, or the other way: another matter.
    assertThat(told(one, signal("mass", Scope.WHEEL, 150, 160, false, 2))).hasSize(1);
    assertThat(told(one, signal("mass", Scope.WHEEL, 221, 240, true, 2))).hasSize(1);
    assertThat(told(one, signal("mass", Scope.MOLD, 180, 220, false, 2))).hasSize(1);
    assertThat(told(one, signal("mass", Scope.WHEEL, 185, 215, false, -2))).hasSize(1);
  }

  @Test
  void whatStillHoldsIsToldAgainWhereItsSignalEndedLongBefore() {
    List<Departure> holds = List.of(departure("mass", 180, 260, true, 1.2));
    assertThat(told(holds, signal("mass", Scope.WHEEL, 182, 260, true, 2))).isEmpty();
    assertThat(told(holds, signal("mass", Scope.WHEEL, 182, 250, false, 2))).isEmpty();
    assertThat(told(holds, signal("mass", Scope.WHEEL, 182, 220, false, 2)))
        .singleElement()
        .satisfies(one -> assertThat(one.signals()).containsExactly("S1"));
  }

  @Test
  void characteristicsThatDepartTogetherAreOne() {
    Departure mass = departure("mass", 180, 220, true, 1.2);
    Departure thickness = departure("thickness", 185, 220, true, 2.4);
    assertThat(told(List.of(mass, thickness)))
        .extracting(Departure::characteristic)
        .containsExactly("thickness");
    assertThat(told(List.of(mass, departure("thickness", 200, 220, true, 2.4)))).hasSize(2);
    // A signal of the mass from the same turn on tells of the thickness as well.
    assertThat(told(List.of(thickness), signal("mass", Scope.WHEEL, 181, 220, true, 2))).isEmpty();
    assertThat(told(List.of(thickness), signal("mass", Scope.WHEEL, 140, 220, true, 2))).hasSize(1);
  }
}
