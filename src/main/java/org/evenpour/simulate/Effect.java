package org.evenpour.simulate;

/**
 * Which setting drives what on the simulated wheel: the whole list. What is not here has no effect:
 * wash density, wash batch, crew, ambient temperature and launder level move, and nothing follows.
 *
 * <p>The signs follow the trade's common practice; the sizes are this fictional plant's own and are
 * no industry figures. At constant mass thickness is mass / (density · plan area), so that what
 * acts on thickness acts on the density, by gas in the metal, or on the plan area: 0.1 % of either
 * is 0.045 mm of 44.7.
 */
public enum Effect {
  /**
   * A faster pour overshoots the cut-off. The ladle tilts back within 12 s, in which the stream
   * falls evenly to nothing: rate · 12 s / 2 is still to come. The cut-off reckons with the usual
   * rate, so that 1 kg/s more is 6 kg more.
   */
  POUR_RATE_ON_MASS("pour_rate_kg_s", "mass_kg", 6.0, 0),
  /** A hotter melt runs on a little longer. */
  MELT_TEMPERATURE_ON_MASS("melt_temp_c", "mass_kg", 0.02, 0),
  /**
   * The less oxygen, the more gas comes out as the metal freezes, and the face swells: 600 ppm less
   * is 0.7 % of the volume, as 8.9 is to 8.96 g/cm³, and 0.31 mm.
   */
  OXYGEN_ON_THICKNESS("oxygen_ppm", "thickness_mm", -0.00052, 0),
  /**
   * More wash on the walls leaves less plan area. 1 mL of 1.24 kg/L carries 0.31 g of solids, 0.07
   * cm³: 0.39 µm on 0.177 m² of walls, and 0.8 µm less of length and of width.
   */
  WASH_ON_THICKNESS("wash_volume_ml", "thickness_mm", 0.00007, 0),
  /** The coat builds up: 70 % of it stays from turn to turn, in the end 0.7 / 0.3 as much again. */
  WASH_COAT_ON_THICKNESS("wash_volume_ml", "thickness_mm", 0.00016, 1),
  /** Spray takes heat out of the mold, as the next pour's mold temperature shows. */
  SPRAY_ON_MOLD_TEMPERATURE("spray_flow_l_min", "mold_temp_c", -0.6, 1),
  /** Warmer cooling water leaves the mold hotter. */
  COOLING_WATER_ON_MOLD_TEMPERATURE("cooling_water_c", "mold_temp_c", 0.8, 1),
  /** On a colder mold the wash dries worse and gives steam: 0.027 % of the volume a degree. */
  MOLD_TEMPERATURE_ON_GAS("mold_temp_c", "thickness_mm", -0.012, 0),
  /** A hotter mold is wider: 17·10⁻⁶ a degree in length and in width. */
  MOLD_TEMPERATURE_ON_PLAN("mold_temp_c", "thickness_mm", -0.0015, 0);

  private final String setting;
  private final String actsOn;
  private final double size;
  private final int lagTurns;

  Effect(String setting, String actsOn, double size, int lagTurns) {
    this.setting = setting;
    this.actsOn = actsOn;
    this.size = size;
    this.lagTurns = lagTurns;
  }

  /** The column that acts. */
  public String setting() {
    return setting;
  }

  /** The column, or {@code thickness_mm} for all points together, that follows. */
  public String actsOn() {
    return actsOn;
  }

  /** In units of {@link #actsOn} for one unit of {@link #setting}. */
  public double size() {
    return size;
  }

  /** After how many pours in the same mold it begins to act. */
  public int lagTurns() {
    return lagTurns;
  }

  double of(double deviation) {
    return size * deviation;
  }
}
