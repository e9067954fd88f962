package org.evenpour.audit;

import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.WheelRecord;
import org.jspecify.annotations.Nullable;

/**
 * The plan area that an anode's mass and thickness imply: {@code A = m / (ρ·t)}. What the pour does
 * leaves it alone; what the cavity does moves it.
 *
 * <p>It judges molds and is not watched for signals of its own: at constant mass it moves exactly
 * when thickness does, so that every cavity would be told twice, and a further characteristic would
 * take a part of the false alarms that all charts share.
 */
final class PlanArea {
  /** Its name among the standings; figures are in m². */
  static final String NAME = "plan_area";

  /**
   * Effective density of a cast anode: 8.9 g/cm³ = 8900 kg/m³; common practice, no source. Solid
   * copper has 8.96 (handbooks), gas in the casting takes the rest.
   */
  static final double DENSITY = 8900;

  private PlanArea() {}

  /**
   * In m².
   *
   * @param massKg NaN = missing
   * @param thicknessMm NaN = missing
   */
  static double squareMeters(double massKg, double thicknessMm) {
    return massKg / (DENSITY * thicknessMm / 1000);
  }

  /** Kilograms that a millimeter more of thickness takes. */
  static double kgPerMm(double squareMeters) {
    return DENSITY * squareMeters / 1000;
  }

  /**
   * Of every row from a row on; null where mass or thickness is not recorded.
   *
   * @param from index of the first row
   */
  static double @Nullable [] of(WheelRecord record, int from) {
    Characteristic mass = named(record, Quantity.MASS);
    Characteristic thickness = named(record, Quantity.THICKNESS);
    if (mass == null || thickness == null) {
      return null;
    }
    double[] area = new double[record.rows() - from];
    for (int i = 0; i < area.length; i++) {
      double t = thickness.values().get(from + i);
      area[i] = t > 0 ? squareMeters(mass.values().get(from + i), t) : Double.NaN;
    }
    return area;
  }

  private static @Nullable Characteristic named(WheelRecord record, String name) {
    return record.characteristics().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElse(null);
  }
}
