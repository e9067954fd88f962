package org.evenpour.stats;

/**
 * Two cumulative sums on the same values, one for small and one for large shifts: they signal as
 * soon as either passes its decision interval.
 *
 * <p>{@code Sᵢ = max(0, Sᵢ + z − kᵢ)}, i = 1, 2, upward, and the same downward (Page 1954; several
 * sums at once: Lorden 1971, Sparks 2000). Values are independent normal with s.d. 1, and all is in
 * that unit. Used with {@link #LARGE} = 2: the second sum aims at a shift twice as large.
 *
 * @param k of the sum for small shifts, above 0
 * @param h its decision interval
 * @param k2 of the sum for large shifts, at least k
 * @param h2 its decision interval
 */
public record CusumPair(double k, double h, double k2, double h2) {
  /** How many times the first reference value the second one is. */
  public static final double LARGE = 2;

  /** How many times the first sum's run length the second one's is, each alone. */
  private static final double RARER = 2;

  /**
   * No sum's run length is asked to be longer, all known: beyond it the integral equation has no
   * digits left. Where so much is in doubt that even this does not keep the rate, no limit would,
   * and one that never signals must not stand.
   */
  private static final double LONGEST_ALONE = 1e10;

  /** Siegmund 1985: the overshoot is allowed for by adding this to h. */
  private static final double OVERSHOOT = 1.166;

  /**
   * The pair that alarms at the given rate, where what it stands on was itself estimated. The sum
   * for large shifts alone would alarm half as often as the other one alone: small shifts are the
   * rule.
   *
   * <p>The rate is averaged over the estimates' errors: a center that is off by {@code e ~ N(0,
   * centerVariance)} and a variance of long sums that is off by a factor whose logarithm is {@code
   * N(0, logVarianceSd²)}, each alarm keeping its chart busy for a while; each factor of the
   * average by Siegmund's formula, the run length of each sum where all is known by the integral
   * equation ({@link RunLength#cusum}), and how much two sums alarm more than one by {@link
   * #together}. Some 5 ms. Where the doubt is so large that no limit keeps the rate, limits are
   * those of a run length of 1e10 with all known.
   *
   * @param k of the first sum
   * @param rate false alarms for each value, high and low together; above 1e-9 and below 0.05
   * @param centerVariance of the estimated center, in units of the values' variance
   * @param logVarianceSd s.d. of the logarithm of the estimated variance
   */
  public static CusumPair of(double k, double rate, double centerVariance, double logVarianceSd) {
    double bounded = Math.max(1e-9, Math.min(0.05, rate));
    // The pair alarms at least as often as its first sum, which so is never quicker than 1/rate.
    double low = Math.log(1 / bounded);
    double high = Math.log(LONGEST_ALONE);
    // More run length for each sum, fewer alarms: the rate falls in log A.
    for (int i = 0; i < 60 && high - low > 1e-4; i++) {
      double middle = 0.5 * (low + high);
      if (expectedRate(k, Math.exp(middle), centerVariance, logVarianceSd) > bounded) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double alone = Math.exp(0.5 * (low + high));
    return new CusumPair(k, exactLimit(k, alone), LARGE * k, exactLimit(LARGE * k, RARER * alone));
  }

  /** False alarms for each value of a pair whose first sum alone has run length {@code alone}. */
  private static double expectedRate(
      double k, double alone, double centerVariance, double logVarianceSd) {
    double known = together(k, alone) / alone;
    if (centerVariance == 0 && logVarianceSd == 0) {
      return known;
    }
    // Siegmund's formula only as a ratio, doubt over none: most of its own error cancels
    double b = siegmundLimit(k, alone) + OVERSHOOT;
    double b2 = siegmundLimit(LARGE * k, RARER * alone) + OVERSHOOT;
    double average =
        averageRate(k, b, k, centerVariance, logVarianceSd)
            + averageRate(LARGE * k, b2, k, centerVariance, logVarianceSd);
    return known * average / (averageRate(k, b, k, 0, 0) + averageRate(LARGE * k, b2, k, 0, 0));
  }

  /** Siegmund's rate averaged over errors of center and variance, by Gauss–Hermite sums. */
  private static double averageRate(
      double k, double b, double small, double centerVariance, double logVarianceSd) {
    double sum = 0;
    for (int i = 0; i < Hermite.NODES; i++) {
      // Half: the doubt is about a variance, and s is a s.d.
      double s = Math.exp(0.5 * logVarianceSd * Hermite.node(i));
      for (int j = 0; j < Hermite.NODES; j++) {
        double off = Math.sqrt(centerVariance) * Hermite.node(j);
        // The limit stands in the supposed unit, the overshoot comes in the true one.
        double edge = (b - OVERSHOOT) / s + OVERSHOOT;
        double rate = 1 / siegmund((off - k) / s, edge) + 1 / siegmund((-off - k) / s, edge);
        sum +=
            Hermite.weight(i)
                * Hermite.weight(j)
                * rate
                // From alarm to alarm it takes 1/rate and the time that the alarm lasts.
                / (1 + rate * occupied(small, Math.abs(off)));
      }
    }
    return sum;
  }

  /**
   * For how many values an alarm keeps its chart busy: until a log-likelihood ratio of 7 says that
   * a shift of 1.5 k is over. A chart whose center is far off raises one long alarm and not many.
   */
  private static double occupied(double k, double off) {
    return 7 / (1.5 * k * Math.max(0.2 * k, 0.75 * k - off));
  }

  /** Run length of one sum with drift d = shift − k and edge b = h + 1.166 (Siegmund 1985). */
  private static double siegmund(double d, double b) {
    double x = -2 * d * b;
    // Near no drift the terms cancel; b² is their limit.
    return Math.abs(x) < 1e-6 ? b * b : (Math.exp(x) - x - 1) / (2 * d * d);
  }

  private static double siegmundLimit(double k, double twoSided) {
    // Each side alone has twice the run length, so eˣ − x − 1 = 2k²·2L with x = 2kb; taken as
    // x = ln(2k²·2L + x + 1), it contracts by about 1/(2k²·2L) a step.
    double target = 2 * twoSided * 2 * k * k;
    double x = Math.log1p(target);
    for (int i = 0; i < 20; i++) {
      x = Math.log(target + x + 1);
    }
    return Math.max(0.05, x / (2 * k) - OVERSHOOT);
  }

  /** Newton's steps from Siegmund's limit, along which ln(run length) grows by 2k a unit. */
  private static double exactLimit(double k, double twoSided) {
    double h = siegmundLimit(k, twoSided);
    for (int i = 0; i < 4; i++) {
      // On the logarithm the run length is nearly straight in h.
      double off = Math.log(twoSided) - Math.log(RunLength.cusum(k, h, 0));
      h = Math.max(0.01, h + off / (2 * k));
      if (Math.abs(off) < 1e-4) {
        break;
      }
    }
    return h;
  }

  /**
   * By how much the two sums together alarm more often than the first one alone: 1 would be always
   * with it, 1.5 never. Interpolated in a table made by a Markov chain of both sums (Brook and
   * Evans 1972), to 1 %; the chain stands beside the tests.
   *
   * @param k of the first sum; below 0.125 and above 0.75 taken as these
   * @param alone run length of the first, two-sided
   */
  static double together(double k, double alone) {
    double x = Math.max(2, Math.min(6, Math.log10(alone)));
    // Just short of the last row, which has no next one to go to.
    double y = Math.max(0, Math.min(TOGETHER_K.length - 1.001, placeOf(k)));
    int i = (int) Math.min(3, x - 2);
    int j = (int) y;
    double u = x - 2 - i;
    double v = y - j;
    return (1 - v) * ((1 - u) * TOGETHER[j][i] + u * TOGETHER[j][i + 1])
        + v * ((1 - u) * TOGETHER[j + 1][i] + u * TOGETHER[j + 1][i + 1]);
  }

  private static double placeOf(double k) {
    for (int j = 0; j + 1 < TOGETHER_K.length; j++) {
      if (k < TOGETHER_K[j + 1]) {
        return j + (k - TOGETHER_K[j]) / (TOGETHER_K[j + 1] - TOGETHER_K[j]);
      }
    }
    return TOGETHER_K.length - 1;
  }

  private static final double[] TOGETHER_K = {0.125, 0.25, 0.5, 0.75};

  /** Rows: {@link #TOGETHER_K}; columns: run lengths 10² to 10⁶. */
  private static final double[][] TOGETHER = {
    {1.003, 1.075, 1.170, 1.250, 1.310},
    {1.039, 1.142, 1.241, 1.317, 1.365},
    {1.110, 1.208, 1.292, 1.354, 1.397},
    {1.157, 1.257, 1.324, 1.376, 1.413}
  };
}
