package org.evenpour.simulate;

/**
 * Which setting drives what on the simulated wheel: the whole list. What is not here has no effect:
 * wash density, wash batch, crew, ambient temperature and launder level move, and nothing follows.
 *
 * <p>The signs follow the trade's common practice; the sizes are this fictional plant's own and are
 * no industry figures.
 */
public enum Effect {
  /** A faster pour overshoots the cut-off: +3 kg for +0.5 kg/s. */
  POUR_RATE_ON_MASS("pour_rate_kg_s", "mass_kg", 6.0, 0),
  /** A hotter melt runs on a little longer. */
  MELT_TEMPERATURE_ON_MASS("melt_temp_c", "mass_kg", 0.02, 0),
  /** A colder melt freezes before it has leveled, and thicker. */
  MELT_TEMPERATURE_ON_THICKNESS("melt_temp_c", "thickness_mm", -0.02, 0),
  /** More wash on walls and floor leaves less plan area for the same mass. */
  WASH_ON_THICKNESS("wash_volume_ml", "thickness_mm", 0.004, 0),
  /** The coat builds up: 70 % of it stays from turn to turn. */
  WASH_COAT_ON_THICKNESS("wash_volume_ml", "thickness_mm", 0.006, 1),
  /** Spray takes heat out of the mold, as the next pour's mold temperature shows. */
  SPRAY_ON_MOLD_TEMPERATURE("spray_flow_l_min", "mold_temp_c", -0.6, 1),
  /** Warmer cooling water leaves the mold hotter. */
  COOLING_WATER_ON_MOLD_TEMPERATURE("cooling_water_c", "mold_temp_c", 0.8, 1),
  /** On a hotter mold the wash holds badly, and the coat is thinner. */
  MOLD_TEMPERATURE_ON_THICKNESS("mold_temp_c", "thickness_mm", -0.03, 0);

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
