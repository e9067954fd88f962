package org.evenpour.stats;

/**
 * How much a second figure differs from a first one that shares no value with it, with a 95 %
 * interval.
 *
 * @param value the second less the first
 * @param low lower end of the interval; NaN where there is none
 * @param high upper end
 * @param p the chance of a difference as large or larger, either way, where there is none; NaN
 *     where there is no interval
 */
public record Difference(double value, double low, double high, double p) {
  private static final double CONFIDENCE = 0.95;

  /**
   * Of two means with standard errors of their own: t = (m₂ − m₁)/√(e₁² + e₂²), by Student's t with
   *
   * <pre>(e₁² + e₂²)² / (e₁⁴/ν₁ + e₂⁴/ν₂)</pre>
   *
   * <p>degrees of freedom (Welch 1947). The s.d. of the two may differ. O(1).
   *
   * @param error standard error of a mean, above 0
   * @param df its degrees of freedom, above 0; neither need be whole, so that values that hang
   *     together can count for fewer than they are
   */
  public static Difference ofMeans(
      double mean1, double error1, double df1, double mean2, double error2, double df2) {
    double one = error1 * error1;
    double two = error2 * error2;
    double value = mean2 - mean1;
    double error = Math.sqrt(one + two);
    if (!(error > 0) || !(df1 > 0) || !(df2 > 0)) {
      return new Difference(value, Double.NaN, Double.NaN, Double.NaN);
    }
    double df = (one + two) * (one + two) / (one * one / df1 + two * two / df2);
    double half = StudentT.quantile(0.5 + CONFIDENCE / 2, df) * error;
    return new Difference(value, value - half, value + half, StudentT.twoSided(value / error, df));
  }

  /**
   * Of two figures with 95 % intervals of their own, which need lie neither even about them nor
   * within any bounds: with v the values and l, u the ends,
   *
   * <pre>d − √((v₂ − l₂)² + (u₁ − v₁)²)  to  d + √((u₂ − v₂)² + (v₁ − l₁)²)</pre>
   *
   * <p>(Zou and Donner 2008, Statistics in Medicine 27, 1693–1702; for two shares with score
   * intervals it is method 10 of Newcombe 1998, Statistics in Medicine 17, 873–890). p is that of a
   * normal deviate as many half-widths of 1.96 from 0 as the end that faces 0 is wide. O(1).
   */
  public static Difference ofIntervals(
      double value1, double low1, double high1, double value2, double low2, double high2) {
    double value = value2 - value1;
    double below = Math.hypot(value2 - low2, high1 - value1);
    double above = Math.hypot(high2 - value2, value1 - low1);
    double facing = value > 0 ? below : above;
    double z = Normal.quantile(0.5 + CONFIDENCE / 2);
    double p =
        value == 0 ? 1 : facing > 0 ? 2 * Normal.cdf(-Math.abs(value) * z / facing) : Double.NaN;
    return new Difference(value, value - below, value + above, p);
  }

  /**
   * The ratio of two s.d., second over first, in place of a difference: {@code value}, {@code low}
   * and {@code high} are s₂/s₁, and where nothing differs 1. With γ the excess kurtosis of both
   * together, about their own means,
   *
   * <pre>ln(s₂²/s₁²) ± z·√((2 + γ(1 − 1/n₁))/(n₁ − 1) + (2 + γ(1 − 1/n₂))/(n₂ − 1))</pre>
   *
   * <p>(Layard 1973, Journal of the American Statistical Association 68, 195–198), for an F test
   * takes heavy tails, which pours have, for a difference. NaN values are missing. O(n).
   */
  public static Difference ratioOfSpreads(double[] first, double[] second) {
    Moments one = Moments.of(first);
    Moments two = Moments.of(second);
    double n1 = one.count();
    double n2 = two.count();
    if (n1 < 2 || n2 < 2 || !(one.variance() > 0) || !(two.variance() > 0)) {
      return new Difference(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
    double squares = one.variance() * (n1 - 1) + two.variance() * (n2 - 1);
    double fourths = fourths(first, one.mean()) + fourths(second, two.mean());
    double excess = (n1 + n2) * fourths / (squares * squares) - 3;
    // Below −2 it cannot lie; there the spread of s would be none at all.
    double error =
        Math.sqrt(
            Math.max(0, 2 + excess * (1 - 1 / n1)) / (n1 - 1)
                + Math.max(0, 2 + excess * (1 - 1 / n2)) / (n2 - 1));
    double log = Math.log(two.variance() / one.variance());
    double z = Normal.quantile(0.5 + CONFIDENCE / 2);
    return new Difference(
        Math.exp(log / 2),
        Math.exp((log - z * error) / 2),
        Math.exp((log + z * error) / 2),
        error > 0 ? 2 * Normal.cdf(-Math.abs(log) / error) : Double.NaN);
  }

  private static double fourths(double[] x, double mean) {
    double sum = 0;
    for (double value : x) {
      if (!Double.isNaN(value)) {
        double d = value - mean;
        sum += d * d * d * d;
      }
    }
    return sum;
  }
}
