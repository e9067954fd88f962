package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.evenpour.control.PlantWatch.Mean;
import org.evenpour.control.PlantWheel.Plant;
import org.evenpour.control.PlantWheel.Turn;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Whether the wheel of {@link PlantTrial} is what it says: unbiased estimates against what was
 * asked for, within four standard errors taken from the turns' own scatter.
 */
class PlantWheelTest {
  private static final long SEED = 20_260_301;

  /** Deviations of a turn's pours from its mean, offsets taken off. */
  private static double[] deviations(PlantWheel wheel, Turn turn) {
    double[] d = turn.value().clone();
    double mean = 0;
    for (int m = 0; m < d.length; m++) {
      d[m] -= wheel.offset(m);
      mean += d[m] / d.length;
    }
    for (int m = 0; m < d.length; m++) {
      d[m] -= mean;
    }
    return d;
  }

  private static Mean over(PlantWheel wheel, int turns, ToDoubleFunction<double[]> figure) {
    double[][] rows = new double[turns][];
    for (int t = 0; t < turns; t++) {
      rows[t] = new double[] {figure.applyAsDouble(deviations(wheel, wheel.turn()))};
    }
    return Mean.of(rows, 0);
  }

  private static void checkMoments(PourShape shape, double skewness) {
    Plant plant = Plant.plain(shape);
    int n = plant.molds();
    // k-statistics (Fisher 1930), unbiased whatever the distribution
    Mean variance =
        over(new PlantWheel(plant, SEED), 4000, d -> power(d, 2) / (n - 1.0) / 4); // sigma is 2
    assertThat(variance.value()).isCloseTo(1, within(4 * variance.error()));
    assertThat(variance.error()).isLessThan(0.02);
    Mean third =
        over(new PlantWheel(plant, SEED), 4000, d -> power(d, 3) * n / ((n - 1.0) * (n - 2.0)) / 8);
    assertThat(third.value()).isCloseTo(skewness, within(4 * third.error()));
  }

  private static double power(double[] d, int exponent) {
    double sum = 0;
    for (double x : d) {
      sum += Math.pow(x, exponent);
    }
    return sum;
  }

  @Test
  void poursHaveTheMomentsOfTheirDistribution() {
    checkMoments(PourShape.NORMAL, 0);
    checkMoments(PourShape.gamma(16, false), 0.5);
    checkMoments(PourShape.gamma(4, false), 1);
    checkMoments(PourShape.gamma(4, true), -1);
    checkMoments(PourShape.student(10), 0);
    checkMoments(PourShape.student(5), 0);
  }

  /** Printed tables of t and χ², any handbook; quoted from memory. Gamma of shape 4 is χ²₈/2. */
  @Test
  void quantilesAreThoseOfPrintedTables() {
    double at975 = 1.959964;
    double at95 = 1.644854;
    assertThat(PourShape.student(5).of(at975) * Math.sqrt(5.0 / 3)).isCloseTo(2.571, within(6e-4));
    assertThat(PourShape.student(10).of(at975) * Math.sqrt(10.0 / 8))
        .isCloseTo(2.228, within(6e-4));
    assertThat(PourShape.gamma(4, false).of(at95) * 2 + 4).isCloseTo(15.507 / 2, within(6e-4));
    assertThat(PourShape.gamma(4, false).of(-at95) * 2 + 4).isCloseTo(2.733 / 2, within(6e-4));
    assertThat(PourShape.gamma(4, true).of(at95))
        .isCloseTo(
            -PourShape.gamma(4, false).of(-at95), within(1e-12)); // interpolated from either end
  }

  /** 0.98·Φ(x) + 0.02·Φ(x/5) is 0.99865 where Φ(3) is. */
  @Test
  void wildPoursAreTheMixture() {
    PourShape wild = PourShape.wild(0.02, 5);
    NormalDistribution normal = new NormalDistribution(0, 1);
    for (double z : new double[] {-3, -1, 0.5, 2, 3}) {
      double x = wild.of(z);
      double share =
          0.98 * normal.cumulativeProbability(x) + 0.02 * normal.cumulativeProbability(x / 5);
      assertThat(share).isCloseTo(normal.cumulativeProbability(z), within(1e-5));
    }
  }

  @Test
  void turnEffectsAndPoursAreCorrelatedAsAsked() {
    Plant plant = Plant.plain(PourShape.NORMAL).withTurnPhi(0.55).withPourPhi(0.3);
    int n = plant.molds();
    PlantWheel wheel = new PlantWheel(plant, SEED);
    int blocks = 100;
    double[][] rows = new double[blocks][4];
    double offsets = 0;
    for (int m = 0; m < n; m++) {
      offsets += wheel.offset(m) / n;
    }
    double[] before = new double[n];
    double meanBefore = 0;
    for (int t = -1; t < blocks * 200; t++) {
      Turn turn = wheel.turn();
      double[] d = deviations(wheel, turn);
      double mean = -PlantWheel.CENTER - offsets;
      double product = 0;
      for (int m = 0; m < n; m++) {
        mean += turn.value()[m] / n;
        product += d[m] * before[m] / (n - 1.0);
      }
      if (t >= 0) {
        double[] row = rows[t / 200];
        row[0] += mean * mean / 200;
        row[1] += mean * meanBefore / 200;
        row[2] += product / 200;
        row[3] += power(d, 2) / (n - 1.0) / 200;
      }
      before = d;
      meanBefore = mean;
    }
    double[] expected = {1.44 + 4.0 / n, 0.55 * 1.44 + 0.3 * 4.0 / n, 0.3 * 4, 4};
    for (int i = 0; i < 4; i++) {
      Mean found = Mean.of(rows, i);
      assertThat(found.value()).isCloseTo(expected[i], within(4 * found.error()));
      assertThat(found.error()).isLessThan(0.03 * expected[i]);
    }
  }

  @Test
  void weightsAreRounded() {
    for (int partsOfKg : new int[] {1, 2, 10}) {
      Plant plant = Plant.plain(PourShape.NORMAL).withRounding(1.0 / partsOfKg);
      PlantWheel rounded = new PlantWheel(plant, SEED);
      PlantWheel exact = new PlantWheel(plant.withRounding(0), SEED);
      for (int t = 0; t < 20; t++) {
        double[] x = rounded.turn().value();
        double[] y = exact.turn().value();
        for (int m = 0; m < x.length; m++) {
          assertThat(x[m] * partsOfKg).isCloseTo(Math.rint(x[m] * partsOfKg), within(1e-9));
          assertThat(x[m]).isCloseTo(y[m], within(0.5 / partsOfKg + 1e-9));
        }
      }
    }
  }

  @Test
  void moldsWearAtTheirOwnPace() {
    int molds = 400;
    int turns = 2000;
    double pace = 0.85 * PlantWheel.POUR_SIGMA / 400;
    for (boolean kept : new boolean[] {false, true}) {
      Plant plant = Plant.plain(PourShape.NORMAL).withMolds(molds).withWear(0.85, kept);
      PlantWheel wheel = new PlantWheel(plant, SEED);
      double[] slope = new double[molds];
      double squares = turns * ((double) turns * turns - 1) / 12;
      for (Turn t : wheel.turns(turns)) {
        for (int m = 0; m < molds; m++) {
          slope[m] += (t.index() - (turns - 1) / 2.0) * (t.value()[m] - 390) / squares;
        }
      }
      double mean = 0;
      double variance = 0;
      for (double b : slope) {
        mean += b / molds;
      }
      for (double b : slope) {
        variance += (b - mean) * (b - mean) / (molds - 1);
      }
      double differs = 0.3 * pace;
      // A slope's own error by the turn effects (φ = 0.35), which all molds share, and by pours.
      double byTurns = Math.sqrt(1.44 * 1.35 / 0.65 / squares);
      double byPours = Math.sqrt(4 / squares);
      double error = Math.hypot(byTurns, kept ? 0 : differs / Math.sqrt(molds));
      assertThat(mean).isCloseTo(kept ? 0 : pace, within(4 * error));
      double sd = Math.hypot(differs, byPours);
      assertThat(Math.sqrt(variance)).isCloseTo(sd, within(4 * sd / Math.sqrt(2.0 * molds)));
    }
  }

  @Test
  void weightsAreMissingAndTheWheelStops() {
    Plant plant = Plant.plain(PourShape.NORMAL).withGaps(0.05, 80);
    int turns = 4000;
    int missing = 0;
    int stops = 0;
    long before = Long.MAX_VALUE;
    for (Turn t : new PlantWheel(plant, SEED).turns(turns)) {
      for (double x : t.value()) {
        missing += Double.isNaN(x) ? 1 : 0;
      }
      long gap = t.atMillis() - before;
      long running = Math.round(plant.turnMinutes() * 60_000);
      assertThat(gap > running).isEqualTo(t.startUp());
      assertThat(!t.startUp() || gap - running >= 2 * 3_600_000).isTrue();
      stops += t.startUp() ? 1 : 0;
      before = t.atMillis();
    }
    double n = turns * 26.0;
    assertThat(missing / n).isCloseTo(0.05, within(4 * Math.sqrt(0.05 * 0.95 / n)));
    // intervals are uniform from 40 to 120: s.d. 23.4, some 50 of them
    assertThat(stops).isBetween(50 - 9, 50 + 9);
  }

  @Test
  void faultsAreAddedAndChangeNothingElse() {
    Plant plant = Plant.plain(PourShape.student(5)).withTwoSides();
    List<Turn> sound = new PlantWheel(plant, SEED).turns(40);
    List<Turn> faulty =
        new PlantWheel(plant, SEED)
            .shiftMold(3, 10, 20, 5)
            .shiftSide(1, 15, 30, -2)
            .shiftWheel(25, 35, 1)
            .turns(40);
    List<Turn> scattered = new PlantWheel(plant, SEED).scatter(5, 10, 3).turns(40);
    for (int t = 0; t < 40; t++) {
      double[] factor = new double[26];
      for (int m = 0; m < 26; m++) {
        double expected = m == 3 && t >= 10 && t < 20 ? 5 : 0;
        expected += m % 2 == 1 && t >= 15 && t < 30 ? -2 : 0;
        expected += t >= 25 && t < 35 ? 1 : 0;
        double x = sound.get(t).value()[m];
        assertThat(faulty.get(t).value()[m] - x).isCloseTo(expected, within(1e-9));
        factor[m] = scattered.get(t).value()[m] - x;
      }
      assertThat(power(factor, 2) > 1).isEqualTo(t >= 5 && t < 10);
    }
  }

  /** Two sides wander apart from each other, each with its own s.d. */
  @Test
  void sidesWanderApart() {
    Plant plant = Plant.plain(PourShape.NORMAL).withTwoSides();
    PlantWheel wheel = new PlantWheel(plant, SEED);
    int blocks = 100;
    double[][] rows = new double[blocks][2];
    double before = 0;
    for (int t = 0; t < blocks * 100; t++) {
      double[] d = deviations(wheel, wheel.turn());
      double contrast = 0;
      for (int m = 0; m < d.length; m++) {
        contrast += (m % 2 == 1 ? d[m] : -d[m]) / 13;
      }
      rows[t / 100][0] += contrast * contrast / 100;
      rows[t / 100][1] += contrast * before / 100;
      before = contrast;
    }
    double wander = 2 * PlantWheel.SIDE_SIGMA * PlantWheel.SIDE_SIGMA;
    Mean variance = Mean.of(rows, 0);
    Mean next = Mean.of(rows, 1);
    assertThat(variance.value()).isCloseTo(wander + 8.0 / 13, within(4 * variance.error()));
    assertThat(next.value()).isCloseTo(PlantWheel.SIDE_PHI * wander, within(4 * next.error()));
  }

  /** The measure of the sides' delays: its one-step-ahead errors must be independent, of s.d. 1. */
  @Test
  void theBestChartOfSidesKeepsItsRate() {
    PlantWheel wheel = new PlantWheel(Plant.plain(PourShape.NORMAL).withTwoSides(), SEED);
    PlantDelays.BestOfSides best = new PlantDelays.BestOfSides(wheel, 1.6, 1 / 100.0);
    int runs = 1500;
    double[][] rows = new double[runs][1];
    for (int i = 0; i < runs; i++) {
      do {
        rows[i][0]++;
      } while (best.accept(wheel.turn().value()) == 0);
      best.restart();
    }
    Mean length = Mean.of(rows, 0);
    assertThat(length.value()).isCloseTo(100, within(4 * length.error()));
  }
}
