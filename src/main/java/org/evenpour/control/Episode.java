package org.evenpour.control;

import java.util.List;
import org.evenpour.casting.Scope;

/**
 * Violations of one chart that belong together.
 *
 * @param chart on which they lie
 * @param index of the mold (pour, mold) or the ladle side (side); −1 for the wheel
 * @param direction +1 high, −1 low
 * @param firstTurn turn of the first violation
 * @param lastTurn last turn to which it holds
 * @param firstAtMillis when the first violation was cast
 * @param lastAtMillis when the last anode or turn that it holds to was cast
 * @param sinceTurn estimated onset
 * @param sinceAtMillis when the onset's anode or turn was cast
 * @param open whether it still held at the end
 * @param ramp whether it grew rather than stepped
 * @param tests ids of what fired
 * @param points how many points of the chart it spans, from the onset on
 * @param size mean departure since the onset, in the unit
 * @param sizeError standard error of the size
 * @param sizeSigma mean departure in the chart's sigma
 * @param companion mean of the value that the chart carries along: for a side, how far the whole
 *     wheel stood off
 * @param otherSide of two ladle sides, the probability that the other one moved, the other way; 0
 *     for anything else
 */
public record Episode(
    Chart chart,
    int index,
    int direction,
    int firstTurn,
    int lastTurn,
    long firstAtMillis,
    long lastAtMillis,
    int sinceTurn,
    long sinceAtMillis,
    boolean open,
    boolean ramp,
    List<String> tests,
    int points,
    double size,
    double sizeError,
    double sizeSigma,
    double companion,
    double otherSide) {

  /** What kind of chart an episode is on. */
  public enum Chart {
    /** One anode against its mold and turn. */
    POUR(Scope.POUR),
    /** One mold, turns taken out. */
    MOLD(Scope.MOLD),
    /** One ladle side against the others. */
    SIDE(Scope.SIDE),
    /** The wheel's turn effects. */
    WHEEL(Scope.WHEEL),
    /** The scatter within a turn. */
    SPREAD(Scope.WHEEL);

    private final Scope scope;

    Chart(Scope scope) {
      this.scope = scope;
    }

    /** How far what it shows reaches. */
    public Scope scope() {
      return scope;
    }
  }

  /** The same of another mold or side. */
  Episode withIndex(int other) {
    return with(chart, other, open, size);
  }

  /** The same as if it were the whole wheel's. */
  public Episode ofWheel() {
    return with(Chart.WHEEL, -1, open, size);
  }

  /** The same where the charts that it is on were ended. */
  Episode ended() {
    return with(chart, index, false, size);
  }

  /** The same with another size. */
  Episode withSize(double other) {
    return with(chart, index, open, other);
  }

  private Episode with(Chart itsChart, int itsIndex, boolean isOpen, double itsSize) {
    return new Episode(
        itsChart,
        itsIndex,
        direction,
        firstTurn,
        lastTurn,
        firstAtMillis,
        lastAtMillis,
        sinceTurn,
        sinceAtMillis,
        isOpen,
        ramp,
        tests,
        points,
        itsSize,
        sizeError,
        sizeSigma,
        companion,
        otherSide);
  }

  /** Whether two episodes have turns in common. */
  public boolean overlaps(Episode other) {
    return sinceTurn <= other.lastTurn && other.sinceTurn <= lastTurn;
  }
}
