package org.evenpour.report.workbook;

import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.report.RecordText;
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

  /** A footer holds 255 letters (ECMA-376, 18.3.1.46), with those of its other parts. */
  private static final int LONGEST = 40;

  /** Sheet, wheels and period, for the foot of a page. */
  String foot(String sheet) {
    return say(
        "paper.footer",
        plain(sheet),
        plain(new RecordText(sentences, report.log()).wheels()),
        sentences.date(report.log().firstCastAt()),
        sentences.date(report.log().lastCastAt()));
  }

  /** An ampersand would be a command there. */
  private static String plain(String text) {
    String kept = Texts.cell(text).replaceAll("\\p{Cntrl}", " ");
    String cut =
        kept.codePointCount(0, kept.length()) <= LONGEST
            ? kept
            : kept.substring(0, kept.offsetByCodePoints(0, LONGEST - 1)) + "…";
    return cut.replace("&", "&&");
  }

  /** The program and its version, as the build wrote it into the jar. */
  String program() {
    String version = Paper.class.getPackage().getImplementationVersion();
    return version == null ? "Evenpour" : "Evenpour " + version;
  }
}
