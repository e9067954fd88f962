package org.evenpour.simulate;

/**
 * What is imperfect about a sound plant: its pours, its scale and gauge, its records, its molds.
 * All figures are choices and no industry figures.
 *
 * @param pours how a pour scatters
 * @param massStepKg the division to which the scale shows
 * @param thicknessStepMm the division to which the gauge shows; 0 = to as many decimals as the log
 *     has
 * @param massMissing share of anodes that nobody weighed
 * @param thicknessMissing share of anodes that nobody measured
 * @param pointMissing share of anodes of whose points one is not written down
 * @param wear by which every mold grows thinner in {@link #WEAR_TURNS} turns, in s.d. of a pour's
 *     thickness; each mold's own differs from it by {@link #WEAR_DIFFERS} of it (s.d.)
 */
record Imperfections(
    PourScatter pours,
    double massStepKg,
    double thicknessStepMm,
    double massMissing,
    double thicknessMissing,
    double pointMissing,
    double wear) {

  static final double WEAR_TURNS = 400;
  static final double WEAR_DIFFERS = 0.3;

  private static final Imperfections NONE =
      new Imperfections(PourScatter.NORMAL, 0.1, 0, 0, 0, 0, 0);

  private static final Imperfections TORDILLA =
      new Imperfections(new PourScatter(0.5, 0.02, 1.25, 0.75), 0.5, 0.1, 0.005, 0.015, 0.005, 0.5);

  /** Those of Tordilla. */
  static Imperfections ofTordilla(Condition condition) {
    return condition == Condition.IDEAL ? NONE : TORDILLA;
  }

  /**
   * Those of a made plant.
   *
   * @param pourKg s.d. of its pours; a scale shows no coarser than a pour scatters
   */
  static Imperfections draw(Condition condition, Noise noise, double pourKg) {
    if (condition == Condition.IDEAL) {
      return NONE;
    }
    double runOn = noise.happens(0.7) ? noise.between(0.3, 0.75) : -noise.between(0.2, 0.6);
    double mishaps = noise.between(0, 0.04);
    double mishapSize = noise.between(1, 2);
    double lateShare = noise.between(0.2, 0.9);
    double coarse = noise.happens(0.3) && pourKg >= 1.5 ? 1 : 0.5;
    return new Imperfections(
        new PourScatter(runOn, mishaps, mishapSize, lateShare),
        noise.happens(0.3) ? 0.1 : coarse,
        0.1,
        noise.between(0, 0.02),
        noise.between(0, 0.03),
        noise.between(0, 0.01),
        noise.happens(0.7) ? noise.between(0.2, 0.85) : 0);
  }

  /** What a mold loses at each turn, in s.d. of a pour's thickness. */
  double wearPerTurn(Noise noise) {
    return wear / WEAR_TURNS * (1 + noise.normalWithinTwo(WEAR_DIFFERS));
  }

  /** What the scale shows. */
  double massShown(double kg) {
    return shown(kg, massStepKg);
  }

  /** What the gauge shows. */
  double thicknessShown(double mm) {
    return thicknessStepMm == 0 ? mm : shown(mm, thicknessStepMm);
  }

  /**
   * The nearest division, half up. One over the step is a whole number, and multiples are exact.
   */
  private static double shown(double value, double step) {
    double parts = Math.rint(1 / step);
    return Math.round(value * parts) / parts;
  }
}
