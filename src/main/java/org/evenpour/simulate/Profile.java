package org.evenpour.simulate;

import java.util.Locale;

/** The simulated wheel's profile as YAML. */
final class Profile {
  private Profile() {}

  static String text(Scenario scenario) {
    return String.format(
        Locale.ROOT,
        """
        wheel: %s
        molds: %d
        zone: "%s"
        false_alarms_per_shift: 0.2   # one false alarm in five shifts, all charts together
        characteristics:
          mass: {unit: kg, lower: %.0f, target: %.0f, upper: %.0f, plausible: [200, 600]}
          thickness: {unit: mm, lower: %.1f, target: %.1f, upper: %.1f, plausible: [20, 80]}
          wedge: {unit: mm, upper: %.1f}
        settings:
          pour_rate_kg_s: {group: pour}
          launder_level_mm: {group: pour}
          wash_volume_ml: {group: wash}
          wash_density_kg_l: {group: wash}
          spray_flow_l_min: {group: cooling, lag_turns: 1}
          cooling_water_c: {group: cooling, lag_turns: 1}
          mold_temp_c: {group: cooling}
          melt_temp_c: {group: melt}
          oxygen_ppm: {group: melt}
          ambient_c: {group: hall}
        """,
        Plant.WHEEL,
        scenario.molds(),
        scenario.start().getOffset().getId(),
        Plant.MASS_LOWER_KG,
        Plant.TARGET_MASS_KG,
        Plant.MASS_UPPER_KG,
        Plant.THICKNESS_LOWER_MM,
        Plant.THICKNESS_TARGET_MM,
        Plant.THICKNESS_UPPER_MM,
        Plant.WEDGE_UPPER_MM);
  }
}
