package org.evenpour.audit;

import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.LimitProposal;
import org.evenpour.findings.AuditReport.TurnPoint;

/**
 * The newest turns of a wheel, as many as limits are proposed from: what the wheel did in each, and
 * where its settings stood.
 */
final class WheelTurns {
  private static final int SWEEPS = 3;

  /**
   * A turn with fewer of the molds has no point, and a setting that is known in fewer turns holds.
   */
  private static final double HALF = 0.5;

  private final WheelRecord wheel;
  private final TurnIndex turns;
  private final int fromRow;
  private final int first;
  private final int[] number;
  private final long[] atMillis;

  WheelTurns(WheelRecord wheel, TurnIndex turns) {
    this.wheel = wheel;
    this.turns = turns;
    fromRow = SettingSeries.fromRow(turns);
    first = Math.max(0, turns.turns() - LimitProposal.BASE_TURNS);
    number = new int[turns.turns() - first];
    atMillis = new long[number.length];
    for (int row = wheel.rows() - 1; row >= fromRow; row--) {
      number[at(row)] = wheel.turn().get(row);
      atMillis[at(row)] = wheel.castAtMillis().get(row);
    }
  }

  private int at(int row) {
    return turns.ofRow()[row] - first;
  }

  /** The wheel's own number of each turn. */
  int[] number() {
    return number;
  }

  /** When each turn began. */
  long[] atMillis() {
    return atMillis;
  }

  /**
   * The turn effects of one characteristic, by turn; NaN in start-up, where fewer than half of the
   * molds were poured, and where nothing is known.
   *
   * @param points in the order of time
   */
  double[] effects(List<TurnPoint> points) {
    double[] effect = new double[number.length];
    Arrays.fill(effect, Double.NaN);
    int t = 0;
    for (TurnPoint point : points) {
      if (number.length == 0 || point.at().toEpochMilli() < atMillis[0]) {
        continue;
      }
      while (t < number.length && number[t] != point.turn()) {
        t++;
      }
      if (t == number.length) {
        break;
      }
      // A mean of few molds scatters more than the limits allow for.
      boolean isCharted = !point.startUp() && point.anodes() >= HALF * wheel.molds().size();
      effect[t] = isCharted ? point.value() : Double.NaN;
    }
    return effect;
  }

  /**
   * Where a setting stood as it acts on each turn: its mean over the molds, their own levels taken
   * out, so many turns before. What is seldom written down holds until it is written down again.
   *
   * @param numbers one for each row
   * @param lagTurns after how many turns it acts
   */
  double[] setting(DoubleColumn numbers, int lagTurns) {
    double[] value = new double[wheel.rows() - fromRow];
    numbers.copy(fromRow, value.length, value);
    double[] mean = means(value);
    long known = Arrays.stream(mean).filter(one -> !Double.isNaN(one)).count();
    // What is seldom written down was set by hand, and stays until it is set again.
    if (known < HALF * mean.length) {
      for (int t = 1; t < mean.length; t++) {
        mean[t] = Double.isNaN(mean[t]) ? mean[t - 1] : mean[t];
      }
    }
    double[] acting = new double[mean.length];
    for (int t = 0; t < acting.length; t++) {
      acting[t] = t < lagTurns ? Double.NaN : mean[t - lagTurns];
    }
    return acting;
  }

  /** Means of turns, the molds' levels taken out: both by means in turn about. */
  private double[] means(double[] value) {
    double[] mean = new double[number.length];
    double[] level = new double[wheel.molds().size()];
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      // Where turns lack molds each is in the other's mean: by turns, until both are out.
      double[] ofTurns = new double[mean.length];
      int[] inTurns = new int[mean.length];
      for (int i = 0; i < value.length; i++) {
        if (!Double.isNaN(value[i])) {
          ofTurns[at(fromRow + i)] += value[i] - level[wheel.mold().get(fromRow + i)];
          inTurns[at(fromRow + i)]++;
        }
      }
      Arrays.setAll(mean, t -> inTurns[t] == 0 ? Double.NaN : ofTurns[t] / inTurns[t]);
      double[] ofMolds = new double[level.length];
      int[] inMolds = new int[level.length];
      for (int i = 0; i < value.length; i++) {
        if (!Double.isNaN(value[i])) {
          ofMolds[wheel.mold().get(fromRow + i)] += value[i] - mean[at(fromRow + i)];
          inMolds[wheel.mold().get(fromRow + i)]++;
        }
      }
      double all = 0;
      int molds = 0;
      for (int m = 0; m < level.length; m++) {
        level[m] = inMolds[m] == 0 ? 0 : ofMolds[m] / inMolds[m];
        all += level[m];
        molds += inMolds[m] == 0 ? 0 : 1;
      }
      for (int m = 0; m < level.length; m++) {
        // With mean 0, for what all molds have belongs to the turns.
        level[m] -= all / Math.max(1, molds);
      }
    }
    return mean;
  }
}
