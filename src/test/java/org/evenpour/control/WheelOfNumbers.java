package org.evenpour.control;

import java.util.SplittableRandom;
import org.evenpour.casting.WheelProfile;

/** A made-up wheel whose every parameter is known: turns by molds of normal values, seeded. */
final class WheelOfNumbers {
  static final int MOLDS = 26;
  private static final long TURN_MILLIS = 13 * 60_000L;

  final int turns;
  final double[][] value;
  final boolean twoSides;

  /**
   * @param turns how many
   * @param pourSigma from pour to pour
   * @param turnSigma of the turn effects, a first-order autoregression
   * @param phi its correlation
   */
  WheelOfNumbers(int turns, double pourSigma, double turnSigma, double phi, long seed) {
    this(turns, pourSigma, turnSigma, phi, seed, false);
  }

  WheelOfNumbers(
      int turns, double pourSigma, double turnSigma, double phi, long seed, boolean twoSides) {
    this.turns = turns;
    this.twoSides = twoSides;
    value = new double[turns][MOLDS];
    SplittableRandom random = new SplittableRandom(seed);
    double effect = turnSigma * random.nextGaussian();
    for (int t = 0; t < turns; t++) {
      effect = phi * effect + turnSigma * Math.sqrt(1 - phi * phi) * random.nextGaussian();
      for (int m = 0; m < MOLDS; m++) {
        value[t][m] = 390 + offset(m) + effect + pourSigma * random.nextGaussian();
      }
    }
  }

  static double offset(int mold) {
    return 0.3 * (mold - (MOLDS - 1) / 2.0);
  }

  /** Shifts one mold over some turns. */
  WheelOfNumbers shift(int mold, int from, int to, double by) {
    for (int t = from; t < to; t++) {
      value[t][mold] += by;
    }
    return this;
  }

  /** Shifts all molds, or those of one parity, over some turns. */
  WheelOfNumbers shiftAll(int parity, int from, int to, double by) {
    for (int m = 0; m < MOLDS; m++) {
      if (parity < 0 || m % 2 == parity) {
        shift(m, from, to, by);
      }
    }
    return this;
  }

  BaseRecord base(int baseTurns) {
    int n = baseTurns * MOLDS;
    int[] turn = new int[n];
    int[] mold = new int[n];
    int[] side = new int[n];
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      turn[i] = i / MOLDS;
      mold[i] = i % MOLDS;
      side[i] = twoSides ? mold[i] % 2 : 0;
      x[i] = value[turn[i]][mold[i]];
    }
    return new BaseRecord(turn, mold, side, x, baseTurns, MOLDS, twoSides ? 2 : 1);
  }

  AlarmBudget budget(WheelProfile profile) {
    return AlarmBudget.of(profile, MOLDS, twoSides ? 2 : 1, 1, false, 13);
  }

  LimitsInForce limits(WheelProfile profile) {
    LimitsInForce limits = LimitProposal.propose(base(turns), budget(profile));
    if (limits == null) {
      throw new AssertionError("no limits were proposed");
    }
    return limits;
  }

  /** Runs all turns through a monitor, the first one as no start-up. */
  CharacteristicMonitor monitored(LimitsInForce limits, WheelProfile profile) {
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, profile, (turn, at, x, anodes, startUp) -> {});
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        monitor.accept(t * TURN_MILLIS + m * 30_000L, t, m, twoSides ? m % 2 : -1, -1, value[t][m]);
      }
    }
    monitor.finish();
    return monitor;
  }

  static WheelProfile quietProfile(double falseAlarmsPerShift) {
    WheelProfile d = WheelProfile.DEFAULT;
    return new WheelProfile(
        null,
        MOLDS,
        d.zone(),
        d.characteristics(),
        d.settings(),
        d.headings(),
        d.backwardsSeconds(),
        d.stopMinutes(),
        falseAlarmsPerShift,
        d.shiftHours(),
        d.pouringPlace(),
        d.clockwise(),
        d.setPointMoveCosts(),
        d.settingsAlarmShare());
  }
}
