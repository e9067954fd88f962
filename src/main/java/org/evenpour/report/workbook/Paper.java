package org.evenpour.report.workbook;

import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.report.Sentences;
import org.evenpour.words.Words;

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

  String say(String key, Object... values) {
    return words().say(key, values);
  }

  Unit unit(CharacteristicReport characteristic) {
    return sentences.figures(characteristic.wheel(), characteristic.name()).unit();
  }
}
