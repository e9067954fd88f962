package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import org.evenpour.audit.Audit;
import org.evenpour.audit.PlantRecords;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.casting.CastingRecord;
import org.evenpour.control.LimitsVersion;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.evenpour.store.LimitsFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The board by limits that were approved. */
class LiveLimitsTest {
  @TempDir Path folder;

  private static final SimulatedLog LOG =
      SimulatedLog.of(Scenario.week(2).withDays(4).withFault(Fault.THIN_WASH));

  private CastingRecord read(Path log) throws Exception {
    return LogReader.read(
        List.of(log), Profiles.NONE, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
  }

  /** Approves the limits of a whole log. */
  private LimitsFile approve(Path log, Instant validFrom) throws Exception {
    LimitsFile file = LimitsFile.beside(null, log);
    List<LimitsVersion> drafts = new ArrayList<>();
    for (ProposedLimits one : ProposedLimits.of(read(log), null, null, List.of())) {
      drafts.add(
          Objects.requireNonNull(one.draft())
              .approved(validFrom, SimulatedLog.NOW, "Ana", "sound"));
    }
    file.approve(drafts);
    return file;
  }

  private LiveEngine following(Path log, LimitsFile limits) throws Exception {
    return LiveEngine.following(
        log,
        new PlantNow(new PlantFiles(List.of(log), null, null, List.of(), limits.path(), null)),
        () -> SimulatedLog.NOW,
        Duration.ofMillis(10));
  }

  private static Snapshot until(LiveEngine engine, Predicate<Snapshot> wanted)
      throws InterruptedException {
    for (int tries = 0; tries < 6000 && !wanted.test(engine.snapshot()); tries++) {
      Thread.sleep(10);
    }
    assertThat(wanted.test(engine.snapshot())).isTrue();
    return engine.snapshot();
  }

  private static List<LimitsUsed> used(Snapshot snapshot) {
    AuditReport report = snapshot.report();
    return report == null ? List.of() : report.characteristics().get(0).monitoring().used();
  }

  @Test
  void judgesByApprovedLimitsFromTheFirstAnodeOn() throws Exception {
    Path before = Files.writeString(folder.resolve("before.csv"), LOG.text(2000));
    LimitsFile limits = approve(before, Instant.EPOCH);
    Path log = Files.writeString(folder.resolve("log.csv"), LOG.text(1));
    try (LiveEngine engine = following(log, limits)) {
      engine.start();
      Snapshot first = until(engine, snapshot -> snapshot.rows() == 1 && !snapshot.reading());
      WheelNow.Judged mass = first.wheels().get(0).characteristics().get(0);
      assertThat(mass.limits()).isNotNull();
      assertThat(used(first)).extracting(LimitsUsed::source).containsExactly("approved");

      Files.writeString(
          log, String.join("\n", LOG.lines().subList(1, 3000)) + "\n", StandardOpenOption.APPEND);
      Snapshot all = until(engine, snapshot -> snapshot.rows() == 3000 && !snapshot.reading());
      AuditReport audit = Audit.run(read(log), PlantRecords.of(limits.read().book()));
      assertThat(until(engine, s -> s.report() != null && !s.report().signals().isEmpty()))
          .isNotNull();
      assertThat(all.wheels().get(0).characteristics().get(0).limits()).isEqualTo(mass.limits());
      assertThat(audit.characteristics().get(0).monitoring().used().get(0).who()).isEqualTo("Ana");
    }
  }

  @Test
  void takesUpAVersionThatIsApprovedWhileItFollows() throws Exception {
    Path log = Files.writeString(folder.resolve("log.csv"), LOG.text(2500));
    LimitsFile limits = LimitsFile.beside(null, log);
    try (LiveEngine engine = following(log, limits)) {
      engine.start();
      Snapshot own = until(engine, snapshot -> !snapshot.reading());
      assertThat(used(own)).extracting(LimitsUsed::source).containsExactly("proposed");

      approve(
          log,
          Instant.ofEpochMilli(own.wheels().get(0).last().castAtMillis()).minusSeconds(8 * 3600));
      Snapshot taken = until(engine, snapshot -> used(snapshot).size() == 2);
      assertThat(used(taken))
          .extracting(LimitsUsed::source)
          .containsExactly("proposed", "approved");
      assertThat(taken.plantTrouble()).isNull();

      String whole = Files.readString(limits.path());
      Files.writeString(limits.path(), whole.replaceFirst("Ana", "Bea"));
      Snapshot damaged = until(engine, snapshot -> snapshot.plantTrouble() != null);
      assertThat(damaged.plantTrouble())
          .asString()
          .contains("limits.jsonl:1: this line is damaged");
      assertThat(used(damaged)).isEqualTo(used(taken));
    }
  }
}
