package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NIST StRD linear regressions: 9 digits, Filip 7. */
class LeastSquaresTest {

  /**
   * y deviates from Wampler1's polynomial by these, times 1, 100, 10000 (NIST StRD, Wampler3–5).
   */
  private static final int[] WAMPLER_NOISE = {
    759, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 1838, -2048, 2048, -2048, 1838, -2048, 2048,
    -2048, 2523, -2048, 2048, -2048, 759
  };

  @ParameterizedTest
  @CsvSource({
    "Norris,1,true",
    "Pontius,2,true",
    "Filip,10,true",
    "NoInt1,1,false",
    "NoInt2,1,false"
  })
  void reachesNistWithPolynomials(String dataset, int degree, boolean intercept) {
    List<Reference.Row> rows = Reference.rows("strd-regression.csv", "dataset", dataset);
    double[][] x = rows.stream().map(r -> powers(r.number("x1"), degree)).toArray(double[][]::new);
    double[] y = rows.stream().mapToDouble(r -> r.number("y")).toArray();
    check(
        dataset,
        LeastSquares.fit(x, y, intercept),
        intercept ? 0 : 1,
        dataset.equals("Filip") ? 7 : 9);
  }

  @Test
  void reachesNistWithLongley() {
    List<Reference.Row> rows = Reference.rows("strd-regression.csv", "dataset", "Longley");
    double[][] x = new double[rows.size()][6];
    for (int i = 0; i < x.length; i++) {
      for (int j = 0; j < 6; j++) {
        x[i][j] = rows.get(i).number("x" + (j + 1));
      }
    }
    double[] y = rows.stream().mapToDouble(r -> r.number("y")).toArray();
    check("Longley", LeastSquares.fit(x, y, true), 0, 9);
  }

  /** x = 0 … 20; Wampler1 Σxⁱ, Wampler2 Σ(x/10)ⁱ, 3 to 5 Wampler1 with growing noise. */
  @ParameterizedTest
  @CsvSource({
    "Wampler1,1,0",
    "Wampler2,10,0",
    "Wampler3,1,1",
    "Wampler4,1,100",
    "Wampler5,1,10000"
  })
  void reachesNistWithWampler(String dataset, double divisor, double noise) {
    double[][] x = new double[21][];
    double[] y = new double[21];
    for (int i = 0; i < 21; i++) {
      x[i] = powers(i, 5);
      y[i] = 1 + noise * WAMPLER_NOISE[i];
      double power = 1;
      for (int k = 1; k <= 5; k++) {
        power *= i / divisor;
        y[i] += power;
      }
    }
    check(dataset, LeastSquares.fit(x, y, true), 0, 9);
  }

  private static double[] powers(double x, int degree) {
    double[] row = new double[degree];
    double power = 1;
    for (int k = 0; k < degree; k++) {
      power *= x;
      row[k] = power;
    }
    return row;
  }

  private static void check(String dataset, LeastSquares fit, int first, double digits) {
    double[] b = fit.coefficients();
    double[] errors = fit.standardErrors();
    for (int j = 0; j < b.length; j++) {
      assertThat(Reference.digits(b[j], Reference.certified(dataset, "B" + (j + first))))
          .as("%s B%d", dataset, j + first)
          .isGreaterThanOrEqualTo(digits);
      assertThat(Reference.digits(errors[j], Reference.certified(dataset, "seB" + (j + first))))
          .as("%s standard error of B%d", dataset, j + first)
          .isGreaterThanOrEqualTo(digits);
    }
    assertThat(Reference.digits(fit.residualSd(), Reference.certified(dataset, "resid_sd")))
        .as("%s residual sd", dataset)
        .isGreaterThanOrEqualTo(digits);
    assertThat(Reference.digits(fit.rSquared(), Reference.certified(dataset, "R2")))
        .isGreaterThanOrEqualTo(digits);
  }

  @Test
  void residualsAreWhatIsLeft() {
    LeastSquares fit =
        LeastSquares.fit(new double[][] {{0}, {1}, {2}}, new double[] {1, 1, 4}, true);
    // by hand: slope 1.5, intercept 0.5
    assertThat(fit.coefficients()).containsExactly(new double[] {0.5, 1.5}, within(1e-14));
    assertThat(fit.residuals()).containsExactly(new double[] {0.5, -1, 0.5}, within(1e-14));
    assertThat(fit.degreesOfFreedom()).isEqualTo(1);
  }

  @Test
  void refusesWhatHasNoAnswer() {
    double[] y = {1, 2, 3, 4};
    assertThatThrownBy(
            () -> LeastSquares.fit(new double[][] {{1, 2}, {2, 4}, {3, 6}, {5, 10}}, y, false))
        .hasMessageContaining("combination");
    assertThatThrownBy(() -> LeastSquares.fit(new double[][] {{7}, {7}, {7}, {7}}, y, true))
        .hasMessageContaining("combination");
    assertThatThrownBy(() -> LeastSquares.fit(new double[][] {{0}, {0}, {0}, {0}}, y, true))
        .hasMessageContaining("zeros");
    assertThatThrownBy(() -> LeastSquares.fit(new double[][] {{1, 2}}, new double[] {1}, true))
        .hasMessageContaining("not enough");
    double[] missing = {1, 2, Double.NaN, 4};
    assertThatThrownBy(() -> LeastSquares.fit(new double[][] {{1}, {2}, {3}, {5}}, missing, true))
        .hasMessageContaining("y has a missing");
    assertThatThrownBy(
            () -> LeastSquares.fit(new double[][] {{1}, {2}, {Double.NaN}, {5}}, y, true))
        .hasMessageContaining("column 1");
  }

  @Test
  void aPerfectFitWithoutFreedomHasNoErrors() {
    LeastSquares fit = LeastSquares.fit(new double[][] {{1}, {2}}, new double[] {3, 5}, true);
    assertThat(fit.coefficients()).containsExactly(new double[] {1, 2}, within(1e-14));
    assertThat(fit.standardErrors()).containsOnly(Double.NaN);
    assertThat(fit.residualSd()).isNaN();
    assertThat(
            LeastSquares.fit(new double[][] {{1}, {2}, {4}}, new double[] {3, 3, 3}, true)
                .rSquared())
        .isNaN();
  }

  @Test
  void intervalsCoverTheTruth() {
    Random random = new Random(11);
    int covered = 0;
    for (int trial = 0; trial < 1000; trial++) {
      double[][] x = new double[20][2];
      double[] y = new double[20];
      for (int i = 0; i < 20; i++) {
        x[i][0] = random.nextGaussian();
        x[i][1] = 0.8 * x[i][0] + random.nextGaussian();
        y[i] = 5 + 2 * x[i][0] - x[i][1] + random.nextGaussian();
      }
      LeastSquares fit = LeastSquares.fit(x, y, true);
      double half = StudentT.quantile(0.975, fit.degreesOfFreedom()) * fit.standardErrors()[1];
      covered += Math.abs(fit.coefficients()[1] - 2) < half ? 1 : 0;
    }
    // 950 expected, standard error 7
    assertThat(covered).isBetween(925, 975);
  }
}
