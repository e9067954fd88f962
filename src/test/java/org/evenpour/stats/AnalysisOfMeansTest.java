package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnalysisOfMeansTest {

  /** Every critical value of the table, to its printed digits. */
  @Test
  void criticalValuesAgree() {
    List<Reference.Row> rows = Reference.rows("analysis-of-means.csv");
    assertThat(rows).hasSizeGreaterThan(1200);
    for (Reference.Row row : rows) {
      double alpha = row.number("alpha");
      int k = row.whole("k");
      double nu = row.number("nu");
      double h = AnalysisOfMeans.criticalValue(alpha, k, nu);
      assertThat(h).as("%s", row).isCloseTo(row.number("h"), within(1e-6));
      // the bounds for groups of any sizes lie in order
      assertThat(AnalysisOfMeans.maximumModulus(alpha, k, nu))
          .as("%s", row)
          .isBetween(h - 1e-9, row.number("bound") + 1e-6);
    }
  }

  /** Nelson (1983), from memory. */
  @Test
  void criticalValuesAgreeWithNelson() {
    double known = Double.POSITIVE_INFINITY;
    assertThat(AnalysisOfMeans.criticalValue(0.05, 3, known)).isCloseTo(2.34, within(0.005));
    assertThat(AnalysisOfMeans.criticalValue(0.05, 4, known)).isCloseTo(2.47, within(0.005));
  }

  /** Two groups: Student's t itself. */
  @Test
  void twoGroupsAreATTest() {
    assertThat(AnalysisOfMeans.criticalValue(0.05, 2, 10)).isCloseTo(2.228138852, within(5e-10));
  }

  /** Computed independently by adaptive quadrature over chi (SciPy). */
  @ParameterizedTest
  @CsvSource({
    "0.05,3,20,2.594130060",
    "0.05,2,Infinity,2.236476645",
    "0.01,8,12,4.146165950",
    "0.05,26,500,3.110193387",
    "0.1,5,3,3.843870191",
    "0.05,72,30,3.726944025"
  })
  void maximumModulusAgrees(double alpha, int k, double nu, double truth) {
    assertThat(AnalysisOfMeans.maximumModulus(alpha, k, nu)).isCloseTo(truth, within(1e-8));
  }

  /** A wheel of 26 molds and many turns: no group differs, and the rate of false flags is alpha. */
  @Test
  void flagsAsOftenAsItSays() {
    Random random = new Random(1983);
    double h = AnalysisOfMeans.criticalValue(0.05, 26, Double.POSITIVE_INFINITY);
    double modulus = AnalysisOfMeans.maximumModulus(0.05, 26, Double.POSITIVE_INFINITY);
    assertThat(modulus).isBetween(h, h + 0.001);
    int trials = 20_000;
    int flagged = 0;
    int flaggedUnequal = 0;
    for (int trial = 0; trial < trials; trial++) {
      flagged += standsOut(random, h, i -> 4) ? 1 : 0;
      flaggedUnequal += standsOut(random, modulus, i -> 1 + i) ? 1 : 0;
    }
    double three = 3 * Math.sqrt(0.05 * 0.95 / trials);
    assertThat(flagged / (double) trials).isCloseTo(0.05, within(three));
    assertThat(flaggedUnequal / (double) trials).isBetween(0.04, 0.05 + three);
  }

  private static boolean standsOut(Random random, double h, IntUnaryOperator n) {
    double[] means = new double[26];
    double sum = 0;
    double total = 0;
    for (int i = 0; i < means.length; i++) {
      double count = n.applyAsInt(i);
      means[i] = random.nextGaussian() / Math.sqrt(count);
      sum += count * means[i];
      total += count;
    }
    for (int i = 0; i < means.length; i++) {
      double count = n.applyAsInt(i);
      if (Math.abs(means[i] - sum / total) > h * Math.sqrt((total - count) / (total * count))) {
        return true;
      }
    }
    return false;
  }

  /** The resistors of the NIST/SEMATECH e-Handbook 7.4.3, three temperatures of five each. */
  @Test
  void limitsFollowFromTheCriticalValue() {
    // MS within 1.454333333 with 12 degrees of freedom, grand mean 7.206666667
    double s = Math.sqrt(17.452 / 12);
    Limits[] limits = AnalysisOfMeans.limits(0.05, new long[] {5, 0, 5, 5}, 7.2066666667, s, 12);
    double h = AnalysisOfMeans.criticalValue(0.05, 3, 12);
    double half = h * s * Math.sqrt(2.0 / 15);
    assertThat(limits[0].upper()).isCloseTo(7.2066666667 + half, within(1e-12));
    assertThat(limits[3]).isEqualTo(limits[0]);
    assertThat(limits[1].sigma()).isNaN();
    // means 5.34, 7.72, 8.56: the first and the last stand out
    assertThat(limits[0].lower()).isGreaterThan(5.34);
    assertThat(7.72).isBetween(limits[2].lower(), limits[2].upper());
    assertThat(limits[3].upper()).isLessThan(8.56);
    Limits[] unequal = AnalysisOfMeans.limits(0.05, new long[] {4, 5, 6}, 7, s, 12);
    double modulus = AnalysisOfMeans.maximumModulus(0.05, 3, 12);
    assertThat(unequal[0].upper() - 7).isCloseTo(modulus * s * Math.sqrt(11.0 / 60), within(1e-12));
  }

  @Test
  void hasNoLimitsForOneGroup() {
    assertThat(AnalysisOfMeans.limits(0.05, new long[] {5, 0}, 1, 1, 4)[0].sigma()).isNaN();
    assertThat(AnalysisOfMeans.limits(0.05, new long[] {1, 1}, 1, 1, 0)[0].sigma()).isNaN();
    assertThatThrownBy(() -> AnalysisOfMeans.criticalValue(0.05, 1, 5))
        .hasMessageContaining("2 gr");
  }
}
