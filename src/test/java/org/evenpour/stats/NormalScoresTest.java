package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Checked against distributions whose functions have a closed form. */
class NormalScoresTest {
  private static double[] sample(int n, long seed, ToDoubleFunction<SplittableRandom> draw) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] x = new double[n];
    Arrays.setAll(x, i -> draw.applyAsDouble(random));
    return x;
  }

  /** Gamma of shape 4, mean 0 and s.d. 1: the sum of four exponential values. */
  private static double gamma(SplittableRandom random) {
    double product = 1;
    for (int i = 0; i < 4; i++) {
      product *= 1 - random.nextDouble();
    }
    return (-Math.log(product) - 4) / 2;
  }

  /** Its upper tail, Erlang's: e⁻ˣ·Σ xⁱ/i!, i = 0…3. */
  private static double beyondGamma(double z) {
    double x = Math.max(0, 2 * z + 4);
    return Math.exp(-x) * (1 + x + x * x / 2 + x * x * x / 6);
  }

  private static double beyondLaplace(double z) {
    double tail = 0.5 * Math.exp(-Math.sqrt(2) * Math.abs(z));
    return z < 0 ? 1 - tail : tail;
  }

  private static double laplace(SplittableRandom random) {
    double size = -Math.log(1 - random.nextDouble()) / Math.sqrt(2);
    return random.nextBoolean() ? size : -size;
  }

  @Test
  void leavesNormalValuesWhereTheyAre() {
    NormalScores scores = NormalScores.of(sample(100_000, 1, SplittableRandom::nextGaussian));

    // The s.d. of an estimated quantile is 0.004 in the middle and 0.013 at 2.5.
    for (double z = -2.5; z <= 2.5; z += 0.25) {
      assertThat(scores.of(z)).isCloseTo(z, within(0.04));
    }
    assertThat(scores.slope()).isCloseTo(1, within(0.02));
  }

  @Test
  void makesSkewedValuesNormal() {
    NormalScores scores = NormalScores.of(sample(100_000, 2, NormalScoresTest::gamma));

    for (double z = -1.5; z <= 3.5; z += 0.25) {
      assertThat(scores.of(z)).isCloseTo(-Normal.quantile(beyondGamma(z)), within(0.06));
    }
    // One in 30,000: some three values of the sample lie beyond.
    assertThat(scores.of(5.2)).isCloseTo(-Normal.quantile(beyondGamma(5.2)), within(0.25));
  }

  @Test
  void scoresRiseAndComeBack() {
    NormalScores scores = NormalScores.of(sample(3000, 3, NormalScoresTest::gamma));

    double before = Double.NEGATIVE_INFINITY;
    for (double s = -5; s <= 5; s += 0.05) {
      double z = scores.value(s);
      assertThat(z).isGreaterThanOrEqualTo(before);
      before = z;
      // Below lies an end of the tail that no value passes.
      if (s > -3) {
        assertThat(scores.of(z)).isCloseTo(s, within(1e-9));
      }
    }
    assertThat(scores.of(Double.POSITIVE_INFINITY)).isEqualTo(8);
    assertThat(scores.of(Double.NEGATIVE_INFINITY)).isEqualTo(-8);
    assertThat(scores.of(Double.NaN)).isNaN();
  }

  @Test
  void tellsHowMuchDenserTheMiddleIs() {
    // Laplace: ∫ s′ dF = 2√2/√(2π) = 1.128; its square 4/π is the efficiency of normal scores
    // against the mean there.
    NormalScores scores = NormalScores.of(sample(200_000, 4, NormalScoresTest::laplace));

    assertThat(scores.slope()).isCloseTo(2 / Math.sqrt(Math.PI), within(0.02));
  }

  @Test
  void exponentialTailsHaveTheScaleOfTheirMean() {
    double[] z = sample(40_000, 5, NormalScoresTest::laplace);

    NormalScores.Tail tail = NormalScores.of(z).high();

    // Laplace beyond any point is exponential with mean 1/√2; 1,000 values: 3 % of error.
    assertThat(tail.count()).isBetween(990, 1010);
    assertThat(tail.scale() / (1 - tail.shape())).isCloseTo(Math.sqrt(0.5), within(0.07));
    assertThat(tail.shape()).isCloseTo(0, within(0.12));
  }

  @Test
  void isPassedAtTheRateThatWasAskedFor() {
    // Each sample's limit is off; on average later values pass it as often as they may.
    // Normal tails are shorter than a tail is taken to be before anything is known of it.
    assertThat(passed(SplittableRandom::nextGaussian, Normal::upperTail)).isBetween(0.4, 1.2);
    assertThat(passed(NormalScoresTest::gamma, NormalScoresTest::beyondGamma)).isBetween(0.5, 1.3);
    assertThat(passed(NormalScoresTest::laplace, NormalScoresTest::beyondLaplace))
        .isBetween(0.6, 1.4);
  }

  /**
   * The rate with which limits for 1 in 2,500 from samples of 2,500 are passed, over 1 in 2,500.
   */
  private static double passed(
      ToDoubleFunction<SplittableRandom> draw, DoubleUnaryOperator beyond) {
    double rate = 4e-4;
    double sum = 0;
    int samples = 300;
    for (int i = 0; i < samples; i++) {
      NormalScores scores = NormalScores.of(sample(2500, 100 + i, draw));
      double limit = scores.limit(rate);
      double below = 1 - beyond.applyAsDouble(scores.value(-limit));
      sum += beyond.applyAsDouble(scores.value(limit)) + below;
    }
    return sum / samples / rate;
  }

  @Test
  void aFewWildValuesAreNoPartOfATail() {
    double[] z = sample(6000, 8, SplittableRandom::nextGaussian);
    NormalScores sound = NormalScores.of(z);
    z[17] = -9;
    z[400] = -14;
    z[4000] = 30;

    NormalScores scores = NormalScores.of(z);

    assertThat(scores.value(-4)).isCloseTo(sound.value(-4), within(0.1));
    assertThat(scores.value(4)).isCloseTo(sound.value(4), within(0.1));
    assertThat(scores.of(-9)).isLessThan(-6);
  }

  @Test
  void wildValuesThatComeAgainAndAgainAre() {
    // Two in a hundred five times as wide: one in 1,000 lies beyond 5.
    double[] z =
        sample(6000, 9, random -> (random.nextDouble() < 0.02 ? 5 : 1) * random.nextGaussian());

    assertThat(NormalScores.of(z).value(3)).isGreaterThan(5);
  }

  @Test
  void roundedValuesShareKnots() {
    double[] z = sample(5000, 6, random -> Math.rint(2 * random.nextGaussian()) / 2);

    NormalScores scores = NormalScores.of(z);

    assertThat(scores.values()).hasSizeBetween(5, 12);
    assertThat(scores.of(0)).isCloseTo(0, within(0.1));
    assertThat(scores.of(1)).isCloseTo(1, within(0.1));
  }

  @Test
  void saysNothingOfFewValuesOrOfOne() {
    assertThat(NormalScores.of(sample(499, 7, SplittableRandom::nextGaussian)).isIdentity())
        .isTrue();
    assertThat(NormalScores.of(new double[1000]).isIdentity()).isTrue();
    double[] endless = new double[1000];
    Arrays.setAll(endless, i -> i % 2 == 0 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY);
    assertThat(NormalScores.of(endless).isIdentity()).isTrue();
    assertThat(NormalScores.IDENTITY.of(2.5)).isEqualTo(2.5);
    assertThat(NormalScores.IDENTITY.limit(0.0027)).isCloseTo(3, within(0.001));
  }

  @Test
  void refusesKnotsThatDoNotAscend() {
    NormalScores.Tail tail = new NormalScores.Tail(1, 0, 10);

    assertThatThrownBy(() -> new NormalScores(List.of(1.0, 1.0), List.of(0.0, 1.0), tail, tail, 10))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void tellsWhatLiesBeyondALimitByTheScoreItself() {
    Random random = new Random(11);
    NormalScores scores =
        NormalScores.of(random.doubles(5_000).map(u -> -Math.log(1 - u) - 1).toArray());

    for (NormalScores its : List.of(scores, NormalScores.IDENTITY)) {
      for (double limit : new double[] {0.5, 1.9, 2.5, 3.5}) {
        for (double z = -9; z < 9; z += 0.0625) {
          assertThat(its.isBeyond(z, limit)).isEqualTo(Math.abs(its.of(z)) > limit);
        }
      }
    }
    assertThat(scores.isBeyond(Double.NaN, 3)).isFalse();
  }
}
