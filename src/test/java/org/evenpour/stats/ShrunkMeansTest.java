package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ShrunkMeansTest {

  /**
   * Davies' dyestuff: τ² 1764.05 with σ² 2451.25; the predicted batch effects as lme4's
   * documentation prints them, from memory, and by the closed form 1764.05/(1764.05 + 2451.25/5)
   * times the batch's departure.
   */
  @Test
  void agreesWithTheDyestuff() {
    double[] means = new double[6];
    for (Reference.Row row : Reference.rows("dyestuff.csv")) {
      means[row.text("batch").charAt(0) - 'A'] += row.number("yield") / 5;
    }
    ShrunkMeans shrunk = ShrunkMeans.of(means, counts(5, 5, 5, 5, 5, 5), Math.sqrt(2451.25));
    assertThat(shrunk.center()).isCloseTo(1527.5, within(1e-9));
    assertThat(shrunk.between()).isCloseTo(1764.05, within(1e-6));
    double[] effects = {-17.6068514, 0.3912634, 28.5622256, -23.0845385, 56.7331877, -44.9952868};
    for (int i = 0; i < 6; i++) {
      assertThat(shrunk.groups().get(i).mean() - 1527.5).isCloseTo(effects[i], within(5e-7));
      assertThat(shrunk.groups().get(i).shrinkage())
          .isCloseTo(490.25 / (1764.05 + 490.25), within(1e-9));
    }
  }

  /** Box and Tiao's second dyestuff differs no more than by chance: every batch is the center. */
  @Test
  void shrinksWhollyWhereGroupsDontDiffer() {
    double[] means = new double[6];
    for (Reference.Row row : Reference.rows("dyestuff2.csv")) {
      means[row.text("batch").charAt(0) - 'A'] += row.number("yield") / 5;
    }
    ShrunkMeans shrunk = ShrunkMeans.of(means, counts(5, 5, 5, 5, 5, 5), Math.sqrt(14.94588960));
    assertThat(shrunk.between()).isZero();
    assertThat(shrunk.center()).isCloseTo(5.666, within(0.0005));
    ShrunkMeans.Shrunk first = shrunk.groups().get(0);
    assertThat(first.mean()).isCloseTo(shrunk.center(), within(1e-12));
    assertThat(first.low()).isLessThan(first.mean());
  }

  /** Unequal counts, computed independently (SciPy): τ² by bracketing, then the weights. */
  @Test
  void agreesWithAnIndependentComputationOfUnequalGroups() {
    double[] means = {2.1, -0.4, 0.3, 5.0, Double.NaN, 1.2};
    ShrunkMeans shrunk = ShrunkMeans.of(means, counts(40, 55, 32, 4, 0, 61), 2.5);
    assertThat(shrunk.between()).isCloseTo(3.4192780525, within(1e-8));
    assertThat(shrunk.center()).isCloseTo(1.4361024297, within(1e-8));
    // the group of four is drawn in most, and still leads here
    assertThat(shrunk.groups().get(3).mean()).isCloseTo(3.8822083411, within(1e-8));
    assertThat(shrunk.groups().get(3).high() - shrunk.groups().get(3).mean())
        .isCloseTo(3.2521091554, within(1e-8));
    assertThat(shrunk.groups().get(4).mean()).isNaN();
  }

  /** The intervals cover the true means of 26 groups of 3 to 28 values as they say, near 95 %. */
  @Test
  void intervalsCover() {
    Random random = new Random(26);
    int covered = 0;
    int trials = 2000;
    for (int trial = 0; trial < trials; trial++) {
      double[] truth = new double[26];
      double[] means = new double[26];
      long[] counts = new long[26];
      for (int i = 0; i < 26; i++) {
        counts[i] = 3 + i;
        truth[i] = 388 + 0.7 * random.nextGaussian();
        means[i] = truth[i] + 2 * random.nextGaussian() / Math.sqrt(counts[i]);
      }
      ShrunkMeans shrunk = ShrunkMeans.of(means, counts, 2);
      for (int i = 0; i < 26; i++) {
        ShrunkMeans.Shrunk g = shrunk.groups().get(i);
        covered += g.low() <= truth[i] && truth[i] <= g.high() ? 1 : 0;
      }
    }
    assertThat(covered / (26.0 * trials)).isBetween(0.94, 0.965);
  }

  @Test
  void oneGroupIsNotShrunk() {
    ShrunkMeans one = ShrunkMeans.of(new double[] {3, 9}, counts(4, 0), 1);
    assertThat(one.center()).isEqualTo(3);
    assertThat(one.between()).isNaN();
    assertThat(one.groups().get(0).mean()).isNaN();
    assertThat(ShrunkMeans.of(new double[] {3, 9}, counts(4, 4), 0).between()).isNaN();
  }

  private static long[] counts(long... counts) {
    return counts;
  }
}
