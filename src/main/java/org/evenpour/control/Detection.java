package org.evenpour.control;

import java.util.Arrays;
import org.evenpour.casting.WheelProfile;
import org.evenpour.stats.Normal;
import org.evenpour.stats.RunLength;

/**
 * How far a chart may stray before it is a signal, for every chart of a wheel together.
 *
 * <p>The crew says how many false alarms a shift it will stand; each kind of chart gets a part of
 * them, each chart of that kind an equal share, and each share becomes a limit through run lengths.
 *
 * @param reference the cumulative sums' reference value k, in sigma
 * @param moldShift decision interval h of the mold charts
 * @param pour single pours beyond this many sigma
 * @param wheelShift decision interval h of the wheel's charts
 * @param wheelPoint single turns beyond this many sigma
 * @param sideShift decision interval h of the ladle sides' charts
 * @param spreadShift decision interval h of the charts of scatter within a turn
 */
public record Detection(
    double reference,
    double moldShift,
    double pour,
    double wheelShift,
    double wheelPoint,
    double sideShift,
    double spreadShift) {

  /** k = 0.5 is the cumulative sum that finds a shift of one sigma soonest. */
  public static final double REFERENCE = 0.5;

  private static final double MOLD_PART = 0.50;
  private static final double POUR_PART = 0.15;
  private static final double WHEEL_SHIFT_PART = 0.10;
  private static final double WHEEL_POINT_PART = 0.05;
  private static final double SIDE_PART = 0.10;
  private static final double SPREAD_PART = 0.10;

  /**
   * Shares a budget of false alarms out.
   *
   * @param profile with the budget
   * @param molds charts of molds for one characteristic
   * @param sides ladle sides
   * @param characteristics how many are watched
   * @param turnMinutes how long a turn of the wheel takes
   */
  public static Detection of(
      WheelProfile profile, int molds, int sides, int characteristics, double turnMinutes) {
    double turnsPerShift = Math.max(1, profile.shiftHours() * 60 / Math.max(0.1, turnMinutes));
    double perTurn = profile.falseAlarmsPerShift() / turnsPerShift / characteristics;
    double[] shifts = {
      perTurn * MOLD_PART / molds,
      perTurn * WHEEL_SHIFT_PART,
      perTurn * SIDE_PART / Math.max(1, sideCharts(sides)),
      // One-sided: half the alarms of a two-sided chart with the same limit.
      perTurn * SPREAD_PART * 2
    };
    double[] h =
        Arrays.stream(shifts)
            .parallel()
            .map(rate -> RunLength.cusumLimit(REFERENCE, runLength(rate)))
            .toArray();
    return new Detection(
        REFERENCE,
        h[0],
        twoSided(perTurn * POUR_PART / molds),
        h[1],
        twoSided(perTurn * WHEEL_POINT_PART),
        h[2],
        h[3]);
  }

  /** How many charts tell ladle sides apart: one for two of them, one each for more. */
  static int sideCharts(int sides) {
    return sides < 2 ? 0 : sides == 2 ? 1 : sides;
  }

  private static double runLength(double falseAlarmsPerTurn) {
    return Math.min(1e7, Math.max(20, 1 / falseAlarmsPerTurn));
  }

  private static double twoSided(double falseAlarmsPerPoint) {
    return -Normal.quantile(Math.min(0.02, Math.max(1e-12, falseAlarmsPerPoint)) / 2);
  }
}
