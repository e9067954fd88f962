package org.evenpour.live;

import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;

/**
 * All that was cast until now, and the newest audit of it, which is of the turns that had closed
 * when it was made. Nothing in it changes any more.
 *
 * @param record of the wheels that the report is of
 * @param report with the signals as they stand now
 * @param plant what it went by beside the log
 * @param reading the same object as long as the record only grows; a log that is read anew, by
 *     another profile, has other rows
 */
public record RecordNow(
    CastingRecord record, AuditReport report, PlantRecords plant, Object reading) {

  /** Of a log at rest. */
  public RecordNow(CastingRecord record, AuditReport report, PlantRecords plant) {
    this(record, report, plant, record);
  }

  /** Whether this begins with the rows of an earlier one. */
  public boolean goesOnFrom(RecordNow earlier) {
    return reading.equals(earlier.reading);
  }
}
