package org.evenpour.report.json;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Times as {@link Instant#toString} writes them, for reports that hold many of one day: the day's
 * text is kept.
 *
 * <p>Owned by the thread that writes the report.
 */
final class IsoTimes {
  private static final int SECONDS_OF_DAY = 86_400;

  private long day = Long.MIN_VALUE;
  private String date = "";

  /** The same text as {@code at.toString()}. */
  String text(Instant at) {
    long second = at.getEpochSecond();
    if (at.getNano() != 0) {
      return at.toString();
    }
    long ofDay = Math.floorDiv(second, (long) SECONDS_OF_DAY);
    if (ofDay != day) {
      if (Math.abs(ofDay) > 1_000_000) { // years of more than four digits have a sign
        return at.toString();
      }
      day = ofDay;
      date = LocalDate.ofEpochDay(ofDay).toString();
    }
    int rest = Math.floorMod(second, SECONDS_OF_DAY);
    StringBuilder text = new StringBuilder(20).append(date).append('T');
    two(text, rest / 3600).append(':');
    two(text, rest / 60 % 60).append(':');
    return two(text, rest % 60).append('Z').toString();
  }

  private static StringBuilder two(StringBuilder text, int number) {
    return text.append((char) ('0' + number / 10)).append((char) ('0' + number % 10));
  }
}
