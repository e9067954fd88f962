package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/**
 * One simulated anode, as cast and before the gauges round it.
 *
 * @param castAt to the second
 * @param charge number
 * @param turn number, counted through the whole log
 * @param mold number
 * @param moldSerial of the mold that stood there
 * @param ladle side, A or B
 * @param crew at the wheel
 * @param massKg of the anode
 * @param thickness at five points
 * @param reading what was written down of mass and thickness
 * @param settings recorded with the pour
 * @param defect why it was rejected; empty where it was accepted
 * @param rejectChance how likely its settings made one that is rejected, whatever its figures
 */
record Pour(
    OffsetDateTime castAt,
    int charge,
    int turn,
    int mold,
    String moldSerial,
    String ladle,
    String crew,
    double massKg,
    Thickness thickness,
    Reading reading,
    Settings settings,
    String defect,
    double rejectChance) {

  /**
   * What scale and gauge showed and somebody wrote down.
   *
   * @param massKg NaN = missing
   * @param thickness NaN = missing
   */
  record Reading(double massKg, Thickness thickness) {}

  private static final DateTimeFormatter ISO = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  /** The casting log's columns. */
  static final List<String> COLUMNS =
      List.of(
          "cast_at",
          "wheel",
          "charge",
          "turn",
          "mold",
          "mold_serial",
          "ladle",
          "crew",
          "target_mass_kg",
          "mass_kg",
          "thickness_top_left_mm",
          "thickness_top_right_mm",
          "thickness_bottom_left_mm",
          "thickness_bottom_right_mm",
          "thickness_center_mm",
          "pour_rate_kg_s",
          "wash_volume_ml",
          "wash_density_kg_l",
          "spray_flow_l_min",
          "mold_temp_c",
          "melt_temp_c",
          "oxygen_ppm",
          "cooling_water_c",
          "wash_batch",
          "ambient_c",
          "launder_level_mm",
          "disposition",
          "defect");

  /** As the log shows it, a cell for each of {@link #COLUMNS}. */
  List<String> cells() {
    return List.of(
        castAt.format(ISO),
        Plant.WHEEL,
        Integer.toString(charge),
        Integer.toString(turn),
        Integer.toString(mold),
        moldSerial,
        ladle,
        crew,
        Decimal.text(
            settings.targetMassKg(),
            settings.targetMassKg() == StrictMath.rint(settings.targetMassKg()) ? 0 : 1),
        Decimal.text(reading.massKg(), 1),
        Decimal.text(reading.thickness().topLeftMm(), 1),
        Decimal.text(reading.thickness().topRightMm(), 1),
        Decimal.text(reading.thickness().bottomLeftMm(), 1),
        Decimal.text(reading.thickness().bottomRightMm(), 1),
        Decimal.text(reading.thickness().centerMm(), 1),
        Decimal.text(settings.pourRateKgS(), 2),
        Decimal.text(settings.washVolumeMl(), 0),
        Decimal.text(settings.washDensityKgL(), 2),
        Decimal.text(settings.sprayFlowLMin(), 0),
        Decimal.text(settings.moldTemperatureC(), 0),
        Decimal.text(settings.meltTemperatureC(), 0),
        Decimal.text(settings.oxygenPpm(), 0),
        Decimal.text(settings.coolingWaterC(), 1),
        settings.washBatch(),
        Decimal.text(settings.ambientC(), 1),
        Decimal.text(settings.launderLevelMm(), 0),
        defect.isEmpty() ? "accepted" : "rejected",
        defect);
  }
}
