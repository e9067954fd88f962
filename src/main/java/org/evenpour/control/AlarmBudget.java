package org.evenpour.control;

import org.evenpour.casting.WheelProfile;

/**
 * How many false alarms each chart of a wheel may raise, so that all of them together keep to what
 * the crew will stand.
 *
 * <p>The crew says how many false alarms a shift it will stand; characteristics share them equally;
 * each kind of chart gets a part, and each chart of that kind an equal share. The part of a kind
 * that the wheel does not have goes to the others. Parts are a choice: most goes to the molds,
 * which are many, so that one mold's chart is about as sharp as the wheel's. They add up to 1.035,
 * because a wild pour often opens its mold's chart as well and is then one signal with it.
 *
 * @param moldShift false alarms a turn, for one mold's chart
 * @param pour for one pour
 * @param wheelShift for the chart of turn effects
 * @param wheelPoint for single turns
 * @param sideShift for one chart of ladle sides
 * @param spreadShift for the chart of scatter within a turn
 */
public record AlarmBudget(
    double moldShift,
    double pour,
    double wheelShift,
    double wheelPoint,
    double sideShift,
    double spreadShift) {

  private static final double MOLD_PART = 0.78;
  private static final double POUR_PART = 0.11;
  private static final double WHEEL_SHIFT_PART = 0.06;
  private static final double WHEEL_POINT_PART = 0.02;
  private static final double SIDE_PART = 0.05;
  private static final double SPREAD_PART = 0.015;

  /**
   * Of a setting's share: its lasting moves alone are told, and those of the whole wheel or of a
   * ladle side are few charts beside those of the molds. A choice.
   */
  private static final double SETTING_MOLD_PART = 0.6;

  /** Of charts that nobody listens to: any rate will do, and small ones take long to compute. */
  private static final double UNHEARD = 1e-3;

  private static final double SETTING_WHEEL_PART = 0.2;
  private static final double SETTING_SIDE_PART = 0.2;

  /**
   * Of the settings' share: the part of the wheel's second view, where it has one. A choice: about
   * as much as the wheel's plain chart has.
   */
  private static final double BEYOND_PART = 0.4;

  /**
   * Shares a budget of false alarms out over the characteristics.
   *
   * @param profile with the budget
   * @param molds charts of molds for one characteristic
   * @param sides ladle sides
   * @param characteristics how many are watched
   * @param hasSettings whether settings are watched as well, which takes their share of it
   * @param turnMinutes how long a turn of the wheel takes
   */
  public static AlarmBudget of(
      WheelProfile profile,
      int molds,
      int sides,
      int characteristics,
      boolean hasSettings,
      double turnMinutes) {
    int sideCharts = sideCharts(sides);
    // What a wheel without sides cannot spend makes the other charts sharper.
    double parts = sideCharts > 0 ? 1 : 1 - SIDE_PART;
    // Out of the same budget, for the crew hears one alarm like another.
    double left = hasSettings ? 1 - profile.settingsAlarmShare() : 1;
    double perTurn = left * perTurn(profile, turnMinutes) / Math.max(1, characteristics) / parts;
    return new AlarmBudget(
        perTurn * MOLD_PART / molds,
        // One pour a mold and turn: as many chances of a false alarm as molds.
        perTurn * POUR_PART / molds,
        perTurn * WHEEL_SHIFT_PART,
        perTurn * WHEEL_POINT_PART,
        perTurn * SIDE_PART / Math.max(1, sideCharts),
        perTurn * SPREAD_PART);
  }

  /**
   * The part of one setting in the settings' share. Its single values raise nothing, and neither
   * does their scatter.
   *
   * @param profile with the budget and the settings' share of it
   * @param molds charts of molds; 0 where all molds have one value
   * @param sides ladle sides
   * @param settings how many are watched
   * @param hasView whether the wheel's second view takes its part of the share
   * @param turnMinutes how long a turn of the wheel takes
   */
  public static AlarmBudget ofSetting(
      WheelProfile profile,
      int molds,
      int sides,
      int settings,
      boolean hasView,
      double turnMinutes) {
    int sideCharts = sideCharts(sides);
    double parts =
        SETTING_WHEEL_PART
            + (molds > 0 ? SETTING_MOLD_PART : 0)
            + (sideCharts > 0 ? SETTING_SIDE_PART : 0);
    double perTurn =
        (hasView ? 1 - BEYOND_PART : 1)
            * profile.settingsAlarmShare()
            * perTurn(profile, turnMinutes)
            / Math.max(1, settings)
            / parts;
    return new AlarmBudget(
        perTurn * SETTING_MOLD_PART / Math.max(1, molds),
        UNHEARD,
        perTurn * SETTING_WHEEL_PART,
        0,
        perTurn * SETTING_SIDE_PART / Math.max(1, sideCharts),
        UNHEARD);
  }

  /**
   * False alarms a turn of one characteristic's chart of what the effects of settings leave of the
   * wheel: its part of the settings' share.
   *
   * @param profile with the budget and the settings' share of it
   * @param characteristics how many are watched
   * @param turnMinutes how long a turn of the wheel takes
   */
  public static double beyondSettings(
      WheelProfile profile, int characteristics, double turnMinutes) {
    return BEYOND_PART
        * profile.settingsAlarmShare()
        * perTurn(profile, turnMinutes)
        / Math.max(1, characteristics);
  }

  /**
   * False alarms a turn that more was rejected than usual: so small a part, beside the others, that
   * nobody need do without any of theirs.
   *
   * @param profile with the budget
   * @param turnMinutes how long a turn of the wheel takes
   */
  public static double rejects(WheelProfile profile, double turnMinutes) {
    return REJECT_PART * perTurn(profile, turnMinutes);
  }

  /** The same where nobody listens to some of the charts. */
  public AlarmBudget hearing(boolean molds, boolean sides, boolean wheel) {
    return new AlarmBudget(
        molds ? moldShift : UNHEARD,
        pour,
        wheel ? wheelShift : UNHEARD,
        wheelPoint,
        sides ? sideShift : UNHEARD,
        spreadShift);
  }

  /** The same where only molds and single pours have charts. */
  AlarmBudget ofMoldsAlone() {
    double more = 1 / (MOLD_PART + POUR_PART);
    return new AlarmBudget(moldShift * more, pour * more, 0, 0, 0, 0);
  }

  /** A choice: at one false alarm a shift, one of ten shifts. */
  private static final double REJECT_PART = 0.1;

  /** How many false alarms a turn all charts together may raise. */
  private static double perTurn(WheelProfile profile, double turnMinutes) {
    // Charts count points, the crew counts shifts: the turn is what both have.
    double turnsPerShift = Math.max(1, profile.shiftHours() * 60 / Math.max(0.1, turnMinutes));
    return profile.falseAlarmsPerShift() / turnsPerShift;
  }

  /** How many charts tell ladle sides apart: one for two of them, one each for more. */
  static int sideCharts(int sides) {
    // Two sides differ by one contrast: a second chart would say it again, with the other sign.
    return sides < 2 ? 0 : sides == 2 ? 1 : sides;
  }
}
