package org.evenpour.stats;

/**
 * A mean square of an analysis of variance, value·df/expected is χ² with df degrees of freedom.
 *
 * @param value sum of squares / df
 * @param df degrees of freedom; may be infinite where the variance is known
 */
public record MeanSquare(double value, double df) {

  /** Σ coefficient·mean square, with an interval. NaN limits where a mean square is missing. */
  public record Combination(double value, double low, double high) {}

  /**
   * The interval of one expected mean square times c, exact by χ².
   *
   * @param confidence two-sided, as 0.95
   */
  static Combination exact(double c, MeanSquare m, double confidence) {
    double tail = 0.5 * (1 - confidence);
    return new Combination(
        c * m.value,
        c * m.value * m.df / ChiSquare.quantile(1 - tail, m.df),
        c * m.value * m.df / ChiSquare.quantile(tail, m.df));
  }

  /**
   * A sum with coefficients above 0, by the modified large-sample method (Graybill and Wang 1980):
   * low = value − √Σ(G·c·M)², high = value + √Σ(H·c·M)², G = 1 − df/χ²₁₋ₐ, H = df/χ²ₐ − 1.
   */
  static Combination sum(double[] c, MeanSquare[] m, double confidence) {
    double tail = 0.5 * (1 - confidence);
    double value = 0;
    double below = 0;
    double above = 0;
    for (int i = 0; i < c.length; i++) {
      double term = c[i] * m[i].value;
      double g = m[i].g(tail) * term;
      double h = m[i].h(tail) * term;
      value += term;
      below += g * g;
      above += h * h;
    }
    return new Combination(value, value - Math.sqrt(below), value + Math.sqrt(above));
  }

  /**
   * c·(larger − smaller), the usual estimate of a variance component, by the modified large-sample
   * method for differences (Ting, Burdick, Graybill, Jeyaratnam and Lu 1990). Value and limits
   * below 0 are given as 0.
   */
  static Combination difference(double c, MeanSquare m1, MeanSquare m2, double confidence) {
    double tail = 0.5 * (1 - confidence);
    double a = c * m1.value;
    double b = c * m2.value;
    double value = a - b;
    double f = FRatio.quantile(1 - tail, m1.df, m2.df);
    double small = FRatio.quantile(tail, m1.df, m2.df);
    double g1 = m1.g(tail);
    double h1 = m1.h(tail);
    double g2 = m2.g(tail);
    double h2 = m2.h(tail);
    double crossBelow = ((f - 1) * (f - 1) - g1 * g1 * f * f - h2 * h2) / f;
    double crossAbove = ((1 - small) * (1 - small) - h1 * h1 * small * small - g2 * g2) / small;
    // The cross terms put a limit at 0 exactly where the F test does; they may be negative.
    double below = g1 * g1 * a * a + h2 * h2 * b * b + crossBelow * a * b;
    double above = h1 * h1 * a * a + g2 * g2 * b * b + crossAbove * a * b;
    return new Combination(
        Math.max(0, value),
        Math.max(0, value - Math.sqrt(Math.max(0, below))),
        Math.max(0, value + Math.sqrt(Math.max(0, above))));
  }

  private double g(double tail) {
    return 1 - df / ChiSquare.quantile(1 - tail, df);
  }

  private double h(double tail) {
    return df / ChiSquare.quantile(tail, df) - 1;
  }
}
