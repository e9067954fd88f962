package org.evenpour.link;

import org.evenpour.casting.DoubleColumn;
import org.evenpour.control.Episode;

/**
 * A setting as signals see it, turn by turn, with the sums of each turn kept so that one signal
 * costs no more than its own cells.
 */
final class Series {
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
    double[] series = new double[to - from];
    for (int t = from; t < to; t++) {
      series[t - from] = t < lagTurns ? Double.NaN : at(episode, t - lagTurns);
    }
    return series;
  }

  private double at(Episode episode, int turn) {
    double sum = 0;
    int count = 0;
    for (int s = 0; s < sides; s++) {
      sum += sums[turn * sides + s];
      count += counts[turn * sides + s];
    }
    return switch (episode.scope()) {
      case WHEEL, SPREAD -> mean(sum, count);
      case POUR, MOLD -> {
        double own = grid.value(setting, turn, episode.index());
        yield own - mean(sum - own, count - 1);
      }
      case SIDE -> {
        int at = turn * sides + episode.index();
        yield mean(sums[at], counts[at]) - mean(sum - sums[at], count - counts[at]);
      }
    };
  }

  private static double mean(double sum, int count) {
    return count == 0 ? Double.NaN : sum / count;
  }
}
