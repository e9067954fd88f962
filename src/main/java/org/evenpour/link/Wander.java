package org.evenpour.link;

import org.evenpour.stats.SeriesRegression;
import org.evenpour.stats.StudentT;

/**
 * How a setting wanders from turn to turn when nobody touches it, and whether it stepped out of
 * that: a step is no wandering, however slowly the setting wanders, for it comes in one turn.
 *
 * @param phi coefficient of its autoregression
 * @param noise share of its variance that is white
 * @param sd of its wandering
 */
record Wander(double phi, double noise, double sd) {
  /** Degrees of freedom that allow for jumps which are its habit: a choice. */
  private static final double FREEDOM = 20;

  private static final int LEAST = 30;

  /**
   * A step or a ramp that was found.
   *
   * @param at index in the series
   * @param ratio of its size to its standard error, signed
   * @param p probability of one as clear by wandering, at any of the places that were looked at
   */
  record Step(int at, double ratio, double p) {
    static final Step NONE = new Step(-1, 0, 1);
  }

  /**
   * Learns from some series of the setting, such as several molds'.
   *
   * @param series values turn by turn; NaN = missing
   * @return null where it never moves or is hardly known
   */
  static @org.jspecify.annotations.Nullable Wander of(double[][] series) {
    int n = 0;
    for (double[] one : series) {
      for (double v : one) {
        n += Double.isNaN(v) ? 0 : 1;
      }
    }
    if (n < LEAST) {
      return null;
    }
    double[] y = new double[n];
    int[] time = new int[n];
    int[] stretch = new int[n];
    double scale = 0;
    double squares = 0;
    int at = 0;
    for (int k = 0; k < series.length; k++) {
      int begin = at;
      double sum = 0;
      for (int t = 0; t < series[k].length; t++) {
        if (!Double.isNaN(series[k][t])) {
          y[at] = series[k][t];
          time[at] = t;
          stretch[at] = k;
          scale = Math.max(scale, Math.abs(y[at]));
          sum += y[at++];
        }
      }
      double mean = at == begin ? 0 : sum / (at - begin);
      for (int i = begin; i < at; i++) {
        y[i] -= mean;
        squares += y[i] * y[i];
      }
    }
    if (squares <= 1e-18 * scale * scale * n) {
      return null;
    }
    SeriesRegression fit =
        SeriesRegression.of(new double[][] {SeriesRegression.between(n, 0, n)}, y, time, stretch);
    return new Wander(fit.phi(), fit.noise(), fit.sd());
  }

  /**
   * The clearest step of a series that begins at one of some places; where asked for, the clearest
   * ramp as well. Generalised least squares with the wandering known.
   *
   * @param x values turn by turn; NaN = missing
   * @param from first index at which it may begin
   * @param to index after the last
   * @param ramps whether it may grow instead of stepping
   */
  Step clearest(double[] x, int from, int to, boolean ramps) {
    int n = 0;
    int[] time = new int[x.length];
    double[] known = new double[x.length];
    for (int t = 0; t < x.length; t++) {
      if (!Double.isNaN(x[t])) {
        time[n] = t;
        known[n++] = x[t];
      }
    }
    if (n < 4) {
      return Step.NONE;
    }
    double[] values = java.util.Arrays.copyOf(known, n);
    SeriesRegression.Whitening whitening =
        new SeriesRegression.Whitening(java.util.Arrays.copyOf(time, n), new int[n], phi, noise);
    double[] level = whitening.of(SeriesRegression.between(n, 0, n));
    double[] white = whitening.of(values);
    double ll = dot(level, level);
    double lx = dot(level, white);
    Step best = Step.NONE;
    int looks = 0;
    for (int ramp = 0; ramp < (ramps ? 2 : 1); ramp++) {
      int last = -1;
      for (int begin = Math.max(1, from); begin < to; begin++) {
        int first = 0;
        while (first < n && time[first] < begin) {
          first++;
        }
        if (first == 0 || first == n || first == last) {
          continue;
        }
        last = first;
        double[] shape = SeriesRegression.between(n, first, n);
        for (int i = first; ramp == 1 && i < n; i++) {
          shape[i] = time[i] - begin + 1;
        }
        double[] s = whitening.of(shape);
        double ls = dot(level, s);
        double ss = dot(s, s) - ls * ls / ll;
        looks++;
        double ratio = ss <= 0 ? 0 : (dot(s, white) - ls * lx / ll) / Math.sqrt(ss) / sd;
        if (Math.abs(ratio) > Math.abs(best.ratio())) {
          best = new Step(begin, ratio, 1);
        }
      }
    }
    double p = StudentT.twoSided(Math.abs(best.ratio()), FREEDOM) * Math.max(1, looks);
    return new Step(best.at(), best.ratio(), Math.min(1, p));
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
