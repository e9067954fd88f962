package org.evenpour.simulate;

/**
 * The figures of Tordilla, a smelter that exists only here: its anode, its tolerances and how far
 * everything wanders when nothing is wrong.
 */
final class Plant {
  static final String WHEEL = "T1";
  static final double TARGET_MASS_KG = 390;
  static final double CHARGE_KG = 300_000;

  /** 8.9 g/cm³ over a plan of 1.00 × 0.98 m. */
  static final double MASS_PER_MM_KG = 8.9 * 1.00 * 0.98;

  static final double MASS_LOWER_KG = 385;
  static final double MASS_UPPER_KG = 395;
  static final double THICKNESS_LOWER_MM = 43.2;
  static final double THICKNESS_TARGET_MM = 44.7;
  static final double THICKNESS_UPPER_MM = 46.2;
  static final double WEDGE_UPPER_MM = 2.5;

  /** The spread of one pour about its mold and turn; fault sizes are given in it. */
  static final double POUR_SIGMA_MASS_KG = 1.2;

  static final double POUR_SIGMA_THICKNESS_MM = 0.20;
  static final double POUR_SIGMA_WEDGE_MM = 0.20;

  /** The spread of a turn's mean over all molds. */
  static final double TURN_SIGMA_MASS_KG = 0.8;

  static final double TURN_SIGMA_THICKNESS_MM = 0.12;
  static final double TURN_SIGMA_WEDGE_MM = 0.05;

  static final double POUR_RATE_KG_S = 15;
  static final double WASH_VOLUME_ML = 640;
  static final double WASH_DENSITY_KG_L = 1.24;
  static final double SPRAY_FLOW_L_MIN = 120;
  static final double MOLD_TEMPERATURE_C = 172;
  static final double MELT_TEMPERATURE_C = 1171;
  static final double OXYGEN_PPM = 1200;
  static final double LEAST_OXYGEN_PPM = 100;
  static final double COOLING_WATER_C = 20;
  static final double AMBIENT_C = 14;
  static final double LAUNDER_LEVEL_MM = 140;

  /** The part of the coat that stays in the mold from one turn to the next. */
  static final double WASH_KEPT = 0.7;

  static final double CAST_INTERVAL_SECONDS = 30;

  /**
   * Above this a mold warps, by so much a cast and degree: its corners lift. Over a mold's life of
   * 12–14 mm and some 1600 casts the pace is 0.008 mm a cast; 7 °C above, it is 0.014.
   */
  static final double WARPS_ABOVE_C = 182;

  static final double WARP_MM_PER_C = 0.002;

  /**
   * What the corners are thinner and the center thicker than the mean depth, for 1 mm between them:
   * a floor that falls with the square of the distance from its center, corners measured at 0.85 of
   * the half-diagonal. The mean of five points then reads 0.34 mm low.
   */
  static final double DISH_AT_CORNERS = 0.54;

  static final double DISH_AT_CENTER = 0.46;

  /** Below this, wash that is still wet makes the points scatter, by a tenth more a degree. */
  static final double WET_BELOW_C = 155;

  /** A longer stop is followed by one turn of start-up. */
  static final double START_UP_AFTER_MINUTES = 30;

  private Plant() {}
}
