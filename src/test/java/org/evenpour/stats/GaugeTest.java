package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Gauge studies, weighings of a known mass, and guard bands. */
class GaugeTest {

  private static double[][][] manual() {
    double[][][] x = new double[10][3][3];
    for (Reference.Row row : Reference.rows("gauge-study.csv")) {
      x[row.whole("part") - 1][row.text("operator").charAt(0) - 'A'][row.whole("repeat") - 1] =
          row.number("value");
    }
    return x;
  }

  /**
   * The worked example of the measurement systems analysis manual (AIAG): its analysis of variance,
   * and the standard deviations after pooling, as printed (from memory): repeatability 0.199933,
   * operators 0.226838, gauge 0.302373, parts 1.04233, total 1.08530, 27.9 % of the spread.
   */
  @Test
  void agreesWithTheManual() {
    GaugeStudy study = GaugeStudy.of(manual());
    assertThat(study.parts().value()).isCloseTo(88.3619 / 9, within(1e-5));
    assertThat(study.operators().value()).isCloseTo(3.1673 / 2, within(5e-5));
    assertThat(study.interactionP()).isCloseTo(0.974, within(0.0005));
    // 0.434 is far from significant: pooled
    assertThat(study.interaction().df()).isZero();
    assertThat(study.repeats().df()).isEqualTo(78);
    assertThat(study.parts().value() / study.repeats().value()).isCloseTo(245.614, within(5e-4));
    assertThat(study.operators().value() / study.repeats().value()).isCloseTo(39.617, within(5e-4));
    assertThat(Math.sqrt(study.repeatability().value())).isCloseTo(0.199933, within(5e-7));
    assertThat(Math.sqrt(study.reproducibility())).isCloseTo(0.226838, within(1e-6));
    assertThat(Math.sqrt(study.gauge().value())).isCloseTo(0.302373, within(2e-6));
    assertThat(Math.sqrt(study.betweenParts().value())).isCloseTo(1.04233, within(5e-6));
    assertThat(Math.sqrt(study.total().value())).isCloseTo(1.08530, within(5e-6));
    assertThat(study.shareOfSpread()).isCloseTo(0.279, within(0.0005));
    assertThat(study.shareOfTolerance(-2, 2)).isCloseTo(6 * 0.3023715 / 4, within(1e-6));
  }

  /** Intervals by the same formulas in Python with SciPy's quantiles: computed independently. */
  @Test
  void intervalsAgree() {
    GaugeStudy pooled = GaugeStudy.of(manual(), true);
    check(pooled.repeatability(), 0.039973276353, 0.029889158073, 0.056213475585);
    check(pooled.betweenOperators(), 0.051455261159, 0.012947097569, 2.083626591199);
    check(pooled.betweenParts(), 1.086446604411, 0.511613496262, 3.631239648731);
    check(pooled.gauge(), 0.091428537512, 0.051735210861, 2.123704394808);
    check(pooled.total(), 1.177875141923, 0.601753952492, 4.434639056424);
    GaugeStudy full = GaugeStudy.of(manual(), false);
    check(full.repeatability(), 0.045982222222, 0.033121372684, 0.068152524699);
    check(full.betweenOperators(), 0.052122921811, 0.013615486070, 2.084274538139);
    // the interaction's mean square is below that of the repeats
    check(full.operatorByPart(), 0, 0, 0.000092038006);
    check(full.betweenParts(), 1.088672139918, 0.513945630210, 3.633467844922);
    assertThat(full.gauge().low()).isCloseTo(0.049920639518, within(1e-10));
    assertThat(full.gauge().high()).isCloseTo(2.121706931298, within(1e-9));
    assertThat(full.total().low()).isCloseTo(0.601975039401, within(1e-10));
    assertThat(full.total().high()).isCloseTo(4.434868578894, within(1e-9));
  }

  private static void check(MeanSquare.Combination c, double value, double low, double high) {
    assertThat(c.value()).isCloseTo(value, within(1e-10));
    assertThat(c.low()).isCloseTo(low, within(1e-10));
    assertThat(c.high()).isCloseTo(high, within(1e-9));
  }

  /** By hand: 2 parts, 2 operators, 2 repeats, where the interaction is what there is. */
  @Test
  void keepsAnInteractionThatShows() {
    GaugeStudy study = GaugeStudy.of(new double[][][] {{{0, 2}, {10, 12}}, {{10, 12}, {0, 2}}});
    // cells 1, 11, 11, 1: no parts, no operators; interaction 2·4·25 = 200, repeats 8/4 = 2
    assertThat(study.parts().value()).isZero();
    assertThat(study.operators().value()).isZero();
    assertThat(study.interaction().value()).isEqualTo(200);
    assertThat(study.repeats().value()).isEqualTo(2);
    assertThat(study.operatorByPart().value()).isEqualTo(99);
    assertThat(study.betweenParts().value()).isZero();
    assertThat(study.gauge().value()).isEqualTo(101);
    assertThat(study.total().value()).isEqualTo(101);
  }

  /** The gauge's interval covers its true variance near 95 % of the time, by simulation. */
  @Test
  void gaugeIntervalsCover() {
    Random random = new Random(2005);
    int gauge = 0;
    int parts = 0;
    int trials = 1500;
    for (int trial = 0; trial < trials; trial++) {
      double[][][] x = new double[8][4][2];
      double[] operators = random.doubles(4).map(u -> 0.5 * Normal.quantile(u)).toArray();
      for (double[][] part : x) {
        double own = 2 * random.nextGaussian();
        for (int j = 0; j < 4; j++) {
          double cell = own + operators[j] + 0.4 * random.nextGaussian();
          part[j][0] = cell + random.nextGaussian();
          part[j][1] = cell + random.nextGaussian();
        }
      }
      GaugeStudy study = GaugeStudy.of(x, false);
      gauge += covers(study.gauge(), 0.25 + 0.16 + 1);
      parts += covers(study.betweenParts(), 4);
    }
    // nominal 0.95, approximate, s.e. 0.006
    assertThat(gauge / (double) trials).isBetween(0.93, 0.985);
    assertThat(parts / (double) trials).isBetween(0.93, 0.985);
  }

  private static int covers(MeanSquare.Combination c, double truth) {
    return c.low() <= truth && truth <= c.high() ? 1 : 0;
  }

  @Test
  void refusesAStudyWithHoles() {
    assertThatThrownBy(() -> GaugeStudy.of(new double[][][] {{{1, 2}, {1}}, {{1, 2}, {1, 2}}}))
        .hasMessageContaining("as often");
    assertThatThrownBy(
            () -> GaugeStudy.of(new double[][][] {{{1, 2}, {1, Double.NaN}}, {{1, 2}, {1, 2}}}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> GaugeStudy.of(new double[][][] {}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** NIST StRD Norris: the certified slope and residual s.d. of its line. */
  @Test
  void driftAgreesWithNorris() {
    List<Reference.Row> rows = Reference.rows("strd-regression.csv", "dataset", "Norris");
    double[] y = rows.stream().mapToDouble(r -> r.number("y")).toArray();
    double[] x = rows.stream().mapToDouble(r -> r.number("x1")).toArray();
    KnownMass known = KnownMass.of(x, y, 0);
    assertThat(known.drift().value()).isCloseTo(1.00211681802045, within(1e-12));
    assertThat(known.residualSd()).isCloseTo(0.884796396144373, within(1e-11));
    // t of 0.975 with 34 degrees of freedom is 2.032244509
    assertThat(known.drift().high() - known.drift().value())
        .isCloseTo(2.032244509 * 0.429796848199937E-03, within(1e-12));
    assertThat(known.driftP()).isLessThan(1e-60);
  }

  /**
   * A weight of 500 kg read five times, by hand: 500, 501, 502, 503, 504 at hours 0 to 4; s² = 2.5,
   * t of 0.975 with 4 degrees of freedom 2.776445105, χ² 0.484418557 and 11.143286782.
   */
  @Test
  void biasAgreesWithAHandComputation() {
    double[] hours = {0, 1, 2, 3, Double.NaN, 4, 5};
    double[] read = {500, 501, 502, 503, 700, 504, Double.NaN};
    KnownMass known = KnownMass.of(hours, read, 500);
    assertThat(known.count()).isEqualTo(5);
    assertThat(known.bias().value()).isEqualTo(2);
    assertThat(known.bias().low()).isCloseTo(2 - 2.776445105 * Math.sqrt(0.5), within(1e-8));
    // t = 2√2 with 4 degrees of freedom; computed independently (SciPy)
    assertThat(known.biasP()).isCloseTo(0.047420655584, within(1e-10));
    assertThat(known.repeatability().value()).isCloseTo(Math.sqrt(2.5), within(1e-14));
    assertThat(known.repeatability().low()).isCloseTo(Math.sqrt(10 / 11.143286782), within(1e-8));
    assertThat(known.repeatability().high()).isCloseTo(Math.sqrt(10 / 0.484418557), within(1e-8));
    assertThat(known.drift().value()).isCloseTo(1, within(1e-14));
    assertThat(known.residualSd()).isZero();
    assertThat(known.driftP()).isZero();
  }

  @Test
  void saysNothingItCannotKnow() {
    KnownMass none = KnownMass.of(new double[0], new double[0], 500);
    assertThat(none.bias().value()).isNaN();
    KnownMass one = KnownMass.of(new double[] {1}, new double[] {501}, 500);
    assertThat(one.bias().value()).isEqualTo(1);
    assertThat(one.bias().low()).isNaN();
    KnownMass atOnce = KnownMass.of(new double[] {1, 1, 1}, new double[] {501, 502, 503}, 500);
    assertThat(atOnce.drift().value()).isNaN();
    assertThat(atOnce.biasP()).isBetween(0.0, 0.1);
  }

  /** ISO 14253-1: at 95 % the guard band is 1.645 (printed 1.65) standard uncertainties. */
  @Test
  void guardBandsNarrowForAcceptanceAndWidenForRejection() {
    GuardBand band = GuardBand.of(378.0, 398.0, 1, 0.95);
    assertThat(band.guard()).isCloseTo(1.65, within(0.006)).isCloseTo(1.6448536270, within(1e-9));
    assertThat(band.verdict(380)).isEqualTo(GuardBand.Verdict.WITHIN);
    assertThat(band.verdict(379)).isEqualTo(GuardBand.Verdict.UNDECIDED);
    assertThat(band.verdict(377)).isEqualTo(GuardBand.Verdict.UNDECIDED);
    assertThat(band.verdict(376)).isEqualTo(GuardBand.Verdict.OUTSIDE);
    assertThat(band.verdict(400)).isEqualTo(GuardBand.Verdict.OUTSIDE);
    assertThat(band.verdict(Double.NaN)).isEqualTo(GuardBand.Verdict.UNDECIDED);
    assertThat(band.leavesRoom()).isTrue();
    assertThat(GuardBand.of(378.0, 380.0, 1, 0.95).leavesRoom()).isFalse();
    GuardBand upperOnly = GuardBand.of(null, 3.0, 0.1, 0.95);
    assertThat(upperOnly.verdict(-5)).isEqualTo(GuardBand.Verdict.WITHIN);
    assertThat(upperOnly.acceptLow()).isNull();
    assertThat(GuardBand.of(1.0, 2.0, 0, 0.95).verdict(1)).isEqualTo(GuardBand.Verdict.WITHIN);
    assertThatThrownBy(() -> GuardBand.of(1.0, 2.0, -1, 0.95)).hasMessageContaining("uncertainty");
  }
}
