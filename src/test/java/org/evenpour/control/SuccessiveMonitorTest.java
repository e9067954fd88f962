package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.WheelProfile;
import org.evenpour.column.Labels;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.junit.jupiter.api.Test;

/** Limits that succeed one another, on wheels made of numbers. */
class SuccessiveMonitorTest {
  private static final WheelProfile PROFILE = WheelOfNumbers.quietProfile(0.02);
  private static final int TURNS = 300;
  private static final int CHANGE = 150;
  private static final long STOP = 5 * 3_600_000L;

  /** Runs turns of a wheel, whose molds come in the order of {@code labels}; a stop at CHANGE. */
  private static SuccessiveMonitor run(
      WheelOfNumbers wheel, List<Term> terms, int from, boolean backwards, List<MoldChange> told) {
    Labels molds = new Labels();
    Labels sides = new Labels();
    for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
      molds.index(Integer.toString(backwards ? WheelOfNumbers.MOLDS - m : m + 1));
    }
    sides.index(backwards ? "B" : "A");
    sides.index(backwards ? "A" : "B");
    SuccessiveMonitor monitor =
        new SuccessiveMonitor(
            terms, PROFILE, molds, sides, new Labels(), (turn, at, x, anodes, startUp) -> {});
    told.forEach(monitor::moldChanged);
    for (int t = from; t < TURNS; t++) {
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        int mold = molds.find(Integer.toString(m + 1));
        int side = wheel.twoSides ? sides.find(m % 2 == 0 ? "A" : "B") : -1;
        monitor.accept(at(t) + m * 30_000L, t, mold, side, -1, wheel.value[t][m]);
      }
    }
    monitor.finish();
    return monitor;
  }

  private static long at(int turn) {
    return turn * 780_000L + (turn >= CHANGE ? STOP : 0);
  }

  private static LimitsVersion version(LimitsInForce limits) {
    return Versions.of(limits, List.of("A", "B"), Instant.ofEpochMilli(at(CHANGE) - 1));
  }

  @Test
  void judgesWhatComesAfterAsIfItWereGivenAlone() {
    WheelOfNumbers wheel =
        new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 31).shift(4, 140, 190, 3).shift(9, 220, TURNS, -3);
    LimitsVersion version = version(wheel.limits(PROFILE));
    List<Term> terms =
        List.of(
            new Term(Long.MIN_VALUE, null, new WheelOfNumbers(300, 1, 1, 0, 3).limits(PROFILE)),
            new Term(at(CHANGE) - 60_000, version, version.limits()));

    List<Episode> whole = run(wheel, terms, 0, false, List.of()).episodes();
    List<Episode> part =
        run(
                wheel,
                List.of(new Term(Long.MIN_VALUE, version, version.limits())),
                CHANGE,
                false,
                List.of())
            .episodes();

    assertThat(part).hasSize(2);
    assertThat(whole.stream().filter(e -> e.firstTurn() >= CHANGE)).isEqualTo(part);
    assertThat(whole).hasSizeGreaterThan(2);
    assertThat(whole.stream().filter(e -> e.firstTurn() < CHANGE))
        .allSatisfy(
            e -> {
              assertThat(e.open()).isFalse();
              assertThat(e.lastTurn()).isLessThan(CHANGE);
            });
  }

  @Test
  void judgesATurnByWhatWasInForceWhenItBegan() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 32);
    LimitsVersion version = version(wheel.limits(PROFILE));
    List<Term> terms =
        List.of(
            new Term(Long.MIN_VALUE, null, null),
            new Term(at(100) + 10 * 30_000L, version, version.limits()));

    List<SuccessiveMonitor.Judged> judged = run(wheel, terms, 0, false, List.of()).judged();

    assertThat(judged).extracting(SuccessiveMonitor.Judged::firstTurn).containsExactly(0, 101);
    assertThat(judged).extracting(SuccessiveMonitor.Judged::turns).containsExactly(101, 199);
  }

  @Test
  void knowsMoldsAndSidesByTheirLabels() {
    WheelOfNumbers wheel =
        new WheelOfNumbers(TURNS, 1.2, 0.6, 0.3, 33, true)
            .shift(3, 160, 190, 3)
            .shiftAll(0, 230, 260, -2);
    LimitsVersion version = version(wheel.limits(PROFILE));
    List<Term> terms = List.of(new Term(Long.MIN_VALUE, version, version.limits()));

    List<Episode> one = run(wheel, terms, 0, false, List.of()).episodes();
    List<Episode> other = run(wheel, terms, 0, true, List.of()).episodes();

    List<Episode> named = new ArrayList<>();
    for (Episode e : other) {
      int index =
          switch (e.chart()) {
            case MOLD, POUR -> WheelOfNumbers.MOLDS - 1 - e.index();
            case SIDE -> 1 - e.index();
            default -> e.index();
          };
      named.add(e.withIndex(index));
    }
    assertThat(one).extracting(Episode::chart).contains(Episode.Chart.MOLD, Episode.Chart.SIDE);
    assertThat(named).isEqualTo(one);
  }

  @Test
  void aMoldChangedSinceTheBaseIsOnTrialAndNoOtherIs() {
    WheelOfNumbers wheel =
        new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 34)
            .shift(5, CHANGE, TURNS, 3)
            .shift(8, CHANGE, TURNS, 3);
    LimitsInForce limits = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 34).limits(PROFILE);
    LimitsVersion version = version(limits);
    List<Term> terms = List.of(new Term(Long.MIN_VALUE, version, limits));
    MoldChange before = new MoldChange(at(100), 8);
    MoldChange since = new MoldChange(at(CHANGE) - 1000 + 1001, 5);

    List<Episode> found = run(wheel, terms, CHANGE, false, List.of(before, since)).episodes();

    assertThat(found).extracting(Episode::index).containsExactlyInAnyOrder(5, 8);
    assertThat(found)
        .allSatisfy(
            e -> {
              assertThat(e.open()).isEqualTo(e.index() == 8);
              assertThat(e.lastTurn() < CHANGE + 27).isEqualTo(e.index() == 5);
            });
  }

  @Test
  void anotherSerialThanTheBasesIsAMoldChange() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 35);
    LimitsInForce limits = wheel.limits(PROFILE);
    wheel.shift(5, 0, TURNS, 3).shift(6, 0, TURNS, 3);
    List<MoldBase> molds = new ArrayList<>();
    for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
      molds.add(new MoldBase(Integer.toString(m + 1), "S" + m, 100));
    }
    LimitsVersion version = Versions.version(limits, molds, List.of(), Instant.EPOCH);
    Labels labels = new Labels();
    Labels serials = new Labels();
    SuccessiveMonitor monitor =
        new SuccessiveMonitor(
            List.of(new Term(Long.MIN_VALUE, version, limits)),
            PROFILE,
            labels,
            new Labels(),
            serials,
            (turn, at, x, anodes, startUp) -> {});
    for (int t = 0; t < TURNS; t++) {
      for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
        int serial = serials.index(m == 5 ? "new" : "S" + m);
        int mold = labels.index(Integer.toString(m + 1)); // labels come as molds cast
        monitor.accept(at(t) + m * 30_000L, t, mold, -1, serial, wheel.value[t][m]);
      }
    }
    monitor.finish();

    assertThat(monitor.episodes().stream().filter(Episode::open))
        .extracting(Episode::index)
        .containsExactly(6);
  }

  @Test
  void aMoldThatTheBaseDoesNotKnowLearnsItsLevel() {
    WheelOfNumbers wheel = new WheelOfNumbers(TURNS, 1.2, 0.8, 0.4, 36).shift(25, 200, TURNS, 4);
    LimitsInForce all = wheel.limits(PROFILE);
    List<MoldBase> molds = new ArrayList<>();
    for (int m = 0; m < 25; m++) {
      molds.add(new MoldBase(Integer.toString(m + 1), "", 100));
    }
    LimitsInForce limits =
        new LimitsInForce(
            "",
            100,
            all.center(),
            java.util.Arrays.copyOf(all.offsets(), 25),
            all.pour(),
            all.pourLimit(),
            all.wheel(),
            all.wheelPointLimit(),
            all.movingRangeSigma(),
            all.sides(),
            all.spread());
    LimitsVersion version = Versions.version(limits, molds, List.of(), Instant.EPOCH);

    List<Episode> found =
        run(wheel, List.of(new Term(Long.MIN_VALUE, version, limits)), 0, true, List.of())
            .episodes();

    assertThat(found).hasSize(1);
    assertThat(found.get(0).index()).as("mold 26 is the first here").isZero();
    assertThat(found.get(0).sinceTurn()).isBetween(197, 203);
  }
}
