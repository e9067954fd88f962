package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Objects;
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
}
