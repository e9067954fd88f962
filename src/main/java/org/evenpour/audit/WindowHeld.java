package org.evenpour.audit;

import java.util.Arrays;
import java.util.BitSet;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.findings.EffectInFull.Held;
import org.evenpour.findings.EffectInFull.Window;
import org.evenpour.stats.ExactShares;

/**
 * What the record itself says of a window of a setting: how many anodes cast within it, and how
 * many cast beyond, lay outside tolerance. A line through the mean promises what molds that stand
 * off do not keep.
 */
final class WindowHeld {
  /**
   * A window is one where fewer lay outside within it than beyond, one-sided, by Fisher's exact
   * test, for as many windows as the audit asks of (Bonferroni). 1 % and not 5, for anodes one
   * after another resemble each other; a choice.
   */
  private static final double BEYOND_CHANCE = 0.01;

  private static final int MOST_DECIMALS = 6;
  private static final double NEAR = 1e-9;

  private WindowHeld() {}

  /**
   * A window in the setting's own digits, drawn in rather than widened, with what the record says.
   *
   * @param low end, as computed
   * @param high end
   * @param lag turns after which the setting acts, in the same mold
   * @param recorded values of the setting
   * @param asked how many windows the audit asks of
   */
  static Window of(
      WheelRecord record,
      DoubleColumn values,
      Specification limits,
      DoubleColumn numbers,
      double low,
      double high,
      int lag,
      double[] recorded,
      double asked) {
    double scale = Math.pow(10, decimals(recorded));
    double from = Math.ceil(low * scale - NEAR) / scale;
    double to = Math.floor(high * scale + NEAR) / scale;
    if (from > to) {
      return new Window(null, null, null);
    }
    Lagged lagged = new Lagged(record.molds().size(), lag);
    BitSet molds = new BitSet();
    long inside = 0;
    long insideOut = 0;
    long beyond = 0;
    long beyondOut = 0;
    for (int row = 0; row < values.size(); row++) {
      int mold = record.mold().get(row);
      double x = lagged.at(mold, record.turn().get(row), numbers.get(row));
      double value = values.get(row);
      if (Double.isNaN(value) || Double.isNaN(x)) {
        continue;
      }
      boolean isOut = limits.excludes(value);
      if (x >= from && x <= to) {
        inside++;
        if (isOut) {
          insideOut++;
          molds.set(mold);
        }
      } else {
        beyond++;
        beyondOut += isOut ? 1 : 0;
      }
    }
    double chance = ExactShares.fewer(insideOut, inside, beyondOut, beyond);
    boolean isClear = beyond > 0 && chance * Math.max(1, asked) < BEYOND_CHANCE;
    return new Window(
        from, to, new Held(inside, insideOut, molds.cardinality(), beyond, beyondOut, isClear));
  }

  /**
   * What a setting was at a mold some turns ago: as many turns are kept as it lags, however long
   * the record is.
   */
  private static final class Lagged {
    private final int lag;
    private final int[][] turns;
    private final double[][] values;
    private int turn;
    private int now;
    private int then;

    Lagged(int molds, int lag) {
      this.lag = lag;
      turns = new int[molds][lag + 1];
      values = new double[molds][lag + 1];
      for (int[] ofMold : turns) {
        Arrays.fill(ofMold, Integer.MIN_VALUE); // a turn that none has
      }
      then = Math.floorMod(-lag, lag + 1); // of turn 0, which the first may be
    }

    /** Keeps what it is now; gives what it was then, NaN where the mold did not cast. */
    double at(int mold, int itsTurn, double value) {
      if (itsTurn != turn) {
        turn = itsTurn;
        now = Math.floorMod(turn, lag + 1);
        then = Math.floorMod(turn - lag, lag + 1);
      }
      turns[mold][now] = turn;
      values[mold][now] = value;
      return turns[mold][then] == turn - lag ? values[mold][then] : Double.NaN;
    }
  }

  /** In how many decimals a setting is written down. */
  static int decimals(double[] recorded) {
    int decimals = 0;
    for (double value : recorded) {
      while (decimals < MOST_DECIMALS && !isWhole(value * Math.pow(10, decimals))) {
        decimals++;
      }
    }
    return decimals;
  }

  private static boolean isWhole(double x) {
    return Math.abs(x - Math.rint(x)) <= 1e-6;
  }
}
