package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.evenpour.stats.CapabilityExperiment.Index;
import org.evenpour.stats.CapabilityExperiment.Setting;
import org.evenpour.stats.Resemblance.Worth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResemblanceTest {
  private static final int TRIALS = 600;

  /**
   * 95 % intervals, by simulation. Of 600 intervals that hold 95 % the share has the standard error
   * 0.9 %: 92 to 98 % are more than three of them to either side.
   */
  @ParameterizedTest
  @CsvSource({
    // turns, molds, offsets, turn s.d. over pour s.d., phi, pour phi
    "60, 10, 0, 0, 0, 0",
    "60, 10, 1, 0.6, 0, 0",
    "60, 10, 1, 1, 0.5, 0",
    "120, 10, 1, 1, 0.7, 0",
    "100, 10, 2, 0.6, 0.5, 0.4"
  })
  void intervalsHoldTheTruthAsOftenAsTheySay(
      int turns, int molds, double offsets, double turnSd, double phi, double pourPhi) {
    Setting setting = new Setting(turns, molds, offsets, turnSd, phi, pourPhi);
    double[] held = CapabilityExperiment.coverage(setting, TRIALS, 1946, false);
    for (Index index : Index.values()) {
      assertThat(held[index.ordinal()]).as(index.name()).isBetween(0.92, 0.98);
    }
  }

  /** The same wheels, their values taken for independent: what was wrong. */
  @Test
  void independentIntervalsAreTooNarrowWhereTurnsResembleEachOther() {
    Setting setting = new Setting(60, 10, 1, 1, 0.5, 0);
    double[] held = CapabilityExperiment.coverage(setting, TRIALS, 1946, true);
    assertThat(held[Index.PPK.ordinal()]).isLessThan(0.75);
    assertThat(held[Index.CPK.ordinal()]).isLessThan(0.85);
  }

  /** Where every turn has one anode, nothing can be told apart, and the intervals are the old. */
  @Test
  void oneAnodeATurnLeavesTheIntervalsAlone() {
    double[] x = {3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8};
    int[] turn = new int[x.length];
    int[] mold = new int[x.length];
    for (int i = 0; i < x.length; i++) {
      turn[i] = i;
      mold[i] = i % 4;
    }
    Resemblance of = Resemblance.of(TwoWay.fit(turn, mold, x, x.length), turn, mold, x);
    assertThat(of.of(x.length, x.length, 2)).isEqualTo(Worth.INDEPENDENT);
    assertThat(of.ofColumn(0, 3, 2)).isEqualTo(Worth.INDEPENDENT);
    Resemblance oneMold =
        Resemblance.of(TwoWay.fit(turn, new int[12], x, 12), turn, new int[12], x);
    assertThat(oneMold.of(12, 12, 2)).isEqualTo(Worth.INDEPENDENT);
  }

  /** Values without turn effects and offsets are worth what they were, to the last digit. */
  @Test
  void independentValuesAreWorthThemselves() {
    // 2 × 2 checkers: no row effect and no column effect, and neighbors in a column differ
    int turns = 40;
    double[] x = new double[turns * 2];
    int[] turn = new int[x.length];
    int[] mold = new int[x.length];
    for (int i = 0; i < x.length; i++) {
      turn[i] = i / 2;
      mold[i] = i % 2;
      x[i] = (turn[i] + mold[i]) % 2 == 0 ? 1 : -1;
    }
    Resemblance of = Resemblance.of(TwoWay.fit(turn, mold, x, x.length), turn, mold, x);
    assertThat(of.shared()).isZero();
    assertThat(of.ownPhi()).isZero();
    assertThat(of.of(x.length, turns, Moments.of(x).sd())).isEqualTo(Worth.INDEPENDENT);
    Capability old = Capability.of(80, 0, 1, 50, 1, -3.0, 0.5, 4.0);
    assertThat(Capability.of(80, 0, 1, 50, 1, -3.0, 0.5, 4.0, Worth.INDEPENDENT)).isEqualTo(old);
  }

  /**
   * The parts of a long made record come back: with 4,000 turns the standard errors are below 0.02
   * (coefficients) and 0.06 (the variance of turns).
   */
  @Test
  void findsThePartsOfALongRecord() {
    Random random = new Random(60);
    int turns = 4000;
    int molds = 8;
    double[] x = new double[turns * molds];
    int[] turn = new int[x.length];
    int[] mold = new int[x.length];
    double[] pour = new double[molds];
    double level = 0;
    for (int t = 0; t < turns; t++) {
      level = 0.6 * level + 0.8 * random.nextGaussian();
      for (int m = 0; m < molds; m++) {
        pour[m] = 0.3 * pour[m] + Math.sqrt(1 - 0.09) * random.nextGaussian();
        int i = t * molds + m;
        turn[i] = t;
        mold[i] = m;
        // every seventh anode is missing
        x[i] = i % 7 == 3 ? Double.NaN : 388 + 2 * m + level + pour[m];
      }
    }
    Resemblance of = Resemblance.of(TwoWay.fit(turn, mold, x, x.length), turn, mold, x);
    assertThat(of.shared()).isCloseTo(1, within(0.18));
    assertThat(of.phi()).isCloseTo(0.6, within(0.06));
    assertThat(of.own()).isCloseTo(1, within(0.06));
    // pairs with a missing value between them stand two turns apart
    assertThat(of.ownPhi()).isBetween(0.2, 0.33);
  }

  /**
   * One mold whose turn effects are all its spread, φ = 0.5: a mean is worth n(1 − φ)/(1 + φ), a
   * variance n(1 − φ²)/(1 + φ²) (Bartlett 1946).
   */
  @Test
  void oneAutoregressionIsWorthWhatBartlettSays() {
    Random random = new Random(46);
    int turns = 100_000;
    int molds = 2;
    double[] x = new double[turns * molds];
    int[] turn = new int[x.length];
    int[] mold = new int[x.length];
    double level = 0;
    for (int t = 0; t < turns; t++) {
      level = 0.5 * level + Math.sqrt(0.75) * random.nextGaussian();
      for (int m = 0; m < molds; m++) {
        turn[t * molds + m] = t;
        mold[t * molds + m] = m;
        x[t * molds + m] = level + 0.01 * random.nextGaussian();
      }
    }
    Resemblance of = Resemblance.of(TwoWay.fit(turn, mold, x, x.length), turn, mold, x);
    Worth worth = of.ofColumn(0, turns, 1);
    // 0.02 is some four standard errors of either
    assertThat(worth.level()).isCloseTo(0.5 / 1.5, within(0.02));
    assertThat(worth.spread()).isCloseTo(0.75 / 1.25, within(0.02));
    // two molds that say the same are worth one
    assertThat(of.of(2L * turns, turns, 1).level()).isCloseTo(0.5 / 1.5 / 2, within(0.01));
  }

  /**
   * The degrees of freedom of a sigma from moving ranges, by simulation: f is half of 1 over its
   * relative variance (Patnaik 1950). A standard error of 2,000 variances is 3 %.
   */
  @Test
  void rangesOfTheSameTurnsAreWorthLess() {
    int turns = 200;
    int molds = 6;
    double phi = 0.5;
    Random random = new Random(90);
    Moments sigma = new Moments();
    Moments told = new Moments();
    int[] turn = new int[turns * molds];
    int[] mold = new int[turn.length];
    for (int i = 0; i < turn.length; i++) {
      turn[i] = i / molds;
      mold[i] = i % molds;
    }
    for (int trial = 0; trial < 2000; trial++) {
      double[] x = new double[turn.length];
      double level = random.nextGaussian();
      double range = 0;
      for (int i = 0; i < x.length; i++) {
        if (i % molds == 0) {
          level = phi * level + Math.sqrt(1 - phi * phi) * random.nextGaussian();
        }
        x[i] = level + random.nextGaussian();
        range += i < molds ? 0 : Math.abs(x[i] - x[i - molds]);
      }
      sigma.add(range);
      if (trial < 50) {
        Resemblance of = Resemblance.of(TwoWay.fit(turn, mold, x, x.length), turn, mold, x);
        told.add(of.of(x.length, turns, Moments.of(x).sd()).spreadWithin());
      }
    }
    double relative = sigma.variance() / (sigma.mean() * sigma.mean());
    double freedom = 0.5 / relative;
    double independent = molds * MovingRange.degreesOfFreedom(turns);
    assertThat(told.mean()).isCloseTo(freedom / independent, within(0.12 * freedom / independent));
  }
}
