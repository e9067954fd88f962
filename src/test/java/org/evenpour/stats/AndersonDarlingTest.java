package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AndersonDarlingTest {

  /** A² of open data, computed independently with mpmath. */
  @Test
  void agreesWithHighPrecision() {
    assertThat(AndersonDarling.normal(Reference.column("nile.csv", "flow")).a2())
        .isCloseTo(truth("nile"), within(1e-12));
    double[] widths =
        Arrays.stream(Reference.matrix("hard-bake.csv")).flatMapToDouble(Arrays::stream).toArray();
    assertThat(AndersonDarling.normal(widths).a2()).isCloseTo(truth("hard-bake"), within(1e-12));
    assertThat(AndersonDarling.normal(Reference.column("dyestuff.csv", "yield")).a2())
        .isCloseTo(truth("dyestuff"), within(1e-12));
  }

  @Test
  void staysFiniteWithAWildValue() {
    double[] x = new double[201];
    for (int i = 0; i < 200; i++) {
      x[i] = 1 + i % 10;
    }
    x[200] = 1e6;
    AndersonDarling.Result wild = AndersonDarling.normal(x);
    assertThat(wild.a2()).isCloseTo(truth("one wild value"), within(1e-8));
    assertThat(wild.pValue()).isBetween(0.0, 1e-20);
    double[] many = new double[1_000_000];
    Arrays.fill(many, 388);
    many[0] = 1e120;
    many[1] = 389;
    assertThat(AndersonDarling.normal(many).a2()).isFinite();
  }

  private static double truth(String data) {
    return Reference.rows("distributions.csv", "a", data).get(0).number("value");
  }

  /**
   * D'Agostino and Stephens (1986), Table 4.7: the modified A² is passed with probability 0.10,
   * 0.05, 0.025, 0.01 at 0.631, 0.752, 0.873, 1.035 (from memory).
   */
  @Test
  void probabilitiesAgreeWithThePublishedPercentagePoints() {
    double[] points = {0.631, 0.752, 0.873, 1.035};
    double[] tails = {0.10, 0.05, 0.025, 0.01};
    for (int i = 0; i < points.length; i++) {
      assertThat(AndersonDarling.pValue(points[i])).isCloseTo(tails[i], within(0.03 * tails[i]));
    }
  }

  /** The branches of the approximation meet to some per cent, fall, and never rise again. */
  @Test
  void probabilitiesFallThroughout() {
    double last = 1;
    for (double a = 0.05; a < 400; a *= 1.01) {
      double p = AndersonDarling.pValue(a);
      assertThat(p).isBetween(0.0, last * 1.02);
      last = p;
    }
  }

  @Test
  void normalValuesArePassedAsOftenAsTheLevelSays() {
    Random random = new Random(86);
    int rejected = 0;
    for (int trial = 0; trial < 4000; trial++) {
      double[] x = random.doubles(50).map(Normal::quantile).toArray();
      rejected += AndersonDarling.normal(x).pValue() < 0.05 ? 1 : 0;
    }
    // 200 expected, standard error 14
    assertThat(rejected).isBetween(150, 250);
  }

  @Test
  void orderAndUnitsDoNotMatter() {
    double[] x = new Random(5).doubles(500).map(u -> u * u).toArray();
    double[] moved = new double[501];
    for (int i = 0; i < 500; i++) {
      moved[i] = 1000 - 8 * x[499 - i];
    }
    moved[500] = Double.NaN;
    assertThat(AndersonDarling.normal(moved).a2())
        .isCloseTo(AndersonDarling.normal(x).a2(), within(1e-9));
  }

  @Test
  void isUndefinedWithTooFewValuesOrNoSpread() {
    assertThat(AndersonDarling.normal(new double[0]).a2()).isNaN();
    assertThat(AndersonDarling.normal(new double[] {2, 2, 2}).a2()).isNaN();
    AndersonDarling.Result few = AndersonDarling.normal(new double[] {1, 2, 3, 5});
    assertThat(few.a2()).isPositive();
    assertThat(few.pValue()).isNaN();
  }
}
