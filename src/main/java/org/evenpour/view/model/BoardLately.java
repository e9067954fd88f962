package org.evenpour.view.model;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.control.StartUp;
import org.evenpour.findings.RejectReport;
import org.evenpour.live.RecordNow;
import org.evenpour.live.Snapshot;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.Mark;
import org.evenpour.report.Figures;
import org.jspecify.annotations.Nullable;

/**
 * Says which of the last anodes lay outside tolerance or were rejected, so that they are found
 * where they are stacked.
 *
 * @param words in which language
 * @param units in which units
 * @param clock when an anode was cast
 */
record BoardLately(BoardWords words, DisplayUnits units, Function<Instant, String> clock) {
  /** A choice: what is older has left the wheel's crew. */
  private static final int TURNS = 2;

  /** As many as a line holds. */
  private static final int MOST = 3;

  /** Turns before them, so that the beginning of what is looked at is not taken for a start. */
  private static final int BEFORE = 3;

  /** The newest first; empty where there is none. */
  String of(Snapshot snapshot, WheelNow its) {
    RecordNow now = snapshot.record();
    WheelRecord wheel =
        now == null
            ? null
            : now.record().wheels().stream()
                .filter(one -> one.wheel().equals(its.wheel()))
                .findFirst()
                .orElse(null);
    if (wheel == null) {
      return "";
    }
    int from = Math.max(0, wheel.rows() - (TURNS + BEFORE) * its.molds().size());
    int first = Math.max(0, wheel.rows() - TURNS * its.molds().size());
    StartUp start = new StartUp(its.profile(), its.molds().size());
    List<String> bad = new ArrayList<>();
    for (int row = from; row < wheel.rows(); row++) {
      boolean isStart = start.isStartUp(wheel.castAtMillis().get(row));
      String why = row < first ? null : why(wheel, its, row);
      if (why != null) {
        String said =
            words.say(
                "lately.one",
                wheel.molds().name(wheel.mold().get(row)),
                clock.apply(Instant.ofEpochMilli(wheel.castAtMillis().get(row))),
                why);
        bad.add(0, isStart ? words.say("lately.start", said) : said);
      }
    }
    int count = bad.size();
    return count == 0
        ? ""
        : words.say(
            count > MOST ? "lately.more" : "lately",
            String.join("; ", bad.subList(0, Math.min(MOST, count))),
            count - MOST);
  }

  /** What is wrong with an anode; null where nothing is known to be. */
  private @Nullable String why(WheelRecord wheel, WheelNow its, int row) {
    List<String> outside = new ArrayList<>();
    List<String> all = new ArrayList<>();
    for (Characteristic one : wheel.characteristics()) {
      double value = one.values().get(row);
      for (WheelNow.Judged judged : its.characteristics()) {
        if (judged.name().equals(one.name()) && BoardRun.outside(judged, value) != Mark.NONE) {
          outside.add(one.name());
          all.add(measured(judged, value));
        }
      }
    }
    String disposition = name(wheel.disposition(), row);
    if (disposition != null && RejectReport.isRejected(disposition)) {
      String defect = name(wheel.defect(), row);
      // Rejected for what was just said of it: once is enough.
      if (defect == null ? all.isEmpty() : !outside.contains(defect)) {
        all.add(defect == null ? words.say("lately.rejected") : RejectReport.plain(defect));
      }
    }
    return all.isEmpty() ? null : String.join(", ", all);
  }

  private String measured(WheelNow.Judged judged, double value) {
    Figures figures = new Figures(units.shown(judged.unit().suffix()));
    return words.report().characteristic(judged.name()) + " " + figures.value(value);
  }

  private static @Nullable String name(@Nullable Setting setting, int row) {
    IntColumn codes = setting == null ? null : setting.categories();
    return setting == null || codes == null || codes.get(row) < 0
        ? null
        : setting.labels().name(codes.get(row));
  }
}
