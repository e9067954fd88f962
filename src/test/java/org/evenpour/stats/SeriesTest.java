package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Autocorrelation, robust measures and false discovery. */
class SeriesTest {

  /** NIST StRD univariate sets, lag-one autocorrelation. */
  @ParameterizedTest
  @ValueSource(strings = {"Lottery", "Lew", "Mavro", "Michelso"})
  void lagOneReachesNist(String dataset) {
    double[] y =
        Reference.rows("strd-univariate.csv", "dataset", dataset).stream()
            .mapToDouble(r -> r.number("y"))
            .toArray();
    assertThat(
            Reference.digits(
                Autocorrelation.lag1(y), Reference.certified(dataset, "Autocorrelation")))
        .isGreaterThanOrEqualTo(12);
  }

  /** The Nile, in exact rational arithmetic. */
  @Test
  void lagOneAgreesWithTheNile() {
    assertThat(Autocorrelation.lag1(Reference.column("nile.csv", "flow")))
        .isCloseTo(0.49840818413302895, within(1e-15));
  }

  @Test
  void lagOnePassesOverMissingValues() {
    double[] x = new double[40_000];
    Random random = new Random(7);
    double last = 0;
    for (int i = 0; i < x.length; i++) {
      last = 0.6 * last + random.nextGaussian();
      x[i] = i % 9 == 4 ? Double.NaN : last;
    }
    // standard error near 0.005
    assertThat(Autocorrelation.lag1(x)).isCloseTo(0.6, within(0.015));
    assertThat(Autocorrelation.lag1(new double[] {1, Double.NaN, 2})).isNaN();
    assertThat(Autocorrelation.lag1(new double[] {2, 2, 2})).isNaN();
    assertThat(Autocorrelation.lag1(new double[] {2})).isNaN();
  }

  /** Against the sum it stands for, n/(1 + 2 Σ (1 − k/n) φᵏ). */
  @Test
  void effectiveSampleSizeIsTheSumInClosedForm() {
    for (double phi : new double[] {-0.5, 0, 0.3, 0.9}) {
      for (int n : new int[] {1, 2, 10, 500}) {
        double sum = 1;
        for (int k = 1; k < n; k++) {
          sum += 2 * (1 - (double) k / n) * Math.pow(phi, k);
        }
        assertThat(Autocorrelation.effectiveSampleSize(n, phi))
            .isCloseTo(n / sum, within(1e-10 * n));
      }
    }
    assertThat(Autocorrelation.effectiveSampleSize(10, 1)).isNaN();
  }

  @Test
  void mediansAreInTheMiddle() {
    assertThat(Robust.median(new double[] {5, 1, 3})).isEqualTo(3);
    assertThat(Robust.median(new double[] {5, 1, Double.NaN, 3, 4})).isEqualTo(3.5);
    assertThat(Robust.median(new double[0])).isNaN();
    assertThat(Robust.median(new double[] {Double.NaN})).isNaN();
    // deviations from 3: 2 2 1 0 → 1.5
    assertThat(Robust.mad(new double[] {1, 5, 2, 3, 3}) * 0.6744897501960817)
        .isCloseTo(1, within(1e-12));
  }

  @Test
  void scalesEstimateSigmaOnNormalValues() {
    double[] x = new Random(99).doubles(400_000).map(u -> 388 + 2 * Normal.quantile(u)).toArray();
    assertThat(Robust.mad(x)).isCloseTo(2, within(0.02));
    assertThat(Robust.biweightScale(x)).isCloseTo(2, within(0.01));
  }

  @Test
  void scalesHardlyMoveForAFewWildValues() {
    double[] x = new Random(98).doubles(400).map(u -> 388 + 2 * Normal.quantile(u)).toArray();
    double[] wild = x.clone();
    for (int i = 0; i < 20; i++) {
      wild[20 * i] = 450 + i;
    }
    assertThat(Moments.of(wild).sd()).isGreaterThan(10);
    assertThat(Robust.biweightScale(wild)).isCloseTo(Robust.biweightScale(x), within(0.2));
    assertThat(Robust.mad(wild)).isCloseTo(Robust.mad(x), within(0.3));
  }

  @Test
  void scalesHaveTheirEnds() {
    assertThat(Robust.biweightScale(new double[] {2, 2, 2, 9})).isZero();
    assertThat(Robust.biweightScale(new double[0])).isNaN();
    assertThat(Robust.mad(new double[0])).isNaN();
  }

  /**
   * Benjamini and Hochberg (1995): fifteen tests of a thrombolysis trial (from memory); at 0.05 the
   * procedure rejects four, Bonferroni's three.
   */
  @Test
  void qValuesAgreeWithBenjaminiAndHochberg() {
    double[] p = {
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262,
      0.5719, 0.6528, 0.7590, 1.000
    };
    double[] q = FalseDiscovery.qValues(p);
    assertThat(Arrays.stream(q).filter(v -> v <= 0.05).count()).isEqualTo(4);
    assertThat(q[3]).isCloseTo(0.0095 * 15 / 4, within(1e-12));
    // 0.0298·15/7 is below 0.0278·15/6, so the two share it
    assertThat(q[5]).isEqualTo(q[6]).isCloseTo(0.0298 * 15 / 7, within(1e-12));
    assertThat(q[4]).isCloseTo(0.0201 * 15 / 5, within(1e-12));
  }

  @Test
  void qValuesKeepOrderAndMissingQuestions() {
    double[] q = FalseDiscovery.qValues(new double[] {0.5, Double.NaN, 0.01});
    assertThat(q[0]).isEqualTo(0.5);
    assertThat(q[1]).isNaN();
    assertThat(q[2]).isEqualTo(0.02);
    assertThat(FalseDiscovery.qValues(new double[0])).isEmpty();
  }

  /** Holm (1979) by hand with six tests: the smallest six times, the next five times, and so on. */
  @Test
  void familyWiseAgreesWithHolm() {
    double[] p = {0.0095, 0.0001, Double.NaN, 0.0004, 0.0019, 0.9, 0.5};
    double[] corrected = FalseDiscovery.familyWise(p);
    double[] expected = {0.0095 * 3, 0.0001 * 6, Double.NaN, 0.0004 * 5, 0.0019 * 4, 1, 1};
    assertThat(corrected).containsExactly(expected, within(1e-15));
    // 3·0.02 is above 2·0.025: what is larger cannot count for more.
    assertThat(FalseDiscovery.familyWise(new double[] {0.025, 0.02, 0.06}))
        .containsExactly(new double[] {0.06, 0.06, 0.06}, within(1e-15));
    assertThat(FalseDiscovery.familyWise(new double[0])).isEmpty();
  }
}
