package org.evenpour.intake;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.WheelRecord;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Reads the file of events: {@code at,wheel,mold,event,note}. */
public final class EventsReader {
  private static final List<String> KNOWN_HEADINGS =
      List.of("at", "wheel", "mold", "event", "note");

  private EventsReader() {}

  /**
   * Reads events.
   *
   * @param file with headings in its first line; {@code at} and {@code event} are needed
   * @param profiles for the zone of times without an offset
   * @return in the order of their times; those of the same time as they stand in the file
   */
  public static List<CastingEvent> read(Path file, Profiles profiles) throws IntakeException {
    List<CastingEvent> events = new ArrayList<>();
    String name = file.toString();
    try (LogBlocks blocks = LogBlocks.open(file)) {
      LogBlocks.Heading heading = blocks.heading();
      char separator = LogHeader.separator(heading.text());
      blocks.separate((byte) separator);
      List<String> headings =
          LogHeader.cells(name, heading.line(), heading.text(), separator).stream()
              .map(one -> one.strip().toLowerCase(Locale.ROOT))
              .toList();
      Map<String, Integer> columns = columns(name, heading.line(), headings);
      RowCutter cutter =
          new RowCutter(
              (byte) separator,
              headings.stream()
                  .map(one -> one.equals("at") ? LogColumn.Cell.TIME : LogColumn.Cell.TEXT)
                  .toList(),
              LogBlocks.RECORD_LIMIT);
      long line = blocks.firstLine();
      Block block = cutter.newBlock(LogBlocks.READ_BYTES);
      while (blocks.next(block)) {
        cutter.cut(block);
        for (int row = 0; row < block.rows; row++) {
          events.add(event(name, line + block.line[row], block, row, columns, profiles));
        }
        line += block.lines;
      }
    }
    events.sort(Comparator.comparing(CastingEvent::at));
    return List.copyOf(events);
  }

  private static Map<String, Integer> columns(String file, long line, List<String> headings)
      throws IntakeException {
    Map<String, Integer> columns = new LinkedHashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i);
      if (!KNOWN_HEADINGS.contains(heading)) {
        continue;
      }
      Integer other = columns.put(heading, i);
      if (other != null) {
        throw new IntakeException(file, line, 0, "events.twice", other + 1, i + 1, heading);
      }
    }
    for (String needed : List.of("at", "event")) {
      if (!columns.containsKey(needed)) {
        throw new IntakeException(
            file, line, 0, "events.column", needed, CellText.shown(headings.toString()));
      }
    }
    return columns;
  }

  private static CastingEvent event(
      String file, long line, Block block, int row, Map<String, Integer> columns, Profiles profiles)
      throws IntakeException {
    if (block.hasFault(row)) {
      throw new IntakeException(file, line, 0, "file.row", Reasons.fault(block, row));
    }
    String wheel = cell(block, row, columns.get("wheel"));
    String mold = MoldCell.label(cell(block, row, columns.get("mold")));
    String kind = cell(block, row, columns.get("event"));
    if (kind.isEmpty()) {
      throw new IntakeException(file, line, 0, "events.event");
    }
    long time = block.times[row];
    if (time == TimeReader.MISSING || time == TimeReader.UNREADABLE) {
      throw time == TimeReader.MISSING
          ? new IntakeException(file, line, 0, "events.missing")
          : new IntakeException(
              file, line, 0, "events.time", CellText.shown(cell(block, row, columns.get("at"))));
    }
    long millis = TimeReader.millis(time);
    if (TimeReader.isLocal(time)) {
      millis = new WallClock(profiles.forWheel(wheel).zone()).utc(millis, Long.MIN_VALUE);
    }
    return new CastingEvent(
        Instant.ofEpochMilli(millis),
        wheel,
        mold.isEmpty() ? null : mold,
        kind,
        cell(block, row, columns.get("note")),
        file + ":" + line);
  }

  private static String cell(Block block, int row, @Nullable Integer column) {
    return column == null ? "" : block.cell(row, column).strip();
  }

  /** Which events name a wheel or a mold that no row of the logs names, in plain words. */
  public static List<Remark> unknown(List<CastingEvent> events, List<WheelRecord> wheels) {
    Set<Remark> warnings = new LinkedHashSet<>();
    for (CastingEvent event : events) {
      List<WheelRecord> meant =
          wheels.stream()
              .filter(wheel -> event.wheel().isEmpty() || event.wheel().equals(wheel.wheel()))
              .toList();
      String mold = event.mold();
      if (meant.isEmpty()) {
        warnings.add(
            Remark.of(
                "at.file",
                event.source(),
                Remark.of("note.event.wheel", CellText.shown(event.wheel()))));
      } else if (mold != null && meant.stream().noneMatch(wheel -> wheel.molds().find(mold) >= 0)) {
        warnings.add(
            Remark.of(
                "at.file", event.source(), Remark.of("note.event.mold", CellText.shown(mold))));
      }
    }
    return List.copyOf(warnings);
  }
}
