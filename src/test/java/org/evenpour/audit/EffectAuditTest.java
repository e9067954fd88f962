package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.EffectInFull.Held;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.findings.EffectInFull.Trial;
import org.evenpour.findings.EffectInFull.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A wheel on which it is known what each setting does: pours differ by 1 kg by themselves. */
class EffectAuditTest {
  private static final int TURNS = 240;
  private static final int MOLDS = 10;
  private static final String TOLERANCE =
      "characteristics:\n  mass: {unit: kg, lower: 384, target: 390, upper: 396}\n";

  @TempDir Path folder;

  /** What a turn and a pour are like: {mass without its own scatter, then the settings}. */
  private interface Pour {
    double[] of(int turn, SplittableRandom random);
  }

  private AuditReport audit(List<String> settings, Pour pour) throws Exception {
    return audit(TURNS, settings, pour);
  }

  private AuditReport audit(int turns, List<String> settings, Pour pour) throws Exception {
    SplittableRandom random = new SplittableRandom(20261125);
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg");
    settings.forEach(name -> log.append(',').append(name));
    log.append('\n');
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        double[] values = pour.of(t, random);
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * t + 30L * m);
        log.append(String.format(Locale.ROOT, "%s,%d,%d", at, t + 1, m + 1));
        values[0] += random.nextGaussian();
        for (double value : values) {
          log.append(String.format(Locale.ROOT, ",%.4f", value));
        }
        log.append('\n');
      }
    }
    return MadeCrews.audited(folder, log, TOLERANCE);
  }

  private static Effect effect(AuditReport report, String name) {
    return MadeCrews.setting(report, name).effects().get(0);
  }

  private AuditReport acting() throws Exception {
    return audit(
        List.of("acts", "idle", "still"),
        (t, random) -> {
          double x = 10 + random.nextGaussian();
          return new double[] {390 + 2 * (x - 10), x, random.nextGaussian(), 7};
        });
  }

  /** 4 kg² of 5 come from the setting; everything else has an s.d. of 1 kg. */
  @Test
  void tellsThePartOfTheVarianceThatASettingMakes() throws Exception {
    Effect acts = effect(acting(), "acts");
    Estimate share = Objects.requireNonNull(acts.inFull().share());
    assertThat(acts.inFull().known()).isEqualTo(Known.PROVEN);
    assertThat(share.value()).isCloseTo(0.8, within(0.03));
    assertThat(share.low()).isLessThan(share.value());
    assertThat(share.high()).isGreaterThan(share.value());
  }

  /** (6 − 2·1)/2 = 2 to either side of 10. */
  @Test
  void tellsWhereASettingKeepsTheMassWithinTolerance() throws Exception {
    AuditReport report = acting();
    Window window = Objects.requireNonNull(effect(report, "acts").inFull().window());
    double low = Objects.requireNonNull(window.low());
    double high = Objects.requireNonNull(window.high());
    assertThat(low).isCloseTo(8, within(0.15));
    assertThat(high).isCloseTo(12, within(0.15));
    // The steepest effect of the interval is the one that counts.
    CharacteristicReport mass = report.characteristics().get(0);
    Effect acts = effect(report, "acts");
    Estimate share = Objects.requireNonNull(acts.inFull().share());
    double rest = 2 * Objects.requireNonNull(mass.overall().sd()) * Math.sqrt(1 - share.value());
    double settingMean = Objects.requireNonNull(MadeCrews.setting(report, "acts").mean());
    double steepest = Objects.requireNonNull(acts.high());
    assertThat(mass.overall().mean() + steepest * (high - settingMean) + rest)
        .isCloseTo(396, within(3e-4)); // the ends are in ten-thousandths, as the setting is
    assertThat(mass.overall().mean() + steepest * (low - settingMean) - rest)
        .isCloseTo(384, within(3e-4));
    Held held = Objects.requireNonNull(window.held());
    assertThat(window.isBorneOut()).isTrue();
    assertThat(held.inside() + held.beyond()).isEqualTo(mass.overall().count());
    assertThat((double) held.beyondOut() / held.beyond())
        .isGreaterThan(10.0 * held.insideOut() / held.inside());
  }

  /**
   * One anode in 200 lies far outside whatever the setting does: the line of the mean helps none.
   */
  @Test
  void whatTheRecordDeniesIsNoWindow() throws Exception {
    AuditReport report =
        audit(
            List.of("acts"),
            (t, random) -> {
              double x = 10 + random.nextGaussian();
              boolean isWild = random.nextInt(200) == 0;
              return new double[] {390 + 0.5 * (x - 10) + (isWild ? 15 : 0), x};
            });
    Window window = Objects.requireNonNull(effect(report, "acts").inFull().window());
    Held held = Objects.requireNonNull(window.held());
    assertThat(held.insideOut()).isPositive();
    assertThat(window.isBorneOut()).isFalse();
  }

  @Test
  void tellsTheIdleFromTheStill() throws Exception {
    AuditReport report = acting();
    assertThat(effect(report, "idle").inFull().known()).isEqualTo(Known.SMALL);
    assertThat(effect(report, "idle").inFull().window()).isNull();
    assertThat(effect(report, "idle").inFull().trial()).isNull();
    assertThat(effect(report, "still").inFull()).isEqualTo(EffectInFull.NOTHING);
    assertThat(effect(report, "still").perUnit()).isNull();
  }

  @Test
  void findsNoWindowWhereEverythingElseScattersTooWidely() throws Exception {
    AuditReport report =
        audit(
            List.of("acts"),
            (t, random) -> {
              double x = random.nextGaussian();
              return new double[] {390 + x + 4 * random.nextGaussian(), x};
            });
    assertThat(effect(report, "acts").inFull().window()).isEqualTo(new Window(null, null, null));
  }

  @Test
  void seesThatALineIsBent() throws Exception {
    assertThat(Objects.requireNonNull(effect(acting(), "acts").inFull().line()).isBent()).isFalse();
    AuditReport bent =
        audit(
            List.of("acts"),
            (t, random) -> {
              double x = random.nextGaussian();
              return new double[] {390 + x + 0.4 * x * x, x};
            });
    assertThat(Objects.requireNonNull(effect(bent, "acts").inFull().line()).isBent()).isTrue();
  }

  /** A setting of the whole wheel that stood elsewhere for a while, on a wheel that wanders. */
  @Test
  void proposesATrialWhereTheRecordCannotTell() throws Exception {
    double[] level = new double[TURNS];
    SplittableRandom wander = new SplittableRandom(5);
    for (int t = 1; t < TURNS; t++) {
      level[t] = 0.95 * level[t - 1] + 0.5 * wander.nextGaussian();
    }
    AuditReport report =
        audit(
            List.of("seldom"), (t, random) -> new double[] {390 + level[t], t / 80 == 1 ? 21 : 20});
    Effect seldom = effect(report, "seldom");
    assertThat(seldom.inFull().known()).isEqualTo(Known.OPEN);
    Trial trial = Objects.requireNonNull(seldom.inFull().trial());
    SettingReport setting = MadeCrews.setting(report, "seldom");
    assertThat(trial.low()).isBetween(setting.minimum(), setting.maximum());
    assertThat(trial.high()).isBetween(trial.low(), setting.maximum());
    assertThat(trial.power()).isBetween(0.9, 0.95);
    assertThat(trial.turns() % (2 * trial.holdTurns())).isZero();
    // A third of the mass's s.d.
    assertThat(trial.difference())
        .isCloseTo(
            Objects.requireNonNull(report.characteristics().get(0).overall().sd()) / 3,
            within(1e-12));
  }

  /** However clear it looks from pour to pour. */
  @Test
  void aRecordOfAFewTurnsProvesNothing() throws Exception {
    for (int turns : new int[] {4, 12, 20}) {
      AuditReport report =
          audit(
              turns,
              List.of("acts"),
              (t, random) -> {
                double x = random.nextGaussian();
                return new double[] {390 + 2 * x, x};
              });
      assertThat(effect(report, "acts").inFull().known()).isEqualTo(Known.OPEN);
      assertThat(effect(report, "acts").inFull().window()).isNull();
    }
  }
}
