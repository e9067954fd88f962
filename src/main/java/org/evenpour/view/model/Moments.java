package org.evenpour.view.model;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.picture.SeriesPicture.Moment;

/** When turns were cast: the dates, or the hours, that begin within them, a handful at most. */
final class Moments {
  /** So many fit under a picture of usual width. A choice. */
  private static final int MOST = 9;

  private static final int[] HOURS = {1, 2, 3, 6, 12};
  private static final int[] DAYS = {1, 2, 7, 14};
  private static final int[] MONTHS = {1, 2, 3, 6, 12};

  private Moments() {}

  /** Those of some turns, in the order of time. */
  static List<Moment> of(Desk desk, Stretch turns) {
    WheelRows rows = desk.wheel();
    int size = rows.record().rows();
    int first = rows.rowAt(turns.from());
    int last = Math.min(size, rows.rowAt(turns.to())) - 1;
    if (first >= size || last <= first) {
      return List.of();
    }
    Instant from = Instant.ofEpochMilli(rows.record().castAtMillis().get(first));
    Instant to = Instant.ofEpochMilli(rows.record().castAtMillis().get(last));
    ZonedDateTime begin = from.atZone(desk.log().zone());
    double hours = (to.toEpochMilli() - from.toEpochMilli()) / 3_600_000.0;
    Locale locale = desk.look().language().report().locale();
    for (int step : HOURS) {
      if (hours / step <= MOST && hours < 48) {
        ZonedDateTime midnight = begin.with(LocalTime.MIDNIGHT);
        return told(rows, from, to, midnight, step, ChronoUnit.HOURS, locale);
      }
    }
    for (int step : DAYS) {
      if (hours / 24 / step <= MOST) {
        ZonedDateTime day = begin.with(LocalTime.MIDNIGHT);
        // Weeks begin on Mondays (ISO 8601), so that a longer record has the same dates.
        ZonedDateTime start =
            step < 7 ? day : day.with(TemporalAdjusters.previousOrSame(java.time.DayOfWeek.MONDAY));
        return told(rows, from, to, start, step, ChronoUnit.DAYS, locale);
      }
    }
    int step = MONTHS[MONTHS.length - 1];
    for (int i = MONTHS.length - 1; i >= 0; i--) {
      step = hours / 24 / 30 / MONTHS[i] <= MOST ? MONTHS[i] : step;
    }
    ZonedDateTime january = begin.withDayOfYear(1).with(LocalTime.MIDNIGHT);
    return told(rows, from, to, january, step, ChronoUnit.MONTHS, locale);
  }

  private static List<Moment> told(
      WheelRows rows,
      Instant from,
      Instant to,
      ZonedDateTime start,
      int step,
      ChronoUnit unit,
      Locale locale) {
    List<Moment> moments = new ArrayList<>();
    DateTimeFormatter hour = DateTimeFormatter.ofPattern("HH:mm", locale);
    DateTimeFormatter day = DateTimeFormatter.ofPattern("EEE d MMM", locale);
    DateTimeFormatter month = DateTimeFormatter.ofPattern("MMM yyyy", locale);
    // From the start each time, for months differ, and so do days where clocks are set.
    for (int i = 0; i < 10_000; i++) {
      ZonedDateTime at = start.plus((long) i * step, unit);
      if (at.toInstant().isAfter(to)) {
        break;
      }
      if (!at.toInstant().isBefore(from)) {
        boolean isDay = at.toLocalTime().equals(LocalTime.MIDNIGHT);
        DateTimeFormatter form = unit == ChronoUnit.MONTHS ? month : isDay ? day : hour;
        moments.add(new Moment(rows.place(at.toInstant()), form.format(at)));
      }
    }
    return moments;
  }
}
