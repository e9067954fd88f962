package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The CUSUM that experiments compare with, against worked examples. */
class CusumTest {
  /** Montgomery, Introduction to SQC, Table 9.1. */
  private static final double[] TABLE_9_1 = {
    9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40,
    10.08, 9.37, 10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62,
    11.31, 10.52
  };

  /**
   * NIST/SEMATECH e-Handbook 6.3.2.3; the printed 14.44 and 19.04 are 14.445 and 19.035, rounded
   * one way and the other.
   */
  @Test
  void cusumAgreesWithTheHandbook() {
    double[] x = {
      324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
      324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
    };
    double[] high = {
      0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445,
      16.0025, 19.035
    };
    double[] low = {
      0, .0075, 0, .3325, 0, 0, .5575, .715, .1725, .255, .3125, 0, 0, 0, 0, 0, 0, 0, 0, 0
    };
    Cusum cusum = new Cusum(325, 0.3175, 4.1959);
    int firstSignal = 0;
    for (int i = 0; i < x.length; i++) {
      boolean signal = cusum.accept(x[i]);
      assertThat(cusum.upper()).isCloseTo(high[i], within(1e-9));
      assertThat(cusum.lower()).isCloseTo(low[i], within(1e-9));
      if (signal && firstSignal == 0) {
        firstSignal = i + 1;
      }
    }
    assertThat(firstSignal).isEqualTo(14);
    assertThat(cusum.signalsHigh()).isTrue();
    assertThat(cusum.signalsLow()).isFalse();
  }

  /** Montgomery and Runger, Ex. 16-6: chemical concentration, target 99, K = 1, H = 10. */
  @Test
  void cusumAgreesWithTheChemicalConcentration() {
    double[] x = {
      102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0,
      96.7, 100.3, 101.4, 97.2, 101.0
    };
    double[] high = {2.0, 0, 0, 0, 2.0, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0};
    double[] low = {0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1.0, 2.3, 0, 0, 0.8, 0};
    Cusum cusum = new Cusum(99, 1, 10);
    for (int i = 0; i < x.length; i++) {
      assertThat(cusum.accept(x[i])).isFalse();
      assertThat(cusum.upper()).isCloseTo(high[i], within(1e-9));
      assertThat(cusum.lower()).isCloseTo(low[i], within(1e-9));
    }
  }

  /** Montgomery, Table 9.1: first signal at 29 with C⁺ = 5.28 and N⁺ = 7 (from memory). */
  @Test
  void cusumDatesTheShift() {
    Cusum cusum = new Cusum(10, 0.5, 5);
    for (int i = 0; i < 28; i++) {
      assertThat(cusum.accept(TABLE_9_1[i])).isFalse();
    }
    assertThat(cusum.accept(TABLE_9_1[28])).isTrue();
    assertThat(cusum.upper()).isCloseTo(5.28, within(1e-9));
    assertThat(cusum.sinceUpperZero()).isEqualTo(7);
    // 10 + 0.5 + 5.28/7, by hand
    assertThat(cusum.estimatedLevel()).isCloseTo(11.254285714, within(1e-9));
  }

  @Test
  void cusumOfTheMirroredSeriesIsTheMirroredCusum() {
    Cusum plain = new Cusum(10, 0.5, 5);
    Cusum mirrored = new Cusum(-10, 0.5, 5);
    for (double x : TABLE_9_1) {
      assertThat(mirrored.accept(-x)).isEqualTo(plain.accept(x));
      assertThat(mirrored.lower()).isEqualTo(plain.upper());
      assertThat(mirrored.sinceLowerZero()).isEqualTo(plain.sinceUpperZero());
    }
    assertThat(mirrored.estimatedLevel()).isEqualTo(-plain.estimatedLevel());
  }

  @Test
  void headStartSignalsEarlier() {
    Cusum cusum = new Cusum(0, 0.5, 5);
    cusum.restart(2.5);
    assertThat(cusum.accept(Double.NaN)).isFalse();
    assertThat(cusum.upper()).isEqualTo(2.5);
    assertThat(cusum.accept(3.1)).isTrue();
    cusum.restart(0);
    assertThat(cusum.accept(3.1)).isFalse();
  }
}
