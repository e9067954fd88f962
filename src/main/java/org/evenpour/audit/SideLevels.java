package org.evenpour.audit;

import java.util.Arrays;
import org.evenpour.stats.Robust;

/**
 * How far each turn of one ladle side was off, whichever molds were there.
 *
 * <p>Model: deviation = level(turn) + offset(mold) + pour, offsets with mean 0 over the side's
 * molds. Offsets by median polish (Tukey 1977); a level is then the mean of the deviations less
 * their offsets, without those farther than 4 robust sigma from their median. A turn with fewer
 * than three molds has none.
 */
final class SideLevels {
  private static final int LEAST_MOLDS = 3;
  private static final int ROUNDS = 3;
  private static final double FAR = 4;

  private final int[] turn;
  private final int[] mold;
  private final double[] deviation;
  private final int turns;
  private final double[] offset;

  private SideLevels(int[] turn, int[] mold, double[] deviation, int turns, int molds) {
    this.turn = turn;
    this.mold = mold;
    this.deviation = deviation;
    this.turns = turns;
    offset = new double[molds];
  }

  /**
   * The level of each turn; NaN where it has too few molds.
   *
   * @param turn index of each anode's turn, never falling
   * @param mold index of each anode's mold
   * @param deviation of each anode, none missing
   */
  static double[] of(int[] turn, int[] mold, double[] deviation, int turns, int molds) {
    SideLevels levels = new SideLevels(turn, mold, deviation, turns, molds);
    for (int round = 0; round < ROUNDS; round++) {
      levels.polish(levels.levels(Double.POSITIVE_INFINITY));
    }
    return levels.levels(FAR * levels.sigma());
  }

  private void polish(double[] level) {
    int[] count = new int[offset.length];
    for (int m : mold) {
      count[m]++;
    }
    double[][] of = new double[offset.length][];
    Arrays.setAll(of, m -> new double[count[m]]);
    Arrays.fill(count, 0);
    for (int i = 0; i < mold.length; i++) {
      if (!Double.isNaN(level[turn[i]])) {
        of[mold[i]][count[mold[i]]++] = deviation[i] - level[turn[i]];
      }
    }
    double sum = 0;
    int known = 0;
    for (int m = 0; m < offset.length; m++) {
      offset[m] = count[m] == 0 ? 0 : Robust.median(Arrays.copyOf(of[m], count[m]));
      // With mean 0 over the molds, for what all of them have is the level.
      sum += offset[m];
      known += count[m] == 0 ? 0 : 1;
    }
    for (int m = 0; m < offset.length; m++) {
      offset[m] -= count[m] == 0 ? 0 : sum / known;
    }
  }

  private double sigma() {
    double[] level = levels(Double.POSITIVE_INFINITY);
    double[] residual = new double[deviation.length];
    int n = 0;
    for (int i = 0; i < deviation.length; i++) {
      if (!Double.isNaN(level[turn[i]])) {
        residual[n++] = deviation[i] - offset[mold[i]] - level[turn[i]];
      }
    }
    return Robust.mad(Arrays.copyOf(residual, n));
  }

  /** Medians where {@code far} is infinite, else means of what is no farther from them. */
  private double[] levels(double far) {
    double[] level = new double[turns];
    Arrays.fill(level, Double.NaN);
    int from = 0;
    while (from < turn.length) {
      int to = from;
      while (to < turn.length && turn[to] == turn[from]) {
        to++;
      }
      double[] some = new double[to - from];
      for (int i = from; i < to; i++) {
        some[i - from] = deviation[i] - offset[mold[i]];
      }
      if (some.length >= LEAST_MOLDS) {
        level[turn[from]] = level(some, far);
      }
      from = to;
    }
    return level;
  }

  private static double level(double[] some, double far) {
    double median = Robust.median(some);
    // Medians while offsets are not known, for then there is no sigma to call a pour far.
    if (far == Double.POSITIVE_INFINITY) {
      return median;
    }
    double sum = 0;
    int near = 0;
    for (double x : some) {
      if (Math.abs(x - median) <= far) {
        sum += x;
        near++;
      }
    }
    return near == 0 ? median : sum / near;
  }
}
