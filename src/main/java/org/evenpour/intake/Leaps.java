package org.evenpour.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Rows of one wheel whose times leap ahead, and whether the rows after them go on from there. Where
 * more rows contradict than confirm, it is the rows since the leap that have a wrong time, and not
 * all others: one row dated years ahead would else cost every row after it.
 *
 * <p>A leap is forgotten once {@link #SETTLED} rows went on from it, so that memory and cost do not
 * grow with the log. Owned by the thread that reads the log.
 */
final class Leaps {
  /** So long a gap is a leap that later rows may contradict: a choice. */
  private static final long LEAP_MILLIS = 3_600_000L;

  /** The first rows of a log are its wild ones where a gap of more than a year follows them. */
  private static final long YEAR_MILLIS = 366 * 86_400_000L;

  /** No more first rows are taken for wild. */
  private static final int FIRST_ROWS = 3;

  /** So many rows that go on after such a gap show it. */
  private static final int GO_ON = 50;

  /** So many rows are no slip of the hand or of the clock: a choice. */
  private static final int SETTLED = 1000;

  /** A row that was kept. */
  record Row(long place, long millis) {}

  /** A leap, and what came since. */
  private static final class Leap {
    final long latestBefore;
    final int rowsBefore;
    long latestAgainst;
    int against;

    Leap(long latestBefore, int rowsBefore) {
      this.latestBefore = latestBefore;
      this.rowsBefore = rowsBefore;
      latestAgainst = latestBefore;
    }

    /**
     * Only rows that go on from one another count against a leap: else they are wild themselves.
     */
    void add(long millis, long allowedMillis) {
      boolean goesOn =
          against > 0
              && millis >= latestAgainst - allowedMillis
              && millis <= latestAgainst + LEAP_MILLIS;
      latestAgainst = goesOn ? Math.max(latestAgainst, millis) : millis;
      against = goesOn ? against + 1 : 1;
    }
  }

  private final List<Leap> open = new ArrayList<>();

  /** The rows since the first open leap; numbers, for after each stop a thousand rows come here. */
  private long[] places = new long[64];

  private long[] times = new long[64];
  private int since;
  private boolean isFirst = true;
  private int firstRows;
  private long latestAgainst = Long.MIN_VALUE;

  /**
   * A row was kept.
   *
   * @param latest the latest time before it; MIN_VALUE = it is the first
   * @return the first rows of the log, if it shows that their times are wrong; mostly empty
   */
  List<Row> kept(long place, long millis, long latest) {
    boolean begins = latest == Long.MIN_VALUE;
    if (begins || millis - latest > LEAP_MILLIS) {
      boolean isFarFromFirst = isFirst && !begins && millis - latest > YEAR_MILLIS;
      firstRows = isFarFromFirst && since <= FIRST_ROWS ? since : 0;
      isFirst = begins;
      open.add(new Leap(latest, since));
    } else if (open.isEmpty()) {
      return List.of();
    }
    if (since == places.length) {
      places = Arrays.copyOf(places, 2 * since);
      times = Arrays.copyOf(times, 2 * since);
    }
    places[since] = place;
    times[since++] = millis;
    Leap last = open.get(open.size() - 1);
    int on = since - last.rowsBefore;
    if (firstRows > 0 && on >= GO_ON) {
      List<Row> wild = rows(0, firstRows);
      forget();
      return wild;
    }
    if (on >= SETTLED) {
      forget();
    }
    return List.of();
  }

  private List<Row> rows(int from, int to) {
    return IntStream.range(from, to).mapToObj(i -> new Row(places[i], times[i])).toList();
  }

  private void forget() {
    open.clear();
    since = 0;
    firstRows = 0;
    isFirst = false;
  }

  /**
   * A row was cast earlier than the latest, by more than is allowed.
   *
   * @param allowedMillis how far times may run backwards
   * @return the rows whose times are wrong, if it shows that it is they; mostly empty
   */
  List<Row> contradicted(long millis, long allowedMillis) {
    for (int i = open.size() - 1; i >= 0; i--) {
      Leap leap = open.get(i);
      boolean fitsBefore =
          leap.latestBefore == Long.MIN_VALUE || millis >= leap.latestBefore - allowedMillis;
      if (!fitsBefore) {
        continue;
      }
      leap.add(millis, allowedMillis);
      if (leap.against <= since - leap.rowsBefore) {
        return List.of();
      }
      List<Row> wild = rows(leap.rowsBefore, since);
      since = leap.rowsBefore;
      open.subList(i, open.size()).clear();
      firstRows = 0;
      latestAgainst = leap.latestAgainst;
      return wild;
    }
    return List.of();
  }

  /** The latest time of those that contradicted, once it has shown that they are right. */
  long latestAgainst() {
    return latestAgainst;
  }
}
