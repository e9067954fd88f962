package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Checked by simulation of first-order autoregressions of s.d. 1, whose φ and steps are known. The
 * tolerances of shares are three standard errors of a share of so many series; the whole table of
 * series cut is printed by {@code StepExperiment}.
 */
class LevelStepsTest {
  private static final int SERIES = 300;

  /** A stationary series; its points or what is new in them with heavy tails if asked. */
  private static double[] series(int points, double phi, boolean heavy, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] x = new double[points];
    double effect = random.nextGaussian();
    for (int i = 0; i < points; i++) {
      effect = phi * effect + Math.sqrt(1 - phi * phi) * fresh(random, heavy);
      x[i] = effect;
    }
    return x;
  }

  /** Normal, or t with five degrees of freedom, of variance 1. */
  private static double fresh(SplittableRandom random, boolean heavy) {
    double z = random.nextGaussian();
    if (!heavy) {
      return z;
    }
    double squares = 0;
    for (int i = 0; i < 5; i++) {
      double g = random.nextGaussian();
      squares += g * g;
    }
    return z / Math.sqrt(squares / 5) / Math.sqrt(5 / 3.0);
  }

  private static void lift(double[] x, int from, int to, double by) {
    for (int i = from; i < to; i++) {
      x[i] += by;
    }
  }

  private static double shareCut(int points, double phi, boolean heavy) {
    int cut = 0;
    for (int s = 0; s < SERIES; s++) {
      cut += LevelSteps.of(series(points, phi, heavy, s), 0).cuts().length > 2 ? 1 : 0;
    }
    return (double) cut / SERIES;
  }

  @Test
  void leavesSeriesWithoutAStepAlone() {
    // 2 % and three standard errors of 300: 4.4 %; the table's worst line is 4 %.
    assertThat(shareCut(260, 0, false)).isLessThan(0.045);
    assertThat(shareCut(260, 0.55, false)).isLessThan(0.045);
    assertThat(shareCut(260, 0.8, false)).isLessThan(0.045);
    assertThat(shareCut(60, 0.55, false)).isLessThan(0.07);
  }

  @Test
  void takesHeavyTailsForNoStep() {
    assertThat(shareCut(260, 0.55, true)).isLessThan(0.045);
    assertThat(shareCut(260, 0.8, true)).isLessThan(0.06);
  }

  @Test
  void findsAStepOfTwoSigmaInAnAutocorrelatedSeries() {
    int found = 0;
    int placed = 0;
    for (int s = 0; s < SERIES; s++) {
      double[] x = series(260, 0.55, false, s);
      int from = 20 + s % 170;
      lift(x, from, from + 60, s % 2 == 0 ? 2 : -2);
      int[] cuts = LevelSteps.of(x, 0).cuts();
      found += cuts.length > 2 ? 1 : 0;
      placed += has(cuts, from) && has(cuts, from + 60) ? 1 : 0;
    }

    assertThat((double) found / SERIES).isGreaterThan(0.95);
    assertThat((double) placed / SERIES).isGreaterThan(0.8);
  }

  private static boolean has(int[] cuts, int at) {
    for (int cut : cuts) {
      if (Math.abs(cut - at) <= 10) {
        return true;
      }
    }
    return false;
  }

  /** An AR(1) fitted over a step of three s.d. takes φ = 0.91 for 0.56; what is left does not. */
  @Test
  void saysTheCorrelationThatIsLeft() {
    double phi = 0;
    double variance = 0;
    for (int s = 0; s < SERIES; s++) {
      double[] x = series(260, 0.55, false, s);
      lift(x, 100, 170, 3);
      LevelSteps steps = LevelSteps.of(x, 0);
      phi += steps.correlation() / SERIES;
      variance += steps.variance() / SERIES;
    }

    // Kendall's bias −(1 + 3φ)/n a level, three levels: −0.03.
    assertThat(phi).isCloseTo(0.55, within(0.05));
    assertThat(variance).isCloseTo(1, within(0.08));
  }

  @Test
  void takesWildPointsForNoStep() {
    int cut = 0;
    for (int s = 0; s < 100; s++) {
      double[] x = series(200, 0.3, false, s);
      x[50] += 15;
      x[120] -= 9;
      x[121] -= 9;
      cut += LevelSteps.of(x, 0).cuts().length > 2 ? 1 : 0;
    }

    assertThat(cut).isLessThan(7);
  }

  @Test
  void finds100SigmaAndSeveralSteps() {
    double[] x = series(400, 0.4, false, 4);
    lift(x, 80, 400, 100);
    lift(x, 200, 260, -5);
    lift(x, 330, 400, 4);

    int[] cuts = LevelSteps.of(x, 0).cuts();

    assertThat(cuts[0]).isZero();
    assertThat(cuts[cuts.length - 1]).isEqualTo(400);
    assertThat(cuts).contains(80);
    assertThat(has(cuts, 200) && has(cuts, 260) && has(cuts, 330)).isTrue();
    assertThat(cuts.length).isBetween(6, 7);
  }

  /**
   * Three faults of 30 points, up, down and up again: looked for one at a time, two or more were
   * found in 46 of 100 series, for each leaves the others in the correlation.
   */
  @Test
  void findsFaultsThatHideOneAnother() {
    int found = 0;
    for (int s = 0; s < 100; s++) {
      double[] x = series(260, 0.5, false, s);
      lift(x, 25, 55, 3);
      lift(x, 75, 105, -3);
      lift(x, 125, 155, 3);
      found += LevelSteps.of(x, 0).cuts().length >= 6 ? 1 : 0;
    }

    assertThat(found).isGreaterThan(90);
  }

  @Test
  void bearsWhatHasNoScatter() {
    assertThat(LevelSteps.of(new double[0], 0).cuts()).containsExactly(0, 0);
    assertThat(LevelSteps.of(new double[] {7}, 0).cuts()).containsExactly(0, 1);
    assertThat(LevelSteps.of(new double[] {1, 2, 3}, 1).cuts()).containsExactly(0, 3);
    assertThat(LevelSteps.of(new double[50], 1).cuts()).containsExactly(0, 50);
    double[] step = new double[50];
    lift(step, 20, 50, 1);
    assertThat(LevelSteps.of(step, 0).cuts()).containsExactly(0, 20, 50);
  }
}
