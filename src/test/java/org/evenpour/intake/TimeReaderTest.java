package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeReaderTest {

  // 0001-01-01 to 9999-12-31
  @Property(tries = 5000)
  void readsEveryTimeThatJavaWrites(
      @ForAll @LongRange(min = -62_135_596_800L, max = 253_402_214_400L) long second,
      @ForAll @IntRange(max = 999_999_999) int nano,
      @ForAll @IntRange(min = -18 * 60, max = 18 * 60) int offsetMinutes) {
    Instant instant = Instant.ofEpochSecond(second, nano);
    OffsetDateTime time = instant.atOffset(ZoneOffset.ofTotalSeconds(offsetMinutes * 60));
    if (time.getYear() >= 0 && time.getYear() <= 9999) {
      String text = DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
      assertThat(read(text)).isEqualTo(instant.toEpochMilli() << 1);
    }
    LocalDateTime wall = LocalDateTime.ofInstant(instant, ZoneOffset.UTC);
    long local = read(DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(wall));
    assertThat(TimeReader.isLocal(local)).isTrue();
    assertThat(TimeReader.millis(local)).isEqualTo(instant.toEpochMilli());
  }

  @Property(tries = 5000)
  void knowsEveryDateThatJavaKnows(
      @ForAll @IntRange(min = 0, max = 9999) int year,
      @ForAll @IntRange(min = 0, max = 13) int month,
      @ForAll @IntRange(min = 0, max = 32) int day,
      @ForAll @IntRange(min = 0, max = 25) int hour) {
    String text =
        String.format(java.util.Locale.ROOT, "%04d-%02d-%02dT%02d:30Z", year, month, day, hour);
    long wanted;
    try {
      wanted =
          LocalDateTime.of(year, month, day, hour, 30).toInstant(ZoneOffset.UTC).toEpochMilli()
              << 1;
    } catch (DateTimeException e) {
      wanted = TimeReader.UNREADABLE;
    }
    assertThat(read(text)).isEqualTo(wanted);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-04T05:06:07Z,2026-03-04T05:06:07Z",
    "2026-03-04 05:06:07Z,2026-03-04T05:06:07Z",
    "2026-03-04T05:06Z,2026-03-04T05:06:00Z",
    "2026-03-04t05:06z,2026-03-04T05:06:00Z",
    "2026-03-04T05:06:07.25+01:00,2026-03-04T04:06:07.25Z",
    "'2026-03-04 05:06:07,5 -03',2026-03-04T08:06:07.5Z",
    "2026-03-04T05:06:07+0530,2026-03-03T23:36:07Z",
    "2024-02-29T23:59:59.999Z,2024-02-29T23:59:59.999Z"
  })
  void readsTheWaysInWhichLogsWriteTimes(String text, Instant instant) {
    assertThat(read(text)).isEqualTo(instant.toEpochMilli() << 1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "yesterday",
        "2026-03-04",
        "2026-03-04T",
        "2026-03-04T05",
        "2026-3-4T05:06",
        "04.03.2026 05:06:07",
        "2026-02-29T05:06Z",
        "2026-13-01T05:06Z",
        "2026-00-01T05:06Z",
        "2026-03-04T24:00Z",
        "2026-03-04T05:60Z",
        "2026-03-04T05:06:60Z",
        "2026-03-04T05:06:07.Z",
        "2026-03-04T05:06:7Z",
        "2026-03-04T05:06:07+19:00",
        "2026-03-04T05:06:07+1",
        "2026-03-04T05:06:07+01:",
        "2026-03-04T05:06:07ZZ",
        "2026-03-04T05:06:07 ",
        "2026-03-04T05:06:07+01:60",
        "1772600767",
        "2026-03-04T05:06:",
        "2026-03-04T05:06+01:00:00",
        "+2026-03-04T05:06Z"
      })
  void takesNothingElseForATime(String text) {
    assertThat(read(text)).isEqualTo(TimeReader.UNREADABLE);
  }

  @Test
  void tellsMissingFromUnreadable() {
    assertThat(read("")).isEqualTo(TimeReader.MISSING);
  }

  private static long read(String text) {
    byte[] bytes = ("," + text + ",1").getBytes(StandardCharsets.UTF_8);
    return TimeReader.read(bytes, 1, bytes.length - 2);
  }
}
