package org.evenpour.link;

import org.evenpour.casting.DoubleColumn;
import org.evenpour.control.Episode;

/** A setting as one signal sees it, turn by turn. */
final class Series {
  private Series() {}

  /**
   * The setting over a stretch of turns, already moved by its lag, as it matters for an episode's
   * scope: for a mold or a pour its own value less the mean of the other molds in that turn; for a
   * ladle side its mean less that of the other sides; for the wheel the mean of the turn.
   *
   * @param grid of the wheel
   * @param setting its values
   * @param lagTurns after how many turns it acts
   * @param episode whose scope counts
   * @param from first turn index
   * @param to turn index after the last
   * @return one per turn; NaN = missing
   */
  static double[] of(
      TurnGrid grid, DoubleColumn setting, int lagTurns, Episode episode, int from, int to) {
    double[] series = new double[to - from];
    for (int t = from; t < to; t++) {
      double own = 0;
      int owns = 0;
      double others = 0;
      int n = 0;
      for (int m = 0; m < grid.molds(); m++) {
        double v = grid.value(setting, t - lagTurns, m);
        if (Double.isNaN(v)) {
          continue;
        }
        if (isOwn(grid, episode, t - lagTurns, m)) {
          own += v;
          owns++;
        } else {
          others += v;
          n++;
        }
      }
      boolean whole =
          episode.scope() == Episode.Scope.WHEEL || episode.scope() == Episode.Scope.SPREAD;
      if (owns == 0) {
        series[t - from] = Double.NaN;
      } else if (whole) {
        series[t - from] = own / owns;
      } else {
        series[t - from] = n == 0 ? Double.NaN : own / owns - others / n;
      }
    }
    return series;
  }

  private static boolean isOwn(TurnGrid grid, Episode episode, int turn, int mold) {
    return switch (episode.scope()) {
      case POUR, MOLD -> mold == episode.index();
      case SIDE -> grid.side(turn, mold) == episode.index();
      case WHEEL, SPREAD -> true;
    };
  }
}
