package org.evenpour.audit;

import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.Scope;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.stats.Robust;

/**
 * How long a setting remembers where it was, by the differences between turns that lie far apart
 * and less far: {@code D(24)/D(4)} with {@code D(k)} the squared robust scale of {@code x(t + k) −
 * x(t)}, outside of the moves that were found.
 *
 * <p>An autoregression of first order seen through white noise has {@code D(k) ∝ 1 − (1 −
 * noise)·φᵏ}.
 */
final class SettingMemory {
  /**
   * Choices: what is forgotten after 4 turns is forgotten, and 24 turns are a good part of a
   * charge.
   */
  private static final int NEAR = 4;

  private static final int FAR = 24;

  /** Fewer differences tell nothing. */
  private static final int LEAST = 24;

  /** An onset is an estimate: so many turns on either side of a move count as part of it. */
  private static final int AROUND = 4;

  private final int molds;
  private final int[] number;
  private final double[] cells;
  private final double[] means;
  private final double[] contrasts;

  /**
   * @param fromRow of the first value
   * @param value one for each row from there on
   * @param shared what all molds have in common
   */
  SettingMemory(WheelRecord wheel, TurnIndex index, int fromRow, double[] value, double[] shared) {
    int first = value.length == 0 ? 0 : index.ofRow()[fromRow];
    int turns = index.turns() - first;
    number = new int[turns];
    for (int i = 0; i < value.length; i++) {
      number[index.ofRow()[fromRow + i] - first] = wheel.turn().get(fromRow + i);
    }
    molds = wheel.molds().size();
    cells = new double[turns * molds];
    Arrays.fill(cells, Double.NaN);
    int sides = Math.max(1, wheel.sides().size());
    double[][] sum = new double[sides][turns];
    int[][] count = new int[sides][turns];
    for (int i = 0; i < value.length; i++) {
      int row = fromRow + i;
      if (!Double.isNaN(value[i]) && !index.startUp()[row]) {
        int t = index.ofRow()[row] - first;
        int side = Math.max(0, wheel.side().get(row));
        // What all share is out: it would lend the molds a memory that is not theirs.
        cells[t * molds + wheel.mold().get(row)] = value[i] - shared[i];
        sum[side][t] += value[i];
        count[side][t]++;
      }
    }
    means = new double[turns];
    contrasts = new double[turns];
    for (int t = 0; t < turns; t++) {
      double all = 0;
      int known = 0;
      for (int s = 0; s < sides; s++) {
        all += sum[s][t];
        known += count[s][t];
      }
      means[t] = known == 0 ? Double.NaN : all / known;
      contrasts[t] = sides < 2 ? Double.NaN : sum[1][t] / count[1][t] - sum[0][t] / count[0][t];
    }
  }

  /** What a model's differences grow by. */
  static double growth(double correlation, double noise) {
    return (1 - (1 - noise) * Math.pow(correlation, FAR))
        / (1 - (1 - noise) * Math.pow(correlation, NEAR));
  }

  /**
   * How much one turn is like the one before, roughly: {@code 1 − D(1)/D(24)}; NaN where the record
   * is too short to tell.
   */
  double correlation(Scope scope) {
    double[] x = of(scope);
    int wide = x.length / number.length;
    double one = scale(x, wide);
    double far = scale(x, FAR * wide);
    // D(k) grows as 1 − ρₖ, and after 24 turns little is left of ρ in what can be watched.
    return 1 - one * one / (far * far);
  }

  /** By turns, or by turns and molds. */
  private double[] of(Scope scope) {
    return switch (scope) {
      case MOLD, POUR -> cells;
      case SIDE -> contrasts;
      case WHEEL -> means;
    };
  }

  /**
   * What the record's differences grow by; NaN where it is too short to tell.
   *
   * @param moves that are left out
   */
  double growth(Scope scope, List<Episode> moves) {
    double[] x = of(scope).clone();
    boolean isOfMolds = scope == Scope.MOLD;
    for (Episode move : moves) {
      for (int t = 0; t < number.length; t++) {
        if (number[t] >= move.sinceTurn() - AROUND && number[t] <= move.lastTurn() + AROUND) {
          x[isOfMolds ? t * molds + move.index() : t] = Double.NaN;
        }
      }
    }
    return growth(x, isOfMolds ? molds : 1);
  }

  /** How far what all molds have in common scatters over the whole record, robustly. */
  double scatter(Scope scope) {
    return Robust.biweightScale(Arrays.stream(of(scope)).filter(v -> !Double.isNaN(v)).toArray());
  }

  private double growth(double[] x, int wide) {
    double near = scale(x, NEAR * wide);
    double far = scale(x, FAR * wide);
    return far * far / (near * near);
  }

  private static double scale(double[] x, int apart) {
    double[] some = new double[Math.max(0, x.length - apart)];
    int n = 0;
    for (int i = apart; i < x.length; i++) {
      double d = x[i] - x[i - apart];
      if (!Double.isNaN(d)) {
        some[n++] = d;
      }
    }
    // Robust, for a few turns that stand off would pass for memory, or hide it.
    return n < LEAST ? Double.NaN : Robust.biweightScale(Arrays.copyOf(some, n));
  }
}
