package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PercentilesTest {

  /** NIST/SEMATECH e-Handbook 7.2.6.2: the 90th percentile of twelve values is 95.1981. */
  @Test
  void agreesWithTheHandbook() {
    double[] x = {
      95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925,
      95.1990, 95.1682
    };
    Arrays.sort(x);
    assertThat(Percentiles.at(0.9, x)).isCloseTo(95.1981, within(0.00005));
    assertThat(Percentiles.at(0, x)).isEqualTo(95.0610);
    assertThat(Percentiles.at(1, x)).isEqualTo(95.1990);
    assertThat(Percentiles.at(0.5, new double[0])).isNaN();
    assertThat(Percentiles.of(x)).isNull();
  }

  /** On normal values the percentile indices are the normal ones: 6 sigma between the ends. */
  @Test
  void meetsTheNormalIndicesOnNormalValues() {
    double[] x = new double[200_001];
    for (int i = 0; i < x.length; i++) {
      x[i] = 388 + 2 * Normal.quantile((i + 1.0) / (x.length + 1));
    }
    Percentiles p = Objects.requireNonNull(Percentiles.of(x));
    Capability normal = Capability.of(x.length, 388, 2, 1e5, 2, 379.0, null, 400.0);
    // z of 0.135 % is 2.99998
    assertThat(p.pp(379, 400)).isCloseTo(Objects.requireNonNull(normal.pp()).value(), within(1e-4));
    assertThat(p.ppk(379.0, 400.0))
        .isCloseTo(Objects.requireNonNull(normal.ppk()).value(), within(1e-4));
    assertThat(p.ppk(null, 400.0)).isCloseTo(2, within(1e-4));
    assertThat(p.ppk(379.0, null)).isCloseTo(1.5, within(1e-4));
    assertThat(p.ppk(null, null)).isNaN();
  }

  @Test
  void hasNoIndexWithoutSpread() {
    double[] x = new double[Percentiles.FEWEST];
    Arrays.fill(x, 388);
    Percentiles p = Objects.requireNonNull(Percentiles.of(x));
    assertThat(p.pp(380, 390)).isNaN();
    assertThat(p.ppk(380.0, 390.0)).isNaN();
  }

  /**
   * Ranks computed independently (SciPy, binomial distribution): of 100 values the median lies
   * between the 40th and the 61st with at least 95 %, of 4,000 the 0.135 % percentile between the
   * 1st and 11th; of 2,730 it has no lower limit, of 2,731 it has.
   */
  @Test
  void intervalsLieBetweenOrderStatistics() {
    assertThat(Percentiles.interval(0.5, ranks(100), 0.95))
        .isEqualTo(new Percentiles.Interval(40.0, 61.0));
    assertThat(Percentiles.interval(0.00135, ranks(4000), 0.95))
        .isEqualTo(new Percentiles.Interval(1.0, 11.0));
    // (1 − 0.00135)ⁿ ≤ 0.025 from n = 2,731 on
    assertThat(Percentiles.interval(0.00135, ranks(2730), 0.95).low()).isNull();
    assertThat(Percentiles.interval(0.00135, ranks(2731), 0.95).low()).isEqualTo(1.0);
    assertThat(Percentiles.interval(0.99865, ranks(2730), 0.95).high()).isNull();
    assertThat(Percentiles.interval(0.5, new double[0], 0.95))
        .isEqualTo(new Percentiles.Interval(null, null));
  }

  private static double[] ranks(int n) {
    return IntStream.rangeClosed(1, n).asDoubleStream().toArray();
  }

  /** Skewed values, whose true percentiles are known: the intervals cover at least 95 %. */
  @Test
  void indexIntervalsCoverOnSkewedValues() {
    // exponential: −ln(1 − p); limits 0.001 and 9
    double low = -Math.log1p(-0.00135);
    double high = -Math.log(0.00135);
    double median = Math.log(2);
    double pp = 9 / (high - low);
    double ppk = Math.min((median - 0.001) / (median - low), (9 - median) / (high - median));
    Random random = new Random(22514);
    int coveredPp = 0;
    int coveredPpk = 0;
    for (int trial = 0; trial < 200; trial++) {
      double[] x = random.doubles(4000).map(u -> -Math.log1p(-u)).sorted().toArray();
      coveredPp += covers(Percentiles.ppInterval(0, 9, x, 0.95), pp);
      coveredPpk += covers(Percentiles.ppkInterval(0.001, 9.0, x, 0.95), ppk);
      assertThat(covers(Percentiles.ppkInterval(null, 9.0, x, 0.95), 0)).isZero();
    }
    assertThat(coveredPp).isGreaterThanOrEqualTo(190);
    assertThat(coveredPpk).isGreaterThanOrEqualTo(190);
    double[] few = ranks(1000);
    assertThat(Percentiles.ppInterval(0, 2000, few, 0.95).low()).isNull();
    assertThat(Percentiles.ppkInterval(null, null, few, 0.95).low()).isNull();
    assertThat(Percentiles.ppkInterval(0.0, 2000.0, few, 0.95).low()).isNull();
  }

  private static int covers(Percentiles.Interval interval, double truth) {
    double low = Objects.requireNonNull(interval.low());
    double high = Objects.requireNonNull(interval.high());
    return low <= truth && truth <= high ? 1 : 0;
  }
}
