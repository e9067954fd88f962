package org.evenpour.report.workbook;

import java.time.ZoneId;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.audit.AuditReport;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.casting.Unit;
import org.evenpour.report.Sentences;
import org.evenpour.report.Words;
import org.jspecify.annotations.Nullable;

/**
 * What every sheet of one workbook is written with.
 *
 * @param book the workbook
 * @param styles its cell styles
 * @param sentences the wording, the zone and the units
 * @param report what is written
 */
record Paper(SXSSFWorkbook book, Styles styles, Sentences sentences, AuditReport report) {

  Words words() {
    return sentences.words();
  }

  ZoneId zone() {
    return sentences.zone();
  }

  String say(String key, Object... values) {
    return words().say(key, values);
  }

  /** A heading whose times are in the zone that it names. */
  String zoned(String key) {
    return say(key, sentences.zoneName());
  }

  Unit unit(CharacteristicReport characteristic) {
    return sentences.figures(characteristic.wheel(), characteristic.name()).unit();
  }

  int decimals(CharacteristicReport characteristic) {
    return sentences.figures(characteristic.wheel(), characteristic.name()).decimals();
  }

  /** A value in the unit that is shown; null stays null. */
  static @Nullable Double value(Unit unit, @Nullable Double computed) {
    return computed == null ? null : (Double) unit.fromCanonical(computed);
  }

  /** A difference in the unit that is shown; null stays null. */
  static @Nullable Double difference(Unit unit, @Nullable Double computed) {
    return computed == null ? null : (Double) unit.differenceFromCanonical(computed);
  }
}
