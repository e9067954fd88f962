package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.evenpour.casting.WheelProfile;
import org.evenpour.control.Episode.Chart;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * From the middle of a record on, some of 40 molds stand 8 to 15 sigma of a pour higher. Limits are
 * proposed from the same record. The medians over turns that the offsets begin with lie between
 * both states then, and the fault must not be told as half of it down before and half of it up
 * after.
 */
class GrossFaultTest {
  private static final int MOLDS = 40;
  private static final WheelProfile PROFILE = WheelOfNumbers.quietProfile(0.02);

  private static List<Episode> episodes(int turns, int shifted, double by) {
    SplittableRandom random = new SplittableRandom(100L * turns + shifted);
    double[] offset = new double[MOLDS];
    for (int m = 0; m < MOLDS; m++) {
      offset[m] = 1.5 * random.nextGaussian();
    }
    int n = turns * MOLDS;
    int[] turn = new int[n];
    int[] mold = new int[n];
    double[] value = new double[n];
    double effect = 0;
    for (int i = 0; i < n; i++) {
      turn[i] = i / MOLDS;
      mold[i] = i % MOLDS;
      if (mold[i] == 0) {
        effect = 0.5 * effect + 0.8 * Math.sqrt(0.75) * random.nextGaussian();
      }
      boolean isShifted = mold[i] < shifted && turn[i] >= turns / 2;
      value[i] = 390 + offset[mold[i]] + effect + random.nextGaussian() + (isShifted ? by : 0);
    }
    LimitsInForce limits =
        Objects.requireNonNull(
            LimitProposal.propose(
                new BaseRecord(turn, mold, new int[n], value, turns, MOLDS, 1),
                AlarmBudget.of(PROFILE, MOLDS, 1, 1, false, 20)));
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, PROFILE, (t, at, x, anodes, startUp) -> {});
    for (int i = 0; i < n; i++) {
      monitor.accept(i * 30_000L, turn[i], mold[i], -1, -1, value[i]);
    }
    monitor.finish();
    return monitor.episodes();
  }

  private static void areFrom(List<Episode> found, int onset, int direction, double size) {
    assertThat(found)
        .allSatisfy(
            episode -> {
              assertThat(episode.direction()).isEqualTo(direction);
              assertThat(episode.sinceTurn()).isBetween(onset - 2, onset + 2);
              assertThat(episode.open()).isTrue();
              // Until many shifted molds are known they make the first turns look scattered, and
              // those turns count for less: some four of 60.
              assertThat(episode.size())
                  .isCloseTo(direction * size, within(Math.max(1, 0.1 * size)));
            });
  }

  private static List<Episode> of(List<Episode> all, Chart scope) {
    return all.stream().filter(episode -> episode.chart() == scope).toList();
  }

  @ParameterizedTest
  @CsvSource({"4,8", "4,12", "4,15", "13,8", "13,12", "13,15"})
  void isOfTheMoldsThatMovedWhereTheyAreFewerThanHalf(int shifted, double by) {
    for (int turns : new int[] {120, 300}) {
      List<Episode> all = episodes(turns, shifted, by);

      List<Episode> molds = of(all, Chart.MOLD);
      assertThat(molds).extracting(Episode::index).allMatch(mold -> mold < shifted);
      assertThat(molds).hasSize(shifted);
      areFrom(molds, turns / 2, 1, by);
      assertThat(of(all, Chart.WHEEL)).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"8", "12", "15"})
  void isOfTheWheelWhereMostMoldsMoved(double by) {
    for (int turns : new int[] {120, 300}) {
      List<Episode> all = episodes(turns, 36, by);

      assertThat(of(all, Chart.WHEEL)).hasSize(1);
      areFrom(of(all, Chart.WHEEL), turns / 2, 1, by);
      List<Episode> molds = of(all, Chart.MOLD);
      assertThat(molds).extracting(Episode::index).containsExactlyInAnyOrder(36, 37, 38, 39);
      areFrom(molds, turns / 2, -1, by);
    }
  }

  /** Which half moved is told by where the level stood before. */
  @ParameterizedTest
  @CsvSource({"12", "15"})
  void isNotPassedOverInSilenceWhereHalfOfTheMoldsMoved(double by) {
    for (int turns : new int[] {120, 300}) {
      List<Episode> molds = of(episodes(turns, 20, by), Chart.MOLD);

      assertThat(molds).hasSize(20);
      assertThat(molds).extracting(Episode::index).allMatch(mold -> mold < 20);
      assertThat(molds).extracting(Episode::direction).containsOnly(1);
      assertThat(molds).allMatch(episode -> episode.open());
    }
  }
}
