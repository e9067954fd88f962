package org.evenpour.simulate;

import org.evenpour.casting.Quantity;

/**
 * Why anodes are rejected at Tordilla whatever their figures say, and how likely: wash, molds and
 * melt act on this first.
 *
 * <pre>
 * ln(p / (1 − p)) = ln(p₀ / (1 − p₀)) + a · (mL of wash missing) + b · (°C the mold is too hot)
 *                   + c · (°C the melt is too hot) + d · (ppm of oxygen missing)
 * </pre>
 *
 * <p>each from its usual value, and negative the other way. The classes and the signs follow the
 * trade's common practice, no source; shares and slopes are this plant's own.
 */
enum Defect {
  /**
   * Sticks in the mold: the wash is thin, or holds badly on a hot mold. 50 mL less: 0.3 → 5.7 %.
   */
  STUCK("stuck", 0.003, 0.06, 0.10, 0, 0),
  /** A soft anode bends at the lift: 17 °C hotter, 0.1 → 2.1 %. */
  BOW("bow", 0.001, 0, 0.18, 0, 0),
  /**
   * Steam from wet wash, or gas of an over-reduced melt: 28 °C colder or 800 ppm less, 0.2 → 5 %.
   */
  BLISTER("blister", 0.002, 0, -0.12, 0, 0.004),
  /** Ripples and cold shuts of a cold melt, 25 °C colder: 0.2 → 2.4 %; wash carried over. */
  SURFACE("surface", 0.002, -0.02, 0, -0.10, 0),
  /** A hot melt runs into every gap, 25 °C hotter: 0.2 → 2.4 %. */
  FINS("fins", 0.002, 0, 0, 0.10, 0),
  /** A lug that is short or torn; no setting here drives it. */
  LUG("lug", 0.001, 0, 0, 0, 0),
  /** Cracked or incomplete; no setting here drives it. */
  CRACK("crack", 0.0005, 0, 0, 0, 0);

  private final String word;
  private final double usual;
  private final double perWashMissingMl;
  private final double perMoldC;
  private final double perMeltC;
  private final double perOxygenMissingPpm;

  Defect(
      String word,
      double usual,
      double perWashMissingMl,
      double perMoldC,
      double perMeltC,
      double perOxygenMissingPpm) {
    this.word = word;
    this.usual = usual;
    this.perWashMissingMl = perWashMissingMl;
    this.perMoldC = perMoldC;
    this.perMeltC = perMeltC;
    this.perOxygenMissingPpm = perOxygenMissingPpm;
  }

  /** As the log names it. */
  String word() {
    return word;
  }

  /** How likely an anode that is cast so has this defect, by itself. */
  double chanceOf(Settings cast) {
    double odds =
        usual
            / (1 - usual)
            * StrictMath.exp(
                perWashMissingMl * (Plant.WASH_VOLUME_ML - cast.washVolumeMl())
                    + perMoldC * (cast.moldTemperatureC() - Plant.MOLD_TEMPERATURE_C)
                    + perMeltC * (cast.meltTemperatureC() - Plant.MELT_TEMPERATURE_C)
                    + perOxygenMissingPpm * (Plant.OXYGEN_PPM - cast.oxygenPpm()));
    return odds / (1 + odds);
  }

  /** How likely an anode that is cast so has any of them. */
  static double chance(Settings cast) {
    double sound = 1;
    for (Defect each : values()) {
      sound *= 1 - each.chanceOf(cast);
    }
    return 1 - sound;
  }

  /**
   * Why an anode is rejected; empty where it is not. What its figures say comes first. The more
   * likely a rejection, the more of the same luck is one.
   */
  static String of(Pour.Reading reading, Settings cast, Noise noise) {
    boolean hasOne = noise.happens(chance(cast));
    double which = noise.between(0, 1);
    double mass = reading.massKg();
    Thickness thickness = reading.thickness();
    // What nobody measured is found in no one's way: every comparison with NaN is false.
    if (mass < Plant.MASS_LOWER_KG || mass > Plant.MASS_UPPER_KG) {
      return Quantity.MASS;
    }
    double mean = thickness.meanMm();
    if (mean < Plant.THICKNESS_LOWER_MM || mean > Plant.THICKNESS_UPPER_MM) {
      return Quantity.THICKNESS;
    }
    if (thickness.wedgeMm() > Plant.WEDGE_UPPER_MM + 1e-9) {
      return Quantity.WEDGE;
    }
    return hasOne ? one(cast, which) : "";
  }

  /** One of them, by how likely each is. */
  private static String one(Settings cast, double which) {
    double all = 0;
    for (Defect each : values()) {
      all += each.chanceOf(cast);
    }
    double left = which * all;
    for (Defect each : values()) {
      left -= each.chanceOf(cast);
      if (left < 0) {
        return each.word;
      }
    }
    return CRACK.word;
  }
}
