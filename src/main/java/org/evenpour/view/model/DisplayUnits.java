package org.evenpour.view.model;

import org.evenpour.casting.Unit;

/** In which units people read masses and lengths; everything else is shown as it is computed. */
public enum DisplayUnits {
  /** Kilograms and millimeters. */
  METRIC("kg", "mm"),
  /** Pounds and inches. */
  POUND_INCH("lb", "in");

  private final String mass;
  private final String length;

  DisplayUnits(String mass, String length) {
    this.mass = mass;
    this.length = length;
  }

  /** The units that a plant's own display unit belongs to. */
  public static DisplayUnits like(Unit unit) {
    return unit.suffix().equals("lb") || unit.suffix().equals("in") ? POUND_INCH : METRIC;
  }

  /**
   * The unit to show a value in.
   *
   * @param computed suffix of the unit that it is computed in
   */
  public Unit shown(String computed) {
    return switch (computed) {
      case "kg" -> Unit.of(mass);
      case "mm" -> Unit.of(length);
      default -> org.evenpour.report.Sentences.unit(computed);
    };
  }

  /** Both symbols, as a switch is labeled. */
  public String label() {
    return mass + " · " + length;
  }
}
