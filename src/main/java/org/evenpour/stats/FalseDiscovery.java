package org.evenpour.stats;

import java.util.Arrays;

public final class FalseDiscovery {
  private FalseDiscovery() {}

  public static double[] qValues(double[] p) {
    Integer[] o = new Integer[p.length];
    Arrays.setAll(o, i -> i);
    Arrays.sort(o, (a, b) -> Double.compare(p[b], p[a]));
    double[] q = new double[p.length];
    double min = 1;
    for (int k = 0; k < o.length; k++) {
      int rank = o.length - k;
      min = Math.min(min, p[o[k]] * o.length / rank);
      q[o[k]] = min;
    }
    return q;
  }
}
