package org.evenpour.stats;

/**
 * Where a departure from a known level began: the maximum-likelihood onset for normal data with
 * known mean 0 and s.d. 1 before it.
 *
 * <p>Two shapes are tried on {@code z[0..n)}. A step from τ on with unknown size: the
 * log-likelihood gain is {@code (Σ z)²/(2·count)} over {@code τ..n}. A ramp that grows by the same
 * amount at each point from τ on: {@code (Σ z·u)²/(2·Σ u²)} with {@code u = i − τ + 1}. Innovations
 * of an autocorrelated series show a step more clearly in its first value: that one weighs more.
 * The ramp is believed only where it gains more than the step by {@link #RAMP_MARGIN}, which is a
 * choice, not a published figure. The step form is the classic change-point estimate (Hinkley 1970)
 * with the first mean known.
 *
 * <p>Cost: O(n) for each shape, no allocation but the result.
 *
 * @param index first index of the departure
 * @param mean mean of z over {@code index..n}
 * @param ramp whether it grew rather than stepped
 * @param gain log-likelihood gained over no departure at all
 */
public record Onset(int index, double mean, boolean ramp, double gain) {

  /** By how much a ramp's log-likelihood must beat a step's. */
  public static final double RAMP_MARGIN = 3;

  /**
   * An onset is told from another one by this much log-likelihood: one standard error of an
   * estimate that is normal.
   */
  private static final double TOLD_APART = 0.5;

  /**
   * Finds the onset of a departure that lasts to the end.
   *
   * @param z standardized values or innovations; no NaN
   * @param n how many of them count
   * @param sign +1: only upward departures, −1: only downward ones
   * @param first how many times as large a step shows in its first value as in the later ones: 1
   *     for independent values, {@link Innovations#first} for innovations
   * @throws IllegalArgumentException if n is less than 1
   */
  public static Onset find(double[] z, int n, int sign, double first) {
    if (n < 1) {
      throw new IllegalArgumentException("an onset needs at least one value, got " + n);
    }
    double sum = 0;
    double weighted = 0;
    double squares = 0;
    int step = n - 1;
    int ramp = n - 1;
    double stepGain = Double.NEGATIVE_INFINITY;
    double rampGain = Double.NEGATIVE_INFINITY;
    double stepMean = 0;
    // Backward: each sum is that of the next point and one value more, so all onsets cost one pass.
    for (int i = n - 1; i >= 0; i--) {
      double from = sum + first * sign * z[i];
      double information = n - 1 - i + first * first;
      sum += sign * z[i];
      // With one more point in front every u grows by one, so Σ z·u grows by Σ z.
      weighted += sum;
      double count = n - i;
      squares += count * count;
      // A departure the other way is none, however much its square gains.
      if (from > 0 && from * from / (2 * information) > stepGain) {
        stepGain = from * from / (2 * information);
        step = i;
        stepMean = sign * from / information;
      }
      if (weighted > 0 && weighted * weighted / (2 * squares) > rampGain) {
        rampGain = weighted * weighted / (2 * squares);
        ramp = i;
      }
    }
    if (rampGain > stepGain + RAMP_MARGIN) {
      double total = 0;
      for (int i = ramp; i < n; i++) {
        total += z[i];
      }
      return new Onset(ramp, total / (n - ramp), true, rampGain);
    }
    return new Onset(step, stepMean, false, Math.max(stepGain, 0));
  }

  /**
   * The same departure with more points: what was found stays, unless these tell another onset or
   * another shape from it beyond its own error.
   *
   * @param z as in {@link #find(double[], int, int, double)}, with the points that this was found
   *     in
   */
  public Onset renewed(double[] z, int n, int sign, double first) {
    Onset best = find(z, n, sign, first);
    Onset same = index < n ? at(index, ramp, z, n, sign, first) : best;
    return best.gain() - same.gain() > TOLD_APART ? best : same;
  }

  /** A departure of one shape from one point on. */
  private static Onset at(int index, boolean ramp, double[] z, int n, int sign, double first) {
    double total = 0;
    double weighted = 0;
    double squares = 0;
    for (int i = index; i < n; i++) {
      double u = ramp ? i - index + 1 : i == index ? first : 1;
      total += z[i];
      weighted += u * sign * z[i];
      squares += u * u;
    }
    double mean = ramp ? total / (n - index) : sign * weighted / squares;
    double gain = weighted > 0 ? weighted * weighted / (2 * squares) : 0;
    return new Onset(index, mean, ramp, gain);
  }
}
