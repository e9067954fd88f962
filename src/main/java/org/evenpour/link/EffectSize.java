package org.evenpour.link;

import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.Setting;

/**
 * What one unit of a setting does to a characteristic, from the plant's own history outside its
 * signals.
 *
 * <p>Two estimates are made. Within turns: characteristic and setting less the mean of their turn
 * and ladle side, less the mean of their mold, one on the other by least squares. Between turns:
 * the turns' means, both made free of first-order autocorrelation (Cochrane and Orcutt 1949). The
 * standard error of the first allows for autocorrelation along each mold's series by the factor
 * {@code (1 + φ₁φ₂)/(1 − φ₁φ₂)} on the variance (Bartlett 1935).
 *
 * @param perUnit effect of one unit
 * @param error its standard error; NaN where the record cannot tell
 */
public record EffectSize(double perUnit, double error) {

  /** Both estimates of one effect. */
  public record Both(EffectSize within, EffectSize between) {
    /** The one with the smaller error. */
    public EffectSize morePrecise() {
      if (!within.isKnown()) {
        return between;
      }
      return between.isKnown() && between.error < within.error ? between : within;
    }

    /**
     * The one that rests on the same kind of variation as a signal: turns against turns for the
     * wheel, molds within a turn for all else. What a sensor adds to every reading weakens the
     * other one.
     */
    EffectSize matching(boolean wholeWheel) {
      if (wholeWheel) {
        return between.isKnown() && (between.isBeyondChance() || !within.isKnown())
            ? between
            : within;
      }
      return within.isKnown() ? within : between;
    }
  }

  /** Whether the effect is beyond chance. */
  boolean isBeyondChance() {
    return Math.abs(perUnit) > BEYOND_CHANCE * error;
  }

  /** The record cannot tell: the setting never moved. */
  static final EffectSize UNKNOWN = new EffectSize(Double.NaN, Double.NaN);

  /** A longer history adds little and costs time. */
  static final int LONGEST_HISTORY_TURNS = 5_000;

  /** Standard errors beyond which an effect counts as proven. */
  private static final double BEYOND_CHANCE = 3;

  private static final int LEAST_PAIRS = 50;
  private static final int LEAST_TURNS = 30;

  /** Whether the record can tell. */
  public boolean isKnown() {
    return error > 0;
  }

  /**
   * Estimates the effect.
   *
   * @param grid of the wheel
   * @param characteristic its values
   * @param setting a numeric one
   * @param signals the cells and turns to leave out
   */
  public static Both of(
      TurnGrid grid, DoubleColumn characteristic, Setting setting, SignalMask signals) {
    DoubleColumn numbers = setting.numbers();
    if (numbers == null) {
      return new Both(UNKNOWN, UNKNOWN);
    }
    int lag = setting.profile().lagTurns();
    Centered y = Centered.of(grid, characteristic, 0, signals);
    Centered x = Centered.of(grid, numbers, lag, signals);
    return new Both(within(x, y, grid), between(x.turnMeans, y.turnMeans, signals));
  }

  private static EffectSize within(Centered x, Centered y, TurnGrid grid) {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    double scale = 0;
    long n = 0;
    double xx1 = 0;
    double yy1 = 0;
    int molds = grid.molds();
    for (int i = 0; i < x.cells.length; i++) {
      double a = x.cells[i];
      double b = y.cells[i];
      if (Double.isNaN(a) || Double.isNaN(b)) {
        continue;
      }
      xx += a * a;
      xy += a * b;
      yy += b * b;
      scale = Math.max(scale, Math.abs(x.turnMeans[i / molds]));
      n++;
      if (i >= molds && !Double.isNaN(x.cells[i - molds]) && !Double.isNaN(y.cells[i - molds])) {
        xx1 += a * x.cells[i - molds];
        yy1 += b * y.cells[i - molds];
      }
    }
    // What is left of a setting that is one for the whole wheel is rounding, not variation.
    if (n < LEAST_PAIRS || xx / n <= 1e-20 * scale * scale || xx == 0) {
      return UNKNOWN;
    }
    double slope = xy / xx;
    double residual = Math.max(0, yy - slope * xy) / (n - 2);
    double product = Math.min(0.9, Math.max(0, xx1 / xx) * Math.max(0, yy == 0 ? 0 : yy1 / yy));
    return new EffectSize(
        slope, Math.sqrt(residual / xx * (1 + product) / (1 - product)) + Double.MIN_NORMAL);
  }

  private static EffectSize between(double[] x, double[] y, SignalMask signals) {
    double phi = 0;
    double slope = 0;
    double error = Double.NaN;
    for (int round = 0; round < 3; round++) {
      double sx = 0;
      double sy = 0;
      int n = 0;
      double[] u = new double[x.length];
      double[] v = new double[x.length];
      for (int t = 1; t < x.length; t++) {
        double a = x[t] - phi * x[t - 1];
        double b = y[t] - phi * y[t - 1];
        if (!Double.isNaN(a) && !Double.isNaN(b) && !signals.turn(t) && !signals.turn(t - 1)) {
          u[n] = a;
          v[n] = b;
          sx += a;
          sy += b;
          n++;
        }
      }
      if (n < LEAST_TURNS) {
        return UNKNOWN;
      }
      double xx = 0;
      double xy = 0;
      double yy = 0;
      for (int i = 0; i < n; i++) {
        xx += (u[i] - sx / n) * (u[i] - sx / n);
        xy += (u[i] - sx / n) * (v[i] - sy / n);
        yy += (v[i] - sy / n) * (v[i] - sy / n);
      }
      if (xx <= 1e-20 * n * (sx / n) * (sx / n) || xx == 0) {
        return UNKNOWN;
      }
      slope = xy / xx;
      error = Math.sqrt(Math.max(0, yy - slope * xy) / (n - 2) / xx) + Double.MIN_NORMAL;
      phi = residualCorrelation(x, y, slope, signals);
    }
    return new EffectSize(slope, error);
  }

  private static double residualCorrelation(
      double[] x, double[] y, double slope, SignalMask signals) {
    double mean = 0;
    int n = 0;
    for (int t = 0; t < x.length; t++) {
      double r = y[t] - slope * x[t];
      if (!Double.isNaN(r) && !signals.turn(t)) {
        mean += r;
        n++;
      }
    }
    mean /= Math.max(1, n);
    double products = 0;
    double squares = 0;
    for (int t = 1; t < x.length; t++) {
      double a = y[t - 1] - slope * x[t - 1] - mean;
      double b = y[t] - slope * x[t] - mean;
      if (!Double.isNaN(a) && !Double.isNaN(b) && !signals.turn(t) && !signals.turn(t - 1)) {
        products += a * b;
        squares += 0.5 * (a * a + b * b);
      }
    }
    double phi = squares == 0 ? 0 : products / squares;
    return Math.max(0, Math.min(0.97, phi + (1 + 3 * phi) / Math.max(8, n)));
  }

  /** A column less the means of its turn and side, and of its mold; and the turns' means. */
  @SuppressWarnings("ArrayRecordComponent") // lives within one estimate
  private record Centered(double[] cells, double[] turnMeans) {
    static Centered of(TurnGrid grid, DoubleColumn column, int lag, SignalMask signals) {
      int turns = Math.min(grid.turns(), LONGEST_HISTORY_TURNS);
      int molds = grid.molds();
      int sides = Math.max(1, grid.record().sides().size());
      double[] cells = new double[turns * molds];
      double[] means = new double[turns];
      double[] sum = new double[sides];
      int[] count = new int[sides];
      double[] moldSum = new double[molds];
      int[] moldCount = new int[molds];
      for (int t = 0; t < turns; t++) {
        java.util.Arrays.fill(sum, 0);
        java.util.Arrays.fill(count, 0);
        double all = 0;
        int n = 0;
        for (int m = 0; m < molds; m++) {
          double v = signals.cell(t, m) ? Double.NaN : grid.value(column, t - lag, m);
          cells[t * molds + m] = v;
          if (!Double.isNaN(v)) {
            int s = grid.side(t, m);
            sum[s] += v;
            count[s]++;
            all += v;
            n++;
          }
        }
        means[t] = n == 0 ? Double.NaN : all / n;
        for (int m = 0; m < molds; m++) {
          int s = grid.side(t, m);
          double v = cells[t * molds + m];
          double centered = count[s] < 2 ? Double.NaN : v - sum[s] / count[s];
          cells[t * molds + m] = centered;
          if (!Double.isNaN(centered)) {
            moldSum[m] += centered;
            moldCount[m]++;
          }
        }
      }
      for (int i = 0; i < cells.length; i++) {
        int m = i % molds;
        cells[i] -= moldCount[m] == 0 ? 0 : moldSum[m] / moldCount[m];
      }
      return new Centered(cells, means);
    }
  }
}
