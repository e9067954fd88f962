package org.evenpour.stats;

import java.util.concurrent.ConcurrentHashMap;

/**
 * The constants of control charts that turn ranges and standard deviations into sigma, computed to
 * 1e-12.
 *
 * <p>d2 = ∫ 1 − Φⁿ − (1 − Φ)ⁿ (Tippett 1925) by the trapezoidal rule, which converges exponentially
 * for such integrands, kept once computed. The letters are those of ISO 7870-2 and ASTM E2587.
 * Printed tables were made from rounded constants, and differ from these in the last digit here and
 * there.
 */
public final class ChartConstants {
  /** The largest subgroup. */
  public static final int LARGEST = 100;

  private static final double STEP = 1.0 / 32;
  private static final int REACH = 10 * 32;
  private static final ConcurrentHashMap<Integer, Double> D2 = new ConcurrentHashMap<>();

  private ChartConstants() {}

  /**
   * c4, the mean of the standard deviation in units of sigma, for real degrees of freedom:
   * √(2/f)·Γ((f + 1)/2)/Γ(f/2), by the expansion of the ratio of gamma functions.
   */
  static double c4OfDegrees(double df) {
    // raise the argument by Γ(x+½)/Γ(x) = x/(x+½)·Γ(x+3/2)/Γ(x+1) until the series is exact
    double factor = 1;
    double x = 0.5 * df;
    while (x < 30) {
      factor *= x / (x + 0.5);
      x += 1;
    }
    double y = 1 / x;
    // Asymptotic; from 30 on the first term left out is below 1e-13, and unlike a difference of
    // ln Γ it keeps its digits however many the degrees of freedom.
    double series =
        1
            + y
                * (-1.0 / 8
                    + y
                        * (1.0 / 128
                            + y
                                * (5.0 / 1024
                                    + y
                                        * (-21.0 / 32768
                                            + y * (-399.0 / 262144 + y * 869.0 / 4194304)))));
    return factor * Math.sqrt(x) * series * Math.sqrt(2 / df);
  }

  /** Mean of the range, in units of sigma. */
  public static double d2(int n) {
    check(n);
    return D2.computeIfAbsent(n, ChartConstants::meanRange);
  }

  private static double meanRange(int n) {
    double sum = 0;
    // Beyond ±10 sigma the integrand is below n·1e-23.
    for (int i = -REACH; i <= REACH; i++) {
      double below = Normal.cdf(i * STEP);
      // The upper tail by itself: 1 − Φ has no digits left out there.
      double above = Normal.upperTail(i * STEP);
      sum += 1 - Math.pow(below, n) - Math.pow(above, n);
    }
    return sum * STEP;
  }

  private static void check(int n) {
    if (n < 2 || n > LARGEST) {
      throw new IllegalArgumentException(
          "a subgroup for a range has 2 to " + LARGEST + " values, not " + n);
    }
  }
}
