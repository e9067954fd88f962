package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Charts with a limit for single points beside them, and how their run lengths spread. */
class CombinedRunLengthTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  /**
   * EWMA with a limit for points: average, and probability of more than ten points. Computed
   * independently, by a chain of 2,001 equal cells extrapolated (Python, SciPy).
   */
  @ParameterizedTest
  @CsvSource({
    "0.1,2.814,3.5,0,0,417.41278,0.98946513",
    "0.1,2.814,3.5,1,0,10.200892,0.3904688",
    "0.2,2.962,3.3,0,0,360.55935,0.9797098",
    "0.2,2.962,3.3,2,0.4,2.7644437,0.00020591194",
    "0.1,3.2,4.0,0.5,0.3,39.36583,0.84963764",
    "0.5,3.0,3.1,0,0,279.75154,0.96709339"
  })
  void ewmasWithPointsAgree(
      double lambda,
      double width,
      double limit,
      double shift,
      double start,
      double mean,
      double beyond10) {
    check(RunLength.ewmaAndPoints(lambda, width, limit, shift, start), mean, 1e-6);
    RunLengthDistribution length =
        RunLength.ewmaAndPointsDistribution(lambda, width, limit, shift, start);
    check(length.mean(), mean, 1e-6);
    assertThat(length.signalWithin(10)).isCloseTo(1 - beyond10, within(2e-7));
  }

  /**
   * Both CUSUMs with a limit for points, from rest and with a head start: average, and probability
   * of more than twenty points. Computed independently, by the chain of both sums together on a
   * grid of 1/30 sigma, extrapolated (Python, SciPy); good to some five digits. Both limits are
   * below h − k, where our composition of the sides isn't exact.
   */
  @ParameterizedTest
  @CsvSource({
    "4.05,3.45,0,0,166.8881,0.9064675",
    "4.05,3.45,1,0,8.421782,0.02571303",
    "4.05,3.45,0,2,149.1374,0.8077737",
    "4.05,3.45,1,2,5.379463,0.01030658",
    "7.55,3.55,0,0,1852.716,0.9908962",
    "7.55,3.55,1,0,15.14115,0.1906947",
    "7.55,3.55,0,3.5,1820.795,0.9742682",
    "7.55,3.55,1,3.5,9.426931,0.0556563"
  })
  void cusumsWithPointsAgree(
      double h, double limit, double shift, double headStart, double mean, double beyond20) {
    check(RunLength.cusumAndPoints(0.5, h, limit, shift, headStart), mean, 3e-5);
    RunLengthDistribution length =
        RunLength.cusumAndPointsDistribution(0.5, h, limit, shift, headStart);
    check(length.mean(), mean, 0.02);
    assertThat(length.signalWithin(20)).isCloseTo(1 - beyond20, within(0.005));
  }

  /** The charts that the engine runs, a CUSUM and points, simulated: within three s.e. */
  @Test
  void simulatedCusumsWithPointsAgree() {
    Random random = new Random(1982);
    Moments lengths = new Moments();
    int within10 = 0;
    int runs = 20_000;
    for (int run = 0; run < runs; run++) {
      Cusum cusum = new Cusum(0, 0.5, 5);
      cusum.restart(2.5);
      int length = 0;
      double z;
      do {
        z = 0.8 + random.nextGaussian();
        length++;
      } while (!(cusum.accept(z) | Math.abs(z) > 3.5));
      lengths.add(length);
      within10 += length <= 10 ? 1 : 0;
    }
    double standardError = lengths.sd() / Math.sqrt(runs);
    assertThat(RunLength.cusumAndPoints(0.5, 5, 3.5, 0.8, 2.5))
        .isCloseTo(lengths.mean(), within(3 * standardError));
    RunLengthDistribution length = RunLength.cusumAndPointsDistribution(0.5, 5, 3.5, 0.8, 2.5);
    assertThat(length.sd()).isCloseTo(lengths.sd(), within(0.03 * lengths.sd()));
    assertThat(length.signalWithin(10))
        .isCloseTo(within10 / (double) runs, within(3 * Math.sqrt(0.25 / runs)));
  }

  @Test
  void withoutALimitForPointsTheChartsAreThePlainOnes() {
    check(RunLength.cusumAndPoints(0.5, 4, 9, 1, 2), RunLength.cusum(0.5, 4, 1, 2), 1e-9);
    check(RunLength.ewmaAndPoints(0.2, 3, 9, 0.5, 0), RunLength.ewma(0.2, 3, 0.5), 1e-9);
    // and without the sum or the average, points alone
    check(RunLength.cusumAndPoints(0.5, 60, 3, 0, 0), RunLength.shewhart(3, 0), 1e-6);
    check(RunLength.ewmaAndPoints(0.2, 20, 3, 0, 0), RunLength.shewhart(3, 0), 1e-9);
  }

  @Test
  void limitsBesidePointsMeetTheirRunLength() {
    double h = RunLength.cusumLimit(0.5, 4.05, 5760);
    check(RunLength.cusumAndPoints(0.5, h, 4.05, 0, 0), 5760, 1e-8);
    assertThat(h).isGreaterThan(RunLength.cusumLimit(0.5, 5760));
    double width = RunLength.ewmaLimit(0.1, 4.05, 5760);
    check(RunLength.ewmaAndPoints(0.1, width, 4.05, 0, 0), 5760, 1e-8);
    // points beyond 3 sigma alone ring once in 370
    assertThat(RunLength.cusumLimit(0.5, 3, 500)).isNaN();
    assertThat(RunLength.ewmaLimit(0.1, 3, 500)).isNaN();
  }

  /** Points beyond 3 sigma: a geometric distribution. */
  @Test
  void aShewhartChartIsGeometric() {
    RunLengthDistribution length = RunLength.ewmaAndPointsDistribution(1, 3, NONE, 0, 0);
    double p = 0.002699796063;
    check(length.mean(), 1 / p, 1e-9);
    check(length.sd(), Math.sqrt(1 - p) / p, 1e-9);
    check(length.signalWithin(100), 1 - Math.pow(1 - p, 100), 1e-9);
    check(length.signalWithin(5000), 1 - Math.pow(1 - p, 5000), 1e-9);
    // ln 0.5/ln(1 − p) = 256.4
    assertThat(length.points(0.5)).isEqualTo(257);
    assertThat(length.points(0)).isZero();
    assertThat(length.points(0.99999999)).isEqualTo(6814);
    assertThat(length.signalWithin(0)).isZero();
  }

  private static void check(double value, double truth, double tolerance) {
    assertThat(value).isCloseTo(truth, within(tolerance * truth));
  }
}
