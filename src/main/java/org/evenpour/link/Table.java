package org.evenpour.link;

import java.util.Arrays;
import java.util.BitSet;
import org.evenpour.column.DoubleColumn;

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
  // Turns that lack a mold and levels that lack a turn correct each other, sweep by sweep.
  private static final int SWEEPS = 3;

  /** A setting that is written down in fewer turns than this part of them holds until the next. */
  static final double SPARSE = 0.5;

  /**
   * Where each pour of some turns belongs, by turn and mold; the same for every column.
   *
   * @param grid of the wheel
   * @param from first turn index
   * @param turns how many turns
   * @param out pours that are left out
   * @param level which level its mold has then: one for each mold and stretch
   * @param side its ladle side
   * @param levels how many levels
   */
  @SuppressWarnings("ArrayRecordComponent") // made once, handed on, never compared
  record Layout(
      TurnGrid grid, int from, int turns, BitSet out, int[] level, int[] side, int levels) {

    /**
     * From a turn to the newest one.
     *
     * @param stretch of its mold's life that a pour belongs to: they begin at 0 and never fall
     */
    static Layout of(TurnGrid grid, int from, BitSet out, int[] stretch) {
      int m = grid.molds();
      int turns = grid.turns() - from;
      int stretches = 1;
      for (int i = Math.max(0, stretch.length - m); i < stretch.length; i++) {
        stretches = Math.max(stretches, stretch[i] + 1);
      }
      int[] level = new int[turns * m];
      int[] side = new int[turns * m];
      for (int t = 0; t < turns; t++) {
        for (int mold = 0; mold < m; mold++) {
          int i = t * m + mold;
          level[i] = mold * stretches + stretch[i];
          side[i] = grid.side(from + t, mold);
        }
      }
      return new Layout(grid, from, turns, out, level, side, m * stretches);
    }

    private int molds() {
      return grid.molds();
    }
  }

  /**
   * @param column its values
   * @param lag turns before the pour that are looked up
   */
  static Table of(Layout layout, DoubleColumn column, int lag) {
    return cut(layout, raw(layout, column, lag));
  }

  /**
   * What is carried over from a mold's earlier pours beside what the pour itself is given: {@code c
   * − x}, where {@code c = kept·c + (1 − kept)·x} runs from pour to pour of a mold.
   *
   * @param kept part that stays from one pour to the next, below 1
   */
  static Table carried(Layout layout, DoubleColumn column, int lag, double kept) {
    double[] x = raw(layout, column, lag);
    int m = layout.molds();
    for (int mold = 0; mold < m; mold++) {
      // start-up and signals are still in: what was set then stayed in the mold all the same.
      double level = Double.NaN;
      for (int i = mold; i < x.length; i += m) {
        if (!Double.isNaN(x[i])) {
          level = Double.isNaN(level) ? x[i] : kept * level + (1 - kept) * x[i];
          x[i] = level - x[i];
        }
      }
    }
    return cut(layout, x);
  }

  private static double[] raw(Layout layout, DoubleColumn column, int lag) {
    int m = layout.molds();
    int turns = layout.turns();
    double[] raw = new double[turns * m];
    int known = 0;
    for (int t = 0; t < turns; t++) {
      boolean any = false;
      for (int mold = 0; mold < m; mold++) {
        double v = layout.grid().value(column, layout.from() + t - lag, mold);
        raw[t * m + mold] = v;
        any |= !Double.isNaN(v);
      }
      known += any ? 1 : 0;
    }
    if (known < SPARSE * turns) {
      // From mold to mold, then turn to turn: what is written down once is one for the wheel.
      hold(raw);
    }
    return raw;
  }

  private static void hold(double[] raw) {
    double last = Double.NaN;
    for (int i = 0; i < raw.length; i++) {
      last = Double.isNaN(raw[i]) ? last : raw[i];
      raw[i] = last;
    }
  }

  private static Table cut(Layout layout, double[] raw) {
    int m = layout.molds();
    int turns = layout.turns();
    int[] side = layout.side();
    int[] level = layout.level();
    for (int i = layout.out().nextSetBit(0); i >= 0; i = layout.out().nextSetBit(i + 1)) {
      raw[i] = Double.NaN;
    }
    int sides = Math.max(1, layout.grid().record().sides().size());
    double[] cells = raw.clone();
    double[] levels = new double[layout.levels()];
    double[] sum = new double[Math.max(sides, levels.length)];
    int[] count = new int[sum.length];
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      for (int begin = 0; begin < cells.length; begin += m) {
        Arrays.fill(sum, 0, sides, 0);
        Arrays.fill(count, 0, sides, 0);
        for (int i = begin; i < begin + m; i++) {
          if (!Double.isNaN(cells[i])) {
            sum[side[i]] += cells[i];
            count[side[i]]++;
          }
        }
        for (int i = begin; i < begin + m; i++) {
          int s = side[i];
          // A pour alone is its own mean and says nothing.
          cells[i] = count[s] < 2 ? Double.NaN : cells[i] - sum[s] / count[s];
        }
      }
      Arrays.fill(sum, 0);
      Arrays.fill(count, 0);
      for (int i = 0; i < cells.length; i++) {
        if (!Double.isNaN(cells[i])) {
          sum[level[i]] += cells[i];
          count[level[i]]++;
        }
      }
      for (int at = 0; at < levels.length; at++) {
        sum[at] = count[at] == 0 ? 0 : sum[at] / count[at];
        levels[at] += sum[at];
      }
      for (int i = 0; i < cells.length; i++) {
        cells[i] -= sum[level[i]];
      }
    }
    double[] sideSeries = new double[turns];
    double[] wheelSeries = new double[turns];
    double[] total = new double[2];
    int[] n = new int[2];
    for (int t = 0; t < turns; t++) {
      Arrays.fill(total, 0);
      Arrays.fill(n, 0);
      for (int i = t * m; i < (t + 1) * m; i++) {
        if (!Double.isNaN(raw[i])) {
          int s = Math.min(1, side[i]);
          // Without its level: a turn that lacks a heavy mold is no lighter for it.
          total[s] += raw[i] - levels[level[i]];
          n[s]++;
        }
      }
      sideSeries[t] = n[0] < 2 || n[1] < 2 ? Double.NaN : total[0] / n[0] - total[1] / n[1];
      // One mold alone is the wheel; else one of several says little of the others.
      boolean isTooFew = n[0] + n[1] < Math.min(2, m);
      wheelSeries[t] = isTooFew ? Double.NaN : (total[0] + total[1]) / (n[0] + n[1]);
    }
    return new Table(cells, sideSeries, wheelSeries);
  }
}
