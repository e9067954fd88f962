package org.evenpour.intake;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.List;

/**
 * Makes UTC of what the clock on the wall showed. Remembers the stretch of time in which the last
 * answer's offset holds; owned by the thread that reads the log.
 */
final class WallClock {
  // No zone has changed its offset by more than a day.
  private static final long MARGIN_MILLIS = 86_400_000L;

  private final ZoneRules rules;
  private long from = Long.MAX_VALUE;
  private long to = Long.MIN_VALUE;
  private long offsetMillis;

  WallClock(ZoneId zone) {
    rules = zone.getRules();
  }

  /**
   * UTC of a wall time. Of an hour that the clock showed twice, the first is meant, unless that
   * lies before {@code notBefore} and the second does not; an hour that it left out counts as if it
   * had not been put forward.
   *
   * @param wallMillis since 1970-01-01T00:00 on the wall
   * @param notBefore the earliest that is to be expected, in milliseconds of UTC
   */
  long utc(long wallMillis, long notBefore) {
    if (wallMillis >= from && wallMillis < to) {
      return wallMillis - offsetMillis;
    }
    LocalDateTime wall =
        LocalDateTime.ofEpochSecond(
            Math.floorDiv(wallMillis, 1000L),
            (int) Math.floorMod(wallMillis, 1000L) * 1_000_000,
            ZoneOffset.UTC);
    List<ZoneOffset> valid = rules.getValidOffsets(wall);
    if (valid.size() == 2) {
      long first = wallMillis - millis(valid.get(0));
      long second = wallMillis - millis(valid.get(1));
      return first < notBefore && second >= notBefore ? second : first;
    }
    ZoneOffset offset = rules.getOffset(wall);
    long utc = wallMillis - millis(offset);
    remember(wall, offset);
    return utc;
  }

  private void remember(LocalDateTime wall, ZoneOffset offset) {
    ZoneOffsetTransition before = rules.previousTransition(wall.toInstant(offset));
    ZoneOffsetTransition after = rules.nextTransition(wall.toInstant(offset));
    offsetMillis = millis(offset);
    from =
        before == null
            ? Long.MIN_VALUE
            : before.toEpochSecond() * 1000 + offsetMillis + MARGIN_MILLIS;
    to =
        after == null
            ? Long.MAX_VALUE
            : after.toEpochSecond() * 1000 + offsetMillis - MARGIN_MILLIS;
  }

  private static long millis(ZoneOffset offset) {
    return offset.getTotalSeconds() * 1000L;
  }
}
