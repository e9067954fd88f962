package org.evenpour.casting;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the plant says of one wheel.
 *
 * @param wheel whose rows it applies to; null = to every wheel that no other profile names
 * @param molds how many molds the wheel has; null when not said
 * @param zone for times without an offset
 * @param characteristics by name: {@code mass}, {@code thickness}, {@code wedge}, …
 * @param settings by column name
 * @param headings a plant's own heading to the name that the program knows
 * @param backwardsSeconds how far a time may run backwards before its row is set aside
 * @param stopMinutes a longer gap between two casts is a stop, and start-up follows it
 * @param falseAlarmsPerShift how many false alarms a shift the crew will stand, all monitors
 *     together
 * @param shiftHours how long a shift is
 * @param pouringPlace where the crew sees the ladle pour
 * @param clockwise which way the wheel turns, seen from above
 * @param setPointMoveCosts what one move of a ladle's set-point costs: as much as so many turns
 *     poured 1 kg off target
 * @param settingsAlarmShare the part of the false alarms that settings' own moves may raise; 0 = no
 *     setting is watched
 */
public record WheelProfile(
    @Nullable String wheel,
    @Nullable Integer molds,
    ZoneId zone,
    Map<String, CharacteristicProfile> characteristics,
    Map<String, SettingProfile> settings,
    Map<String, String> headings,
    double backwardsSeconds,
    double stopMinutes,
    double falseAlarmsPerShift,
    double shiftHours,
    PouringPlace pouringPlace,
    boolean clockwise,
    double setPointMoveCosts,
    double settingsAlarmShare) {

  /** What a move costs where the profile does not say: a choice, for a few minutes' attention. */
  public static final double MOVE_COSTS = 10;

  /**
   * The settings' share of the false alarms where the profile does not say: a choice. It costs the
   * characteristics' charts next to nothing, and settings mostly move far when they move.
   */
  public static final double SETTINGS_ALARM_SHARE = 0.1;

  /** A wheel of which nothing is said: every default. */
  public static final WheelProfile DEFAULT =
      new WheelProfile(
          null,
          null,
          ZoneOffset.UTC,
          Map.of(),
          Map.of(),
          Map.of(),
          60,
          30,
          1,
          8,
          PouringPlace.RIGHT,
          true,
          MOVE_COSTS,
          SETTINGS_ALARM_SHARE);

  /** Copies the maps, so that a profile never changes. */
  public WheelProfile {
    characteristics = Map.copyOf(characteristics);
    settings = Map.copyOf(settings);
    headings = Map.copyOf(headings);
  }

  /**
   * The specification of a characteristic; {@link Specification#NONE} where the profile has none.
   */
  public Specification specification(String characteristic) {
    CharacteristicProfile profile = characteristics.get(characteristic);
    return profile == null ? Specification.NONE : profile.specification();
  }

  /** The profile of a setting; {@link SettingProfile#NONE} where there is none. */
  public SettingProfile setting(String column) {
    return settings.getOrDefault(column, SettingProfile.NONE);
  }
}
