package org.evenpour.view.model;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.jspecify.annotations.Nullable;

/**
 * Stretches that people ask for by name: the last day, shift, week or charge of the record, a turn,
 * some turns, a day. The record's end stands for now, for a log may be an old one.
 */
public final class GoTo {
  /** What is seen about one turn. A choice: some hours of casting. */
  private static final int ABOUT = 12;

  /** Hours of a shift: three of eight make the day, as the budget of false alarms takes it. */
  private static final int SHIFT = 8;

  private static final Pattern TURNS = Pattern.compile("(\\d{1,7})(?:\\s*[-–…]\\s*(\\d{1,7}))?");
  private static final Pattern DAY =
      Pattern.compile("\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2} \\p{L}+\\.?( \\d{4})?");
  private static final Pattern TIME = Pattern.compile("(.+)[T ](\\d{1,2}):(\\d{2})");

  private GoTo() {}

  /**
   * A stretch with a name.
   *
   * @param key of its name among the words of the screens
   */
  public record Named(String key, Stretch turns) {}

  /** What can be asked for by name, the shortest first. */
  public static List<Named> named(Desk desk) {
    WheelRows rows = desk.wheel();
    WheelRecord record = rows.record();
    if (record.rows() == 0) {
      return List.of();
    }
    Instant end = Instant.ofEpochMilli(record.castAtMillis().get(record.rows() - 1));
    ZonedDateTime last = end.atZone(desk.log().zone());
    List<Named> named = new ArrayList<>();
    add(named, rows, "goto.shift", rows.place(end.minusSeconds(SHIFT * 3600L)));
    add(named, rows, "goto.day", rows.place(last.with(LocalTime.MIDNIGHT).toInstant()));
    Double charge = chargeFrom(record);
    if (charge != null) {
      add(named, rows, "goto.charge", rows.at()[charge.intValue()]);
    }
    add(named, rows, "goto.week", rows.place(end.minusSeconds(7L * 24 * 3600)));
    return named;
  }

  private static void add(List<Named> named, WheelRows rows, String key, double from) {
    Stretch turns = Stretch.between(from, rows.last() - 0.5, rows.first(), rows.last());
    if (turns.from() > rows.first()) {
      named.add(new Named(key, turns));
    }
  }

  /** The first row of the last charge; null where none is written down. */
  private static @Nullable Double chargeFrom(WheelRecord record) {
    for (Setting one : record.settings()) {
      IntColumn labels = one.categories();
      if (one.name().equals("charge") && labels != null) {
        int row = record.rows() - 1;
        int last = labels.get(row);
        while (row > 0 && labels.get(row - 1) == last) {
          row--;
        }
        return last < 0 ? null : (Double) (double) row;
      }
    }
    return null;
  }

  /**
   * What was typed: a turn ({@code 120}), turns ({@code 120-150}), a day ({@code 2026-03-05}, or
   * {@code 5 Mar} as pictures write it) or a time of it ({@code 5 Mar 14:30}); null where it is
   * none of these, or not of this record.
   */
  public static @Nullable Stretch typed(Desk desk, String text) {
    String said = text.strip();
    WheelRows rows = desk.wheel();
    Matcher turns = TURNS.matcher(said);
    if (turns.matches()) {
      double one = Integer.parseInt(turns.group(1));
      String other = turns.group(2);
      return other == null ? about(rows, one) : within(rows, one, Integer.parseInt(other));
    }
    ZoneId zone = desk.log().zone();
    Matcher time = TIME.matcher(said);
    LocalDate day = day(desk, time.matches() ? time.group(1) : said);
    if (day == null) {
      return null;
    }
    if (time.matches()) {
      int hour = Integer.parseInt(time.group(2));
      int minute = Integer.parseInt(time.group(3));
      if (hour > 23 || minute > 59) {
        return null;
      }
      Instant when = day.atTime(hour, minute).atZone(zone).toInstant();
      return isWithin(desk, when) ? about(rows, Math.floor(rows.place(when))) : null;
    }
    Instant from = day.atStartOfDay(zone).toInstant();
    Instant to = day.plusDays(1).atStartOfDay(zone).toInstant();
    boolean isHere =
        from.isBefore(desk.report().log().lastCastAt())
            && to.isAfter(desk.report().log().firstCastAt());
    double end = Math.ceil(rows.place(to)) - 1;
    return isHere ? within(rows, Math.floor(rows.place(from)), end) : null;
  }

  /** A day; without its year the last such day that the record may hold. Null where it is none. */
  private static @Nullable LocalDate day(Desk desk, String said) {
    String text = said.strip();
    if (!DAY.matcher(text).matches()) {
      return null;
    }
    LocalDate last = desk.report().log().lastCastAt().atZone(desk.log().zone()).toLocalDate();
    try {
      if (text.contains("-")) {
        return LocalDate.parse(text, form("uuuu-M-d", Locale.ROOT));
      }
      Locale locale = desk.look().language().report().locale();
      boolean hasYear = text.split(" ", -1).length == 3;
      LocalDate its =
          LocalDate.parse(hasYear ? text : text + " " + last.getYear(), form("d MMM uuuu", locale));
      return hasYear || !its.isAfter(last) ? its : its.minusYears(1);
    } catch (DateTimeException none) {
      return null; // there is no such day
    }
  }

  private static DateTimeFormatter form(String pattern, Locale locale) {
    return new DateTimeFormatterBuilder()
        .parseCaseInsensitive()
        .appendPattern(pattern)
        .toFormatter(locale)
        .withResolverStyle(ResolverStyle.STRICT);
  }

  private static boolean isWithin(Desk desk, Instant when) {
    return !when.isBefore(desk.report().log().firstCastAt())
        && !when.isAfter(desk.report().log().lastCastAt());
  }

  private static @Nullable Stretch about(WheelRows rows, double turn) {
    return turn < rows.first() || turn >= rows.last()
        ? null
        : within(rows, turn - ABOUT, turn + ABOUT);
  }

  private static @Nullable Stretch within(WheelRows rows, double one, double other) {
    double from = Math.max(rows.first(), Math.min(one, other));
    double to = Math.min(rows.last(), Math.max(one, other) + 1);
    return from >= to ? null : new Stretch(from, to);
  }
}
