package org.evenpour.report.workbook;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.Reports;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the whole book comes to on paper, from each sheet's own print area, widths, heights, margins
 * and breaks, as a program that prints it counts: A4 is 210 by 297 mm (ISO 216), a letter of a
 * column 7 pixels of 96 to the inch (Calibri 11), and a row goes over whole.
 */
class PrintedPagesTest {
  private static final double INCH = 72;
  private static final int MOST_PAGES = 25;

  record Case(String name, AuditReport report, @Nullable CastingRecord record, String language) {
    @Override
    public String toString() {
      return name + " " + language;
    }
  }

  static Stream<Case> cases() throws Exception {
    CastingRecord record = Sample.read(Sample.TORDILLA);
    AuditReport audited = Audit.run(record);
    return Stream.of(
        new Case("sample", audited, record, "en"),
        new Case("sample", audited, record, "es"),
        new Case("long", Reports.plant(4_000), null, "en"),
        new Case("nasty", Reports.nasty(), null, "en"),
        new Case("bare", Reports.bare(), null, "en"));
  }

  /** Pages of a sheet and the size of its body text there. */
  private record Paper(int pages, double points) {}

  private static Paper printed(XSSFWorkbook book, XSSFSheet sheet) {
    PrintSetup print = sheet.getPrintSetup();
    assertThat(print.getPaperSize()).isEqualTo(PrintSetup.A4_PAPERSIZE);
    assertThat(sheet.getFitToPage()).isTrue();
    assertThat(print.getFitWidth()).isEqualTo((short) 1);
    String area =
        requireNonNull(book.getPrintArea(book.getSheetIndex(sheet)), sheet.getSheetName());
    // A name with commas would be read as several areas.
    AreaReference cells =
        new AreaReference(area.substring(area.lastIndexOf('!') + 1), book.getSpreadsheetVersion());
    double wide = 0;
    for (int i = cells.getFirstCell().getCol(); i <= cells.getLastCell().getCol(); i++) {
      wide += sheet.getColumnWidth(i) / 256.0 * 7 * INCH / 96;
    }
    double across = (print.getLandscape() ? 297 : 210) / 25.4 * INCH;
    double down = (print.getLandscape() ? 210 : 297) / 25.4 * INCH;
    across -= INCH * (sheet.getMargin(PageMargin.LEFT) + sheet.getMargin(PageMargin.RIGHT));
    down -= INCH * (sheet.getMargin(PageMargin.TOP) + sheet.getMargin(PageMargin.BOTTOM));
    double scale = Math.min(1, across / wide);
    double head =
        sheet.getRepeatingRows() == null
            ? 0
            : height(sheet, sheet.getRepeatingRows().getFirstRow());
    int pages = 1;
    double used = 0;
    for (int i = cells.getFirstCell().getRow(); i <= cells.getLastCell().getRow(); i++) {
      double next = height(sheet, i);
      boolean isBroken = i > cells.getFirstCell().getRow() && sheet.isRowBroken(i - 1);
      if (isBroken || (used + next) * scale > down) {
        pages++;
        used = head;
      } else if (i == cells.getFirstCell().getRow() && i > 0) {
        used = head;
      }
      used += next;
    }
    if (print.getFitHeight() == 1 && pages > 1) {
      double high = 0;
      for (int i = cells.getFirstCell().getRow(); i <= cells.getLastCell().getRow(); i++) {
        high += height(sheet, i);
      }
      return new Paper(1, 11 * Math.min(scale, down / high));
    }
    return new Paper(pages, 11 * scale);
  }

  private static double height(XSSFSheet sheet, int index) {
    Row row = sheet.getRow(index);
    return row == null ? sheet.getDefaultRowHeightInPoints() : row.getHeightInPoints();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theBookIsReadOnPaperAndIsNoLongerThanAMeetingReads(Case made) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    AuditWorkbook.write(
        made.report(),
        made.record(),
        bytes,
        ZoneId.of("-03:00"),
        Words.of("org.evenpour.report.words", made.language()));
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes.toByteArray()))) {
      String anodes = Words.of("org.evenpour.report.words", made.language()).say("sheet.anodes");
      Map<String, Integer> pages = new LinkedHashMap<>();
      for (int i = 0; i < book.getNumberOfSheets(); i++) {
        XSSFSheet sheet = book.getSheetAt(i);
        Paper its = printed(book, sheet);
        assertThat(its.points()).as("points on " + sheet.getSheetName()).isGreaterThan(7.99);
        if (!sheet.getSheetName().startsWith(anodes)) {
          pages.put(sheet.getSheetName(), its.pages());
        }
        assertThat(sheet.getFooter().getLeft())
            .startsWith(sheet.getSheetName().replace("&", "&&") + " · ");
        assertThat(sheet.getFooter().getCenter()).startsWith("Evenpour");
        assertThat(sheet.getFooter().getRight()).contains("&P", "&N");
        assertThat(sheet.getCTWorksheet().getHeaderFooter().getScaleWithDoc()).isFalse();
      }
      assertThat(pages.values().stream().mapToInt(one -> one).sum())
          .as(pages.toString())
          .isLessThanOrEqualTo(MOST_PAGES);
    }
  }
}
