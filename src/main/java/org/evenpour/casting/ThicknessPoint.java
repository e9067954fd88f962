package org.evenpour.casting;

import org.evenpour.column.DoubleColumn;

/**
 * The thickness at one named point of the anode.
 *
 * @param point as the column names it, such as {@code top_left}
 * @param values in mm, one per row of the record; NaN = not measured
 */
public record ThicknessPoint(String point, DoubleColumn values) {

  /** As it stands now, whatever is added later. */
  ThicknessPoint frozen() {
    return new ThicknessPoint(point, values.frozen());
  }
}
