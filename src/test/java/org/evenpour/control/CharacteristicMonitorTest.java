package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.WheelProfile;
import org.junit.jupiter.api.Test;

/** Faults planted in wheels made of numbers; each must be found where it was put. */
class CharacteristicMonitorTest {
  private static final WheelProfile PROFILE = WheelOfNumbers.quietProfile(0.02);
  private static final int TURNS = 300;

  private static List<Episode> episodes(WheelOfNumbers wheel) {
    LimitsInForce limits = wheel.limits(PROFILE);
    return wheel.monitored(limits, PROFILE).episodes();
  }

  @Test
  void saysNothingOfASoundWheel() {
    // One false alarm in 50 shifts is asked for, and this is about eight shifts.
    assertThat(episodes(new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 10))).isEmpty();
  }

  /**
   * One false alarm a shift on twelve sound wheels of eight shifts: about 98 are asked for, and a
   * wheel of one ladle side leaves the sides' tenth unused. Limits that come from the very turns
   * that they judge alarm less often, limits that judge later turns more often: the bounds are
   * wide, and the exact calibration is not claimed here.
   */
  @Test
  void staysNearItsBudgetOfFalseAlarms() {
    WheelProfile one = WheelOfNumbers.quietProfile(1);
    int alarms = 0;
    for (int seed = 100; seed < 112; seed++) {
      WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, seed);
      alarms += wheel.monitored(wheel.limits(one), one).episodes().size();
    }

    assertThat(alarms).isBetween(30, 150);
  }

  @Test
  void findsAMoldThatShiftsAndWhenItReturns() {
    List<Episode> found =
        episodes(new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 11).shift(7, 150, 200, -2.4));

    assertThat(found).hasSize(1);
    Episode episode = found.get(0);
    assertThat(episode.chart()).isEqualTo(Episode.Chart.MOLD);
    assertThat(episode.index()).isEqualTo(7);
    assertThat(episode.direction()).isEqualTo(-1);
    assertThat(episode.sinceTurn()).isBetween(148, 152);
    assertThat(episode.firstTurn()).isBetween(151, 160);
    assertThat(episode.lastTurn()).isBetween(197, 202);
    assertThat(episode.open()).isFalse();
    assertThat(episode.size()).isCloseTo(-2.4, within(4 * 1.2 / Math.sqrt(50)));
    assertThat(episode.tests()).contains(ShiftChart.SUSTAINED_SHIFT, "nine-one-side");
  }

  @Test
  void aNewMoldDoesNotStandWhereTheOldOneStood() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 11);
    CharacteristicMonitor monitor = wheel.monitored(wheel.limits(PROFILE), PROFILE);
    assertThat(monitor.departure(7)).isNotNaN();

    monitor.moldChanged(7);

    assertThat(monitor.departure(7)).isNaN();
    assertThat(monitor.departure(8)).isNotNaN();
  }

  @Test
  void callsADisturbanceOfTheWholeWheelOneSignal() {
    List<Episode> found =
        episodes(new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 12).shiftAll(-1, 150, 190, 3));

    assertThat(found).hasSize(1);
    assertThat(found.get(0).chart()).isEqualTo(Episode.Chart.WHEEL);
    assertThat(found.get(0).direction()).isEqualTo(1);
    assertThat(found.get(0).sinceTurn()).isBetween(147, 153);
  }

  @Test
  void namesTheLadleSideThatMoved() {
    List<Episode> found =
        episodes(new WheelOfNumbers(TURNS, 1.2, 0.6, 0.3, 13, true).shiftAll(0, 150, 190, -2));

    assertThat(found).hasSize(1);
    assertThat(found.get(0).chart()).isEqualTo(Episode.Chart.SIDE);
    assertThat(found.get(0).index()).isZero();
    assertThat(found.get(0).direction()).isEqualTo(-1);
    assertThat(found.get(0).size()).isCloseTo(-2, within(0.35));
    assertThat(found.get(0).otherSide()).isLessThan(0.1);
  }

  @Test
  void saysWhereTheOtherSideMayHaveMoved() {
    // Half up, half down: nothing of the wheel's own level tells one from the other.
    List<Episode> found =
        episodes(
            new WheelOfNumbers(TURNS, 1.2, 0.6, 0.3, 13, true)
                .shiftAll(0, 150, 165, -0.8)
                .shiftAll(1, 150, 165, 0.8));

    assertThat(found).hasSize(1);
    assertThat(found.get(0).chart()).isEqualTo(Episode.Chart.SIDE);
    assertThat(found.get(0).otherSide()).isBetween(0.1, 0.5);
  }

  @Test
  void findsOneBadPourAtOnceAndCallsItNothingMore() {
    List<Episode> found =
        episodes(new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 14).shift(20, 155, 156, -12));

    assertThat(found).hasSize(1);
    assertThat(found.get(0).chart()).isEqualTo(Episode.Chart.POUR);
    assertThat(found.get(0).index()).isEqualTo(20);
    assertThat(found.get(0).firstTurn()).isEqualTo(155);
  }

  @Test
  void takesMoreScatterForWhatItIs() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 15);
    WheelOfNumbers wider = new WheelOfNumbers(TURNS, 2.9, 0.8, 0.4, 16);
    for (int t = 200; t < 208; t++) {
      wheel.value[t] = wider.value[t];
    }

    List<Episode> found = episodes(wheel);

    assertThat(found).extracting(Episode::chart).containsOnly(Episode.Chart.SPREAD);
    assertThat(found.get(0).sinceTurn()).isBetween(198, 202);
    assertThat(found.get(0).size()).isCloseTo(2.9 - 1.2, within(0.6));
  }

  @Test
  void judgesANewMoldAgainstTheOldOneAndThenLearnsItsLevel() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 17).shift(5, 150, TURNS, 2.4);
    LimitsInForce limits = wheel.limits(PROFILE);
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, PROFILE, (turn, at, x, anodes, startUp) -> {});
    for (int t = 0; t < TURNS; t++) {
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        int serial = m == 5 && t >= 150 ? 100 : m;
        monitor.accept(t * 780_000L + m * 30_000L, t, m, -1, serial, wheel.value[t][m]);
      }
    }
    monitor.finish();

    List<Episode> found = monitor.episodes();
    assertThat(found).hasSize(1);
    assertThat(found.get(0).index()).isEqualTo(5);
    assertThat(found.get(0).sinceTurn()).isBetween(148, 152);
    assertThat(found.get(0).lastTurn()).isLessThanOrEqualTo(150 + CharacteristicMonitor.TRIAL);
  }

  /** Its level was once counted one and a half times. */
  @Test
  void aMoldOfLaterThatIsChangedLearnsItsLevelOnce() {
    LimitsInForce limits = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 10).limits(PROFILE);
    MoldState mold = new MoldState(limits, limits.offsets().length, 0);
    mold.restart();
    for (int cast = 0; cast < CharacteristicMonitor.TRIAL; cast++) {
      mold.learn(6);
    }
    assertThat(mold.isSettled()).isTrue();
    for (int cast = 0; cast < 100; cast++) {
      mold.settle(6 - mold.offset());
      assertThat(mold.offset()).isEqualTo(6);
    }
  }

  @Test
  void leavesStartUpOutOfEverything() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 18);
    LimitsInForce limits = wheel.limits(PROFILE);
    List<Integer> startUpTurns = new ArrayList<>();
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(
            limits,
            PROFILE,
            (turn, at, x, anodes, startUp) -> {
              if (startUp) {
                startUpTurns.add(turn);
              }
            });
    long stop = 0;
    for (int t = 0; t < TURNS; t++) {
      if (t == 100) {
        stop = 5 * 3_600_000L;
      }
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        double wild = t == 100 ? (m % 2 == 0 ? 15 : -15) : 0;
        monitor.accept(t * 780_000L + m * 30_000L + stop, t, m, -1, -1, wheel.value[t][m] + wild);
      }
    }
    monitor.finish();

    // 26 pours 12 sigma off would ring in every chart.
    assertThat(monitor.episodes())
        .noneMatch(e -> e.firstTurn() == 100 || e.sinceTurn() == 100 || e.lastTurn() == 100);
    assertThat(startUpTurns).containsExactly(0, 100);
  }

  @Test
  void findsTheSameWhetherItStopsMidwayOrGoesOn() {
    WheelOfNumbers wheel =
        new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 19).shift(9, 100, TURNS, 3).shift(2, 40, 60, -4);
    LimitsInForce limits = wheel.limits(PROFILE);
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, PROFILE, (turn, at, x, anodes, startUp) -> {});
    for (int t = 0; t < TURNS; t++) {
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        monitor.accept(t * 780_000L + m * 30_000L, t, m, -1, -1, wheel.value[t][m]);
        monitor.episodes(); // looking must change nothing
      }
    }
    monitor.finish();

    assertThat(monitor.episodes()).isEqualTo(wheel.monitored(limits, PROFILE).episodes());
  }

  @Test
  void survivesMissingValuesSkippedMoldsAndMoldsOfLater() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 20);
    LimitsInForce limits = wheel.limits(PROFILE);
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, PROFILE, (turn, at, x, anodes, startUp) -> {});
    for (int t = 0; t < TURNS; t++) {
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        if ((t + m) % 11 == 0) {
          continue;
        }
        double x = (t * m) % 13 == 5 ? Double.NaN : wheel.value[t][m];
        monitor.accept(t * 780_000L + m * 30_000L, t, m, -1, -1, x);
      }
      if (t > 50) { // a mold that the base period did not have: its level is learned first
        monitor.accept(t * 780_000L + 779_000L, t, 26, -1, -1, wheel.value[t][3] + 8);
      }
    }
    monitor.finish();

    assertThat(monitor.episodes()).isEmpty();
  }
}
