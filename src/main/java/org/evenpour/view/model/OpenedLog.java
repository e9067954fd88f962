package org.evenpour.view.model;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.evenpour.audit.Causes;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.live.RecordNow;
import org.evenpour.report.Topic;
import org.jspecify.annotations.Nullable;

/**
 * One opened log: the rows, and everything that was computed of them.
 *
 * @param record the rows
 * @param report the only source of computed numbers
 * @param plant what the report went by beside the log
 * @param wheels one for each wheel of the record: its rows turn by turn
 * @param ranked the report's signals, what matters most first
 * @param part an audit of a stretch by itself; null while there is none
 */
public record OpenedLog(
    CastingRecord record,
    AuditReport report,
    PlantRecords plant,
    List<WheelRows> wheels,
    List<Signal> ranked,
    @Nullable StretchReport part) {

  /** Copies the lists. */
  public OpenedLog {
    wheels = List.copyOf(wheels);
    ranked = List.copyOf(ranked);
  }

  /** Arranges the rows; takes a moment for a long record. */
  public static OpenedLog of(RecordNow now) {
    return of(now, now.record().wheels().stream().map(WheelRows::of).toList());
  }

  private static OpenedLog of(RecordNow now, List<WheelRows> wheels) {
    return new OpenedLog(
        now.record(),
        now.report(),
        now.plant(),
        wheels,
        Topic.of(now.report()).stream().flatMap(topic -> topic.signals().stream()).toList(),
        null);
  }

  /** The rows of a wheel; those of the first wheel where there is no such wheel. */
  public WheelRows wheel(String name) {
    return wheels.stream()
        .filter(wheel -> wheel.record().wheel().equals(name))
        .findFirst()
        .orElse(wheels.get(0));
  }

  /** The same with what people said of causes. */
  public OpenedLog marked(List<CauseMark> marks) {
    return new OpenedLog(record, Causes.joined(report, marks), plant, wheels, ranked, part);
  }

  /** The same with an audit of a stretch. */
  public OpenedLog with(@Nullable StretchReport ofStretch) {
    return new OpenedLog(record, report, plant, wheels, ranked, ofStretch);
  }

  /**
   * The same log after more was cast, by the same audit or by a newer one.
   *
   * @param now begins with these rows
   */
  public OpenedLog grown(RecordNow now, boolean isSameAudit) {
    List<WheelRows> longer = new ArrayList<>();
    for (WheelRecord record : now.record().wheels()) {
      WheelRows its = wheel(record.wheel());
      boolean isIts = its.record().wheel().equals(record.wheel());
      longer.add(isIts ? its.grown(record) : WheelRows.of(record));
    }
    return isSameAudit
        ? new OpenedLog(now.record(), report, plant, longer, ranked, part)
        : of(now, longer);
  }

  /** The last turn that figures of a wheel are of. */
  public int figuredTo(String wheel) {
    return report.characteristics().stream()
        .filter(one -> one.wheel().equals(wheel))
        .map(CharacteristicReport::wheelChart)
        .filter(Objects::nonNull)
        .flatMap(chart -> chart.points().stream())
        .mapToInt(TurnPoint::turn)
        .reduce(0, (before, turn) -> turn);
  }

  /**
   * The signal of this log that is the same matter as one of another reading of it: the same place
   * and direction, with the nearest onset; null where there is none.
   */
  @Nullable Signal like(Signal other) {
    return report.signals().stream()
        .filter(
            one ->
                one.wheel().equals(other.wheel())
                    && one.characteristic().equals(other.characteristic())
                    && one.scope() == other.scope()
                    && one.direction() == other.direction()
                    && Objects.equals(one.mold(), other.mold())
                    && Objects.equals(one.side(), other.side()))
        .min(
            Comparator.comparingLong(
                one -> Math.abs(one.sinceAt().toEpochMilli() - other.sinceAt().toEpochMilli())))
        .orElse(null);
  }

  /** In which zone times are told. */
  public ZoneId zone() {
    WheelRecord first = record.wheels().get(0);
    return first.profile().zone();
  }

  /** What a report says of a characteristic; null where it says nothing. */
  public static @Nullable CharacteristicReport characteristic(
      AuditReport report, String wheel, String name) {
    return report.characteristics().stream()
        .filter(one -> one.wheel().equals(wheel) && one.name().equals(name))
        .findFirst()
        .orElse(null);
  }

  /** What a report says of a mold; null where it says nothing. */
  public static @Nullable MoldReport mold(
      @Nullable CharacteristicReport characteristic, @Nullable String mold) {
    return characteristic == null
        ? null
        : characteristic.molds().stream()
            .filter(one -> one.mold().equals(mold))
            .findFirst()
            .orElse(null);
  }

  /** Keeps of what is chosen only what this log has too. */
  public void fit(Selection selection) {
    selection.fit(this);
  }

  /** The signal with this id; null where there is none. */
  public @Nullable Signal signal(@Nullable String id) {
    return report.signals().stream()
        .filter(signal -> signal.id().equals(id))
        .findFirst()
        .orElse(null);
  }
}
