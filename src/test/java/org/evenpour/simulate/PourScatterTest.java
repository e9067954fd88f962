package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PourScatterTest {
  private static final int POURS = 400_000;

  private static double[] pours(PourScatter scatter) {
    Noise usual = new Noise(new SplittableRandom(5));
    Noise ladle = new Noise(new SplittableRandom(6));
    return IntStream.range(0, POURS).mapToDouble(i -> scatter.draw(usual, ladle)).toArray();
  }

  private static double moment(double[] x, int power) {
    double sum = 0;
    for (double one : x) {
      sum += Math.pow(one, power);
    }
    return sum / x.length;
  }

  /**
   * Tolerances: some four standard errors; those of the third moment by the sixth moments of the
   * parts (normal 15, exponential about its mean 265, a mishap 6! times its size to the sixth).
   */
  @ParameterizedTest
  @CsvSource({"0,0,0,0.5", "0.5,0.02,1.25,0.75", "0.75,0,0,0.5", "-0.6,0.04,2,0.2", "0,0.04,2,0.5"})
  void hasMeanZeroAndStandardDeviationOneAndItsSkewness(
      double runOn, double mishaps, double size, double late) {
    PourScatter scatter = new PourScatter(runOn, mishaps, size, late);
    double[] x = pours(scatter);
    double sixth = 15 + 265 * Math.pow(runOn, 6) + 720 * mishaps * Math.pow(size, 6);
    assertThat(moment(x, 1)).isCloseTo(0, within(0.007));
    assertThat(moment(x, 2)).isCloseTo(1, within(0.02));
    assertThat(moment(x, 3)).isCloseTo(scatter.skewness(), within(4 * Math.sqrt(sixth / POURS)));
  }

  /**
   * A normal number plus an exponential one of mean τ has the skewness 2τ³/(σ² + τ²)^1.5 (third
   * cumulants add up; closed form). Here σ² + τ² = 1.
   */
  @Test
  void skewsAsANormalAndAnExponentialNumberDo() {
    assertThat(new PourScatter(0.75, 0, 0, 0.5).skewness())
        .isCloseTo(2 * Math.pow(0.75, 3), within(1e-12));
    assertThat(new PourScatter(-0.6, 0, 0, 0.5).skewness())
        .isCloseTo(-2 * Math.pow(0.6, 3), within(1e-12));
    assertThat(PourScatter.NORMAL.skewness()).isZero();
  }

  /** Of a normal distribution 1 in 15,787 lies beyond ±4 (2Φ(−4) = 6.33e-5). */
  @Test
  void mishapsMakeTheTailsHeavy() {
    long beyond =
        java.util.Arrays.stream(pours(new PourScatter(0.5, 0.03, 1.5, 0.75)))
            .filter(x -> Math.abs(x) > 4)
            .count();
    assertThat(beyond).isGreaterThan(30 * POURS / 15_787);
  }

  @Test
  void normalPoursDrawNothingElse() {
    Noise ladle = new Noise(new SplittableRandom(6));
    PourScatter.NORMAL.draw(new Noise(new SplittableRandom(5)), ladle);
    assertThat(ladle.between(0, 1)).isEqualTo(new Noise(new SplittableRandom(6)).between(0, 1));
  }

  @Test
  void refusesMishapsThatLeaveNoOrdinaryScatter() {
    assertThatThrownBy(() -> new PourScatter(0.9, 0.1, 2, 0.5))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
