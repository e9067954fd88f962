package org.evenpour.stats;

import java.util.concurrent.ConcurrentHashMap;

/**
 * The constants of control charts for subgroups of 2 to 100 normal values, computed to 1e-12.
 *
 * <p>c4 by the recurrence of its gamma functions; d2 = ∫ 1 − Φⁿ − (1 − Φ)ⁿ (Tippett 1925) by the
 * trapezoidal rule, which converges exponentially for such integrands; d3 from the distribution of
 * the range, P(R ≤ r) = n∫ φ(x) (Φ(x + r) − Φ(x))ⁿ⁻¹ dx, by Gauss–Legendre over the range. d2 and
 * d3 are kept once computed. The letters are those of ISO 7870-2 and ASTM E2587; D1 to D4 are
 * called bigD1 to bigD4 beside d2 and d3. Printed tables were made from rounded d2, d3 and c4, and
 * differ from these in the last digit here and there.
 */
public final class ChartConstants {
  /** The largest subgroup. */
  public static final int LARGEST = 100;

  /** d2 for two values as printed in tables; for comparison with printed work only. */
  public static final double PRINTED_D2 = 1.128;

  private static final double STEP = 1.0 / 32;
  private static final int REACH = 10 * 32;
  private static final ConcurrentHashMap<Integer, Double> D2 = new ConcurrentHashMap<>();
  private static final ConcurrentHashMap<Integer, Double> D3 = new ConcurrentHashMap<>();

  private ChartConstants() {}

  /** Mean of the sample standard deviation, in units of sigma; any n from 2. */
  public static double c4(int n) {
    if (n > 10_000) {
      return c4OfDegrees(n - 1.0);
    }
    checkFrom2(n);
    // g(n) = Γ(n/2)/Γ((n−1)/2), g(n)·g(n−1) = (n−2)/2
    double g = 1 / Math.sqrt(Math.PI);
    for (int m = 3; m <= n; m++) {
      g = 0.5 * (m - 2) / g;
    }
    return Math.sqrt(2.0 / (n - 1)) * g;
  }

  /** c4 for real degrees of freedom, by the expansion of the ratio of gamma functions. */
  static double c4OfDegrees(double df) {
    // raise the argument by Γ(x+½)/Γ(x) = x/(x+½)·Γ(x+3/2)/Γ(x+1) until the series is exact
    double factor = 1;
    double x = 0.5 * df;
    while (x < 30) {
      factor *= x / (x + 0.5);
      x += 1;
    }
    double y = 1 / x;
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

  /** Standard deviation of the range, in units of sigma. */
  public static double d3(int n) {
    check(n);
    return D3.computeIfAbsent(n, ChartConstants::sdOfRange);
  }

  /** Limits for means with known sigma: 3/√n. */
  public static double a(int n) {
    checkFrom2(n);
    return 3 / Math.sqrt(n);
  }

  /** Limits for means from the mean range. */
  public static double a2(int n) {
    return a(n) / d2(n);
  }

  /** Limits for means from the mean standard deviation. */
  public static double a3(int n) {
    return a(n) / c4(n);
  }

  /** Lower limit of standard deviations from their mean. */
  public static double b3(int n) {
    return b5(n) / c4(n);
  }

  /** Upper limit of standard deviations from their mean. */
  public static double b4(int n) {
    return b6(n) / c4(n);
  }

  /** Lower limit of standard deviations from known sigma. */
  public static double b5(int n) {
    return Math.max(0, c4(n) - 3 * sdOfSd(n));
  }

  /** Upper limit of standard deviations from known sigma. */
  public static double b6(int n) {
    return c4(n) + 3 * sdOfSd(n);
  }

  /** Lower limit of ranges from known sigma. */
  public static double bigD1(int n) {
    return Math.max(0, d2(n) - 3 * d3(n));
  }

  /** Upper limit of ranges from known sigma. */
  public static double bigD2(int n) {
    return d2(n) + 3 * d3(n);
  }

  /** Lower limit of ranges from their mean. */
  public static double bigD3(int n) {
    return bigD1(n) / d2(n);
  }

  /** Upper limit of ranges from their mean. */
  public static double bigD4(int n) {
    return bigD2(n) / d2(n);
  }

  /** Limits for individual values from the mean (moving) range: 3/d2. */
  public static double e2(int n) {
    return 3 / d2(n);
  }

  private static double sdOfSd(int n) {
    double c4 = c4(n);
    return Math.sqrt((1 - c4) * (1 + c4));
  }

  private static double meanRange(int n) {
    double sum = 0;
    for (int i = -REACH; i <= REACH; i++) {
      double below = Normal.cdf(i * STEP);
      double above = Normal.upperTail(i * STEP);
      sum += 1 - Math.pow(below, n) - Math.pow(above, n);
    }
    return sum * STEP;
  }

  /**
   * Var R = ∫₀^d2 2(d2 − r)·P(R ≤ r) dr + ∫_d2^∞ 2(r − d2)·P(R &gt; r) dr: no difference of large
   * numbers.
   */
  private static double sdOfRange(int n) {
    double d2 = d2(n);
    double variance = 0;
    for (int panel = 0; panel < 4; panel++) {
      double low = d2 * panel / 4;
      double up = d2 + (15 - d2) * panel / 4;
      variance +=
          GaussLegendre.on(low, low + d2 / 4, 24)
              .integral(r -> 2 * (d2 - r) * probabilityOfRange(r, n));
      variance +=
          GaussLegendre.on(up, up + (15 - d2) / 4, 24)
              .integral(r -> 2 * (r - d2) * (1 - probabilityOfRange(r, n)));
    }
    return Math.sqrt(variance);
  }

  private static double probabilityOfRange(double r, int n) {
    double sum = 0;
    for (int i = -REACH; i <= REACH; i += 2) {
      double x = i * STEP;
      double between =
          x > 0 ? Normal.upperTail(x) - Normal.upperTail(x + r) : Normal.cdf(x + r) - Normal.cdf(x);
      sum += Normal.density(x) * Math.pow(between, n - 1.0);
    }
    return n * sum * 2 * STEP;
  }

  private static void check(int n) {
    if (n < 2 || n > LARGEST) {
      throw new IllegalArgumentException(
          "a subgroup for a range has 2 to " + LARGEST + " values, not " + n);
    }
  }

  private static void checkFrom2(int n) {
    if (n < 2) {
      throw new IllegalArgumentException("a subgroup has at least 2 values, not " + n);
    }
  }
}
