package org.evenpour.report.workbook;

import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.findings.AuditReport;

/** What the reader must know before using the figures, and what was read. */
final class NotesSheet {
  private NotesSheet() {}

  static void write(Paper paper) {
    AuditReport report = paper.report();
    SXSSFSheet sheet = paper.book().createSheet(paper.say("sheet.notes"));
    Grid grid = new Grid(paper, sheet);
    grid.title(paper.say("sheet.notes"));
    report.notes().forEach(note -> grid.prose(paper.words().say(note)));
    grid.gap();
    if (!report.log().files().isEmpty()) {
      grid.prose(paper.say("paper.logs", String.join(", ", report.log().files())));
    }
    grid.prose(paper.say("paper.guide"));
    grid.prose(paper.say("safety"));
    sheet.setDisplayGridlines(false);
    Printer.forPaper(paper, sheet);
    sheet.getPrintSetup().setLandscape(false);
    paper
        .book()
        .setPrintArea(paper.book().getSheetIndex(sheet), 0, Grid.COLUMNS - 1, 0, grid.next() - 1);
  }
}
