package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class ShewhartLimitsTest {

  /**
   * NIST/SEMATECH e-Handbook 6.3.2.2: flow rate of ten batches. Printed with d2 = 1.128 and D4 =
   * 3.267; the exact figures are computed independently.
   */
  @Test
  void individualsAgreeWithTheHandbook() {
    double[] x = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    Limits printed = ShewhartLimits.individuals(x, ChartConstants.PRINTED_D2);
    assertThat(printed.center()).isCloseTo(50.81, within(0.005));
    assertThat(printed.upper()).isCloseTo(55.8041, within(0.00005));
    assertThat(printed.lower()).isCloseTo(45.8159, within(0.00005));
    Limits exact = ShewhartLimits.individuals(x);
    assertThat(exact.upper()).isCloseTo(55.80241168005054, within(1e-12));
    assertThat(exact.lower()).isCloseTo(45.817588319949465, within(1e-12));
    Limits ranges = ShewhartLimits.movingRange(x);
    assertThat(ranges.center()).isCloseTo(1.8778, within(0.00005));
    assertThat(ranges.upper()).isCloseTo(6.1338210484419, within(1e-12));
    assertThat(ranges.lower()).isZero();
    assertThat(Arrays.stream(x).noneMatch(exact::excludes)).isTrue();
  }

  /**
   * Montgomery and Runger, Applied Statistics and Probability for Engineers, Ex. 16-2: chemical
   * concentration. The printed 105.99 comes from a rounded mean and mean range.
   */
  @Test
  void individualsAgreeWithTheChemicalConcentration() {
    double[] x = {
      102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0,
      96.7, 100.3, 101.4, 97.2, 101.0
    };
    Limits limits = ShewhartLimits.individuals(x, ChartConstants.PRINTED_D2);
    assertThat(limits.center()).isCloseTo(99.1, within(0.05));
    assertThat(limits.upper()).isCloseTo(105.981898, within(5e-7)).isCloseTo(105.99, within(0.01));
    assertThat(limits.lower()).isCloseTo(92.208102, within(5e-7)).isCloseTo(92.21, within(0.005));
    MovingRange ranges = MovingRange.of(x);
    assertThat(ranges.meanRange()).isCloseTo(2.589473684, within(5e-10));
    assertThat(ranges.rangeLimits().upper()).isCloseTo(8.459811, within(2e-3));
  }

  /**
   * Montgomery, Introduction to SQC, Table 6.1: hard bake. Printed with A2 0.577, D4 2.114; the
   * exact figures are computed independently.
   */
  @Test
  void meansAndRangesAgreeWithTheHardBake() {
    double[][] wafers = Reference.matrix("hard-bake.csv");
    Limits means = ShewhartLimits.xbarR(wafers);
    assertThat(means.center()).isCloseTo(1.5056, within(0.00005));
    assertThat(means.upper())
        .isCloseTo(1.693196662, within(5e-10))
        .isCloseTo(1.69325, within(1e-4));
    assertThat(means.lower())
        .isCloseTo(1.318024138, within(5e-10))
        .isCloseTo(1.31795, within(1e-4));
    Limits ranges = ShewhartLimits.rangeLimits(wafers);
    assertThat(ranges.center()).isCloseTo(0.32521, within(0.000005));
    assertThat(ranges.upper())
        .isCloseTo(0.687652038, within(5e-10))
        .isCloseTo(0.68749, within(2e-4));
    assertThat(ranges.lower()).isZero();
    ShewhartLimits.Subgroups subgroups = ShewhartLimits.fromRanges(wafers);
    assertThat(subgroups.sigma())
        .isCloseTo(0.13981854449, within(5e-12))
        .isCloseTo(0.1398, within(0.00005));
    // printed: about 0.00035 outside 1.50 ± 0.50, Cp 1.192, with d2 = 2.326
    Capability capability =
        Capability.of(125, 1.5056104, 0.325208 / 2.326, 100, 0.14, 1.0, 1.5, 2.0);
    assertThat(value(capability.cp())).isCloseTo(1.19205760, within(5e-9));
  }

  private static double value(Capability.@org.jspecify.annotations.Nullable Estimate estimate) {
    assertThat(estimate).isNotNull();
    return estimate == null ? Double.NaN : estimate.value();
  }

  /**
   * Montgomery, Introduction to SQC, Table 6.3: piston rings; printed figures from memory, exact
   * ones computed independently.
   */
  @Test
  void meansAndStandardDeviationsAgreeWithThePistonRings() {
    double[][] rings = Reference.matrix("piston-rings.csv");
    Limits means = ShewhartLimits.xbarS(rings);
    assertThat(means.center()).isCloseTo(74.001176, within(5e-7));
    assertThat(means.lower())
        .isCloseTo(73.987760123, within(5e-10))
        .isCloseTo(73.988, within(5e-4));
    assertThat(means.upper())
        .isCloseTo(74.014591877, within(5e-10))
        .isCloseTo(74.014, within(1e-3));
    Limits sds = ShewhartLimits.sLimits(rings);
    assertThat(sds.center()).isCloseTo(0.009399483886, within(5e-13));
    assertThat(sds.upper()).isCloseTo(0.019635502, within(5e-10)).isCloseTo(0.0196, within(5e-5));
    assertThat(sds.lower()).isZero();
    Limits byRange = ShewhartLimits.xbarR(rings);
    assertThat(byRange.lower()).isCloseTo(73.987770719, within(5e-10));
    assertThat(byRange.upper()).isCloseTo(74.014581281, within(5e-10));
    assertThat(ShewhartLimits.rangeLimits(rings).upper()).isCloseTo(0.049140960, within(5e-10));
    assertThat(ShewhartLimits.fromRanges(rings).sigma()).isCloseTo(0.009991706766, within(5e-13));
    assertThat(ShewhartLimits.fromSds(rings).sigma()).isCloseTo(0.009999604096, within(5e-13));
    assertThat(ShewhartLimits.fromPooledVariance(rings).sigma())
        .isCloseTo(0.010025766804, within(5e-13));
  }

  /** Montgomery and Runger, Ex. 16-1: vane opening, from the printed summary. */
  @Test
  void limitsFromASummaryAgreeWithTheVaneOpening() {
    ShewhartLimits.Subgroups vane = ShewhartLimits.fromMeanRange(33.32, 5.80, 5);
    assertThat(vane.mean(5).upper()).isCloseTo(36.67, within(0.005));
    assertThat(vane.mean(5).lower()).isCloseTo(29.97, within(0.005));
    // the book has D4 = 2.115 and so 12.27; with 2.1145 it is 12.264
    assertThat(vane.range(5).upper()).isCloseTo(12.264095, within(5e-7));
    // printed 4.899 from B4 = 2.089
    assertThat(ShewhartLimits.fromMeanSd(33.32, 2.345, 5).sd(5).upper())
        .isCloseTo(4.899, within(0.0005));
    ShewhartLimits.Subgroups revised = ShewhartLimits.fromMeanRange(33.21, 5.0, 5);
    // printed 36.10 and 30.33, from A2 = 0.577 and rounding on the way
    assertThat(revised.mean(5).upper()).isCloseTo(36.10, within(0.01));
    assertThat(revised.mean(5).lower()).isCloseTo(30.33, within(0.01));
    assertThat(revised.range(5).upper()).isCloseTo(10.57, within(0.005));
  }

  @Test
  void unequalSubgroupsGiveAnUnbiasedSigma() {
    Random random = new Random(41);
    double[][] subgroups = new double[40_000][];
    for (int i = 0; i < subgroups.length; i++) {
      subgroups[i] = random.doubles(1 + i % 5).map(u -> 10 + 3 * Normal.quantile(u)).toArray();
    }
    // the standard error of either is near 0.0075
    assertThat(ShewhartLimits.fromRanges(subgroups).sigma()).isCloseTo(3, within(0.03));
    assertThat(ShewhartLimits.fromSds(subgroups).sigma()).isCloseTo(3, within(0.03));
    assertThat(ShewhartLimits.fromPooledVariance(subgroups).sigma()).isCloseTo(3, within(0.03));
  }

  @Test
  void oneLimitForUnequalSubgroupsIsRefused() {
    double[][] unequal = {{1, 2}, {1, 2, 3}};
    assertThatThrownBy(() -> ShewhartLimits.xbarR(unequal)).hasMessageContaining("differ in size");
    assertThat(ShewhartLimits.fromSds(unequal).sd(3).isDefined()).isTrue();
  }

  @Test
  void limitsAreUndefinedWithTooFewValues() {
    assertThat(ShewhartLimits.individuals(new double[0]).isDefined()).isFalse();
    assertThat(ShewhartLimits.individuals(new double[] {388}).isDefined()).isFalse();
    assertThat(Limits.UNDEFINED.excludes(1)).isFalse();
    assertThat(ShewhartLimits.fromRanges(new double[][] {{1}, {2}}).sigma()).isNaN();
  }

  @Test
  void movingRangesPassOverMissingValuesAndStopAtBreaks() {
    assertThat(MovingRange.of(1, Double.NaN, 4).meanRange()).isEqualTo(3);
    MovingRange broken = MovingRange.of(1, 2);
    broken.breakHere();
    broken.add(50);
    broken.add(53);
    assertThat(broken.count()).isEqualTo(2);
    assertThat(broken.meanRange()).isEqualTo(2);
    assertThat(broken.values().count()).isEqualTo(4);
  }

  /**
   * Two values: the range is a half normal, exactly one degree of freedom. Many: 1/(2·0.8264) a
   * range (Cryer and Ryan 1990, from memory).
   */
  @Test
  void degreesOfFreedomOfTheMovingRangeAreThoseKnown() {
    assertThat(MovingRange.degreesOfFreedom(2)).isCloseTo(1, within(1e-10));
    assertThat(MovingRange.degreesOfFreedom(100_001) / 100_000)
        .isCloseTo(1 / (2 * 0.8264), within(1e-4));
    assertThat(MovingRange.degreesOfFreedom(1)).isNaN();
    assertThat(MovingRange.of(1, 2).degreesOfFreedom()).isCloseTo(1, within(1e-10));
  }

  @Property(tries = 100)
  void limitsMoveAndScaleWithTheData(
      @ForAll @Size(min = 2, max = 30) List<@IntRange(min = -500, max = 500) Integer> x,
      @ForAll @IntRange(min = -500, max = 500) int shift) {
    double[] plain = x.stream().mapToDouble(Integer::doubleValue).toArray();
    double[] moved = Arrays.stream(plain).map(v -> 4 * v + shift).toArray();
    Limits a = ShewhartLimits.individuals(plain);
    Limits b = ShewhartLimits.individuals(moved);
    assertThat(b.sigma()).isCloseTo(4 * a.sigma(), within(1e-11));
    assertThat(b.upper()).isCloseTo(4 * a.upper() + shift, within(1e-10));
    assertThat(b.lower()).isCloseTo(4 * a.lower() + shift, within(1e-10));
  }
}
