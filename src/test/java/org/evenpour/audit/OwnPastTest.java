package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wheels of one to three molds, or logs of so few: each mold is held against its own past. */
class OwnPastTest {
  private static final int TURNS = 300;

  @TempDir Path folder;

  /**
   * Mass of turns of s.d. 0.8 kg, φ 0.5, and of pours of s.d. 1 kg; from a turn on the last mold
   * pours otherwise, or all follow a setting that steps.
   */
  private AuditReport audit(int molds, long seed, double by, double bySetting) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg,level_mm\n");
    double effect = random.nextGaussian();
    double level = 0;
    for (int t = 0; t < TURNS; t++) {
      effect = 0.5 * effect + Math.sqrt(0.75) * random.nextGaussian();
      level = 0.5 * level + random.nextGaussian();
      double set = level + (t >= 200 && bySetting != 0 ? 10 : 0);
      for (int m = 0; m < molds; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(660L * t + 25L * m);
        double mass = 390 + m + 0.8 * effect + random.nextGaussian() + bySetting * set;
        mass += m == molds - 1 && t >= 200 ? by : 0;
        log.append(String.format(Locale.ROOT, "%s,%d,%d,%.4f,%.3f%n", at, t + 1, m + 1, mass, set));
      }
    }
    Path file = Files.writeString(folder.resolve("log.csv"), log.toString());
    return Audit.run(
        LogReader.read(
            List.of(file),
            Profiles.NONE,
            List.of(),
            null,
            null,
            SetAside.nowhere(),
            Progress.NONE));
  }

  @Test
  void findsAMoldThatStepsAwayFromItsOwnPast() throws Exception {
    for (int molds = 1; molds <= 3; molds++) {
      AuditReport report = audit(molds, 11 + molds, 4, 0);

      assertThat(report.characteristics().get(0).monitoring().notLookedFor()).isNull();
      assertThat(report.notes()).anyMatch(note -> note.key().equals("note.own"));
      Signal signal =
          report.signals().stream().filter(s -> s.size() > 2.5).findFirst().orElseThrow();
      assertThat(signal.scope()).isEqualTo(Scope.MOLD);
      assertThat(signal.mold()).isEqualTo(Integer.toString(molds));
      assertThat(signal.direction()).isEqualTo(Direction.HIGH);
      assertThat(signal.sinceTurn()).isBetween(198, 204);
      assertThat(signal.size()).isCloseTo(4, within(0.8));
    }
  }

  @Test
  void staysNearItsBudgetOfFalseAlarms() throws Exception {
    int signals = 0;
    double shifts = 0;
    for (int seed = 1; seed <= 40; seed++) {
      signals += audit(1 + seed % 3, seed, 0, 0).signals().size();
      shifts += TURNS * 660 / 3600.0 / 8;
    }
    // One a shift; each record is its own base, so that fewer are left, and signals come in pairs.
    assertThat(signals / shifts).isBetween(0.4, 1.15);
  }

  @Test
  void namesTheSettingThatItFollows() throws Exception {
    AuditReport report = audit(1, 5, 0, 0.3);
    Signal signal = report.signals().get(report.signals().size() - 1);
    assertThat(signal.sinceTurn()).isBetween(196, 206);
    assertThat(signal.links().get(0).name()).isEqualTo("level_mm");
    assertThat(signal.links().get(0).evidence()).isEqualTo(Evidence.STRONG);
  }
}
