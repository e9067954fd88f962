package org.evenpour.stats;

import java.util.Arrays;
import java.util.function.DoubleSupplier;

/**
 * How the number of points T until a chart signals is distributed, the signalling point included.
 *
 * <p>P(T &gt; n) for the first points one by one; from where it falls by a constant ratio,
 * geometrically. Mean = Σ P(T &gt; n), E T² = Σ (2n + 1)·P(T &gt; n), n from 0, the tail in closed
 * form. Not changed once made.
 */
public final class RunLengthDistribution {
  private static final int STEADY = 20;
  private static final int LONGEST = 200_000;

  private final double[] alive;
  private final double ratio;

  private RunLengthDistribution(double[] alive, double ratio) {
    this.alive = alive;
    this.ratio = ratio;
  }

  /**
   * From P(T &gt; 1), P(T &gt; 2), … as they are asked for, until their ratio stands still.
   *
   * @param atLeast points before which the ratio isn't trusted, as where limits still widen
   */
  static RunLengthDistribution of(DoubleSupplier next, int atLeast) {
    double[] alive = new double[256];
    alive[0] = 1;
    int n = 0;
    int steady = 0;
    double last = -1;
    while (n < LONGEST && steady < STEADY && alive[n] > 1e-17) {
      if (n + 1 == alive.length) {
        alive = Arrays.copyOf(alive, 2 * alive.length);
      }
      alive[n + 1] = next.getAsDouble();
      double ratio = alive[n + 1] / alive[n];
      // what moves the ratio by less than this moves the mean by less than its tenth digit
      boolean same = Math.abs(ratio - last) <= Math.max(4e-16, 1e-11 * (1 - ratio));
      steady = same && n >= atLeast ? steady + 1 : 0;
      last = ratio;
      n++;
    }
    return new RunLengthDistribution(Arrays.copyOf(alive, n + 1), Math.max(0, last));
  }

  /** The first of two that run side by side, as if independent. */
  RunLengthDistribution firstOf(RunLengthDistribution other) {
    int n = Math.max(alive.length, other.alive.length);
    double[] both = new double[n];
    for (int i = 0; i < n; i++) {
      both[i] = beyond(i) * other.beyond(i);
    }
    return new RunLengthDistribution(both, ratio * other.ratio);
  }

  /** The average run length. */
  public double mean() {
    int last = alive.length - 1;
    double sum = alive[last] / (1 - ratio);
    for (int n = last - 1; n >= 0; n--) {
      sum += alive[n];
    }
    return sum;
  }

  public double sd() {
    int last = alive.length - 1;
    double rest = 1 - ratio;
    // Σ (2(last + j) + 1)·ratioʲ
    double second = alive[last] * ((2.0 * last + 1) / rest + 2 * ratio / (rest * rest));
    for (int n = last - 1; n >= 0; n--) {
      second += (2.0 * n + 1) * alive[n];
    }
    double mean = mean();
    return Math.sqrt(Math.max(0, second - mean * mean));
  }

  /** The probability of a signal at one of the first n points. */
  public double signalWithin(long n) {
    return 1 - beyond(n);
  }

  /** The fewest points within which a signal has probability p, from 0 to below 1. */
  public long points(double p) {
    if (!(p >= 0 && p < 1)) {
      throw new IllegalArgumentException("a probability from 0 to below 1 is needed, not " + p);
    }
    int last = alive.length - 1;
    for (int n = 0; n <= last; n++) {
      if (1 - alive[n] >= p) {
        return n;
      }
    }
    return last + (long) Math.ceil(Math.log((1 - p) / alive[last]) / Math.log(ratio));
  }

  private double beyond(long n) {
    int last = alive.length - 1;
    return n <= last
        ? alive[(int) Math.max(0, n)]
        : alive[last] * Math.pow(ratio, (double) (n - last));
  }
}
