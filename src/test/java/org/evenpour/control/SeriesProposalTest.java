package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.evenpour.stats.CusumPair;
import org.junit.jupiter.api.Test;

/** Checked against simulated autoregressions of s.d. 1 about 50; means over many series. */
class SeriesProposalTest {
  private static final int SERIES = 200;

  private static double[] series(int points, double phi, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] x = new double[points];
    double effect = random.nextGaussian();
    for (int i = 0; i < points; i++) {
      effect = phi * effect + Math.sqrt(1 - phi * phi) * random.nextGaussian();
      x[i] = 50 + effect;
    }
    return x;
  }

  /** Mean φ, sigma, center and share of the fault's points that were taken for normal. */
  private static double[] means(int points, double phi, int from, int to, double by) {
    double[] mean = new double[4];
    for (int s = 0; s < SERIES; s++) {
      double[] x = series(points, phi, s);
      for (int i = from; i < to; i++) {
        x[i] += by;
      }
      SeriesProposal proposal = SeriesProposal.of(x, 0, 0.01);
      mean[0] += proposal.correlation() / SERIES;
      mean[1] += proposal.sigma() / SERIES;
      mean[2] += proposal.center() / SERIES;
      for (int i = from; i < to; i++) {
        mean[3] += proposal.normal()[i] ? 1.0 / (to - from) / SERIES : 0;
      }
    }
    return mean;
  }

  @Test
  void takesNoStepForAutocorrelation() {
    double[] mean = means(260, 0.55, 120, 190, 3);

    // Four standard errors of a mean over 200 of s.d. 0.06; sigma's is 0.07.
    assertThat(mean[0]).isCloseTo(0.55, within(0.02));
    assertThat(mean[1]).isCloseTo(1, within(0.03));
    assertThat(mean[2]).isCloseTo(50, within(0.05));
    assertThat(mean[3]).isLessThan(0.03);
  }

  @Test
  void knowsTheLevelToWhichTheSeriesComesBack() {
    // Before the fault there are fewer points than a state must have, but it came back.
    double[] mean = means(260, 0.3, 15, 85, 3);

    // In some series of a hundred the first 15 points are too few to be told from the fault.
    assertThat(mean[2]).isCloseTo(50, within(0.2));
    assertThat(mean[3]).isLessThan(0.08);
  }

  @Test
  void letsALastingFaultOfMoreThanHalfBeOne() {
    double[] mean = means(300, 0.3, 100, 300, 4);

    assertThat(mean[2]).isCloseTo(50, within(0.06));
    assertThat(mean[3]).isLessThan(0.03);
  }

  /** The contrast between two ladle sides is often nothing but the pours' scatter. */
  @Test
  void doubtsNoCorrelationWhereThereIsNothingButKnownNoise() {
    double rate = 0.001;
    double known = CusumPair.of(0.5, rate, 1.0 / 400, Math.sqrt(2.0 / 400)).h();
    int sharp = 0;
    int cautious = 0;
    for (int s = 0; s < SERIES; s++) {
      double noise = SeriesProposal.of(series(400, 0, s), 1, 0.5).limits(rate).decision().h();
      double wander = SeriesProposal.of(series(400, 0.4, s), 0.5, 0.5).limits(rate).decision().h();
      sharp += noise < known + 0.01 ? 1 : 0;
      cautious += wander > known + 0.1 ? 1 : 0;
    }

    // 1.5 standard errors of the variance and two of φ, and a longer memory by chance: some 90 %.
    assertThat(sharp).isGreaterThan(160);
    assertThat(cautious).isEqualTo(SERIES);
  }

  /**
   * S.d. of the logarithm of S = v + P(1 + φ)/(1 − φ) by moments, over 3,000 simulated series of
   * 4,000 points seen through white noise of known variance.
   */
  private static double simulatedDoubt(double phi, double noise) {
    int points = 4_000;
    int series = 3_000;
    SplittableRandom random = new SplittableRandom(7);
    double sum = 0;
    double squares = 0;
    for (int s = 0; s < series; s++) {
      double effect = random.nextGaussian();
      double zero = 0;
      double first = 0;
      double before = 0;
      for (int i = 0; i < points; i++) {
        double x = Math.sqrt(1 - noise) * effect + Math.sqrt(noise) * random.nextGaussian();
        zero += x * x / points;
        first += i == 0 ? 0 : x * before / (points - 1);
        before = x;
        effect = phi * effect + Math.sqrt(1 - phi * phi) * random.nextGaussian();
      }
      double own = zero - noise;
      double log = Math.log(noise + own * (own + first) / (own - first));
      sum += log / series;
      squares += log * log / series;
    }
    return Math.sqrt((squares - sum * sum) * points);
  }

  @Test
  void knownNoiseIsNoDoubt() {
    for (double[] phiAndNoise : new double[][] {{0.5, 0}, {0.5, 0.5}, {0.7, 0.3}}) {
      double phi = phiAndNoise[0];
      double noise = phiAndNoise[1];
      double expected = simulatedDoubt(phi, noise);
      SeriesProposal proposal = new SeriesProposal(0, 1, phi, noise, 1, 10_000, 1, new boolean[0]);
      double variance = square(100 * proposal.logVarianceSd());
      // The doubt about φ is widened by 1.2, as short series need; 3,000 series know it to 1.3 %.
      assertThat(Math.sqrt(2 + (variance - 2) / 1.44)).isCloseTo(expected, within(0.06 * expected));
    }
  }

  private static double square(double x) {
    return x * x;
  }
}
