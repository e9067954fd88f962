package org.evenpour.control;

import org.jspecify.annotations.Nullable;

/** What one characteristic's monitor knows of one mold. Owned by the monitor's thread. */
final class MoldState {
  /** Weight of the newest residual in how a mold stands just now. */
  private static final double RECENT = 0.2;

  private final ShiftChart chart;
  private double offset;
  private int serial = -1;
  private int trialLeft;
  private int learned;
  private double learnedMean;
  private boolean selfStarting;
  private double departure = Double.NaN;
  private @Nullable DriftingOffset drift;

  /**
   * @param limits in force
   * @param mold index
   * @param fromMiddle turns from the middle of the base to the first one that is judged
   */
  MoldState(LimitsInForce limits, int mold, double fromMiddle) {
    boolean known = mold < limits.offsets().length;
    offset = known ? limits.offsets()[mold] : Double.NaN;
    if (mold < limits.wear().perTurn().size() && !Double.isNaN(offset)) {
      drift = new DriftingOffset(limits, mold, fromMiddle);
      offset = drift.offset();
    }
    chart = new ShiftChart(Episode.Chart.MOLD, mold, limits.pour(), true, limits.pour().sigma());
  }

  /** The chart that looks for lasting shifts. */
  ShiftChart chart() {
    return chart;
  }

  /** How far the mold usually stands from the center; NaN where that is not known yet. */
  double offset() {
    return offset;
  }

  /** How far it stands from its usual level just now; NaN before its first point. */
  double departure() {
    return departure;
  }

  /** Takes the serial of the mold that casts now; tells whether it is another than before. */
  boolean isReplacedBy(int newSerial) {
    boolean replaced = serial >= 0 && newSerial >= 0 && serial != newSerial;
    serial = newSerial >= 0 ? newSerial : serial;
    return replaced;
  }

  /** The position got a new mold: from now on it is on trial. */
  void restart() {
    if (trialLeft == CharacteristicMonitor.TRIAL) {
      return; // the same change, told twice: by its serial and by an event
    }
    // What was a signal of the old mold ends with it.
    if (chart.isOpen()) {
      chart.restart();
    }
    drift = null; // it was the old mold's
    trialLeft = CharacteristicMonitor.TRIAL;
    learned = 0;
    learnedMean = 0;
    departure = Double.NaN; // it was the old mold's
  }

  /** Turns go by, in which the mold drifts on as it did. */
  void pass(int turns) {
    if (drift != null) {
      drift.pass(turns);
      offset = drift.offset();
    }
  }

  /** Whether the mold may take part in the wheel's level. */
  boolean isSettled() {
    return !Double.isNaN(offset) && trialLeft == 0 && !chart.isOpen();
  }

  /** Follows how it stands just now. */
  void follow(double fromLevel) {
    departure = Double.isNaN(departure) ? fromLevel : departure + RECENT * (fromLevel - departure);
  }

  /** Variance of the offset's estimate, in units of the pour variance. */
  double offsetVariance() {
    return selfStarting ? 1.0 / learned : 0;
  }

  /** A point of a mold whose level is not known at all. */
  void learn(double fromCenter) {
    learned++;
    learnedMean += (fromCenter - learnedMean) / learned;
    if (learned >= CharacteristicMonitor.TRIAL) {
      offset = learnedMean;
      selfStarting = true;
      // A mold that was changed before anybody knew its level needs no trial against it any more.
      trialLeft = 0;
    }
  }

  /**
   * After a point was charted: goes on with the trial of a new mold, or with learning its level.
   */
  void settle(double residual) {
    if (trialLeft > 0) {
      learned++;
      learnedMean += (residual - learnedMean) / learned;
      trialLeft--;
      if (trialLeft == 0) {
        // From here on its own level is the usual one, and that it differs no news.
        chart.restart();
        offset += learnedMean;
        selfStarting = true;
      }
    } else if (drift != null && !chart.isOpen()) {
      drift.learn(residual);
      offset = drift.offset();
    } else if (selfStarting && !chart.isOpen()) {
      learned++;
      // A running mean: its steps shrink, so that a shift is found before it is learned.
      offset += residual / learned;
    }
  }
}
