package org.evenpour.audit;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.LimitProposal;
import org.evenpour.findings.SettingsWatched.Reason;
import org.evenpour.stats.Robust;
import org.jspecify.annotations.Nullable;

/**
 * A recorded setting over the newest turns, as the engine takes it in: one value for each anode.
 *
 * <p>A recorded figure stands for anything within its last digit: a fixed random part of that span
 * is added to each, so that rounded values scatter as what they stand for does.
 *
 * @param fromRow the first row of the newest turns
 * @param molds the values as they were recorded; null where the molds of a turn do not differ
 * @param shared what all molds of a turn, or of its ladle sides, have in common, each mold's own
 *     level taken out
 * @param bySide whether two ladle sides differ by more than the last digit in most turns
 * @param reason why it cannot be watched at all; null where it can
 */
@SuppressWarnings("ArrayRecordComponent") // made once, watched, dropped
record SettingSeries(
    Setting setting,
    int fromRow,
    double @Nullable [] molds,
    double[] shared,
    boolean bySide,
    @Nullable Reason reason) {

  /**
   * More than this part: a setting that is seldom recorded, that is held, that differs: choices.
   */
  private static final double HALF = 0.5;

  /**
   * Below this part neighbors in a turn differ so little that it is the time which makes them
   * differ; √½, where half of the variance is shared by neighbors: a choice.
   */
  private static final double SMOOTH = Math.sqrt(0.5);

  /** The first row of the newest turns, as many as limits are proposed from. */
  static int fromRow(TurnIndex turns) {
    int first = turns.turns() - LimitProposal.BASE_TURNS;
    int row = 0;
    while (row < turns.ofRow().length && turns.ofRow()[row] < first) {
      row++;
    }
    return row;
  }

  /**
   * @param fromRow as {@link #fromRow(TurnIndex)} gives it
   */
  static SettingSeries of(
      WheelRecord wheel, TurnIndex turns, int fromRow, Setting setting, DoubleColumn numbers) {
    double[] value = new double[wheel.rows() - fromRow];
    numbers.copy(fromRow, value.length, value);
    double step = step(value);
    boolean byMold = differ(wheel, turns, fromRow, value);
    double[] shared = value.clone();
    if (byMold) {
      // Before levels of turns: one that lacks some molds would else seem to have moved.
      takeLevels(wheel, fromRow, shared);
    }
    shareLevels(wheel, turns, fromRow, shared);
    boolean bySide = sidesDiffer(wheel, turns, fromRow, shared, step);
    Reason reason = null;
    if (!isOften(turns, fromRow, value, byMold)) {
      reason = Reason.SELDOM_RECORDED;
    } else if (isHeld(wheel, turns, fromRow, byMold ? value : shared)) {
      reason = Reason.HELD;
    }
    spreadOut(fromRow, value, step);
    spreadOut(fromRow, shared, step);
    return new SettingSeries(setting, fromRow, byMold ? value : null, shared, bySide, reason);
  }

  private static void spreadOut(int fromRow, double[] value, double step) {
    for (int i = 0; i < value.length; i++) {
      // By the row's own number: the same in every audit, and as the log grows.
      value[i] += step * (new SplittableRandom(fromRow + i).nextDouble() - 0.5);
    }
  }

  /** Takes each mold's own median out of its values. */
  private static void takeLevels(WheelRecord wheel, int fromRow, double[] value) {
    int molds = wheel.molds().size();
    int[] count = new int[molds];
    for (int i = 0; i < value.length; i++) {
      count[wheel.mold().get(fromRow + i)]++;
    }
    double[][] own = new double[molds][];
    for (int m = 0; m < molds; m++) {
      own[m] = new double[count[m]];
    }
    for (int i = value.length - 1; i >= 0; i--) {
      int mold = wheel.mold().get(fromRow + i);
      own[mold][--count[mold]] = value[i];
    }
    double[] median = new double[molds];
    Arrays.setAll(median, m -> Robust.median(own[m]));
    // Put back below, so that values keep their scale.
    double all = Robust.median(median);
    for (int i = 0; i < value.length; i++) {
      value[i] += all - median[wheel.mold().get(fromRow + i)];
    }
  }

  /** The least difference of two values: that of the last digit; 0 where all are the same. */
  private static double step(double[] value) {
    double[] known = Arrays.stream(value).filter(v -> !Double.isNaN(v)).sorted().toArray();
    if (known.length == 0) {
      return 0;
    }
    double span = known[known.length - 1] - known[0];
    double least = span;
    for (int i = 1; i < known.length; i++) {
      double gap = known[i] - known[i - 1];
      // What is nearer than this is one value, computed in two ways.
      least = gap > 1e-9 * span ? Math.min(least, gap) : least;
    }
    return least;
  }

  private static int side(WheelRecord wheel, int row) {
    return Math.max(0, wheel.side().get(row));
  }

  /**
   * Whether molds differ by themselves in most turns: by the robust scale of the differences
   * between pours that follow one another in a turn and of one ladle side, and those half a turn
   * apart. What moves slowly in time differs little from pour to pour.
   */
  private static boolean differ(WheelRecord wheel, TurnIndex turns, int fromRow, double[] value) {
    int sides = Math.max(1, wheel.sides().size());
    double[] raw = differences(wheel, turns, fromRow, value, sides);
    if (raw.length == 0 || Robust.median(raw) == 0) {
      return false; // one value for all; levels that miss other turns would make them differ
    }
    double[] levelled = value.clone();
    takeLevels(wheel, fromRow, levelled);
    double[] near = differences(wheel, turns, fromRow, levelled, sides);
    int half = Math.max(sides + 1, wheel.molds().size() / 2);
    // A multiple of the sides, which take turns at the molds: both pours must be of one.
    double[] far = differences(wheel, turns, fromRow, levelled, half - half % sides);
    if (near.length == 0 || far.length == 0) {
      return false;
    }
    return Robust.median(near) > SMOOTH * Robust.median(far);
  }

  /** How far pours of one turn and ladle side differ that lie so many rows apart. */
  private static double[] differences(
      WheelRecord wheel, TurnIndex turns, int fromRow, double[] value, int apart) {
    double[] some = new double[value.length];
    int n = 0;
    for (int i = apart; i < value.length; i++) {
      int row = fromRow + i;
      double d = Math.abs(value[i] - value[i - apart]);
      boolean isOneTurn = turns.ofRow()[row] == turns.ofRow()[row - apart];
      if (isOneTurn && !Double.isNaN(d) && side(wheel, row) == side(wheel, row - apart)) {
        some[n++] = d;
      }
    }
    return Arrays.copyOf(some, n);
  }

  /**
   * Gives every row the level of its turn and ladle side; of its turn, where that side has none. It
   * is the mean of the middle half, so that a few molds which stand off do not move it.
   */
  private static void shareLevels(WheelRecord wheel, TurnIndex turns, int fromRow, double[] value) {
    int sides = Math.max(1, wheel.sides().size());
    double[] some = new double[64];
    double[] level = new double[sides];
    for (int from = 0, to; from < value.length; from = to) {
      to = from;
      while (to < value.length && turns.ofRow()[fromRow + to] == turns.ofRow()[fromRow + from]) {
        to++;
      }
      some = some.length < to - from ? new double[to - from] : some;
      double all = 0;
      int known = 0;
      for (int s = 0; s < sides; s++) {
        int n = 0;
        for (int i = from; i < to; i++) {
          if (!Double.isNaN(value[i]) && side(wheel, fromRow + i) == s) {
            some[n++] = value[i];
          }
        }
        level[s] = middle(some, n);
        all += n == 0 ? 0 : level[s];
        known += n == 0 ? 0 : 1;
      }
      for (int i = from; i < to; i++) {
        double own = level[side(wheel, fromRow + i)];
        value[i] = Double.isNaN(own) ? all / known : own;
      }
    }
  }

  /** The mean of the middle half; NaN of nothing. */
  private static double middle(double[] some, int n) {
    Arrays.sort(some, 0, n);
    double sum = 0;
    for (int i = n / 4; i < n - n / 4; i++) {
      sum += some[i];
    }
    return sum / (n - n / 4 - n / 4);
  }

  /** Whether neighbors in a turn that two ladle sides poured differ by more than the last digit. */
  private static boolean sidesDiffer(
      WheelRecord wheel, TurnIndex turns, int fromRow, double[] value, double step) {
    double[] some = new double[value.length];
    int n = 0;
    for (int i = 1; i < value.length; i++) {
      int row = fromRow + i;
      double d = Math.abs(value[i] - value[i - 1]);
      boolean isOneTurn = turns.ofRow()[row] == turns.ofRow()[row - 1];
      if (isOneTurn && !Double.isNaN(d) && side(wheel, row) != side(wheel, row - 1)) {
        some[n++] = d;
      }
    }
    // The median: sides that differed in a few turns do not differ.
    return n > 0 && Robust.median(Arrays.copyOf(some, n)) > step;
  }

  private static boolean isOften(TurnIndex turns, int fromRow, double[] value, boolean byMold) {
    int known = 0;
    int knownTurns = 0;
    int all = 0;
    int before = -1;
    for (int i = 0; i < value.length; i++) {
      int turn = turns.ofRow()[fromRow + i];
      all += i == 0 || turn != turns.ofRow()[fromRow + i - 1] ? 1 : 0;
      if (!Double.isNaN(value[i])) {
        known++;
        knownTurns += turn != before ? 1 : 0;
        before = turn;
      }
    }
    return knownTurns >= HALF * all && (!byMold || known >= HALF * value.length);
  }

  /** Whether most values are what they were in the same mold's last pour. */
  private static boolean isHeld(WheelRecord wheel, TurnIndex turns, int fromRow, double[] value) {
    double[] before = new double[wheel.molds().size()];
    Arrays.fill(before, Double.NaN);
    long pairs = 0;
    long same = 0;
    for (int i = 0; i < value.length; i++) {
      int mold = wheel.mold().get(fromRow + i);
      if (!Double.isNaN(value[i]) && !turns.startUp()[fromRow + i]) {
        if (!Double.isNaN(before[mold])) {
          pairs++;
          // To the last bit, for what nobody touched is written down as the same figure.
          same += value[i] == before[mold] ? 1 : 0;
        }
        before[mold] = value[i];
      }
    }
    return same >= HALF * pairs;
  }
}
