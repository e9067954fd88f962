package org.evenpour.control;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.evenpour.control.LimitsInForce.Wear;
import org.evenpour.stats.ChiSquare;

/**
 * Whether molds drift against one another over a base period, and how fast each.
 *
 * <p>A straight line through each mold's scores, by least squares. Molds drift where the slopes
 * differ beyond their errors, {@code Σ (b/error)²} by χ² with one degree of freedom less than
 * molds. Each slope is then drawn towards none by what chance has in it, {@code τ²/(τ² + error²)}
 * with {@code τ²} the variance of the true slopes by moments (DerSimonian and Laird 1986, here with
 * equal errors). O(n).
 */
final class WearProposal {
  /** Turns of a base from which a drift is no passing wander: a choice. */
  private static final int LEAST_TURNS = 200;

  /** The base of a mold that drifts has at least this part of its turns: a choice. */
  private static final double LEAST_SHARE = 0.5;

  /** Slopes as unlike by chance are wear: a choice. */
  private static final double CLEAR = 1e-3;

  private WearProposal() {}

  /**
   * Estimates.
   *
   * @param turn of each row
   * @param rowsOfMold rows by mold
   * @param score normal score of each row; NaN where it does not count
   * @param unit what a score of one is in the characteristic's unit, for small departures
   * @param sigma of a pour, in that unit
   * @param inflation of the variance of long sums by autocorrelation
   * @param turns of the base
   */
  static Wear of(
      int[] turn,
      int[][] rowsOfMold,
      IntToDoubleFunction score,
      double unit,
      double sigma,
      double inflation,
      int turns) {
    if (turns < LEAST_TURNS) {
      return Wear.NONE;
    }
    double[] slope = new double[rowsOfMold.length];
    double[] error = new double[rowsOfMold.length];
    double sum = 0;
    double squares = 0;
    double errors = 0;
    int molds = 0;
    for (int m = 0; m < slope.length; m++) {
      Line line = Line.of(turn, rowsOfMold[m], score);
      if (line.points() >= LEAST_SHARE * turns) {
        slope[m] = line.slope();
        // Scores have variance 1, so a slope has 1/Σ(t − t̄)², and more where they hang together.
        error[m] = Math.sqrt(inflation / line.spread());
        sum += square(slope[m] / error[m]);
        squares += square(slope[m]);
        errors += square(error[m]);
        molds++;
      }
    }
    // The turns hold what molds have in common, so that the slopes add up to nothing: one
    // degree of freedom less, here and below.
    if (molds < 2 || ChiSquare.upperTail(sum, molds - 1.0) >= CLEAR) {
      return Wear.NONE;
    }
    double ofChance = errors / molds;
    double ofMolds = Math.max(0, squares / (molds - 1) - ofChance);
    double trust = ofMolds / (ofMolds + ofChance);
    List<Double> perTurn = new ArrayList<>();
    for (double each : slope) {
      perTurn.add(trust * each * unit);
    }
    // What is left to doubt of a slope that was drawn in: τ²·error²/(τ² + error²).
    return new Wear(perTurn, trust * ofChance * square(unit / sigma));
  }

  /** Least squares through a mold's scores. */
  private record Line(int points, double slope, double spread) {
    static Line of(int[] turn, int[] rows, IntToDoubleFunction score) {
      int n = 0;
      double at = 0;
      double mean = 0;
      double spread = 0;
      double product = 0;
      for (int i : rows) {
        double s = score.applyAsDouble(i);
        if (!Double.isNaN(s)) {
          n++;
          // Means, and sums about them, as each value comes (Welford 1962).
          double off = turn[i] - at;
          at += off / n;
          mean += (s - mean) / n;
          spread += off * (turn[i] - at);
          product += off * (s - mean);
        }
      }
      return new Line(n, spread > 0 ? product / spread : 0, spread);
    }
  }

  private static double square(double x) {
    return x * x;
  }
}
