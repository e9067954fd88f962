package org.evenpour.stats;

import java.util.Arrays;
import java.util.stream.IntStream;

/** The Anderson–Darling test of normality with mean and standard deviation estimated. */
public final class AndersonDarling {
  /** Chunks of one length whatever the processors, so that the sum's last digit is the same. */
  private static final int CHUNK = 1 << 14;

  private AndersonDarling() {}

  /**
   * @param a2 A², larger is worse; NaN with fewer than two values or no spread
   * @param pValue probability of an A² as large from normal values; NaN with fewer than 8 values,
   *     where the approximation isn't valid
   */
  public record Result(double a2, double pValue) {}

  /**
   * Tests values in any order; NaN are left out.
   *
   * <p>A² = −n − Σ (2i−1)(ln Φ(z₍ᵢ₎) + ln(1 − Φ(z₍ₙ₊₁₋ᵢ₎)))/n, z = (x − mean)/sd with n − 1; the
   * logarithms are taken in the tails without loss, so that A² is finite for all finite values. p
   * from A²(1 + 0.75/n + 2.25/n²) by the formulas of D'Agostino and Stephens (1986), Table 4.9.
   * Ties count as they stand: heavily rounded values test as not normal. Sorting, then some 50 ns a
   * value, on all processors for large n; the result doesn't depend on their number.
   */
  public static Result normal(double[] x) {
    double[] sorted = Arrays.stream(x).filter(v -> !Double.isNaN(v)).toArray();
    Arrays.parallelSort(sorted);
    return normalSorted(sorted);
  }

  /** The same for values in ascending order, without NaN. */
  public static Result normalSorted(double[] ascending) {
    Moments moments = Moments.of(ascending);
    double sd = moments.sd();
    int n = ascending.length;
    if (!(sd > 0)) {
      return new Result(Double.NaN, Double.NaN);
    }
    double mean = moments.mean();
    int chunks = (n + CHUNK - 1) / CHUNK;
    double[] sums =
        IntStream.range(0, chunks)
            .parallel()
            .mapToDouble(
                c -> weightedLogs(ascending, c * CHUNK, Math.min(n, (c + 1) * CHUNK), mean, sd))
            .toArray();
    // Kahan's sum: A² is the small difference of −n and a sum of nearly n²
    double sum = 0;
    double lost = 0;
    for (double part : sums) {
      double y = part - lost;
      double t = sum + y;
      lost = (t - sum) - y;
      sum = t;
    }
    double a2 = -n - sum / n;
    return new Result(a2, n < 8 ? Double.NaN : pValue(a2 * (1 + 0.75 / n + 2.25 / n / n)));
  }

  private static double weightedLogs(double[] x, int from, int to, double mean, double sd) {
    double n = x.length;
    double sum = 0;
    double[] logs = new double[2];
    for (int i = from; i < to; i++) {
      // Values as they are written down repeat themselves, and what costs is the logarithms.
      if (i == from || x[i] != x[i - 1]) {
        Normal.logs((x[i] - mean) / sd, logs);
      }
      // Ranks counted from below for Φ and from above for 1 − Φ: one evaluation serves both.
      sum += (2.0 * i + 1) * logs[0] + (2 * (n - i) - 1) * logs[1];
    }
    return sum;
  }

  static double pValue(double a) {
    if (a < 0.2) {
      return 1 - Math.exp(-13.436 + a * (101.14 - 223.73 * a));
    }
    if (a < 0.34) {
      return 1 - Math.exp(-8.318 + a * (42.796 - 59.938 * a));
    }
    if (a < 0.6) {
      return Math.exp(0.9177 - a * (4.279 + 1.38 * a));
    }
    // the parabola in the exponent turns at A² = 153; beyond it p stays where it is least
    double held = Math.min(a, 153);
    return Math.exp(1.2937 - held * (5.709 - 0.0186 * held));
  }
}
