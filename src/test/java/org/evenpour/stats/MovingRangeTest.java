package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MovingRangeTest {
  /** d2 for two values as printed in tables; the exact one is 1.12838. */
  private static final double PRINTED_D2 = 1.128;

  private static MovingRange of(double... x) {
    MovingRange ranges = new MovingRange();
    Arrays.stream(x).forEach(ranges::add);
    return ranges;
  }

  /**
   * NIST/SEMATECH e-Handbook 6.3.2.2: flow rate of ten batches. Printed with d2 = 1.128; the exact
   * figures are computed independently.
   */
  @Test
  void individualsAgreeWithTheHandbook() {
    double[] x = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    Limits exact = of(x).limits();
    assertThat(exact.center()).isCloseTo(50.81, within(0.005));
    double reach = 3 * of(x).meanRange() / PRINTED_D2;
    assertThat(exact.center() + reach).isCloseTo(55.8041, within(0.00005));
    assertThat(exact.center() - reach).isCloseTo(45.8159, within(0.00005));
    assertThat(exact.upper()).isCloseTo(55.80241168005054, within(1e-12));
    assertThat(exact.lower()).isCloseTo(45.817588319949465, within(1e-12));
    assertThat(of(x).meanRange()).isCloseTo(1.8778, within(0.00005));
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
    Limits limits = of(x).limits();
    assertThat(limits.center()).isCloseTo(99.1, within(0.05));
    assertThat(of(x).meanRange()).isCloseTo(2.589473684, within(5e-10));
    double reach = 3 * of(x).meanRange() / PRINTED_D2;
    assertThat(limits.center() + reach)
        .isCloseTo(105.981898, within(5e-7))
        .isCloseTo(105.99, within(0.01));
    assertThat(limits.center() - reach)
        .isCloseTo(92.208102, within(5e-7))
        .isCloseTo(92.21, within(0.005));
  }

  @Test
  void limitsAreUndefinedWithTooFewValues() {
    assertThat(of().limits().sigma()).isNaN();
    assertThat(of(388).limits().sigma()).isNaN();
  }

  @Test
  void movingRangesPassOverMissingValuesAndStopAtBreaks() {
    assertThat(of(1, Double.NaN, 4).meanRange()).isEqualTo(3);
    MovingRange broken = of(1, 2);
    broken.breakHere();
    broken.add(50);
    broken.add(53);
    assertThat(broken.count()).isEqualTo(2);
    assertThat(broken.meanRange()).isEqualTo(2);
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
    assertThat(of(1, 2).degreesOfFreedom()).isCloseTo(1, within(1e-10));
  }

  @Property(tries = 100)
  void limitsMoveAndScaleWithTheData(
      @ForAll @Size(min = 2, max = 30) List<@IntRange(min = -500, max = 500) Integer> x,
      @ForAll @IntRange(min = -500, max = 500) int shift) {
    double[] plain = x.stream().mapToDouble(Integer::doubleValue).toArray();
    double[] moved = Arrays.stream(plain).map(v -> 4 * v + shift).toArray();
    Limits a = of(plain).limits();
    Limits b = of(moved).limits();
    assertThat(b.sigma()).isCloseTo(4 * a.sigma(), within(1e-11));
    assertThat(b.upper()).isCloseTo(4 * a.upper() + shift, within(1e-10));
    assertThat(b.lower()).isCloseTo(4 * a.lower() + shift, within(1e-10));
  }
}
