package org.evenpour.casting;

import java.util.List;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.LongColumn;
import org.jspecify.annotations.Nullable;

/**
 * All usable rows of one wheel, column by column, in the order in which they were cast.
 *
 * @param wheel its name; empty where the log has no wheel column
 * @param profile what the plant says of it
 * @param molds the molds' labels
 * @param sides the ladle sides' labels; empty where the log has no ladle column
 * @param serials the molds' own serial numbers; empty where the log has none
 * @param castAtMillis when each anode was cast, in milliseconds since 1970-01-01T00:00Z
 * @param turn the wheel's revolution of each anode
 * @param mold index of each anode's mold
 * @param side index of each anode's ladle side; −1 = missing
 * @param serial index of each anode's mold serial; −1 = missing
 * @param line where each anode stands: the file's index times 2⁴⁰ plus the line's number from 1
 * @param characteristics what is judged
 * @param points thickness by point; empty where one thickness is recorded
 * @param settings everything else that was recorded with the pour, charge, crew and wash batch
 *     included
 * @param disposition accepted or rejected; null where the log does not say
 * @param defect the defect's name; null where the log does not say
 * @param setPoint the mass that each pour was set to, in kg; NaN = missing; null where the log has
 *     no such column
 */
public record WheelRecord(
    String wheel,
    WheelProfile profile,
    Labels molds,
    Labels sides,
    Labels serials,
    LongColumn castAtMillis,
    IntColumn turn,
    IntColumn mold,
    IntColumn side,
    IntColumn serial,
    LongColumn line,
    List<Characteristic> characteristics,
    List<ThicknessPoint> points,
    List<Setting> settings,
    @Nullable Setting disposition,
    @Nullable Setting defect,
    @Nullable DoubleColumn setPoint) {

  /** The same rows with other characteristics. */
  public WheelRecord withCharacteristics(List<Characteristic> others) {
    return new WheelRecord(
        wheel,
        profile,
        molds,
        sides,
        serials,
        castAtMillis,
        turn,
        mold,
        side,
        serial,
        line,
        others,
        points,
        settings,
        disposition,
        defect,
        setPoint);
  }

  /**
   * As it stands now, whatever is cast later: another thread may read it while this one grows. No
   * value is copied.
   */
  public WheelRecord frozen() {
    return new WheelRecord(
        wheel,
        profile,
        molds.frozen(),
        sides.frozen(),
        serials.frozen(),
        castAtMillis.frozen(),
        turn.frozen(),
        mold.frozen(),
        side.frozen(),
        serial.frozen(),
        line.frozen(),
        characteristics.stream().map(Characteristic::frozen).toList(),
        points.stream().map(ThicknessPoint::frozen).toList(),
        settings.stream().map(Setting::frozen).toList(),
        disposition == null ? null : disposition.frozen(),
        defect == null ? null : defect.frozen(),
        setPoint == null ? null : setPoint.frozen());
  }

  /** How many anodes there are. */
  public int rows() {
    return castAtMillis.size();
  }

  /** One row as the engine takes it in. */
  public Anode anode(int row) {
    double[] values = new double[characteristics.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = characteristics.get(i).values().get(row);
    }
    return new Anode(
        castAtMillis.get(row),
        turn.get(row),
        mold.get(row),
        side.get(row),
        serial.get(row),
        values);
  }
}
