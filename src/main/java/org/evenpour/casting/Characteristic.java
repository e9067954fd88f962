package org.evenpour.casting;

import org.evenpour.column.DoubleColumn;

/**
 * What is judged of every anode.
 *
 * @param name {@code mass}, {@code thickness}, {@code wedge}, {@code mass_deviation}
 * @param unit in which figures are computed
 * @param displayUnit in which people read it
 * @param specification in the unit that figures are computed in
 * @param values one per row of the record; NaN = not measured
 */
public record Characteristic(
    String name, Unit unit, Unit displayUnit, Specification specification, DoubleColumn values) {

  /** As it stands now, whatever is added later. */
  Characteristic frozen() {
    return new Characteristic(name, unit, displayUnit, specification, values.frozen());
  }
}
