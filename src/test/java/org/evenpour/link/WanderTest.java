package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** How made series wander whose φ and s.d. are known. */
class WanderTest {
  private static final int TURNS = 400;
  private static final int[] UNCUT = new int[TURNS];

  private static double[] wandering(long seed, double phi) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] x = new double[TURNS];
    x[0] = random.nextGaussian();
    for (int t = 1; t < TURNS; t++) {
      x[t] = phi * x[t - 1] + Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    return x;
  }

  private static Wander of(double[] series, int[] pieces) {
    return Objects.requireNonNull(Wander.of(new double[][] {series}, new int[][] {pieces}));
  }

  /** Put elsewhere by seven s.d. time and again: one such step stays beyond chance. */
  @Test
  void isNotMadeOrdinaryByTheStepsThatAreCut() {
    for (double phi : new double[] {0, 0.5, 0.8}) {
      int clear = 0;
      int uncut = 0;
      for (int seed = 0; seed < 20; seed++) {
        double[] x = wandering(seed, phi);
        int[] pieces = new int[TURNS];
        for (int t = 0; t < TURNS; t++) {
          x[t] += t % 25 < 8 ? 7 : 0;
          pieces[t] = 2 * (t / 25) + (t % 25 < 8 ? 0 : 1);
        }
        double[] near = Arrays.copyOfRange(x, 140, 208);
        clear += of(x, pieces).clearest(near, 57, 64, false).p() < 2e-3 ? 1 : 0;
        uncut += of(x, UNCUT).clearest(near, 57, 64, false).p() < 2e-3 ? 1 : 0;
      }
      assertThat(clear).isGreaterThanOrEqualTo(17);
      assertThat(uncut).isLessThan(5);
    }
  }

  /** Of a series that was put nowhere the s.d. is the same, however often it is cut. */
  @Test
  void findsTheSameScatterBetweenCuts() {
    for (double phi : new double[] {0.3, 0.9}) {
      double ratio = 0;
      for (int seed = 0; seed < 40; seed++) {
        double[] x = wandering(500 + seed, phi);
        int[] pieces = new int[TURNS];
        Arrays.setAll(pieces, t -> t / 20);
        ratio += of(x, pieces).sd() / of(x, UNCUT).sd() / 40;
      }
      assertThat(ratio).isBetween(0.96, 1.04);
    }
  }

  /** Cutting costs no honesty: of steps that are none, one in twenty is called one at 5 %. */
  @Test
  void callsNoWanderingAStepForBeingCut() {
    int called = 0;
    for (int seed = 0; seed < 400; seed++) {
      double[] x = wandering(1000 + seed, 0.9);
      int[] pieces = new int[TURNS];
      for (int t = 0; t < TURNS; t++) {
        pieces[t] = t / 40;
      }
      double[] near = Arrays.copyOfRange(x, 140, 260);
      called += of(x, pieces).clearest(near, 57, 64, false).p() < 0.05 ? 1 : 0;
    }
    assertThat(called).isLessThan(30);
  }

  @Test
  void countsASeriesAsItIsWhereTheCutsLeaveLittle() {
    double[] x = wandering(3, 0.5);
    int[] everywhere = new int[TURNS];
    for (int t = 0; t < TURNS; t++) {
      everywhere[t] = t % 10 < 8 ? -1 : t;
    }
    assertThat(of(x, everywhere)).isEqualTo(of(x, UNCUT));
  }
}
