package org.evenpour.intake;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.evenpour.casting.WheelProfile;
import org.evenpour.words.Remark;

/**
 * Gathers what the reader should know of a log besides its set-aside rows. Owned by the thread that
 * reads the log.
 */
final class IntakeNotes {

  private static final class Count {
    long cells;
    final String first;
    final long line;

    Count(String first, long line) {
      this.first = first;
      this.line = line;
    }
  }

  private final List<Remark> ofLogs = new ArrayList<>();
  private final Map<String, Count> unreadable = new LinkedHashMap<>();
  private final Set<String> notUtf8 = new HashSet<>();
  private final Set<String> decimalCommas = new HashSet<>();
  private final Map<String, Count> thousands = new LinkedHashMap<>();
  private boolean wallTimes;
  private long outside;
  private long outsideFirst = Long.MAX_VALUE;
  private long outsideLast = Long.MIN_VALUE;

  void header(String log, List<Remark> warnings) {
    warnings.forEach(warning -> ofLogs.add(Remark.of("at.file", log, warning)));
  }

  void notUtf8(String log, long line) {
    if (!notUtf8.add(log)) {
      return;
    }
    ofLogs.add(Remark.of("at.line", log, line, Remark.of("note.utf8")));
  }

  /** Numbers of a log are written with decimal commas. */
  void decimalCommas(String log) {
    decimalCommas.add(log);
  }

  /** Numbers of a log have a point before three digits. */
  void thousands(String log, String heading, int cells, String text, long line) {
    Count count = thousands.computeIfAbsent(log, any -> new Count(heading + " " + text, line));
    count.cells += cells;
  }

  /** A time without an offset was read. */
  void wallTime(String log, long line, WheelProfile profile) {
    if (!wallTimes && profile.zone().equals(ZoneOffset.UTC)) {
      ofLogs.add(Remark.of("at.line", log, line, Remark.of("note.zone")));
    }
    wallTimes = true;
  }

  void outside(long millis) {
    outside++;
    outsideFirst = Math.min(outsideFirst, millis);
    outsideLast = Math.max(outsideLast, millis);
  }

  long outside() {
    return outside;
  }

  /** When the first row was cast that lies outside the period that is asked for. */
  Instant outsideFirst() {
    return Instant.ofEpochMilli(outsideFirst);
  }

  /** When the last row was cast that lies outside the period that is asked for. */
  Instant outsideLast() {
    return Instant.ofEpochMilli(outsideLast);
  }

  void unreadable(LogColumn column, String text, long line) {
    unreadable.computeIfAbsent(column.heading(), any -> new Count(text, line)).cells++;
  }

  /** Cells of a column that should hold numbers. */
  static Remark cells(String column, long count, String first, long line) {
    String heading = CellText.shown(column);
    return count == 1
        ? Remark.of("note.cells.one", heading, CellText.shown(first), line)
        : Remark.of("note.cells", heading, count, CellText.shown(first), line);
  }

  List<Remark> warnings(
      List<SettingIntake> others,
      Set<String> settings,
      List<WheelIntake> wheels,
      Profiles profiles) {
    List<Remark> all = new ArrayList<>(ofLogs);
    thousands.forEach(
        (log, count) -> {
          if (decimalCommas.contains(log)) {
            all.add(
                Remark.of(
                    "at.line",
                    log,
                    count.line,
                    Remark.of(
                        count.cells == 1 ? "note.thousands.one" : "note.thousands",
                        CellText.shown(count.first),
                        count.cells)));
          }
        });
    if (outside > 0) {
      all.add(outside == 1 ? Remark.of("note.outside.one") : Remark.of("note.outside", outside));
    }
    unreadable.forEach(
        (heading, count) -> all.add(cells(heading, count.cells, count.first, count.line)));
    others.forEach(other -> all.addAll(other.warnings()));
    for (WheelProfile profile : profiles.wheels()) {
      profile.settings().keySet().stream()
          .filter(name -> !settings.contains(name.toLowerCase(Locale.ROOT)))
          .sorted()
          .forEach(name -> all.add(Remark.of("note.setting.unknown", CellText.shown(name))));
      if (profile.wheel() != null
          && wheels.stream().noneMatch(wheel -> wheel.name.equals(profile.wheel()))) {
        all.add(
            Remark.of(
                "note.profile",
                CellText.shown(profile.wheel()),
                wheels.stream().allMatch(wheel -> wheel.name.isEmpty())
                    ? Remark.of("note.profile.nameless")
                    : Remark.of(
                        "note.profile.wheels",
                        wheels.stream()
                            .map(wheel -> CellText.shown(wheel.name))
                            .sorted()
                            .collect(Collectors.joining(", ")))));
      }
    }
    return all.stream().distinct().toList();
  }
}
