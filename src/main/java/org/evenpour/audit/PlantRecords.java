package org.evenpour.audit;

import java.util.List;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.control.LimitsBook;

/**
 * What a plant keeps beside its casting logs and an audit goes by; what was done at the wheel goes
 * with the casting record.
 *
 * @param book approved limits and dated specifications
 * @param gauges studies of the gauges, and check measurements
 * @param marks what people said of causes, in the order in which they said it
 * @param advice what the plant itself says of what to look at first
 */
public record PlantRecords(
    LimitsBook book, List<GaugeFile> gauges, List<CauseMark> marks, PlantAdvice advice) {

  /** Nothing is kept. */
  public static final PlantRecords NONE = of(LimitsBook.NONE);

  /** Copies the lists. */
  public PlantRecords {
    gauges = List.copyOf(gauges);
    marks = List.copyOf(marks);
  }

  /** Without advice of its own. */
  public PlantRecords(LimitsBook book, List<GaugeFile> gauges, List<CauseMark> marks) {
    this(book, gauges, marks, PlantAdvice.NONE);
  }

  /** Limits and specifications alone. */
  public static PlantRecords of(LimitsBook book) {
    return new PlantRecords(book, List.of(), List.of());
  }
}
