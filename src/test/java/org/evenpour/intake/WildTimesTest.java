package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.SetAsideRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A time that is wrong costs its own row, and not the rows after it. */
class WildTimesTest {
  private static final Instant BEGIN = Instant.parse("2026-03-04T05:00:00Z");
  private static final int ROWS = 400;

  @TempDir Path folder;

  /** Rows half a minute apart, but for those from {@code at} on that are off by so many seconds. */
  private CastingRecord read(int at, int count, long offSeconds) throws Exception {
    return read(rows(at, count, offSeconds));
  }

  private static List<Instant> rows(int at, int count, long offSeconds) {
    List<Instant> times = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      boolean isOff = i >= at && i < at + count;
      times.add(BEGIN.plusSeconds(30L * i + (isOff ? offSeconds : 0)));
    }
    return times;
  }

  private CastingRecord read(List<Instant> times) throws IOException, IntakeException {
    StringBuilder text = new StringBuilder("cast_at,mold,mass_kg\n");
    for (int i = 0; i < times.size(); i++) {
      text.append(times.get(i)).append(',').append(1 + i % 20).append(",38").append(i % 10);
      text.append('\n');
    }
    Path log = Files.writeString(folder.resolve("log.csv"), text);
    try (SetAside aside = SetAside.besideLogs()) {
      CastingRecord record =
          LogReader.read(List.of(log), Profiles.NONE, List.of(), null, null, aside, Progress.NONE);
      aside.complete();
      return record;
    }
  }

  private static List<Long> lines(CastingRecord record) {
    return record.setAside().stream().map(SetAsideRow::line).toList();
  }

  private static List<Long> expected(int at, int count) {
    return LongStream.range(at + 2, at + 2 + count).boxed().toList();
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, 31536000",
    "1, 1, 31536000",
    "10, 1, 315360000",
    "200, 1, 86400",
    "200, 3, 864000",
    "200, 40, 31536000",
    "390, 2, 31536000",
    "10, 1, -315360000",
    "200, 1, -86400",
    "0, 1, -315360000",
    "0, 3, -63072000"
  })
  void setsAsideTheRowsWhoseTimesAreWrongAndNoOther(int at, int count, long offSeconds)
      throws Exception {
    CastingRecord record = read(at, count, offSeconds);
    assertThat(lines(record)).isEqualTo(expected(at, count));
    assertThat(record.rowsRead()).isEqualTo(ROWS);
    assertThat(record.rowsKept()).isEqualTo(ROWS - count);
    String aside = Files.readString(folder.resolve("log.csv.set-aside.csv"));
    assertThat(aside.lines()).hasSize(1 + count);
    if (offSeconds > 0) {
      assertThat(aside).contains("is contradicted by the rows around it");
    }
  }

  @Test
  void takesSeveralWildTimesOutAtOnce() throws Exception {
    List<Instant> times = rows(50, 1, 31_536_000);
    times.set(52, times.get(52).plusSeconds(2_000_000));
    times.set(53, times.get(53).plusSeconds(400_000_000));
    times.set(300, times.get(300).plusSeconds(90_000));
    CastingRecord record = read(times);
    assertThat(lines(record)).containsExactly(52L, 54L, 55L, 302L);
  }

  @ParameterizedTest
  @ValueSource(longs = {3_601, 86_400, 40_000_000})
  void keepsEveryRowOfALogWithLongStops(long stopSeconds) throws Exception {
    List<Instant> times = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      times.add(BEGIN.plusSeconds(30L * i + i / 60 * stopSeconds));
    }
    assertThat(read(times).rowsSetAside()).isZero();
  }

  /** Nobody can tell which clock is right: the earlier rows stand, as they always did. */
  @Test
  void leavesAClockThatWasWrongForLongAsItIs() throws Exception {
    CastingRecord record = read(100, 200, 31_536_000);
    assertThat(lines(record)).isEqualTo(expected(300, 100));
  }

  @Test
  void theLastRowOfALogIsContradictedByNone() throws Exception {
    assertThat(read(ROWS - 1, 1, 31_536_000).rowsSetAside()).isZero();
  }
}
