package org.evenpour.stats;

public final class Autocorrelation {
  private Autocorrelation() {}

  public static double lag1(double[] x) {
    double s = 0;
    int n = 0;
    for (double v : x)
      if (!Double.isNaN(v)) {
        s += v;
        n++;
      }
    double m = s / n, a = 0, b = 0;
    for (int i = 0; i < x.length; i++) {
      double d = x[i] - m;
      if (!Double.isNaN(d)) {
        b += d * d;
        if (i > 0 && !Double.isNaN(x[i - 1])) a += d * (x[i - 1] - m);
      }
    }
    return a / b;
  }
}
