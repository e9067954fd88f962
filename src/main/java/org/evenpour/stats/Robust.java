package org.evenpour.stats;

import java.util.Arrays;

public final class Robust {
  private Robust() {}

  public static double median(double[] x) {
    double[] y = x.clone();
    Arrays.sort(y);
    int n = y.length;
    return n == 0 ? Double.NaN : n % 2 == 1 ? y[n / 2] : 0.5 * (y[n / 2 - 1] + y[n / 2]);
  }

  public static double mad(double[] x) {
    double m = median(x);
    double[] y = new double[x.length];
    for (int i = 0; i < y.length; i++) y[i] = Math.abs(x[i] - m);
    return 1.482602218505602 * median(y);
  }
}
