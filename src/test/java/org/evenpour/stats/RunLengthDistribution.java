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
final class RunLengthDistribution {
  private static final int STEADY = 20;
  private static final int LONGEST = 200_000;

  private final double[] alive;
  private final double ratio;

  private RunLengthDistribution(double[] alive, double ratio) {
    this.alive = alive;
    this.ratio = ratio;
  }

  /** From P(T &gt; 1), P(T &gt; 2), … as they are asked for, until their ratio stands still. */
  static RunLengthDistribution of(DoubleSupplier next) {
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
      steady = same ? steady + 1 : 0;
      last = ratio;
      n++;
    }
    return new RunLengthDistribution(Arrays.copyOf(alive, n + 1), Math.max(0, last));
  }

  /** The average run length. */
  double mean() {
    int last = alive.length - 1;
    double sum = alive[last] / (1 - ratio);
    for (int n = last - 1; n >= 0; n--) {
      sum += alive[n];
    }
    return sum;
  }

  double sd() {
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
}
