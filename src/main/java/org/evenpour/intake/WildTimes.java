package org.evenpour.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Rows whose times are wrong because the rows after them say so. That is known only later, when the
 * row is long in the record: so whoever reads a log looks for such rows, and where there are some
 * reads it anew with what was found, until nothing new is found.
 *
 * <p>Owned by the thread that reads the log.
 */
public final class WildTimes {
  /** After so many readings what else is found is left as it is. */
  private static final int MOST_READINGS = 4;

  private final Map<Long, Long> known;
  private final Map<Long, Long> found = new HashMap<>();
  private final int readings;

  private WildTimes(Map<Long, Long> known, int readings) {
    this.known = known;
    this.readings = readings;
  }

  /** For somebody who reads a log once only. */
  static WildTimes notLookedFor() {
    return new WildTimes(Map.of(), MOST_READINGS);
  }

  /** For the first reading of a log. */
  public static WildTimes lookedFor() {
    return new WildTimes(Map.of(), 0);
  }

  /** Whether the log is to be read anew, with {@link #forNextReading}. */
  public boolean isAnyFound() {
    return !found.isEmpty();
  }

  /** What is known now, for the next reading of the same log. */
  public WildTimes forNextReading() {
    Map<Long, Long> all = new HashMap<>(known);
    all.putAll(found);
    return new WildTimes(all, readings + 1);
  }

  /** The same for a log that grew meanwhile, and may show more. */
  public WildTimes forNextReadingOfGrown() {
    return new WildTimes(forNextReading().known, 0);
  }

  boolean isKnown(long place, long millis) {
    // Mostly none is, and a row's place need not become an object.
    Long its = known.isEmpty() ? null : known.get(place);
    return its != null && its == millis;
  }

  /** A row is kept. */
  void kept(WheelIntake wheel, long place, long millis) {
    if (readings < MOST_READINGS) {
      found(wheel.leaps.kept(place, millis, wheel.latestMillis));
    }
  }

  /**
   * A row is too early for what was kept.
   *
   * @return whether it is right, and what was kept is not; the wheel's latest time is then that of
   *     the rows that are right
   */
  boolean contradict(WheelIntake wheel, long millis) {
    if (readings >= MOST_READINGS) {
      return false;
    }
    List<Leaps.Row> rows = wheel.leaps.contradicted(millis, wheel.latestMillis - wheel.notBefore());
    found(rows);
    if (rows.isEmpty()) {
      return false;
    }
    wheel.latestMillis = wheel.leaps.latestAgainst();
    return true;
  }

  private void found(List<Leaps.Row> rows) {
    for (Leaps.Row row : rows) {
      found.put(row.place(), row.millis());
    }
  }
}
