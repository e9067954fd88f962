package org.evenpour.control;

import java.util.List;
import org.evenpour.control.LimitsInForce.SeriesLimits;

/**
 * A chart of the wheel's design for a series that somebody else makes, one value a turn: limits
 * from its own normal state, steps cut out, and lasting shifts by {@link ShiftChart}.
 */
public final class TurnSeries {
  private TurnSeries() {}

  /**
   * Limits, and where the series is in its normal state.
   *
   * @param normal by turn; false too where there is no value
   */
  @SuppressWarnings("ArrayRecordComponent") // made once, never changed
  public record Proposal(SeriesLimits limits, boolean[] normal) {}

  /**
   * Limits of the series itself.
   *
   * @param x by turn; NaN = missing
   * @param noiseVariance of the scatter of pours in each value; 0 = not known
   * @param rate false alarms for each turn, high and low together
   */
  public static Proposal propose(double[] x, double noiseVariance, double rate) {
    SeriesProposal proposal = proposal(x, noiseVariance);
    return new Proposal(proposal.limits(rate), normal(x, proposal));
  }

  /** Where the series is in its normal state; false too where there is no value. */
  public static boolean[] normal(double[] x, double noiseVariance) {
    return normal(x, proposal(x, noiseVariance));
  }

  private static SeriesProposal proposal(double[] x, double noiseVariance) {
    return SeriesProposal.of(x, noiseVariance, Math.sqrt(noiseVariance) / 2);
  }

  private static boolean[] normal(double[] x, SeriesProposal proposal) {
    boolean[] normal = new boolean[x.length];
    int known = 0;
    for (int t = 0; t < x.length; t++) {
      normal[t] = !Double.isNaN(x[t]) && proposal.normal()[known++];
    }
    return normal;
  }

  /**
   * Lasting shifts of the series.
   *
   * @param limits in force
   * @param turn the number of each turn
   * @param atMillis when it began
   * @param x by turn; NaN = missing
   * @param spread by how much each value scatters more than its sigma says, 1 or more
   */
  public static List<Episode> episodes(
      SeriesLimits limits, int[] turn, long[] atMillis, double[] x, double[] spread) {
    ShiftChart chart = new ShiftChart(Episode.Chart.WHEEL, -1, limits, true, limits.sigma());
    for (int t = 0; t < x.length; t++) {
      if (!Double.isNaN(x[t])) {
        double departure = x[t] - limits.center();
        chart.accept(
            turn[t], atMillis[t], departure / limits.sigma() / spread[t], departure, spread[t]);
      }
    }
    return chart.episodes();
  }
}
