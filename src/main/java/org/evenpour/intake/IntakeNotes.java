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

/**
 * Gathers what the reader should know of a log besides its set-aside rows. Owned by the thread that
 * reads the log.
 */
final class IntakeNotes {

  private static final class Count {
    long cells;
    final String first;

    Count(String first) {
      this.first = first;
    }
  }

  private final List<String> ofLogs = new ArrayList<>();
  private final Map<String, Count> unreadable = new LinkedHashMap<>();
  private final Set<String> notUtf8 = new HashSet<>();
  private boolean wallTimes;
  private long outside;
  private long outsideFirst = Long.MAX_VALUE;
  private long outsideLast = Long.MIN_VALUE;

  void header(String log, List<String> warnings) {
    warnings.forEach(warning -> ofLogs.add(log + ": " + warning));
  }

  void notUtf8(String log, long line) {
    if (!notUtf8.add(log)) {
      return;
    }
    ofLogs.add(
        log
            + ":"
            + line
            + ": this line is not UTF-8 and was read as Latin-1; export the log in UTF-8");
  }

  /** A time without an offset was read. */
  void wallTime(String log, long line, WheelProfile profile) {
    if (!wallTimes && profile.zone().equals(ZoneOffset.UTC)) {
      ofLogs.add(
          log
              + ":"
              + line
              + ": times without an offset are taken as UTC; say the plant's zone in the profile,"
              + " such as zone: America/Santiago");
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

  /** The period of the rows that lie outside the one that is asked for. */
  String outsidePeriod() {
    return Instant.ofEpochMilli(outsideFirst) + " to " + Instant.ofEpochMilli(outsideLast);
  }

  void unreadable(LogColumn column, String text, long line) {
    unreadable.computeIfAbsent(
            column.heading(), any -> new Count(CellText.shown(text) + " in line " + line))
        .cells++;
  }

  List<String> warnings(
      List<SettingIntake> others,
      Set<String> settings,
      List<WheelIntake> wheels,
      Profiles profiles) {
    List<String> all = new ArrayList<>(ofLogs);
    if (outside > 0) {
      all.add(
          outside
              + (outside == 1 ? " row lies" : " rows lie")
              + " outside the period that was asked for, and nothing is made of "
              + (outside == 1 ? "it" : "them"));
    }
    unreadable.forEach(
        (heading, count) ->
            all.add(
                CellText.shown(heading)
                    + ": "
                    + count.cells
                    + (count.cells == 1 ? " cell is" : " cells are")
                    + " no number and counted as missing, the first "
                    + count.first));
    others.forEach(other -> all.addAll(other.warnings()));
    for (WheelProfile profile : profiles.wheels()) {
      profile.settings().keySet().stream()
          .filter(name -> !settings.contains(name.toLowerCase(Locale.ROOT)))
          .sorted()
          .forEach(
              name ->
                  all.add(
                      "the profile speaks of the setting "
                          + CellText.shown(name)
                          + ", which is no column of the log"));
      if (profile.wheel() != null
          && wheels.stream().noneMatch(wheel -> wheel.name.equals(profile.wheel()))) {
        all.add(
            "the profile of wheel "
                + CellText.shown(profile.wheel())
                + " applies to no row: "
                + (wheels.stream().allMatch(wheel -> wheel.name.isEmpty())
                    ? "the log names no wheel; leave wheel out of the profile"
                    : "the log's wheels are "
                        + wheels.stream()
                            .map(wheel -> CellText.shown(wheel.name))
                            .sorted()
                            .collect(Collectors.joining(", "))));
      }
    }
    return all.stream().distinct().toList();
  }
}
