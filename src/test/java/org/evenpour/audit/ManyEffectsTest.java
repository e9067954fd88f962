package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.report.Summary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many settings, of which it is known that none does anything. */
class ManyEffectsTest {
  @TempDir Path folder;

  private static List<Effect> proven(AuditReport report) {
    return report.settings().stream()
        .flatMap(setting -> setting.effects().stream())
        .filter(effect -> effect.inFull().known() == Known.PROVEN)
        .toList();
  }

  private static boolean isClear(Effect effect) {
    Double low = effect.low();
    Double high = effect.high();
    return low != null && high != null && (low > 0 || high < 0);
  }

  /** Of a hundred and fifty intervals some seven do not hold zero, in most of these records. */
  @Test
  void nothingIsProvenOfRandomWalks() throws Exception {
    int records = 0;
    int clear = 0;
    for (int seed = 1; seed <= 10; seed++) {
      MadeSettings wheel = new MadeSettings(160, 100 + seed);
      for (int k = 0; k < 15; k++) {
        wheel.setting("walk" + k, wheel.walk(), 0);
      }
      AuditReport report = wheel.audit(folder);
      records += proven(report).isEmpty() ? 0 : 1;
      clear +=
          (int)
              report.settings().stream()
                  .flatMap(setting -> setting.effects().stream())
                  .filter(ManyEffectsTest::isClear)
                  .count();
      assertThat(Summary.text(report, ZoneOffset.UTC))
          .matches(text -> proven(report).isEmpty() != text.contains("What goes with"));
      assertThat(proven(report)).allMatch(effect -> effect.inFull().share() != null);
      report.settings().stream()
          .flatMap(setting -> setting.effects().stream())
          .filter(effect -> effect.inFull().known() != Known.PROVEN)
          .forEach(effect -> assertThat(effect.inFull().window()).isNull());
    }
    assertThat(records).isLessThanOrEqualTo(1);
    // The intervals are those of each effect alone, as before.
    assertThat(clear).isBetween(1, 17);
  }

  /** What truly acts is proven among many that do not. */
  @Test
  void whatActsIsProvenAmongThem() throws Exception {
    MadeSettings wheel = new MadeSettings(160, 7);
    wheel.setting("acts", wheel.wandering(0.8, 1), 1);
    for (int k = 0; k < 15; k++) {
      wheel.setting("walk" + k, wheel.walk(), 0);
    }
    AuditReport report = wheel.audit(folder);
    assertThat(MadeCrews.setting(report, "acts").effects().get(0).inFull().known())
        .isEqualTo(Known.PROVEN);
    assertThat(proven(report)).hasSize(1);
  }
}
