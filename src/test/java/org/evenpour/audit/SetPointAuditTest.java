package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Direction;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Answer;
import org.evenpour.findings.SetPointReport.Replay;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Adjust or leave alone, on logs whose turns are given. */
class SetPointAuditTest {
  private static final String PROFILE =
      "characteristics:\n  mass: {unit: kg, lower: 380, target: 390, upper: 400}\n";

  @TempDir Path folder;

  private SetPointReport of(
      int turns, IntToDoubleFunction mass, @Nullable IntToDoubleFunction setPoint, String profile)
      throws Exception {
    return setPoints(MadeWheel.of(folder, turns, mass, setPoint, profile).wheels()).get(0);
  }

  private static List<SetPointReport> setPoints(List<WheelRecord> wheels) {
    return wheels.stream()
        .flatMap(
            wheel -> SetPointAudit.of(wheel, TurnIndex.of(wheel), List.of(), List.of()).stream())
        .toList();
  }

  private static double[] white(int n, long seed) {
    Random random = new Random(seed);
    double[] x = new double[n];
    for (int t = 0; t < n; t++) {
      x[t] = 390 + 0.6 * random.nextGaussian();
    }
    return x;
  }

  private static double[] drifting(int n, double lambda, double sigma, long seed) {
    Random random = new Random(seed);
    double[] x = new double[n];
    double level = 390;
    for (int t = 0; t < n; t++) {
      double a = sigma * random.nextGaussian();
      x[t] = level + a;
      level += lambda * a;
    }
    return x;
  }

  private static Replay known(@Nullable Replay replay) {
    return Objects.requireNonNull(replay);
  }

  /**
   * Rule 2 of the funnel: compensating after every point doubles the variance where the process
   * stands still (Deming, Out of the Crisis, 1986). Over 400 turns the ratio has a standard error
   * near 0.1.
   */
  @Test
  void compensatingAWhiteRecordDoublesTheVarianceAndTheAnswerIsLeaveIt() throws Exception {
    double[] x = white(400, 1986);
    SetPointReport its = of(x.length, t -> x[t], null, PROFILE);
    assertThat(its.turns()).isEqualTo(400);
    assertThat(its.lambda()).isZero();
    assertThat(its.answer()).isEqualTo(Answer.LEAVE);
    assertThat(its.moveBy()).isNull();
    assertThat(its.turnsBetweenMoves()).isNull();
    double alone = known(its.leftAlone()).sd();
    double always = known(its.compensated()).sd();
    assertThat(always * always / (alone * alone)).isCloseTo(2, within(0.3));
    assertThat(known(its.withDeadband()).moves()).isZero();
    assertThat(known(its.withDeadband()).rms()).isEqualTo(known(its.leftAlone()).rms());
  }

  @Test
  void theDeadbandWinsWhereTheLevelWanders() throws Exception {
    double[] x = drifting(400, 0.3, 0.8, 1963);
    SetPointReport its = of(x.length, t -> x[t], null, PROFILE);
    assertThat(its.lambdaLow()).isLessThan(0.3);
    assertThat(its.lambdaHigh()).isGreaterThan(0.3);
    Replay banded = known(its.withDeadband());
    assertThat(banded.rms()).isLessThan(0.6 * known(its.leftAlone()).rms());
    assertThat(banded.rms()).isLessThan(known(its.compensated()).rms());
    // with some moves in 400 turns, against 400
    assertThat(banded.moves()).isBetween(5L, 60L);
    // the interval between moves is an average over records: half or twice in one of them
    Double between = Objects.requireNonNull(its.turnsBetweenMoves());
    assertThat(400.0 / banded.moves()).isBetween(between / 2, between * 2);
  }

  /** A level that stepped is to be moved; not while nobody knows what the scale read before. */
  @Test
  void noKilogramsWhereTheScaleWasJustChecked() throws Exception {
    double[] x = white(120, 7);
    CastingRecord record = MadeWheel.of(folder, 120, t -> x[t] + 4, null, PROFILE);
    WheelRecord wheel = record.wheels().get(0);
    TurnIndex index = TurnIndex.of(wheel);
    long last = wheel.castAtMillis().get(wheel.rows() - 1);
    SetPointReport plain = SetPointAudit.of(wheel, index, List.of(), List.of()).get(0);
    assertThat(plain.answer()).isEqualTo(Answer.MOVE);
    assertThat(plain.moveBy()).isEqualTo(-4.0);
    assertThat(answerAfterCheck(wheel, index, last - 3_600_000)).isEqualTo(Answer.JUST_CHECKED);
    // long enough ago, or in a time that the record does not reach
    assertThat(answerAfterCheck(wheel, index, last - 30 * 300_000)).isEqualTo(Answer.MOVE);
    assertThat(answerAfterCheck(wheel, index, last + 60_000)).isEqualTo(Answer.MOVE);
  }

  private static Answer answerAfterCheck(WheelRecord wheel, TurnIndex index, long at) {
    CastingEvent check =
        new CastingEvent(
            Instant.ofEpochMilli(at), wheel.wheel(), null, EventKind.SCALE_CHECKED, "", "events");
    SetPointReport its = SetPointAudit.of(wheel, index, List.of(), List.of(check)).get(0);
    assertThat(its.moveBy() == null).isEqualTo(its.answer() != Answer.MOVE);
    return its.answer();
  }

  /** In the sample week ladle side A drifts, and its scale is checked on 7 March at 12:53. */
  @Test
  void aSideWhoseSignalIsOpenIsWeighedAndNotMoved() throws Exception {
    Profiles profiles = ProfileReader.read(Sample.TORDILLA.resolve("profile.yaml"));
    try (SetAside nowhere = SetAside.nowhere()) {
      CastingRecord record =
          LogReader.read(
              List.of(Sample.TORDILLA.resolve("casting-log.csv")),
              profiles,
              EventsReader.read(Sample.TORDILLA.resolve("events.csv"), profiles),
              null,
              Instant.parse("2026-03-07T02:00:00Z"),
              nowhere,
              Progress.NONE);
      AuditReport report = Audit.run(record);
      SetPointReport its = report.setPoints().get(0);
      assertThat(its.side()).isEqualTo("A");
      assertThat(its.answer()).isEqualTo(Answer.WEIGH_FIRST);
      assertThat(its.moveBy()).isNull();
      assertThat(its.lookFirst()).isNotNull();
      SetPointReport.Ordinary ordinary = Objects.requireNonNull(its.ordinary());
      assertThat(ordinary.turns()).isLessThan(its.turns());
      assertThat(ordinary.signals()).contains(its.lookFirst());
      // Without what the signals tell of, there is little to adjust.
      assertThat(ordinary.leftAlone().rms()).isLessThan(known(its.leftAlone()).rms());
    }
  }

  /** Whoever says "weigh a known mass" of a side does not say kilograms of it as well. */
  @Test
  void aSideWhoseAnodesRunThinIsNotMovedEither() throws Exception {
    Path log = folder.resolve("sides.csv");
    double[] x = white(120, 11);
    StringBuilder rows = new StringBuilder("cast_at,wheel,turn,mold,ladle,mass_kg\n");
    Instant begin = Instant.parse("2026-03-01T06:00:00Z");
    for (int t = 0; t < 120; t++) {
      for (int m = 1; m <= 12; m++) {
        rows.append(begin.plusSeconds(t * 900L + m * 60L)).append(",T1,").append(t + 1).append(',');
        rows.append(m).append(m % 2 == 0 ? ",A," : ",B,").append(x[t] + 4).append('\n');
      }
    }
    Files.writeString(log, rows);
    Path profile = Files.writeString(folder.resolve("sides.yaml"), PROFILE);
    try (SetAside nowhere = SetAside.nowhere()) {
      WheelRecord wheel =
          LogReader.read(
                  List.of(log),
                  ProfileReader.read(profile),
                  List.of(),
                  null,
                  null,
                  nowhere,
                  Progress.NONE)
              .wheels()
              .get(0);
      for (String quantity : List.of(Quantity.THICKNESS, Quantity.WEDGE)) {
        Map<String, Answer> bySide = new TreeMap<>();
        for (SetPointReport its :
            SetPointAudit.of(wheel, TurnIndex.of(wheel), List.of(ofSideA(quantity)), List.of())) {
          bySide.put(Objects.requireNonNull(its.side()), its.answer());
        }
        // A wedge is a mold's matter, and the other side may be moved.
        assertThat(bySide)
            .containsEntry("A", quantity.equals(Quantity.WEDGE) ? Answer.MOVE : Answer.LOOK_FIRST)
            .containsEntry("B", Answer.MOVE);
      }
    }
  }

  private static AuditReport.Signal ofSideA(String quantity) {
    Instant at = Instant.parse("2026-03-02T06:00:00Z");
    return new AuditReport.Signal(
        "S1",
        "T1",
        quantity,
        Scope.SIDE,
        null,
        "A",
        90,
        120,
        at,
        at,
        90,
        at,
        true,
        List.of(),
        Direction.LOW,
        -0.2,
        null,
        null,
        -3,
        null,
        List.of());
  }

  /** Points as published in the report are the levels that were put in, missing molds or not. */
  @Test
  void levelsDoNotDependOnWhichMoldsWereThere() throws Exception {
    double[] x = white(60, 5);
    SetPointReport its = of(x.length, t -> x[t], null, PROFILE);
    assertThat(its.points()).hasSize(60);
    for (int t = 0; t < 60; t++) {
      assertThat(its.points().get(t).turn()).isEqualTo(t + 2);
      assertThat(its.points().get(t).deviation()).isCloseTo(x[t] - 390, within(1e-6));
    }
  }

  @Test
  void aLevelThatStandsOffTargetIsMovedOnceByRoundedSteps() throws Exception {
    double[] x = white(100, 7);
    SetPointReport its = of(x.length, t -> x[t] + 1.6, null, PROFILE);
    assertThat(its.answer()).isEqualTo(Answer.MOVE);
    assertThat(its.moveBy()).isEqualTo(-1.5);
    assertThat(its.forecast()).isCloseTo(1.6, within(0.2));
    assertThat(its.forecastLow()).isLessThan(1.6);
    assertThat(its.forecastHigh()).isGreaterThan(1.6);
    assertThat(known(its.withDeadband()).rms()).isLessThan(known(its.leftAlone()).rms());
  }

  /**
   * The crew moved the set-point by −2 kg half-way and the mass followed: without those moves the
   * record stands still, and what is left is what today's set-point leaves.
   */
  @Test
  void movesOfTheSetPointAreTakenOut() throws Exception {
    double[] x = white(200, 11);
    IntToDoubleFunction setPoint = t -> t < 100 ? 390 : 388;
    SetPointReport its =
        of(x.length, t -> x[t] + 2 + setPoint.applyAsDouble(t) - 390, setPoint, PROFILE);
    assertThat(its.movesTakenOut()).isEqualTo(1);
    assertThat(its.setPoint()).isEqualTo(388);
    assertThat(its.aim()).isEqualTo(390);
    assertThat(its.lambda()).isZero();
    assertThat(its.answer()).isEqualTo(Answer.LEAVE);
    assertThat(its.forecast()).isCloseTo(0, within(0.2));
    // the same masses, if the log did not say that it was moved, wander
    SetPointReport unsaid =
        of(x.length, t -> x[t] + 2 + setPoint.applyAsDouble(t) - 390, null, PROFILE);
    assertThat(unsaid.lambda()).isGreaterThan(0.05);
  }

  /** A set-point that trims can't be told from one that follows an order. */
  @Test
  void aSetPointThatMovedWithoutATargetGivesNoAim() throws Exception {
    double[] x = white(60, 13);
    IntToDoubleFunction setPoint = t -> t < 30 ? 390 : 388;
    assertThat(of(x.length, t -> x[t], setPoint, "").answer()).isEqualTo(Answer.NO_AIM);
    assertThat(of(x.length, t -> x[t], null, "").answer()).isEqualTo(Answer.NO_AIM);
    assertThat(of(x.length, t -> x[t], t -> 390, "").aim()).isEqualTo(390);
    assertThat(of(x.length, t -> x[t], t -> 420, PROFILE).answer()).isEqualTo(Answer.NO_AIM);
  }

  @Test
  void tooFewTurnsAreNoGroundForAMove() throws Exception {
    double[] x = white(19, 17);
    SetPointReport its = of(x.length, t -> x[t] + 5, null, PROFILE);
    assertThat(its.answer()).isEqualTo(Answer.TOO_SHORT);
    assertThat(its.moveBy()).isNull();
  }

  /** The more a move costs, the wider the deadband. */
  @Test
  void theDeadbandFollowsTheCosts() throws Exception {
    double[] x = drifting(200, 0.3, 0.8, 19);
    Double usual = of(x.length, t -> x[t], null, PROFILE).deadband();
    Double dear = of(x.length, t -> x[t], null, PROFILE + "set_point_move_costs: 100\n").deadband();
    Double free = of(x.length, t -> x[t], null, PROFILE + "set_point_move_costs: 0\n").deadband();
    assertThat(dear).isGreaterThan(1.4 * Objects.requireNonNull(usual));
    assertThat(free).isZero();
  }

  /** The board asks of a record that no longer grows; set-points are a column of it like others. */
  @Test
  void answersTheSameOfARecordThatNoLongerGrows() throws Exception {
    double[] x = drifting(120, 0.3, 0.6, 7);
    List<WheelRecord> growing =
        MadeWheel.of(folder, x.length, t -> x[t], t -> t < 60 ? 390 : 391, PROFILE).wheels();
    List<WheelRecord> frozen = growing.stream().map(WheelRecord::frozen).toList();

    List<SetPointReport> expected = setPoints(growing);

    assertThat(expected.get(0).movesTakenOut()).isEqualTo(1);
    assertThat(setPoints(frozen)).isEqualTo(expected);
  }
}
