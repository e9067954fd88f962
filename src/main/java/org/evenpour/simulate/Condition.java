package org.evenpour.simulate;

/** In what condition a simulated plant is while nothing is wrong with it. */
public enum Condition {
  /**
   * As formulas have it: normal pours, weights to 0.1 kg, every anode weighed and measured, molds
   * that do not wear.
   */
  IDEAL,
  /**
   * As plants are: ladles that are cut a little late or short, scales and gauges with coarse
   * divisions, values that nobody wrote down, molds that wear.
   */
  ORDINARY
}
