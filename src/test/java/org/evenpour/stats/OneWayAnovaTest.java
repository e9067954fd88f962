package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OneWayAnovaTest {

  /** NIST StRD; the bar is 0.3 digits below what exact arithmetic on the doubles reaches. */
  @ParameterizedTest
  @CsvSource({"SiRstv,13.1", "AtmWtAg,10.2"})
  void reachesWhatTheDataOfNistAllow(String dataset, double digits) {
    OneWayAnova anova = new OneWayAnova(1);
    for (Reference.Row row : Reference.rows("strd-anova.csv", "dataset", dataset)) {
      anova.add(row.whole("treatment") - 1, row.number("y"));
    }
    assertThat(Reference.digits(anova.result().f(), Reference.certified(dataset, "F")))
        .isGreaterThanOrEqualTo(digits - 0.3);
  }

  /**
   * NIST StRD SmLs01 to 09, built by their rule: nine treatments with 1, 7 or 13 leading digits.
   */
  @ParameterizedTest
  @CsvSource({
    "SmLs01,1,21,15", "SmLs02,1,201,15", "SmLs03,1,2001,15",
    "SmLs04,1e6,21,10.3", "SmLs05,1e6,201,10.2", "SmLs06,1e6,2001,10.2",
    "SmLs07,1e12,21,4.4", "SmLs08,1e12,201,4.2", "SmLs09,1e12,2001,4.2"
  })
  void reachesWhatTheConstructedSetsOfNistAllow(
      String dataset, double base, int replicates, double digits) {
    OneWayAnova anova = new OneWayAnova(9);
    for (int treatment = 1; treatment <= 9; treatment++) {
      // the decimals are written out, as in the published files
      int tenths = treatment == 1 ? 4 : treatment % 2 == 0 ? 3 : 5;
      for (int i = 0; i < replicates; i++) {
        int step = i == 0 ? 0 : i % 2 == 1 ? -1 : 1;
        anova.add(treatment - 1, Double.parseDouble((long) base + "." + (tenths + step)));
      }
    }
    OneWayAnova.Result result = anova.result();
    assertThat(result.df1()).isEqualTo(8);
    assertThat(result.df2()).isEqualTo(9L * (replicates - 1));
    assertThat(Reference.digits(result.f(), Reference.certified(dataset, "F")))
        .isGreaterThanOrEqualTo(digits - 0.3);
  }

  /** NIST/SEMATECH e-Handbook 7.4.3: resistors at three temperatures; p computed independently. */
  @Test
  void agreesWithTheResistorsOfTheHandbook() {
    OneWayAnova.Result r =
        analysis(
            new double[][] {
              {6.9, 5.4, 5.8, 4.6, 4.0}, {8.3, 6.8, 7.8, 9.2, 6.5}, {8.0, 10.5, 8.1, 6.9, 9.3}
            });
    assertThat(r.ssBetween()).isCloseTo(27.897, within(0.0005));
    assertThat(r.ssWithin()).isCloseTo(17.452, within(0.0005));
    assertThat(r.f()).isCloseTo(9.59, within(0.005)).isCloseTo(9.591107036442809, within(1e-13));
    assertThat(r.p()).isCloseTo(0.0032482226008593, within(1e-14));
  }

  /**
   * NIST/SEMATECH e-Handbook 7.4.4: five batches of three. The handbook's 147.74 and 17.99 are
   * rounded on the way; the exact values are 147.7333 and 18.
   */
  @Test
  void agreesWithTheVarianceComponentsOfTheHandbook() {
    OneWayAnova.Result r =
        analysis(
            new double[][] {{74, 76, 75}, {68, 71, 72}, {75, 77, 77}, {72, 74, 73}, {79, 81, 79}});
    assertThat(r.ssBetween()).isCloseTo(147.7333333333, within(1e-9));
    assertThat(r.ssWithin()).isCloseTo(18, within(1e-12));
    assertThat(r.f()).isCloseTo(20.5, within(0.05)).isCloseTo(20.5185185185, within(1e-9));
    assertThat(r.p()).isCloseTo(8.24639e-05, within(1e-10));
    assertThat(r.componentBetween()).isCloseTo(11.7111111, within(1e-7));
    double share = r.componentBetween() / (r.componentBetween() + r.componentWithin());
    assertThat(share).isCloseTo(0.867, within(0.0005));
  }

  /** Davies' dyestuff; REML components as published with lme4: sd 42.00 and 49.51. */
  @Test
  void agreesWithTheDyestuff() {
    OneWayAnova.Result r = byBatch("dyestuff.csv");
    assertThat(Math.sqrt(r.componentBetween())).isCloseTo(42.00, within(0.005));
    assertThat(Math.sqrt(r.componentWithin())).isCloseTo(49.51, within(0.005));
    // closed form: (11271.5 − 2451.25)/5 and 2451.25
    assertThat(r.componentBetween()).isCloseTo(1764.05, within(1e-9));
    assertThat(r.componentWithin()).isCloseTo(2451.25, within(1e-9));
    assertThat(r.f()).isCloseTo(4.59826619, within(5e-9));
    assertThat(r.p()).isCloseTo(0.0043975, within(5e-7));
  }

  /** Box and Tiao's second dyestuff: lme4 publishes 0 and 3.716; the raw estimate is negative. */
  @Test
  void reportsANegativeComponentAsZeroAndAsItIs() {
    OneWayAnova.Result r = byBatch("dyestuff2.csv");
    assertThat(r.componentBetween()).isZero();
    assertThat(r.rawComponentBetween()).isCloseTo(-1.3219, within(5e-5));
  }

  private static OneWayAnova.Result byBatch(String file) {
    OneWayAnova anova = new OneWayAnova(6);
    for (Reference.Row row : Reference.rows(file)) {
      anova.add(row.text("batch").charAt(0) - 'A', row.number("yield"));
    }
    return anova.result();
  }

  @Test
  void keepsAFarTail() {
    OneWayAnova anova = new OneWayAnova(2);
    for (int i = 0; i < 1000; i++) {
      anova.add(0, i % 7);
      anova.add(1, 20 + i % 7);
    }
    OneWayAnova.Result r = anova.result();
    // far below the smallest double: 0, not a negative or NaN
    assertThat(r.p()).isBetween(0.0, 1e-300);
  }

  @Test
  void isUndefinedWithoutDegreesOfFreedom() {
    assertThat(new OneWayAnova(3).result().f()).isNaN();
    assertThat(analysis(new double[][] {{1, 2, 3}}).f()).isNaN();
    OneWayAnova.Result single = analysis(new double[][] {{1}, {2}, {3}});
    assertThat(single.f()).isNaN();
    assertThat(single.p()).isNaN();
    assertThat(single.componentWithin()).isNaN();
  }

  @Test
  void tellsGroupsThatDoNotVaryWithinFromOnesThatDoNotVaryAtAll() {
    OneWayAnova.Result apart = analysis(new double[][] {{1, 1}, {2, 2}});
    assertThat(apart.f()).isInfinite();
    assertThat(apart.p()).isZero();
    assertThat(analysis(new double[][] {{1, 1}, {1, 1}}).f()).isNaN();
  }

  @Test
  void ignoresGroupsWithoutValues() {
    OneWayAnova sparse = new OneWayAnova(2);
    for (double x : List.of(1.0, 2.0, 4.0)) {
      sparse.add(1, x);
      sparse.add(7, x + 1);
    }
    assertThat(sparse.result()).isEqualTo(analysis(new double[][] {{1, 2, 4}, {2, 3, 5}}));
    assertThat(sparse.group(7).count()).isEqualTo(3);
  }

  private static OneWayAnova.Result analysis(double[][] groups) {
    OneWayAnova anova = new OneWayAnova(groups.length);
    for (int g = 0; g < groups.length; g++) {
      for (double x : groups[g]) {
        anova.add(g, x);
      }
    }
    return anova.result();
  }
}
