package org.evenpour.stats;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Many questions asked at once. */
public final class FalseDiscovery {
  private FalseDiscovery() {}

  /**
   * The q-value of each p-value: the smallest false discovery rate at which it counts, min over j ≥
   * i of m·p₍ⱼ₎/j, at most 1 (Benjamini and Hochberg 1995). In the order given; a NaN is no
   * question asked and stays NaN. O(m log m).
   */
  public static double[] qValues(double[] p) {
    int[] order = order(p);
    double[] q = new double[p.length];
    Arrays.fill(q, Double.NaN);
    double least = 1;
    int m = order.length;
    // From the largest down: a smaller p-value never gets the larger q.
    for (int j = m; j > 0; j--) {
      least = Math.min(least, p[order[j - 1]] * m / j);
      q[order[j - 1]] = least;
    }
    return q;
  }

  /**
   * Each p-value corrected for all that were asked, so that the chance of one or more below a level
   * by chance is no more than that level, however the questions depend on each other: max over j ≤
   * i of (m − j + 1)·p₍ⱼ₎, at most 1 (Holm 1979). In the order given; a NaN is no question asked
   * and stays NaN. O(m log m).
   */
  public static double[] familyWise(double[] p) {
    int[] order = order(p);
    double[] corrected = new double[p.length];
    Arrays.fill(corrected, Double.NaN);
    double most = 0;
    int m = order.length;
    for (int j = 0; j < m; j++) {
      // Never falls again: a larger p-value is not proven where a smaller one was not.
      most = Math.max(most, Math.min(1, (m - j) * p[order[j]]));
      corrected[order[j]] = most;
    }
    return corrected;
  }

  /** The indices of those asked, smallest first. */
  private static int[] order(double[] p) {
    return IntStream.range(0, p.length)
        .filter(i -> !Double.isNaN(p[i]))
        .boxed()
        .sorted(Comparator.comparingDouble(i -> p[i]))
        .mapToInt(Integer::intValue)
        .toArray();
  }
}
