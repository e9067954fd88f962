package org.evenpour.link;

import java.util.Arrays;
import org.evenpour.casting.DoubleColumn;

/**
 * One column over some turns of a wheel, cut into what molds, ladle sides and turns each give.
 *
 * <p>The level of a mold is taken anew after each of its signals, and so what an unnoticed end of a
 * signal leaves behind is no effect of anything.
 *
 * @param molds by turn and mold: less the mean of turn and side, less the mold's level; NaN =
 *     missing or left out
 * @param sides by turn: the first ladle side less the second, molds' levels taken out
 * @param wheel by turn: the mean over the molds, their levels taken out
 */
@SuppressWarnings("ArrayRecordComponent") // lives within one estimate
record Table(double[] molds, double[] sides, double[] wheel) {
  private static final int SWEEPS = 3;

  /** A setting that is written down in fewer turns than this part of them holds until the next. */
  static final double SPARSE = 0.5;

  /**
   * @param grid of the wheel
   * @param column its values
   * @param lag turns before the pour that are looked up
   * @param from first turn index
   * @param to turn index after the last
   * @param left which pours of these turns to leave out
   */
  static Table of(TurnGrid grid, DoubleColumn column, int lag, int from, int to, Left left) {
    return cut(grid, raw(grid, column, lag, from, to), from, to - from, left);
  }

  /**
   * What is carried over from a mold's earlier pours beside what the pour itself is given: {@code c
   * − x}, where {@code c = kept·c + (1 − kept)·x} runs from pour to pour of a mold.
   *
   * @param kept part that stays from one pour to the next, below 1
   */
  static Table carried(
      TurnGrid grid, DoubleColumn column, int lag, int from, int to, Left left, double kept) {
    double[] x = raw(grid, column, lag, from, to);
    int m = grid.molds();
    for (int mold = 0; mold < m; mold++) {
      double level = Double.NaN;
      for (int i = mold; i < x.length; i += m) {
        if (!Double.isNaN(x[i])) {
          level = Double.isNaN(level) ? x[i] : kept * level + (1 - kept) * x[i];
          x[i] = level - x[i];
        }
      }
    }
    return cut(grid, x, from, to - from, left);
  }

  private static double[] raw(TurnGrid grid, DoubleColumn column, int lag, int from, int to) {
    int m = grid.molds();
    int turns = to - from;
    double[] raw = new double[turns * m];
    int known = 0;
    for (int t = 0; t < turns; t++) {
      boolean any = false;
      for (int mold = 0; mold < m; mold++) {
        double v = grid.value(column, from + t - lag, mold);
        raw[t * m + mold] = v;
        any |= !Double.isNaN(v);
      }
      known += any ? 1 : 0;
    }
    if (known < SPARSE * turns) {
      hold(raw);
    }
    return raw;
  }

  /** Which pours are left out, and which stretch of its mold's life each belongs to. */
  interface Left {
    boolean out(int turn, int mold);

    int stretch(int turn, int mold);
  }

  private static void hold(double[] raw) {
    double last = Double.NaN;
    for (int i = 0; i < raw.length; i++) {
      last = Double.isNaN(raw[i]) ? last : raw[i];
      raw[i] = last;
    }
  }

  private static Table cut(TurnGrid grid, double[] raw, int from, int turns, Left left) {
    int m = grid.molds();
    for (int i = 0; i < raw.length; i++) {
      if (left.out(from + i / m, i % m)) {
        raw[i] = Double.NaN;
      }
    }
    int stretches = 1;
    for (int mold = 0; mold < m; mold++) {
      stretches = Math.max(stretches, left.stretch(from + turns - 1, mold) + 1);
    }
    int sides = Math.max(1, grid.record().sides().size());
    double[] cells = raw.clone();
    double[] levels = new double[m * stretches];
    double[] sum = new double[Math.max(sides, levels.length)];
    int[] count = new int[sum.length];
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      for (int t = 0; t < turns; t++) {
        Arrays.fill(sum, 0, sides, 0);
        Arrays.fill(count, 0, sides, 0);
        for (int mold = 0; mold < m; mold++) {
          double v = cells[t * m + mold];
          if (!Double.isNaN(v)) {
            int s = grid.side(from + t, mold);
            sum[s] += v;
            count[s]++;
          }
        }
        for (int mold = 0; mold < m; mold++) {
          int s = grid.side(from + t, mold);
          cells[t * m + mold] = count[s] < 2 ? Double.NaN : cells[t * m + mold] - sum[s] / count[s];
        }
      }
      Arrays.fill(sum, 0);
      Arrays.fill(count, 0);
      for (int i = 0; i < cells.length; i++) {
        if (!Double.isNaN(cells[i])) {
          int at = i % m * stretches + left.stretch(from + i / m, i % m);
          sum[at] += cells[i];
          count[at]++;
        }
      }
      for (int i = 0; i < cells.length; i++) {
        int at = i % m * stretches + left.stretch(from + i / m, i % m);
        cells[i] -= count[at] == 0 ? 0 : sum[at] / count[at];
      }
      for (int at = 0; at < levels.length; at++) {
        levels[at] += count[at] == 0 ? 0 : sum[at] / count[at];
      }
    }
    double[] sideSeries = new double[turns];
    double[] wheelSeries = new double[turns];
    for (int t = 0; t < turns; t++) {
      double[] total = new double[2];
      int[] n = new int[2];
      for (int mold = 0; mold < m; mold++) {
        double v = raw[t * m + mold];
        if (!Double.isNaN(v)) {
          int s = Math.min(1, grid.side(from + t, mold));
          total[s] += v - levels[mold * stretches + left.stretch(from + t, mold)];
          n[s]++;
        }
      }
      sideSeries[t] = n[0] < 2 || n[1] < 2 ? Double.NaN : total[0] / n[0] - total[1] / n[1];
      wheelSeries[t] = n[0] + n[1] < 2 ? Double.NaN : (total[0] + total[1]) / (n[0] + n[1]);
    }
    return new Table(cells, sideSeries, wheelSeries);
  }
}
