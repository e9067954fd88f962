package org.evenpour.score;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.simulate.PlantedShift;
import org.jspecify.annotations.Nullable;

/** Truths and reports so small that every figure can be counted by hand. */
final class HandMade {
  private static final Instant AT = Instant.EPOCH;

  private HandMade() {}

  static PlantedShift moldShift(String fault, String mold, int first, int last, String cause) {
    return shift(fault, Scope.MOLD, mold, "", "thickness", first, last, cause);
  }

  static PlantedShift shift(
      String fault,
      Scope scope,
      String mold,
      String side,
      String characteristic,
      int first,
      int last,
      String cause) {
    return new PlantedShift(
        fault,
        scope,
        "W",
        mold,
        side,
        characteristic,
        first,
        last,
        Direction.HIGH,
        cause,
        "",
        null);
  }

  static Signal moldSignal(String mold, int since, int first, int last, Link... links) {
    return signal(Scope.MOLD, mold, null, Direction.HIGH, since, first, last, links);
  }

  static Signal signal(
      Scope scope,
      @Nullable String mold,
      @Nullable String side,
      Direction direction,
      int since,
      int first,
      int last,
      Link... links) {
    return signalOf("thickness", scope, mold, side, direction, since, first, last, links);
  }

  static Signal signalOf(
      String characteristic,
      Scope scope,
      @Nullable String mold,
      @Nullable String side,
      Direction direction,
      int since,
      int first,
      int last,
      Link... links) {
    return new Signal(
        "S",
        "W",
        characteristic,
        scope,
        mold,
        side,
        first,
        last,
        AT,
        AT,
        since,
        AT,
        false,
        List.of(),
        direction,
        1,
        null,
        null,
        2,
        null,
        List.of(links));
  }

  static Link link(String name, Evidence evidence, String... togetherWith) {
    return new Link(
        name,
        name.equals("mold_changed"),
        "",
        "",
        evidence,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        "",
        List.of(togetherWith));
  }

  static SettingReport setting(String name, Effect... effects) {
    return new SettingReport(
        "W", name, "", "", 0, false, 9, 0, 1.0, 1.0, 0.0, 2.0, 0, List.of(effects));
  }

  static AuditReport report(List<Signal> signals, SettingReport... settings) {
    return new AuditReport(
        new AuditReport.Log(List.of("log"), 1, 1, 0, AT, AT, List.of("W"), 1, 1),
        List.of(),
        signals,
        List.of(),
        List.of(settings),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }
}
