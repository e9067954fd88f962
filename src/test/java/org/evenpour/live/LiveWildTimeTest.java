package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.evenpour.casting.CastingRecord;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A row dated years ahead arrives in a log that is followed. */
class LiveWildTimeTest {
  private static final Instant BEGIN = Instant.parse("2026-03-04T05:00:00Z");
  private static final int TURNS = 14;

  @TempDir Path folder;

  private static String row(int i, long off) {
    return "%s,%d,%d.%d%n"
        .formatted(BEGIN.plusSeconds(30L * i + off), 1 + i % 6, 388 + i * 7 % 5, i * 3 % 10);
  }

  @Test
  void followsTheRowsAfterItAsAnAuditDoes() throws Exception {
    Path log = folder.resolve("log.csv");
    StringBuilder text = new StringBuilder("cast_at,mold,mass_kg\n");
    int rows = 6 * TURNS;
    for (int i = 0; i < rows / 2; i++) {
      text.append(row(i, 0));
    }
    Files.writeString(log, text);
    PlantNow files = new PlantNow(new PlantFiles(List.of(log), null, null));
    try (LiveEngine engine = LiveEngine.following(log, files, () -> BEGIN, Duration.ofMillis(10))) {
      engine.start();
      await(engine, now -> kept(now) == rows / 2);
      Files.writeString(log, row(rows / 2, 1_000_000_000), StandardOpenOption.APPEND);
      await(engine, now -> kept(now) == rows / 2 + 1);
      for (int i = rows / 2 + 1; i < rows; i++) {
        Files.writeString(log, row(i, 0), StandardOpenOption.APPEND);
      }
      await(engine, now -> kept(now) == rows - 1);
      CastingRecord audited =
          LogReader.read(
              List.of(log),
              Profiles.NONE,
              List.of(),
              null,
              null,
              SetAside.nowhere(),
              Progress.NONE);
      Snapshot now = engine.snapshot();
      assertThat(now.rowsSetAside()).isEqualTo(audited.rowsSetAside()).isEqualTo(1);
      assertThat(audited.rowsKept()).isEqualTo(rows - 1);
    }
  }

  private static long kept(Snapshot now) {
    return now.rows() - now.rowsSetAside();
  }

  private static void await(LiveEngine engine, Predicate<Snapshot> until) throws Exception {
    long end = System.nanoTime() + 30_000_000_000L;
    while (!until.test(engine.snapshot())) {
      assertThat(System.nanoTime()).as(engine.snapshot().toString()).isLessThan(end);
      Thread.sleep(20);
    }
  }
}
