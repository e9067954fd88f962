package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Signal;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.MoldChange;
import org.evenpour.link.Advice;

/** One complete audit of a record: the same record gives the same report, to the last digit. */
public final class Audit {
  private Audit() {}

  /**
   * Audits a record.
   *
   * @param record with at least one usable row
   */
  public static AuditReport run(CastingRecord record) {
    List<CharacteristicReport> characteristics = new ArrayList<>();
    List<AuditReport.SettingReport> settings = new ArrayList<>();
    SignalFindings findings = new SignalFindings(Advice.standard());
    List<String> notes = new ArrayList<>(record.warnings());
    Set<String> molds = new LinkedHashSet<>();
    int turns = 0;
    for (WheelRecord wheel : record.wheels()) {
      TurnIndex index = TurnIndex.of(wheel);
      turns += index.turns();
      for (String mold : wheel.molds().names()) {
        molds.add(wheel.wheel() + "\n" + mold);
      }
      List<CastingEvent> events = eventsAt(record.events(), wheel);
      List<MoldChange> changes = changes(events, wheel);
      List<CharacteristicAudit.Result> results =
          IntStream.range(0, wheel.characteristics().size())
              .parallel()
              .mapToObj(
                  i ->
                      CharacteristicAudit.of(wheel, wheel.characteristics().get(i), index, changes))
              .toList();
      results.forEach(result -> characteristics.add(result.report()));
      settings.addAll(findings.examine(wheel, index, events, results));
      Notes.ofWheel(wheel, results, notes);
    }
    List<Signal> signals = findings.signals();
    return new AuditReport(
        log(record, molds.size(), turns),
        characteristics,
        signals,
        settings,
        record.events(),
        record.setAside(),
        notes);
  }

  private static AuditReport.Log log(CastingRecord record, int molds, int turns) {
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    List<String> wheels = new ArrayList<>();
    for (WheelRecord wheel : record.wheels()) {
      wheels.add(wheel.wheel());
      for (int i = 0; i < wheel.rows(); i++) {
        first = Math.min(first, wheel.castAtMillis().get(i));
        last = Math.max(last, wheel.castAtMillis().get(i));
      }
    }
    return new AuditReport.Log(
        record.logs(),
        record.rowsRead(),
        record.rowsKept(),
        record.rowsSetAside(),
        Instant.ofEpochMilli(first),
        Instant.ofEpochMilli(last),
        wheels,
        molds,
        turns);
  }

  private static List<CastingEvent> eventsAt(List<CastingEvent> events, WheelRecord wheel) {
    return events.stream()
        .filter(event -> event.wheel().isEmpty() || event.wheel().equals(wheel.wheel()))
        .sorted(Comparator.comparing(CastingEvent::at))
        .toList();
  }

  private static List<MoldChange> changes(List<CastingEvent> events, WheelRecord wheel) {
    List<MoldChange> changes = new ArrayList<>();
    for (CastingEvent event : events) {
      String mold = event.mold();
      boolean isChange = event.kind().equals("mold_changed") || event.kind().equals("mold_dressed");
      if (isChange && mold != null && wheel.molds().find(mold) >= 0) {
        changes.add(new MoldChange(event.at().toEpochMilli(), wheel.molds().find(mold)));
      }
    }
    return changes;
  }
}
