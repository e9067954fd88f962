package org.evenpour.simulate;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Unit;

/**
 * What a lasting change of one unit of a setting truly does to a characteristic in the end: all
 * paths and all that is carried over added up, whatever the lags.
 *
 * @param wheel where
 * @param setting its column
 * @param characteristic {@code mass} or {@code thickness}; settings never act on the wedge
 * @param size in the characteristic's unit; 0 where the setting has no effect
 */
record LastingEffect(String wheel, String setting, String characteristic, double size) {

  static final List<String> COLUMNS =
      List.of("wheel", "setting", "characteristic", "effect", "unit_of_effect");

  private static final MathContext SHOWN = new MathContext(6, RoundingMode.HALF_EVEN);

  /** The numeric settings of the wheel at Tordilla, in the order of its log. */
  private static final List<String> SETTINGS =
      List.of(
          "pour_rate_kg_s",
          "wash_volume_ml",
          "wash_density_kg_l",
          "spray_flow_l_min",
          "mold_temp_c",
          "melt_temp_c",
          "oxygen_ppm",
          "cooling_water_c",
          "ambient_c",
          "launder_level_mm");

  /** Those of the wheel at Tordilla, from the paths that {@link Effect} lists. */
  static List<LastingEffect> ofTordilla() {
    List<LastingEffect> all = new ArrayList<>();
    for (String setting : SETTINGS) {
      all.add(new LastingEffect(Plant.WHEEL, setting, Quantity.MASS, along(setting, "mass_kg")));
      all.add(
          new LastingEffect(
              Plant.WHEEL, setting, Quantity.THICKNESS, along(setting, "thickness_mm")));
    }
    return List.copyOf(all);
  }

  /** Along every path from one column to another; mass passes into thickness. */
  private static double along(String from, String to) {
    if (from.equals(to)) {
      return 1;
    }
    double further = from.equals("mass_kg") ? along("thickness_mm", to) / Plant.MASS_PER_MM_KG : 0;
    return further
        + Stream.of(Effect.values())
            .filter(effect -> effect.setting().equals(from))
            .mapToDouble(effect -> effect.size() * along(effect.actsOn(), to))
            .sum();
  }

  /** As the file shows it, to six digits, a cell for each of {@link #COLUMNS}. */
  List<String> cells() {
    String unit = Unit.ofColumn(setting).symbol();
    return List.of(
        wheel,
        setting,
        characteristic,
        size == 0 ? "0" : new BigDecimal(size, SHOWN).stripTrailingZeros().toPlainString(),
        (characteristic.equals(Quantity.MASS) ? "kg" : "mm")
            + (unit.isEmpty() ? "" : " per " + unit));
  }
}
