package org.evenpour.live;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;

/** Signals for tests. */
final class Signals {
  private Signals() {}

  static Signal thinMold(String mold, int sinceTurn, int lastTurn) {
    Instant at = Instant.parse("2026-03-05T21:00:00Z");
    return new Signal(
        "S1",
        "T1",
        "thickness",
        Scope.MOLD,
        mold,
        null,
        sinceTurn,
        lastTurn,
        at,
        at,
        sinceTurn,
        at,
        true,
        List.of("sustained-shift"),
        Direction.LOW,
        -0.45,
        -0.6,
        -0.3,
        -2.2,
        null,
        List.of());
  }
}
