package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.findings.SettingsWatched.Gap;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.findings.SettingsWatched.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wheels whose settings are known: what moved was moved here, and what is sound was drawn so. */
class SettingWatchTest {
  private static final int TURNS = 240;
  private static final int MOLDS = 12;
  private static final String PROFILE =
      """
      characteristics:
        mass: {unit: kg, lower: 384, target: 390, upper: 396}
      settings:
        spray_l_min: {group: cooling, lag_turns: 1}
      false_alarms_per_shift: 0.2
      """;

  @TempDir private Path folder;

  /** What a setting is at a turn and mold. */
  private interface Value {
    double at(int turn, int mold);
  }

  private static Value steps(int from, int to, double by, int firstMold, int lastMold) {
    return (t, m) -> t >= from && t < to && m >= firstMold && m <= lastMold ? by : 0;
  }

  private static Value nothing() {
    return (t, m) -> 0;
  }

  /** A spray of 240 L/min that scatters by 2 from pour to pour and by 1.5 from turn to turn. */
  private AuditReport audit(Value spray, double kgPerUnit, String profile) throws Exception {
    SplittableRandom random = new SplittableRandom(20261130);
    StringBuilder log =
        new StringBuilder(
            "cast_at,turn,mold,mass_kg,spray_l_min,fixed_s,held_bar,rare_c,walk_mm\n");
    double shared = 0;
    double walk = 0;
    double[] before = new double[MOLDS];
    for (int t = 0; t < TURNS; t++) {
      shared = 0.5 * shared + 1.3 * random.nextGaussian();
      walk += random.nextGaussian();
      for (int m = 0; m < MOLDS; m++) {
        double its = shared + 2 * random.nextGaussian() + spray.at(t, m);
        log.append(
            String.format(
                Locale.ROOT,
                "%s,%d,%d,%.3f,%.1f,7,%d,%s,%.2f\n",
                at(t, m),
                t + 1,
                m + 1,
                390 + random.nextGaussian() + kgPerUnit * before[m],
                240 + its,
                3 + t / 50 % 2,
                t % 40 == 0 && m == 0 ? "" + (20 + random.nextInt(9)) : "",
                walk));
        before[m] = its;
      }
    }
    return MadeCrews.audited(folder, log, profile);
  }

  private static Instant at(int turn, int mold) {
    return Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * turn + 45L * mold);
  }

  @Test
  void tellsOfNeighboringMoldsWhoseSettingFellBeforeTheirAnodesShowIt() throws Exception {
    AuditReport report = audit(steps(180, TURNS, -25, 4, 6), 0, PROFILE);
    List<Move> moves = report.watched().alone();
    assertThat(moves).hasSize(1);
    Move move = moves.get(0);
    assertThat(move.setting()).isEqualTo("spray_l_min");
    assertThat(move.scope()).isEqualTo(Scope.MOLD);
    assertThat(move.molds()).containsExactly("5", "6", "7");
    assertThat(move.direction()).isEqualTo(Direction.LOW);
    assertThat(move.open()).isTrue();
    // turn numbers count from 1; the step is twelve times the scatter of a pour
    assertThat(move.sinceTurn()).isBetween(180, 182);
    assertThat(move.firstTurn()).isBetween(181, 183);
    assertThat(move.movedBy()).isCloseTo(-25, within(2.0));
    assertThat(move.lookFirst()).contains("spray").startsWith("Check first that the mold is dry.");
  }

  @Test
  void neighborsMeetWhereTheWheelCloses() throws Exception {
    AuditReport report =
        audit((t, m) -> t >= 180 && (m == MOLDS - 1 || m < 1) ? 20 : 0, 0, PROFILE);
    assertThat(report.watched().alone())
        .singleElement()
        .extracting(Move::molds)
        .isEqualTo(List.of("12", "1"));
  }

  @Test
  void whatHasReturnedIsNoLongerOpen() throws Exception {
    AuditReport report = audit(steps(120, 150, -25, 4, 6), 0, PROFILE);
    Move move = report.watched().alone().get(0);
    assertThat(move.open()).isFalse();
    assertThat(move.lastTurn()).isBetween(149, 152);
  }

  @Test
  void tellsOfTheWholeWheelAsOneMove() throws Exception {
    AuditReport report = audit(steps(180, TURNS, 12, 0, MOLDS - 1), 0, PROFILE);
    assertThat(report.watched().alone())
        .singleElement()
        .satisfies(
            move -> {
              assertThat(move.scope()).isEqualTo(Scope.WHEEL);
              assertThat(move.molds()).isEmpty();
              assertThat(move.movedBy()).isCloseTo(12, within(2.0));
            });
  }

  @Test
  void oneDisturbanceIsOneSignal() throws Exception {
    AuditReport report = audit(steps(150, TURNS, -25, 4, 6), 0.2, PROFILE);
    // 5 kg at each of three molds, beside 1 kg of scatter: signals of mass, with the spray beside
    List<String> ofThese =
        report.signals().stream()
            .filter(s -> s.scope() == Scope.MOLD && s.open() && s.sinceTurn() >= 150)
            .filter(s -> List.of("5", "6", "7").contains(s.mold()))
            .map(AuditReport.Signal::id)
            .toList();
    assertThat(ofThese).hasSize(3);
    assertThat(report.watched().moves()).hasSize(1);
    assertThat(report.watched().moves().get(0).signals()).containsAll(ofThese);
    assertThat(report.watched().alone()).isEmpty();
  }

  @Test
  void whatHasNoLevelToLeaveIsNotWatchedAndTheReportSaysWhy() throws Exception {
    SettingsWatched watched = audit(nothing(), 0, PROFILE).watched();
    assertThat(watched.moves()).isEmpty();
    assertThat(watched.of("", "spray_l_min"))
        .satisfies(
            spray -> {
              assertThat(spray.scopes()).containsExactly(Scope.MOLD, Scope.WHEEL);
              assertThat(spray.gaps()).isEmpty();
            });
    assertThat(gaps(watched, "fixed_s")).containsExactly(new Gap(null, Reason.HELD));
    assertThat(gaps(watched, "held_bar")).containsExactly(new Gap(null, Reason.HELD));
    assertThat(gaps(watched, "rare_c")).containsExactly(new Gap(null, Reason.SELDOM_RECORDED));
    assertThat(gaps(watched, "walk_mm")).containsExactly(new Gap(Scope.WHEEL, Reason.WANDERS));
  }

  private static List<Gap> gaps(SettingsWatched watched, String setting) {
    SettingsWatched.Watched its = watched.of("", setting);
    return its == null ? List.of() : its.gaps();
  }

  @Test
  void withoutAShareOfTheFalseAlarmsNothingIsWatched() throws Exception {
    AuditReport with = audit(steps(180, TURNS, -25, 4, 6), 0, PROFILE);
    AuditReport without =
        audit(steps(180, TURNS, -25, 4, 6), 0, PROFILE + "settings_alarm_share: 0\n");
    assertThat(without.watched().moves()).isEmpty();
    assertThat(gaps(without.watched(), "spray_l_min"))
        .containsExactly(new Gap(null, Reason.NO_SHARE));
    // its share is taken from the characteristics, whose limits are a little wider with it
    assertThat(limit(with)).isGreaterThan(limit(without));
    assertThat(limit(with)).isLessThan(1.03 * limit(without));
  }

  private static double limit(AuditReport report) {
    Double limit = report.characteristics().get(0).monitoring().shiftLimit();
    return limit == null ? Double.NaN : limit;
  }
}
