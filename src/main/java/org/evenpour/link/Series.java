package org.evenpour.link;

import java.util.Arrays;
import org.evenpour.column.DoubleColumn;
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
    // What is written down often is not held: a gap there is a gap.
    if (known >= Table.SPARSE * grid.turns()) {
      return;
    }
    double last = Double.NaN;
    for (int t = 0; t < grid.turns(); t++) {
      double now = mean(t);
      if (Double.isNaN(now) && !Double.isNaN(last)) {
        // One figure for the wheel, so that a contrast of sides stays unknown in held turns.
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
   * @param episode whose chart counts
   * @param from first turn index
   * @param to turn index after the last
   * @return one per turn; NaN = missing
   */
  double[] over(Episode episode, int from, int to) {
    return over(episode.chart(), episode.index(), from, to);
  }

  /** The mean of each turn, moved by the lag; NaN = missing. */
  double[] wheel(int from, int to) {
    return over(Episode.Chart.WHEEL, -1, from, to);
  }

  private double[] over(Episode.Chart chart, int index, int from, int to) {
    double[] series = new double[to - from];
    for (int t = from; t < to; t++) {
      // What acts now was set some turns before.
      series[t - from] = t < lagTurns ? Double.NaN : at(chart, index, t - lagTurns);
    }
    return series;
  }

  /**
   * How the setting wanders as it matters for a scope, between the beginnings and ends of signals;
   * null where it never moves. What it did there is what is asked: were that part of how it
   * wanders, the clearest steps would make themselves ordinary.
   *
   * @param signals of a characteristic
   */
  @Nullable Wander wander(Episode.Chart chart, SignalMask signals) {
    int from = Math.max(0, grid.turns() - LEARNED_TURNS);
    boolean isOfMolds = chart == Episode.Chart.MOLD || chart == Episode.Chart.POUR;
    int some = isOfMolds ? Math.min(LEARNED_MOLDS, grid.molds()) : 1;
    double[][] series = new double[some][];
    int[][] pieces = new int[some][];
    for (int i = 0; i < some; i++) {
      // All molds together as long as one series of the wheel, for what it costs.
      int newest = Math.max(from, grid.turns() - LEARNED_TURNS / some);
      Episode.Chart its = isOfMolds ? Episode.Chart.MOLD : chart;
      int index =
          switch (its) {
            // Spread around the wheel: what differs from side to side is then in it.
            case MOLD, POUR -> i * grid.molds() / some;
            case SIDE -> 0;
            case WHEEL, SPREAD -> -1;
          };
      series[i] = over(its, index, newest, grid.turns());
      pieces[i] = Arrays.copyOfRange(signals.pieces(its, index), newest, grid.turns());
    }
    return Wander.of(series, pieces);
  }

  private double at(Episode.Chart chart, int index, int turn) {
    double sum = 0;
    int count = 0;
    for (int s = 0; s < sides; s++) {
      sum += sums[turn * sides + s];
      count += counts[turn * sides + s];
    }
    return switch (chart) {
      case WHEEL, SPREAD -> mean(turn);
      case POUR, MOLD -> {
        double own = grid.value(setting, turn, index);
        // The others alone: with itself in the mean a mold's move would look smaller by 1/molds.
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
