package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.evenpour.audit.Audit;
import org.evenpour.audit.PlantRecords;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.casting.CastingRecord;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsVersion;
import org.evenpour.feed.Feed;
import org.evenpour.feed.GrowingLog;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.SeenFile;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who followed from the start, who came later, and who reads the log at rest see the same. */
@Tag("slow")
class RestartTest {
  @TempDir Path folder;

  private CastingRecord read(Path log) throws IntakeException {
    return LogReader.read(
        List.of(log), Profiles.NONE, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
  }

  private LiveRecord live(LimitsBook book) throws IntakeException {
    LiveRecord record =
        new LiveRecord(
            "log.csv", Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("log.csv")));
    record.plant(PlantRecords.of(book));
    SimulatedLog.open(record);
    return record;
  }

  @Test
  void byApprovedLimitsAllThreeFindTheSameSignals() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(
            Scenario.week(2)
                .withDays(4)
                .withMolds(16)
                .withFaults(List.of(Fault.THIN_WASH, Fault.SINGLE_BAD_POUR)));
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(log.lines().size()));
    List<LimitsVersion> versions = new ArrayList<>();
    for (ProposedLimits one : ProposedLimits.of(read(file), null, null, List.of())) {
      Instant before = Instant.parse("2000-01-01T00:00:00Z");
      versions.add(
          Objects.requireNonNull(one.draft())
              .numbered(1)
              .approved(before, SimulatedLog.NOW, "Ana", "sound"));
    }
    LimitsBook book = new LimitsBook(versions, List.of(), List.of());
    int rows = log.lines().size();
    LiveRecord started = live(book);
    LiveRecord restarted = live(book);
    for (int row = 0; row < rows; row++) {
      log.row(started, row);
      log.row(restarted, row);
      if (row == 40 || row % 1000 == 999) {
        started.caughtUp(SimulatedLog.NOW);
      }
    }
    started.caughtUp(SimulatedLog.NOW);
    restarted.caughtUp(SimulatedLog.NOW);
    List<Signal> signals = Objects.requireNonNull(started.snapshot(0).report()).signals();
    assertThat(signals)
        .isNotEmpty()
        .isEqualTo(Objects.requireNonNull(restarted.snapshot(0).report()).signals());
    // The batch closes the last turn; live it is still under way.
    int last = rows - 1;
    while (log.turn(last) == log.turn(rows - 1)) {
      last--;
    }
    Files.writeString(file, log.text(last + 1));
    assertThat(signals.stream().map(Signal::characteristic).toList())
        .isEqualTo(
            Audit.run(read(file), PlantRecords.of(book)).signals().stream()
                .map(Signal::characteristic)
                .toList());
    assertThat(signals.stream().map(Signal::sinceTurn).toList())
        .isEqualTo(
            Audit.run(read(file), PlantRecords.of(book)).signals().stream()
                .map(Signal::sinceTurn)
                .toList());
  }

  /**
   * The same rows are kept and set aside, however the bytes come: made logs, more by {@code
   * -Devenpour.pieces}.
   */
  @Test
  void aLogThatComesInPiecesIsReadAsOneAtRest() throws Exception {
    long first = Long.getLong("evenpour.seed", 20261130);
    for (long seed = first; seed < first + Integer.getInteger("evenpour.pieces", 25); seed++) {
      Random random = new Random(seed);
      byte[] text = damaged(random).getBytes(StandardCharsets.UTF_8);
      Path file = folder.resolve("pieces.csv");
      Files.write(file, new byte[0]);
      LiveRecord live =
          new LiveRecord("l", Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("l")));
      GrowingLog feed =
          new GrowingLog(file, Profiles.NONE, () -> SimulatedLog.NOW, Duration.ofMillis(10));
      Into into = new Into(live);
      int at = 0;
      while (at < text.length) {
        // Sometimes so long that a read ends within a row, sometimes a single byte.
        int count =
            Math.min(text.length - at, 1 + random.nextInt(random.nextBoolean() ? 9 : 90_000));
        Files.write(
            file, java.util.Arrays.copyOfRange(text, at, at + count), StandardOpenOption.APPEND);
        at += count;
        feed.look(into);
      }
      CastingRecord batch = read(file);
      Snapshot snapshot = live.snapshot(0);
      assertThat(snapshot.rows()).as("seed %d", seed).isEqualTo(batch.rowsRead());
      assertThat(snapshot.rowsSetAside()).as("seed %d", seed).isEqualTo(batch.rowsSetAside());
      assertThat(into.headers).as("seed %d", seed).isEqualTo(1);
    }
  }

  /** A good log with stray quotes, cells with line breaks, very long rows and other damage. */
  private static String damaged(Random random) {
    StringBuilder text = new StringBuilder("cast_at,mold,mass_kg,note\n");
    int rows = 60 + random.nextInt(60);
    for (int i = 0; i < rows; i++) {
      String note =
          switch (random.nextInt(14)) {
            case 0 -> "\"two\nlines\"";
            case 1 -> "a \"quote\" inside";
            case 2 -> i < rows - 5 ? "\"never closed" : "";
            case 3 -> "x".repeat(random.nextInt(40_000));
            case 4 -> random.nextInt(8) == 0 ? "y".repeat((1 << 20) + random.nextInt(9)) : "";
            case 5 -> "one, too many";
            default -> "";
          };
      text.append(Instant.parse("2026-03-01T00:00:00Z").plusSeconds(30L * i));
      text.append(',').append(i % 8 + 1).append(',').append(388 + random.nextInt(5));
      text.append(',').append(note).append(random.nextInt(20) == 0 ? "\r\n" : "\n");
    }
    return text.toString();
  }

  /** Hands a feed's rows to a record, as the engine does. */
  private static final class Into implements Feed.Listener {
    private final LiveRecord record;
    private int headers;

    Into(LiveRecord record) {
      this.record = record;
    }

    @Override
    public void header(LogHeader header) {
      headers++;
      record.header(header);
    }

    @Override
    public void row(long line, byte[] text, Instant arrivedAt) {
      record.row(line, text, arrivedAt);
    }

    @Override
    public void caughtUp(Instant at) {}

    @Override
    public void trouble(Remark what) {}

    @Override
    public void recovered() {}
  }
}
