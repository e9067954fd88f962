package org.evenpour.link;

import org.evenpour.casting.DoubleColumn;
import org.evenpour.control.Episode;
import org.jspecify.annotations.Nullable;

/**
 * A setting as signals see it, turn by turn, with the sums of each turn kept so that one signal
 * costs no more than its own cells.
 */
final class Series {
  private static final int LEARNED_TURNS = 1_200;
  private static final int LEARNED_MOLDS = 6;

  private final TurnGrid grid;
  private final DoubleColumn setting;
  private final int lagTurns;
  private final int sides;
  private final double[] sums;
  private final int[] counts;

  /**
   * @param grid of the wheel
   * @param setting its values
   * @param lagTurns after how many turns it acts
   */
  Series(TurnGrid grid, DoubleColumn setting, int lagTurns) {
    this.grid = grid;
    this.setting = setting;
    this.lagTurns = lagTurns;
    sides = Math.max(1, grid.record().sides().size());
    sums = new double[grid.turns() * sides];
    counts = new int[grid.turns() * sides];
    for (int t = 0; t < grid.turns(); t++) {
      for (int m = 0; m < grid.molds(); m++) {
        double v = grid.value(setting, t, m);
        if (!Double.isNaN(v)) {
          int at = t * sides + grid.side(t, m);
          sums[at] += v;
          counts[at]++;
        }
      }
    }
    hold();
  }

  private void hold() {
    int known = 0;
    for (int t = 0; t < grid.turns(); t++) {
      known += Double.isNaN(mean(t)) ? 0 : 1;
    }
    if (known >= Table.SPARSE * grid.turns()) {
      return;
    }
    double last = Double.NaN;
    for (int t = 0; t < grid.turns(); t++) {
      double now = mean(t);
      if (Double.isNaN(now) && !Double.isNaN(last)) {
        sums[t * sides] = last;
        counts[t * sides] = 1;
      } else {
        last = now;
      }
    }
  }

  private double mean(int turn) {
    double sum = 0;
    int count = 0;
    for (int s = 0; s < sides; s++) {
      sum += sums[turn * sides + s];
      count += counts[turn * sides + s];
    }
    return mean(sum, count);
  }

  /**
   * The setting over a stretch of turns, already moved by its lag, as it matters for an episode's
   * scope: for a mold or a pour its own value less the mean of the other molds in that turn; for a
   * ladle side its mean less that of the other sides; for the wheel the mean of the turn.
   *
   * @param episode whose scope counts
   * @param from first turn index
   * @param to turn index after the last
   * @return one per turn; NaN = missing
   */
  double[] over(Episode episode, int from, int to) {
    return over(episode.scope(), episode.index(), from, to);
  }

  /** The mean of each turn, moved by the lag; NaN = missing. */
  double[] wheel(int from, int to) {
    return over(Episode.Scope.WHEEL, -1, from, to);
  }

  private double[] over(Episode.Scope scope, int index, int from, int to) {
    double[] series = new double[to - from];
    for (int t = from; t < to; t++) {
      series[t - from] = t < lagTurns ? Double.NaN : at(scope, index, t - lagTurns);
    }
    return series;
  }

  /** How the setting wanders as it matters for a scope; null where it never moves. */
  @Nullable Wander wander(Episode.Scope scope) {
    int from = Math.max(0, grid.turns() - LEARNED_TURNS);
    return switch (scope) {
      case WHEEL, SPREAD -> Wander.of(new double[][] {wheel(from, grid.turns())});
      case SIDE -> Wander.of(new double[][] {over(scope, 0, from, grid.turns())});
      case MOLD, POUR -> {
        int some = Math.min(LEARNED_MOLDS, grid.molds());
        double[][] series = new double[some][];
        for (int i = 0; i < some; i++) {
          int mold = i * grid.molds() / some;
          int newest = Math.max(from, grid.turns() - LEARNED_TURNS / some);
          series[i] = over(scope, mold, newest, grid.turns());
        }
        yield Wander.of(series);
      }
    };
  }

  private double at(Episode.Scope scope, int index, int turn) {
    double sum = 0;
    int count = 0;
    for (int s = 0; s < sides; s++) {
      sum += sums[turn * sides + s];
      count += counts[turn * sides + s];
    }
    return switch (scope) {
      case WHEEL, SPREAD -> mean(turn);
      case POUR, MOLD -> {
        double own = grid.value(setting, turn, index);
        yield own - mean(sum - own, count - 1);
      }
      case SIDE -> {
        int at = turn * sides + index;
        yield mean(sums[at], counts[at]) - mean(sum - sums[at], count - counts[at]);
      }
    };
  }

  private static double mean(double sum, int count) {
    return count == 0 ? Double.NaN : sum / count;
  }
}
