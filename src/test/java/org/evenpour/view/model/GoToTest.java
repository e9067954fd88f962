package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import org.evenpour.picture.SeriesPicture.Moment;
import org.junit.jupiter.api.Test;

class GoToTest {
  private static Instant castAt(Desk desk, double place) {
    WheelRows rows = desk.wheel();
    return Instant.ofEpochMilli(rows.record().castAtMillis().get(rows.rowAt(place)));
  }

  /**
   * Each date stands where the first anode of that date was cast, the one before on the day before.
   */
  @Test
  void datesStandWhereTheirDayBegins() {
    Desk desk = Sample.desk();
    List<Moment> days = Moments.of(desk, new Stretch(desk.wheel().first(), desk.wheel().last()));
    assertThat(days)
        .extracting(Moment::label)
        .containsExactly(
            "Tue 3 Mar", "Wed 4 Mar", "Thu 5 Mar", "Fri 6 Mar", "Sat 7 Mar", "Sun 8 Mar");
    for (int i = 0; i < days.size(); i++) {
      WheelRows rows = desk.wheel();
      int row = rows.rowAt(days.get(i).at());
      ZonedDateTime at = day(desk, row);
      assertThat(at.getDayOfMonth()).isEqualTo(3 + i);
      assertThat(day(desk, row - 1).getDayOfMonth()).isEqualTo(2 + i);
    }
  }

  private static ZonedDateTime day(Desk desk, int row) {
    long millis = desk.wheel().record().castAtMillis().get(row);
    return Instant.ofEpochMilli(millis).atZone(desk.log().zone());
  }

  @Test
  void fewTurnsHaveHours() {
    Desk desk = Sample.desk();
    List<Moment> hours = Moments.of(desk, new Stretch(100, 125));
    assertThat(hours).hasSizeBetween(2, 9);
    assertThat(hours).extracting(Moment::label).anyMatch(label -> label.matches("\\d\\d:00"));
    assertThat(hours).isSortedAccordingTo((a, b) -> Double.compare(a.at(), b.at()));
  }

  @Test
  void whatIsTypedIsATurnTurnsADayOrATime() {
    Desk desk = Sample.desk();
    assertThat(GoTo.typed(desk, "120")).isEqualTo(new Stretch(108, 133));
    assertThat(GoTo.typed(desk, " 120-150 ")).isEqualTo(new Stretch(120, 151));
    assertThat(GoTo.typed(desk, "150 – 120")).isEqualTo(new Stretch(120, 151));
    assertThat(GoTo.typed(desk, "3")).isEqualTo(new Stretch(1, 16));
    Stretch day = Objects.requireNonNull(GoTo.typed(desk, "2026-03-05"));
    assertThat(day).isEqualTo(GoTo.typed(desk, "5 Mar"));
    assertThat(day.from()).isBetween(90.0, 119.0);
    Stretch time = Objects.requireNonNull(GoTo.typed(desk, "5 mar 18:30"));
    // The moment itself lies within.
    Instant when = ZonedDateTime.of(2026, 3, 5, 18, 30, 0, 0, desk.log().zone()).toInstant();
    assertThat(castAt(desk, time.from())).isBefore(when);
    assertThat(castAt(desk, time.to() - 1)).isAfter(when);
    for (String none :
        List.of(
            "",
            "tomorrow",
            "9999",
            "2026-02-30",
            "2025-03-05",
            "20 Mar",
            "5 Foo",
            "5 Mar 25:00",
            "1-")) {
      assertThat(GoTo.typed(desk, none)).as(none).isNull();
    }
  }

  /** By the sample's README: the last charge is cast from turn 211 on. */
  @Test
  void theLastShiftDayAndChargeEndTheRecord() {
    Desk desk = Sample.desk();
    List<GoTo.Named> named = GoTo.named(desk);
    assertThat(named).extracting(GoTo.Named::key).contains("goto.shift", "goto.day", "goto.charge");
    assertThat(named).allMatch(one -> one.turns().to() == desk.wheel().last());
    Stretch charge =
        named.stream().filter(one -> one.key().equals("goto.charge")).findFirst().get().turns();
    assertThat(charge.from()).isEqualTo(211);
    // The record is shorter than a week.
    assertThat(named).extracting(GoTo.Named::key).doesNotContain("goto.week");
  }
}
