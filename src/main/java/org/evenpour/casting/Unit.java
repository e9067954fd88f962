package org.evenpour.casting;

import java.util.Locale;
import java.util.Map;

/**
 * A unit of measure as columns name it, and how it becomes the unit that figures are computed in.
 *
 * <p>Masses are computed in kg, lengths in mm, temperatures in °C; every other unit is kept as it
 * was recorded.
 *
 * @param suffix as a column's name ends, without the leading underscore; empty when there is none
 * @param symbol as people read it
 * @param canonical the suffix of the unit that figures are computed in
 * @param factor multiplies the recorded value, after {@code offset} was added
 * @param offset is added to the recorded value first
 */
public record Unit(String suffix, String symbol, String canonical, double factor, double offset) {

  /** No unit: a count, a ratio, a label. */
  public static final Unit NONE = new Unit("", "", "", 1, 0);

  /** Kilograms, the unit that masses are computed in. */
  public static final Unit KG = new Unit("kg", "kg", "kg", 1, 0);

  /** Millimeters, the unit that lengths are computed in. */
  public static final Unit MM = new Unit("mm", "mm", "mm", 1, 0);

  // Exact by definition: 1 lb = 0.45359237 kg and 1 in = 25.4 mm (international yard and pound
  // agreement, 1959).
  private static final Map<String, Unit> BY_SUFFIX =
      Map.ofEntries(
          Map.entry("kg", KG),
          Map.entry("lb", new Unit("lb", "lb", "kg", 0.45359237, 0)),
          Map.entry("g", new Unit("g", "g", "kg", 0.001, 0)),
          Map.entry("t", new Unit("t", "t", "kg", 1000, 0)),
          Map.entry("mm", MM),
          Map.entry("cm", new Unit("cm", "cm", "mm", 10, 0)),
          Map.entry("in", new Unit("in", "in", "mm", 25.4, 0)),
          Map.entry("c", new Unit("c", "°C", "c", 1, 0)),
          Map.entry("f", new Unit("f", "°F", "c", 5.0 / 9.0, -32)),
          Map.entry("kg_s", asRecorded("kg_s", "kg/s")),
          Map.entry("kg_l", asRecorded("kg_l", "kg/L")),
          Map.entry("l_min", asRecorded("l_min", "L/min")),
          Map.entry("m3_h", asRecorded("m3_h", "m³/h")),
          Map.entry("ml", asRecorded("ml", "mL")),
          Map.entry("l", asRecorded("l", "L")),
          Map.entry("s", asRecorded("s", "s")),
          Map.entry("min", asRecorded("min", "min")),
          Map.entry("bar", asRecorded("bar", "bar")),
          Map.entry("kpa", asRecorded("kpa", "kPa")),
          Map.entry("pct", asRecorded("pct", "%")),
          Map.entry("ppm", asRecorded("ppm", "ppm")),
          Map.entry("rpm", asRecorded("rpm", "rpm")));

  private static Unit asRecorded(String suffix, String symbol) {
    return new Unit(suffix, symbol, suffix, 1, 0);
  }

  /**
   * The unit that a column's name ends with; {@link #NONE} where its ending is no known unit.
   *
   * @param column such as {@code mass_kg} or {@code spray_flow_l_min}
   */
  public static Unit ofColumn(String column) {
    String name = column.toLowerCase(Locale.ROOT);
    int last = name.lastIndexOf('_');
    if (last < 1) {
      return NONE;
    }
    int before = name.lastIndexOf('_', last - 1);
    if (before > 0) {
      Unit two = BY_SUFFIX.get(name.substring(before + 1));
      if (two != null) {
        return two;
      }
    }
    Unit one = BY_SUFFIX.get(name.substring(last + 1));
    return one == null ? NONE : one;
  }

  /**
   * The unit with this suffix.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static Unit of(String suffix) {
    Unit unit = BY_SUFFIX.get(suffix.toLowerCase(Locale.ROOT));
    if (unit == null) {
      throw new IllegalArgumentException("unknown unit " + suffix);
    }
    return unit;
  }

  /** The unit that figures are computed in. */
  public Unit canonicalUnit() {
    return canonical.isEmpty() || canonical.equals(suffix) ? this : of(canonical);
  }

  /** A recorded value in the unit that figures are computed in. */
  public double toCanonical(double value) {
    return factor == 1 && offset == 0 ? value : (value + offset) * factor;
  }

  /** A computed value as this unit shows it. */
  public double fromCanonical(double value) {
    return factor == 1 && offset == 0 ? value : value / factor - offset;
  }

  /** A computed difference (a size, a standard deviation) as this unit shows it. */
  public double differenceFromCanonical(double difference) {
    return factor == 1 ? difference : difference / factor;
  }
}
