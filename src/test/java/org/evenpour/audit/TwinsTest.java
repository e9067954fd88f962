package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.report.EffectSentences;
import org.evenpour.report.Sentences;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two settings of a correlation near 0.95, of which one acts. */
class TwinsTest {
  private static final int TURNS = 240;
  private static final int FROM = 120;
  private static final int TO = 160;

  @TempDir Path folder;

  /** The one that acts stands off by four s.d. for forty turns, and the other one with it. */
  private AuditReport audit(long seed, double phi, double otherPhi, double perUnit)
      throws Exception {
    MadeSettings wheel = new MadeSettings(TURNS, seed);
    double[] acts = wheel.wandering(phi, 1);
    double[] twin = wheel.wandering(otherPhi, Math.sqrt(1 / (0.95 * 0.95) - 1));
    for (int t = 0; t < TURNS; t++) {
      acts[t] += t >= FROM && t < TO ? 4 : 0;
      twin[t] += acts[t];
    }
    wheel.setting("acts", acts, perUnit).setting("twin", twin, 0);
    return wheel.setting("idle", wheel.wandering(0.9, 1), 0).audit(folder);
  }

  private static Effect effect(AuditReport report, String name) {
    return MadeCrews.setting(report, name).effects().get(0);
  }

  /** Whatever they move like, the idle one is never told of alone. */
  @Test
  void theIdleTwinIsNamedWithTheOneThatActs() throws Exception {
    int together = 0;
    for (int seed = 1; seed <= 12; seed++) {
      boolean isSlow = seed % 2 == 0;
      AuditReport report = audit(seed, isSlow ? 0.95 : 0.7, isSlow ? 0 : 0.7, 0.3);
      for (Signal signal : report.signals()) {
        boolean isIt =
            signal.scope() == Scope.WHEEL
                && signal.direction() == Direction.HIGH
                && Math.abs(signal.sinceTurn() - 1 - FROM) <= 6;
        Link first = signal.links().get(0);
        if (isIt && first.evidence() != Evidence.NONE) {
          assertThat(List.of("acts", "twin")).contains(first.name());
          assertThat(first.name().equals("acts") || first.togetherWith().contains("acts")).isTrue();
          together += first.togetherWith().isEmpty() ? 0 : 1;
        }
      }
    }
    assertThat(together).isGreaterThan(3);
  }

  /** In the table as well: neither is proven, and both say with whom they move. */
  @Test
  void theTableNamesBothWhereItCannotTellThemApart() throws Exception {
    int named = 0;
    int untold = 0;
    for (int seed = 1; seed <= 8; seed++) {
      AuditReport report = audit(seed, 0.7, 0.7, 0.2);
      Effect acts = effect(report, "acts");
      Effect twin = effect(report, "twin");
      assertThat(twin.inFull().known()).isNotEqualTo(Known.PROVEN);
      assertThat(effect(report, "idle").inFull().togetherWith()).isEmpty();
      boolean isTold = acts.inFull().known() == Known.PROVEN;
      untold += isTold ? 0 : 1;
      if (acts.inFull().togetherWith().isEmpty()) {
        assertThat(twin.inFull().togetherWith()).isEmpty();
      } else {
        named++;
        assertThat(isTold).isFalse();
        assertThat(acts.inFull().togetherWith()).isEqualTo(List.of("twin"));
        assertThat(twin.inFull().togetherWith()).isEqualTo(List.of("acts"));
        EffectSentences said =
            new EffectSentences(Sentences.of(report, Words.english(), ZoneOffset.UTC));
        assertThat(said.of(MadeCrews.setting(report, "twin"), twin))
            .contains(
                "Acts moves together with it on this record: only moving one of them alone would"
                    + " tell which acts.");
      }
    }
    assertThat(untold).isGreaterThan(3);
    assertThat(named).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * untold));
  }
}
