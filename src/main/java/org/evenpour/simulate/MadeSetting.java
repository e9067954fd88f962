package org.evenpour.simulate;

/**
 * One numeric setting of a made plant.
 *
 * @param name its column; it says nothing of what it does
 * @param group as the profile names it; it says nothing either
 * @param lagTurns after how many pours in the same mold it acts
 * @param rhythm where and when it varies
 * @param phi correlation of one value with the next
 * @param center about which it varies
 * @param sd its everyday spread
 * @param decimals as recorded
 * @param missing share of its cells that nobody wrote down
 * @param kgPerUnit what one unit does to mass
 * @param mmPerUnit what one unit does to thickness, mass aside
 * @param leader index of the setting that it follows; −1 where it goes its own way
 * @param following correlation with its leader
 */
record MadeSetting(
    String name,
    String group,
    int lagTurns,
    Rhythm rhythm,
    double phi,
    double center,
    double sd,
    int decimals,
    double missing,
    double kgPerUnit,
    double mmPerUnit,
    int leader,
    double following) {

  /** Where and when a setting varies. */
  enum Rhythm {
    /** From pour to pour. */
    POUR,
    /** Each mold on its own, turn by turn. */
    MOLD,
    /** From turn to turn, for all molds alike. */
    TURN,
    /** Each ladle side on its own, turn by turn. */
    SIDE,
    /** Set and written down once a shift. */
    SHIFT
  }

  boolean acts() {
    return kgPerUnit != 0 || mmPerUnit != 0;
  }

  boolean isFollower() {
    return leader >= 0;
  }
}
