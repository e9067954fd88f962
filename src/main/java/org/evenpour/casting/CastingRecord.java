package org.evenpour.casting;

import java.util.List;
import org.evenpour.words.Remark;

/**
 * Everything that was read of one or several logs and their events.
 *
 * @param logs the files' names, in the order in which they were read
 * @param wheels one for each wheel, by name
 * @param events in the order of their times
 * @param rowsRead rows of all logs, set-aside ones included, headings and blank lines not
 * @param rowsSetAside how many could not be used
 * @param setAside the first of them, up to {@link #SET_ASIDE_KEPT}; the set-aside file has all
 * @param warnings what the reader should know: an event for an unknown mold, an unreadable setting
 */
public record CastingRecord(
    List<String> logs,
    List<WheelRecord> wheels,
    List<CastingEvent> events,
    long rowsRead,
    long rowsSetAside,
    List<SetAsideRow> setAside,
    List<Remark> warnings) {

  /** How many set-aside rows are kept in memory. */
  public static final int SET_ASIDE_KEPT = 10_000;

  /** Copies the lists, so that a record never changes. */
  public CastingRecord {
    logs = List.copyOf(logs);
    wheels = List.copyOf(wheels);
    events = List.copyOf(events);
    setAside = List.copyOf(setAside);
    warnings = List.copyOf(warnings);
  }

  /** The same with other wheels. */
  public CastingRecord with(List<WheelRecord> others) {
    return new CastingRecord(logs, others, events, rowsRead, rowsSetAside, setAside, warnings);
  }

  /** How many rows could be used. */
  public long rowsKept() {
    return rowsRead - rowsSetAside;
  }
}
