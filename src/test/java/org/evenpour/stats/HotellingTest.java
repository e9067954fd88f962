package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HotellingTest {

  /**
   * Phase I by Tracy, Young and Mason (1992), phase II by NIST/SEMATECH e-Handbook 6.5.4.3, p(m+1)
   * (m−1)/(m²−mp)·F; figures computed independently with SciPy.
   */
  @Test
  void limitsAgreeWithIndependentOnes() {
    assertThat(Hotelling.phaseOneLimit(2, 25, 0.0027)).isCloseTo(9.582323335937351, within(1e-9));
    assertThat(Hotelling.phaseTwoLimit(2, 25, 0.0027)).isCloseTo(16.784979651340702, within(1e-9));
    assertThat(Hotelling.phaseOneLimit(3, 40, 0.05)).isCloseTo(7.331346746164347, within(1e-9));
    assertThat(Hotelling.phaseTwoLimit(3, 40, 0.05)).isCloseTo(9.265976128918611, within(1e-9));
  }

  /** Over its own base period Σ T² = (m − 1)p exactly. */
  @Test
  void distancesOfTheBasePeriodAddUp() {
    double[][] points = correlated(40, 7);
    Hotelling base = Hotelling.of(points);
    double sum = 0;
    for (double[] point : points) {
      sum += base.tSquared(point);
    }
    assertThat(sum).isCloseTo(39 * 2, within(1e-9));
  }

  @Test
  void unitsDoNotMatter() {
    double[][] points = correlated(40, 8);
    double[][] other = new double[40][];
    for (int i = 0; i < 40; i++) {
      other[i] = new double[] {points[i][0] * 2.20462 - 5, points[i][1] / 25.4};
    }
    assertThat(Hotelling.of(other).tSquared(other[3]))
        .isCloseTo(Hotelling.of(points).tSquared(points[3]), within(1e-9));
  }

  @Test
  void limitsKeepTheirRate() {
    int beyondOne = 0;
    int beyondTwo = 0;
    for (int trial = 0; trial < 2000; trial++) {
      double[][] points = correlated(22, trial);
      Hotelling base = Hotelling.of(Arrays.copyOf(points, 20));
      beyondOne += base.tSquared(points[0]) > base.phaseOneLimit(0.05) ? 1 : 0;
      beyondTwo += base.tSquared(points[21]) > base.phaseTwoLimit(0.05) ? 1 : 0;
    }
    // 100 expected, standard error 10
    assertThat(beyondOne).isBetween(65, 135);
    assertThat(beyondTwo).isBetween(65, 135);
  }

  @Test
  void refusesABasePeriodThatCannotGiveACovariance() {
    assertThatThrownBy(() -> Hotelling.of(new double[][] {{1, 2}, {2, 3}, {4, 4}}))
        .hasMessageContaining("too few");
    assertThatThrownBy(() -> Hotelling.of(new double[0][])).hasMessageContaining("too few");
    assertThatThrownBy(() -> Hotelling.of(new double[][] {{1, 2}, {2, 4}, {3, 6}, {4, 8}, {5, 10}}))
        .hasMessageContaining("1 and 2 don't vary independently");
    assertThatThrownBy(() -> Hotelling.of(new double[][] {{1, 2}, {2, 2}, {3, 2}, {4, 2}, {5, 2}}))
        .hasMessageContaining("don't vary");
  }

  private static double[][] correlated(int n, long seed) {
    Random random = new Random(seed);
    double[][] points = new double[n][];
    for (int i = 0; i < n; i++) {
      double mass = random.nextGaussian();
      points[i] = new double[] {388 + 2 * mass, 43.2 + 0.2 * mass + 0.1 * random.nextGaussian()};
    }
    return points;
  }
}
