package org.evenpour.intake;

/**
 * ISO 8601 times out of a cell's bytes: date, {@code T} or a blank, hours and minutes, and if given
 * seconds, their fraction and the offset.
 */
final class TimeReader {

  /** The cell was empty. */
  static final long MISSING = Long.MIN_VALUE;

  /** The cell holds something that is no time. */
  static final long UNREADABLE = Long.MIN_VALUE + 1;

  private static final int MILLIS_PER_MINUTE = 60_000;
  private static final int OFFSET_LIMIT_SECONDS = 18 * 3600;

  private TimeReader() {}

  /** Whether a time that was read says no offset from UTC. */
  static boolean isLocal(long time) {
    return (time & 1) != 0;
  }

  /**
   * Milliseconds since 1970-01-01T00:00 of a time that was read; of UTC, or of the clock on the
   * wall if {@link #isLocal}.
   */
  static long millis(long time) {
    return time >> 1;
  }

  /**
   * Reads a time; digits beyond the millisecond are cut off.
   *
   * @param from index of the cell's first byte, blanks taken off
   * @param to index after its last
   * @return twice the milliseconds, plus one if there is no offset; {@link #MISSING}; {@link
   *     #UNREADABLE}
   */
  static long read(byte[] bytes, int from, int to) {
    if (from == to) {
      return MISSING;
    }
    // 2026-03-04T05:06 has 16 characters
    if (to - from < 16
        || bytes[from + 4] != '-'
        || bytes[from + 7] != '-'
        || bytes[from + 13] != ':'
        || ((bytes[from + 10] | 0x20) != 't' && bytes[from + 10] != ' ')) {
      return UNREADABLE;
    }
    int century = two(bytes, from);
    int yearOfCentury = two(bytes, from + 2);
    int month = two(bytes, from + 5);
    int day = two(bytes, from + 8);
    int hour = two(bytes, from + 11);
    int minute = two(bytes, from + 14);
    if ((century | yearOfCentury | month | day | hour | minute) < 0) {
      return UNREADABLE;
    }
    int year = century * 100 + yearOfCentury;
    if (month < 1
        || month > 12
        || day < 1
        || day > daysInMonth(year, month)
        || hour > 23
        || minute > 59) {
      return UNREADABLE;
    }
    int millis = 0;
    int at = from + 16;
    if (at < to && bytes[at] == ':') {
      int second = at + 3 <= to ? two(bytes, at + 1) : -1;
      if (second < 0 || second > 59) {
        return UNREADABLE;
      }
      millis = second * 1000;
      at += 3;
      if (at < to && (bytes[at] == '.' || bytes[at] == ',')) {
        int place = 100;
        int begin = ++at;
        for (; at < to && bytes[at] >= '0' && bytes[at] <= '9'; at++) {
          millis += (bytes[at] - '0') * place;
          place /= 10;
        }
        if (at == begin) {
          return UNREADABLE;
        }
      }
    }
    long wall =
        epochDay(year, month, day) * 86_400_000L
            + (hour * 60L + minute) * MILLIS_PER_MINUTE
            + millis;
    if (at == to) {
      return (wall << 1) | 1;
    }
    return offset(bytes, at, to, wall);
  }

  private static long offset(byte[] bytes, int from, int to, long wall) {
    int at = from;
    while (at < to && bytes[at] == ' ') {
      at++;
    }
    if (at == to) {
      return UNREADABLE;
    }
    int sign = bytes[at++];
    if ((sign | 0x20) == 'z') {
      return at == to ? wall << 1 : UNREADABLE;
    }
    if ((sign != '+' && sign != '-') || at + 2 > to) {
      return UNREADABLE;
    }
    int hours = two(bytes, at);
    int minutes = 0;
    at += 2;
    if (at < to) {
      if (bytes[at] == ':') {
        at++;
      }
      if (at + 2 != to) {
        return UNREADABLE;
      }
      minutes = two(bytes, at);
    }
    if (hours < 0 || minutes < 0 || minutes > 59) {
      return UNREADABLE;
    }
    int seconds = hours * 3600 + minutes * 60;
    if (seconds > OFFSET_LIMIT_SECONDS) {
      return UNREADABLE;
    }
    return (wall - (sign == '-' ? -seconds : seconds) * 1000L) << 1;
  }

  private static int two(byte[] bytes, int at) {
    int tens = bytes[at] - '0';
    int ones = bytes[at + 1] - '0';
    return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? -1 : tens * 10 + ones;
  }

  private static int daysInMonth(int year, int month) {
    if (month == 2) {
      return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
    }
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
  }

  /**
   * Days from 1970-01-01 in the Gregorian calendar, counted from March so that leap days come last.
   */
  private static long epochDay(int year, int month, int day) {
    int shifted = month > 2 ? year : year - 1;
    int monthFromMarch = month > 2 ? month - 3 : month + 9;
    int dayOfYear = (153 * monthFromMarch + 2) / 5 + day - 1;
    return 365L * shifted
        + Math.floorDiv(shifted, 4)
        - Math.floorDiv(shifted, 100)
        + Math.floorDiv(shifted, 400)
        + dayOfYear
        - 719_468;
  }
}
