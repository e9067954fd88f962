package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.CausesFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs that do not grow go the same way as one that does: a snapshot, and another when asked. */
@Tag("slow")
class LogsAtRestTest {
  private static final Path SAMPLE = Path.of("samples", "tordilla-week");
  private static final long PATIENCE_NANOS = 60_000_000_000L;

  @TempDir Path folder;
  private Path log = SAMPLE;
  private Path profile = SAMPLE;

  @BeforeEach
  void copyTheSample() throws Exception {
    log = folder.resolve("casting-log.csv");
    profile = folder.resolve("profile.yaml");
    Files.copy(SAMPLE.resolve("casting-log.csv"), log);
    Files.copy(SAMPLE.resolve("profile.yaml"), profile);
  }

  private PlantFiles files() {
    return new PlantFiles(List.of(log), profile, null);
  }

  private static Snapshot until(LogsAtRest logs, Predicate<Snapshot> isSo) throws Exception {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!isSo.test(logs.snapshot())) {
      assertThat(System.nanoTime()).as("patience").isLessThan(end);
      Thread.sleep(10);
    }
    return logs.snapshot();
  }

  private static RecordNow record(LogsAtRest logs) throws Exception {
    return Objects.requireNonNull(until(logs, now -> now.record() != null).record());
  }

  @Test
  void saysWhatABatchSays() throws Exception {
    PlantFiles files = files();
    Profiles profiles = files.profiles();
    CastingRecord batch;
    try (SetAside nowhere = SetAside.nowhere()) {
      batch = LogReader.read(files.logs(), profiles, List.of(), null, null, nowhere, Progress.NONE);
    }
    AuditReport report = Audit.run(batch, files.kept(profiles).records());
    List<Integer> come = Collections.synchronizedList(new ArrayList<>());
    try (LogsAtRest logs = new LogsAtRest(files)) {
      assertThat(logs.snapshot().reading()).isTrue();
      logs.onSnapshot(() -> come.add(logs.percent()));
      logs.start();
      RecordNow now = record(logs);
      assertThat(now.report().signals()).isNotEmpty().isEqualTo(report.signals());
      assertThat(now.report().notes()).isEqualTo(report.notes());
      assertThat(logs.snapshot().reading()).isFalse();
      assertThat(logs.snapshot().rows()).isEqualTo(batch.rowsRead());
    }
    assertThat(come).isSorted().endsWith(100);
  }

  @Test
  void whatSomebodyMarksIsJoinedToTheSameRowsAndAnotherProfileReadsThemAnew() throws Exception {
    try (LogsAtRest logs = new LogsAtRest(files())) {
      logs.start();
      RecordNow first = record(logs);
      Signal signal = first.report().signals().get(0);
      new CausesFile(files().causesFile().path())
          .add(
              Causes.mark(
                  signal,
                  new Cause(Kind.SETTING, "wash_volume_ml"),
                  Verdict.RIGHT,
                  "Ana",
                  "pump",
                  Instant.parse("2026-03-20T12:00:00Z")));
      until(logs, now -> !Objects.requireNonNull(now.report()).causes().marks().isEmpty());
      RecordNow marked = record(logs);
      assertThat(marked.record()).isSameAs(first.record());
      assertThat(marked.goesOnFrom(first)).isTrue();
      assertThat(marked.report().characteristics()).isEqualTo(first.report().characteristics());

      String text = Files.readString(profile);
      Files.writeString(profile, text.replace("molds: 26", "molds: many"));
      Snapshot stuck = until(logs, now -> now.stuck() != null);
      assertThat(Objects.requireNonNull(stuck.stuck()).toString()).contains("profile.yaml", "many");
      assertThat(stuck.record()).as("the one before stays").isSameAs(marked);

      Files.writeString(profile, text.replace("upper: 395", "upper: 392"));
      until(logs, now -> now.record() != marked);
      RecordNow again = record(logs);
      assertThat(logs.snapshot().stuck()).isNull();
      assertThat(again.goesOnFrom(marked)).isFalse();
      assertThat(again.report().characteristics().get(0).specification().upper()).isEqualTo(392);
      assertThat(again.report().causes().marks()).as("what was marked stays").hasSize(1);
    }
  }

  @Test
  void advicesOfThePlantAreTakenAsTheyAreWritten() throws Exception {
    Path file = files().adviceFile();
    assertThat(file).isEqualTo(folder.resolve("profile.yaml.advice.yaml"));
    try (LogsAtRest logs = new LogsAtRest(files())) {
      logs.start();
      RecordNow first = record(logs);
      Files.writeString(file, "cooling: {look: {en: look at pump 2 first}, wets_mold: no}\n");
      until(logs, now -> now.record() != first);
      RecordNow again = record(logs);
      assertThat(again.record()).isSameAs(first.record());
      List<String> said =
          again.report().signals().stream()
              .flatMap(signal -> signal.links().stream())
              .filter(link -> link.group().equals("cooling") && !link.lookFirst().isEmpty())
              .map(AuditReport.Link::lookFirst)
              .distinct()
              .toList();
      assertThat(said).containsExactly("Check first that the mold is dry. Look at pump 2 first.");

      Files.writeString(file, "wash: {lok: {}}\n");
      Snapshot stuck = until(logs, now -> now.stuck() != null);
      assertThat(Objects.requireNonNull(stuck.stuck()).toString()).contains("advice.yaml", "lok");
      assertThat(stuck.record()).isSameAs(again);
    }
  }

  @Test
  void aLogThatCannotBeReadAgainIsToldAndReadWhenItCan() throws Exception {
    try (LogsAtRest logs = new LogsAtRest(files())) {
      logs.start();
      RecordNow first = record(logs);
      String head = Files.readAllLines(log).get(0);
      String text = Files.readString(log);
      Files.writeString(log, head + "\n");
      until(logs, now -> logs.failure() != null);
      assertThat(logs.snapshot().record()).isSameAs(first);
      List<String> lines = text.lines().toList();
      Files.writeString(log, text);
      Files.write(
          log,
          List.of(lines.get(lines.size() - 1)),
          StandardCharsets.UTF_8,
          StandardOpenOption.APPEND);
      until(logs, now -> now.record() != first);
      assertThat(logs.failure()).isNull();
      assertThat(logs.snapshot().rows()).isEqualTo(first.record().rowsRead() + 1);
    }
  }

  @Test
  void saysWhyThereIsNothingAtAll() throws Exception {
    Files.delete(log);
    try (LogsAtRest logs = new LogsAtRest(files())) {
      logs.start();
      until(logs, now -> logs.failure() != null);
      assertThat(logs.snapshot().record()).isNull();
      assertThat(logs.failure())
          .isInstanceOfAny(IntakeException.class, NoSuchFileException.class)
          .hasMessageContaining("casting-log.csv");
    }
  }

  @Test
  void nothingIsToldAfterItWasClosed() throws Exception {
    LogsAtRest logs = new LogsAtRest(files());
    logs.start();
    record(logs);
    List<String> told = Collections.synchronizedList(new ArrayList<>());
    logs.onSnapshot(() -> told.add("news"));
    logs.close();
    Files.delete(log);
    Thread.sleep(2_500); // two looks would have come
    assertThat(told).isEmpty();
    assertThat(logs.failure()).isNull();
  }
}
