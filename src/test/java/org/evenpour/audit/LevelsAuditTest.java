package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LevelsAuditTest {
  @TempDir Path folder;

  private static EffectInFull mass(AuditReport report, String setting) {
    return MadeCrews.setting(report, setting).effects().get(0).inFull();
  }

  /**
   * (0.12² + 0.04² + 0.16²)/3 = 0.0139 kg² between crews of 1.0139 in all. All within half a sigma
   * of a turn's mean.
   */
  @Test
  void tellsWhatEachCrewDoesAndWhichPartOfTheVarianceThatIs() throws Exception {
    double[] truly = {0.12, 0.04, -0.16};
    EffectInFull crew = mass(MadeCrews.audit(folder, truly), "crew");
    Levels levels = Objects.requireNonNull(crew.levels());
    assertThat(crew.known()).isEqualTo(Known.PROVEN);
    assertThat(levels.p()).isLessThan(0.001);
    assertThat(levels.each()).extracting(Level::name).isEqualTo(List.of("K1", "K2", "K3"));
    for (int i = 0; i < truly.length; i++) {
      Level level = levels.each().get(i);
      assertThat(truly[i]).isBetween(level.low(), level.high());
      assertThat(level.high() - level.low()).isBetween(0.05, 0.3);
      assertThat(level.visits()).isEqualTo(8);
      assertThat(level.turns()).isBetween(60, 80);
      assertThat(level.compared()).isTrue();
    }
    Estimate share = Objects.requireNonNull(crew.share());
    assertThat(share.value()).isCloseTo(0.0139 / 1.0139, within(0.008));
    assertThat(share.low()).isNull();
  }

  /** Crews that differ so much that each visit is a signal: it counts all the same. */
  @Test
  void tellsOfCrewsThatAreSignalsWheneverTheyCome() throws Exception {
    double[] truly = {1.5, 0, -1.5};
    AuditReport report = MadeCrews.audit(folder, truly);
    assertThat(report.signals()).isNotEmpty();
    EffectInFull crew = mass(report, "crew");
    assertThat(crew.known()).isEqualTo(Known.PROVEN);
    List<Level> levels = Objects.requireNonNull(crew.levels()).each();
    for (int i = 0; i < truly.length; i++) {
      assertThat(truly[i]).isBetween(levels.get(i).low(), levels.get(i).high());
      assertThat(levels.get(i).visits()).isEqualTo(8);
    }
    // Only the noise of ten turns of ten molds is left between the visits of one crew.
    assertThat(levels.get(0).high() - levels.get(0).low()).isLessThan(0.3);
  }

  @Test
  void tellsThatCrewsDoNextToNothing() throws Exception {
    EffectInFull crew = mass(MadeCrews.audit(folder, 0, 0, 0), "crew");
    assertThat(crew.known()).isEqualTo(Known.SMALL);
    assertThat(crew.share()).isNull();
    assertThat(Objects.requireNonNull(crew.levels()).p()).isGreaterThan(0.05);
  }

  @Test
  void cannotTellWhatABatchDoesThatNeverCameBack() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0, 0);
    assertThat(mass(report, "wash_batch")).isEqualTo(EffectInFull.CAME_ONCE);
    assertThat(mass(MadeCrews.audit(folder, 0), "crew")).isEqualTo(EffectInFull.NOTHING);
  }
}
