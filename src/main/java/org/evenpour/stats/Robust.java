package org.evenpour.stats;

import java.util.Arrays;

/**
 * Center and spread that a few wild values don't move. NaN are left out; every function is NaN
 * where no value is left. O(n log n); O(n) where many values have few levels ({@link Levels}).
 */
public final class Robust {
  private static final int PARALLEL = 1 << 17;
  private static final int WORTH_COUNTING = 1 << 13;

  /** Φ⁻¹(3/4): median absolute deviation of standard normal values. */
  private static final double MAD_OF_NORMAL = 0.6744897501960817;

  /** Asymptotic value of the biweight scale on standard normal values. */
  private static final double BIWEIGHT_OF_NORMAL = biweightOfNormal();

  private Robust() {}

  public static double median(double[] x) {
    return medianOfSorted(ascending(x));
  }

  /** Median absolute deviation from the median / 0.6745, so that it estimates sigma. */
  public static double mad(double[] x) {
    double[] values = ascending(x);
    double median = medianOfSorted(values);
    return rawMad(values, median) / MAD_OF_NORMAL;
  }

  /**
   * Biweight scale (Mosteller and Tukey 1977; Lax 1985): √(n·Σ d²(1 − u²)⁴)/|Σ(1 − u²)(1 − 5u²)|
   * over |u| &lt; 1, d = x − median, u = d/(9·MAD), divided by its value on normal data so that it
   * estimates sigma. Values beyond 6 sigma have no weight. 0 where more than half of the values are
   * equal.
   */
  public static double biweightScale(double[] x) {
    double[] values = ascending(x);
    double median = medianOfSorted(values);
    double reach = 9 * rawMad(values, median);
    // More than half alike: no unit to weigh the others by.
    if (!(reach > 0)) {
      return reach;
    }
    double above = 0;
    double below = 0;
    for (double value : values) {
      double d = value - median;
      // In rest = 1 − u² the other factor, 1 − 5u², is 5·rest − 4.
      double rest = 1 - d / reach * (d / reach);
      if (rest > 0) {
        above += d * d * rest * rest * rest * rest;
        below += rest * (5 * rest - 4);
      }
    }
    return Math.sqrt(values.length * above) / Math.abs(below) / BIWEIGHT_OF_NORMAL;
  }

  private static double rawMad(double[] sorted, double median) {
    double[] deviations = new double[sorted.length];
    for (int i = 0; i < sorted.length; i++) {
      deviations[i] = Math.abs(sorted[i] - median);
    }
    sort(deviations);
    return medianOfSorted(deviations);
  }

  /** The values that are known, in ascending order; on all processors where there are many. */
  public static double[] ascending(double[] x) {
    double[] values = x.clone();
    sort(values);
    // NaN are last
    int n = values.length;
    while (n > 0 && Double.isNaN(values[n - 1])) {
      n--;
    }
    return n == values.length ? values : Arrays.copyOf(values, n);
  }

  private static void sort(double[] x) {
    if (x.length >= WORTH_COUNTING && Levels.sort(x)) {
      return;
    }
    if (x.length > PARALLEL) {
      Arrays.parallelSort(x);
    } else {
      Arrays.sort(x);
    }
  }

  private static double medianOfSorted(double[] x) {
    int n = x.length;
    if (n == 0) {
      return Double.NaN;
    }
    // Not half of a sum, which may overflow.
    return n % 2 == 1 ? x[n / 2] : x[n / 2 - 1] + 0.5 * (x[n / 2] - x[n / 2 - 1]);
  }

  private static double biweightOfNormal() {
    double reach = 9 * MAD_OF_NORMAL;
    GaussLegendre rule = GaussLegendre.on(0, reach, 80);
    double above =
        2
            * rule.integral(
                d -> d * d * Math.pow(1 - d * d / (reach * reach), 4) * Normal.density(d));
    double below =
        2
            * rule.integral(
                d -> {
                  double rest = 1 - d * d / (reach * reach);
                  return rest * (5 * rest - 4) * Normal.density(d);
                });
    return Math.sqrt(above) / below;
  }
}
