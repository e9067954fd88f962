package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class WallClockTest {

  /** {@link LocalDateTime#atZone} is the outside check: it, too, takes the first of two hours. */
  @Property
  void agreesWithTheZoneRulesInAnyOrderOfTimes(
      @ForAll @Size(min = 1, max = 30)
          List<@LongRange(min = 0, max = 2_200_000_000L) Long> seconds) {
    for (String zone :
        List.of("America/Santiago", "Europe/Berlin", "Australia/Lord_Howe", "UTC", "+05:30")) {
      WallClock clock = new WallClock(ZoneId.of(zone));
      for (long second : seconds) {
        LocalDateTime wall = LocalDateTime.ofEpochSecond(second, 0, ZoneOffset.UTC);
        assertThat(clock.utc(second * 1000, Long.MIN_VALUE))
            .isEqualTo(wall.atZone(ZoneId.of(zone)).toInstant().toEpochMilli());
      }
    }
  }

  @Test
  void takesTheSecondOfTwoHoursWhenTheFirstIsPast() {
    // In Berlin the clock went from 03:00 back to 02:00 on 2025-10-26 (EU Directive 2000/84/EC).
    WallClock clock = new WallClock(ZoneId.of("Europe/Berlin"));
    long wall = LocalDateTime.parse("2025-10-26T02:10").toEpochSecond(ZoneOffset.UTC) * 1000;
    long before = Instant.parse("2025-10-26T00:55:00Z").toEpochMilli();
    assertThat(Instant.ofEpochMilli(clock.utc(wall, Long.MIN_VALUE)))
        .isEqualTo("2025-10-26T00:10:00Z");
    assertThat(Instant.ofEpochMilli(clock.utc(wall, before))).isEqualTo("2025-10-26T01:10:00Z");
  }

  @Test
  void readsAnHourThatTheClockLeftOutAsIfItHadNotBeenPutForward() {
    WallClock clock = new WallClock(ZoneId.of("Europe/Berlin"));
    long wall = LocalDateTime.parse("2025-03-30T02:30").toEpochSecond(ZoneOffset.UTC) * 1000;
    assertThat(Instant.ofEpochMilli(clock.utc(wall, Long.MIN_VALUE)))
        .isEqualTo("2025-03-30T01:30:00Z");
  }
}
