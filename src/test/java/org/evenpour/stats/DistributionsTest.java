package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against values computed independently with mpmath. */
class DistributionsTest {

  static Stream<Reference.Row> distributions() {
    return Reference.rows("distributions.csv").stream()
        .filter(r -> !r.text("function").equals("anderson_darling"));
  }

  @ParameterizedTest
  @MethodSource("distributions")
  void agreesWithHighPrecision(Reference.Row row) {
    double a = row.number("a");
    double b = row.has("b") ? row.number("b") : Double.NaN;
    double c = row.has("c") ? row.number("c") : Double.NaN;
    double truth = row.number("value");
    double value =
        switch (row.text("function")) {
          case "normal_cdf" -> Normal.cdf(a);
          case "normal_log_cdf" -> Normal.logCdf(a);
          case "normal_quantile" -> Normal.quantile(a);
          case "chi_square_cdf" -> ChiSquare.cdf(a, b);
          case "chi_square_upper_tail" -> ChiSquare.upperTail(a, b);
          case "chi_square_quantile" -> ChiSquare.quantile(a, b);
          case "t_upper_tail" -> StudentT.upperTail(a, b);
          case "t_quantile" -> StudentT.quantile(a, b);
          case "f_upper_tail" -> FRatio.upperTail(a, b, c);
          case "f_quantile" -> FRatio.quantile(a, b, c);
          case "noncentral_t_cdf" -> NoncentralT.cdf(a, b, c);
          default -> throw new IllegalArgumentException(row.text("function"));
        };
    // the normal ones to a few units in the last place, the others to 1e-11; far tails lose
    // digits with the size of their exponent, as exp does
    double tolerance = row.text("function").startsWith("normal") ? 2e-15 : 1e-11;
    tolerance *= 1 + Math.abs(Math.log(Math.abs(truth) + 1e-300)) / 50;
    assertThat(value).isCloseTo(truth, within(tolerance * Math.abs(truth)));
  }

  @Test
  void tailsAddUpToOne() {
    for (double x = -8; x <= 8; x += 0.37) {
      assertThat(Normal.cdf(x) + Normal.upperTail(x)).isCloseTo(1, within(1e-15));
      assertThat(StudentT.cdf(x, 7) + StudentT.upperTail(x, 7)).isCloseTo(1, within(1e-14));
      assertThat(ChiSquare.cdf(x, 3) + ChiSquare.upperTail(x, 3)).isCloseTo(1, within(1e-14));
      assertThat(FRatio.cdf(x, 3, 9) + FRatio.upperTail(x, 3, 9)).isCloseTo(1, within(1e-14));
    }
    assertThat(StudentT.twoSided(-2, 10)).isCloseTo(2 * 0.03669401738537018, within(1e-14));
  }

  @Test
  void quantilesUndoDistributions() {
    for (double p = 0.001; p < 1; p += 0.0499) {
      assertThat(Normal.cdf(Normal.quantile(p))).isCloseTo(p, within(1e-15));
      for (double df : new double[] {0.7, 1, 2, 17.3, 400}) {
        assertThat(ChiSquare.cdf(ChiSquare.quantile(p, df), df)).isCloseTo(p, within(1e-12));
        assertThat(StudentT.cdf(StudentT.quantile(p, df), df)).isCloseTo(p, within(1e-12));
        assertThat(FRatio.cdf(FRatio.quantile(p, df, 12), df, 12)).isCloseTo(p, within(1e-12));
      }
    }
  }

  /**
   * With very many degrees of freedom χ² is normal about df with variance 2·df; the next term of
   * Cornish and Fisher (1937) is 2(z² − 1)/3. Within a second, where the incomplete gamma function
   * would sum for minutes.
   */
  @Test
  void standsAnyDegreesOfFreedom() {
    assertTimeout(
        Duration.ofSeconds(2),
        () -> {
          for (double df : new double[] {2e9, 1e12, 1e15, 1e30}) {
            for (double p : new double[] {0.025, 0.5, 0.975}) {
              double z = Normal.quantile(p);
              double expected = df + z * Math.sqrt(2 * df) + 2 * (z * z - 1) / 3;
              double x = ChiSquare.quantile(p, df);
              assertThat(x / expected).isCloseTo(1, within(1e-12));
              assertThat(ChiSquare.cdf(x, df)).isBetween(0.0, 1.0);
            }
          }
        });
  }

  @Test
  void quantilesHaveTheirEnds() {
    assertThat(Normal.quantile(0)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(Normal.quantile(1)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(Normal.quantile(1.1)).isNaN();
    assertThat(ChiSquare.quantile(0, 3)).isZero();
    assertThat(ChiSquare.quantile(1, 3)).isInfinite();
    assertThat(ChiSquare.quantile(0.5, -1)).isNaN();
    assertThat(StudentT.quantile(0, 3)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(StudentT.quantile(1, 3)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(StudentT.quantile(2, 3)).isNaN();
    assertThat(FRatio.quantile(0, 3, 4)).isZero();
    assertThat(FRatio.quantile(1, 3, 4)).isInfinite();
    assertThat(FRatio.quantile(-1, 3, 4)).isNaN();
    assertThat(FRatio.upperTail(Double.NaN, 3, 4)).isNaN();
    assertThat(FRatio.cdf(Double.NaN, 3, 4)).isNaN();
    assertThat(FRatio.upperTail(Double.POSITIVE_INFINITY, 3, 4)).isZero();
  }

  @Test
  void quadratureIntegratesPolynomialsExactly() {
    for (int points : new int[] {1, 2, 5, 120}) {
      GaussLegendre rule = GaussLegendre.on(-1, 3, points);
      int degree = Math.min(2 * points - 1, 20);
      double truth = (Math.pow(3, degree + 1) - Math.pow(-1, degree + 1)) / (degree + 1);
      assertThat(rule.integral(x -> Math.pow(x, degree)))
          .isCloseTo(truth, within(1e-13 * Math.abs(truth)));
    }
  }
}
