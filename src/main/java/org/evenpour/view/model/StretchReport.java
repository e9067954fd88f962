package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.Audit;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.LongColumn;
import org.evenpour.column.Pages;
import org.evenpour.findings.AuditReport;
import org.jspecify.annotations.Nullable;

/**
 * An audit of a stretch of turns of one wheel by itself, as if nothing else had been cast: where
 * its figures come from. Signals and limits stay those of the whole record, which know what came
 * before.
 *
 * @param wheel its name
 * @param turns the stretch
 * @param report of these turns alone
 */
public record StretchReport(String wheel, Stretch turns, AuditReport report) {

  /**
   * Audits a stretch; null where nothing was cast in it. Takes as long as an audit of so many rows,
   * on whatever thread asks.
   */
  public static @Nullable StretchReport of(OpenedLog log, String wheel, Stretch turns) {
    CastingRecord record = record(log, wheel, turns);
    return record == null
        ? null
        : new StretchReport(wheel, turns, Audit.run(record, PlantRecords.of(log.plant().book())));
  }

  /** The rows of a stretch alone; null where nothing was cast in it. */
  static @Nullable CastingRecord record(OpenedLog log, String wheel, Stretch turns) {
    WheelRows rows = log.wheel(wheel);
    int from = rows.rowAt(turns.from());
    int to = rows.rowAt(turns.to());
    if (to <= from) {
      return null;
    }
    CastingRecord all = log.record();
    WheelRecord part = part(rows.record(), from, to);
    return new CastingRecord(
        all.logs(), List.of(part), all.events(), to - from, 0, List.of(), List.of());
  }

  /** Whether it is of these turns. */
  boolean isOf(String itsWheel, @Nullable Stretch stretch) {
    return wheel.equals(itsWheel) && turns.equals(stretch);
  }

  private static WheelRecord part(WheelRecord whole, int from, int to) {
    Pages pages = Pages.ofMemory();
    List<Characteristic> characteristics = new ArrayList<>();
    for (Characteristic one : whole.characteristics()) {
      characteristics.add(
          new Characteristic(
              one.name(),
              one.unit(),
              one.displayUnit(),
              one.specification(),
              part(one.values(), from, to, pages)));
    }
    List<ThicknessPoint> points = new ArrayList<>();
    for (ThicknessPoint one : whole.points()) {
      points.add(new ThicknessPoint(one.point(), part(one.values(), from, to, pages)));
    }
    List<Setting> settings = new ArrayList<>();
    for (Setting one : whole.settings()) {
      settings.add(part(one, from, to, pages));
    }
    Setting disposition = whole.disposition();
    Setting defect = whole.defect();
    DoubleColumn setPoint = whole.setPoint();
    return new WheelRecord(
        whole.wheel(),
        whole.profile(),
        whole.molds(),
        whole.sides(),
        whole.serials(),
        part(whole.castAtMillis(), from, to, pages),
        part(whole.turn(), from, to, pages),
        part(whole.mold(), from, to, pages),
        part(whole.side(), from, to, pages),
        part(whole.serial(), from, to, pages),
        part(whole.line(), from, to, pages),
        characteristics,
        points,
        settings,
        disposition == null ? null : part(disposition, from, to, pages),
        defect == null ? null : part(defect, from, to, pages),
        setPoint == null ? null : part(setPoint, from, to, pages));
  }

  private static Setting part(Setting whole, int from, int to, Pages pages) {
    DoubleColumn numbers = whole.numbers();
    IntColumn categories = whole.categories();
    return new Setting(
        whole.name(),
        whole.unit(),
        whole.profile(),
        numbers == null ? null : part(numbers, from, to, pages),
        categories == null ? null : part(categories, from, to, pages),
        whole.labels());
  }

  // A column that a log does not have has no values at all.

  private static DoubleColumn part(DoubleColumn whole, int from, int to, Pages pages) {
    DoubleColumn part = new DoubleColumn(pages);
    for (int i = from; i < Math.min(to, whole.size()); i++) {
      part.add(whole.get(i));
    }
    return part;
  }

  private static IntColumn part(IntColumn whole, int from, int to, Pages pages) {
    IntColumn part = new IntColumn(pages);
    for (int i = from; i < Math.min(to, whole.size()); i++) {
      part.add(whole.get(i));
    }
    return part;
  }

  private static LongColumn part(LongColumn whole, int from, int to, Pages pages) {
    LongColumn part = new LongColumn(pages);
    for (int i = from; i < Math.min(to, whole.size()); i++) {
      part.add(whole.get(i));
    }
    return part;
  }
}
