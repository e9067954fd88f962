package org.evenpour.casting;

import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.jspecify.annotations.Nullable;

/**
 * One recorded setting: a number or a category for each anode.
 *
 * @param name the column's name
 * @param unit as recorded; settings are never converted
 * @param profile its group and lag
 * @param numbers one per row, NaN = missing; null for a category
 * @param categories one label index per row, −1 = missing; null for a number
 * @param labels of the categories; empty for a number
 */
public record Setting(
    String name,
    Unit unit,
    SettingProfile profile,
    @Nullable DoubleColumn numbers,
    @Nullable IntColumn categories,
    Labels labels) {

  /** As it stands now, whatever is added later. */
  Setting frozen() {
    return new Setting(
        name,
        unit,
        profile,
        numbers == null ? null : numbers.frozen(),
        categories == null ? null : categories.frozen(),
        labels.frozen());
  }
}
