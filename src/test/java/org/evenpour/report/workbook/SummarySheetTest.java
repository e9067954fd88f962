package org.evenpour.report.workbook;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.Reports;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The first sheet, as a plant meeting gets it. */
class SummarySheetTest {
  private static final ZoneId ZONE = ZoneId.of("-03:00");

  private static CastingRecord record;
  private static AuditReport audited;

  @BeforeAll
  static void readsTheSample() throws Exception {
    record = Sample.read(Sample.TORDILLA);
    audited = Audit.run(record);
  }

  private static XSSFWorkbook book(AuditReport report, @Nullable CastingRecord its, String language)
      throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    AuditWorkbook.write(report, its, bytes, ZONE, Words.of("org.evenpour.report.words", language));
    return new XSSFWorkbook(new ByteArrayInputStream(bytes.toByteArray()));
  }

  record Case(String name, AuditReport report, @Nullable CastingRecord record, String language) {
    @Override
    public String toString() {
      return name + " " + language;
    }
  }

  static Stream<Case> cases() {
    return Stream.of("en", "es")
        .flatMap(
            language ->
                Stream.of(
                    new Case("sample", audited, record, language),
                    new Case("plant", Reports.plant(), null, language),
                    new Case("nasty", Reports.nasty(), null, language),
                    new Case("bare", Reports.bare(), null, language)));
  }

  /**
   * Widths and heights of the sheet's own columns and rows against A4 (210 by 297 mm, ISO 216) and
   * US Letter (8.5 by 11 in, ANSI Y14.1); a column's letter is 7 pixels of 96 to the inch wide.
   */
  @ParameterizedTest
  @MethodSource("cases")
  void printsOnOnePageOfA4AndOfLetterNotBelowEightPoints(Case made) throws Exception {
    try (XSSFWorkbook book = book(made.report(), made.record(), made.language())) {
      XSSFSheet sheet = book.getSheetAt(0);
      PrintSetup print = sheet.getPrintSetup();
      assertThat(sheet.getFitToPage()).isTrue();
      assertThat(print.getFitWidth()).isEqualTo((short) 1);
      assertThat(print.getFitHeight()).isEqualTo((short) 1);
      assertThat(print.getLandscape()).isFalse();
      assertThat(print.getPaperSize()).isEqualTo(PrintSetup.A4_PAPERSIZE);
      AreaReference area = new AreaReference(book.getPrintArea(0), book.getSpreadsheetVersion());
      double wide = 0;
      for (int i = area.getFirstCell().getCol(); i <= area.getLastCell().getCol(); i++) {
        wide += sheet.getColumnWidth(i) / 256.0 * 7 * 72 / 96;
      }
      double high = 0;
      for (int i = area.getFirstCell().getRow(); i <= area.getLastCell().getRow(); i++) {
        high += requireNonNull(sheet.getRow(i), "row " + i).getHeightInPoints();
      }
      assertThat(area.getLastCell().getRow()).isEqualTo(sheet.getLastRowNum());
      double sides = sheet.getMargin(PageMargin.LEFT) + sheet.getMargin(PageMargin.RIGHT);
      double ends = sheet.getMargin(PageMargin.TOP) + sheet.getMargin(PageMargin.BOTTOM);
      for (double[] paper : new double[][] {{210 / 25.4, 297 / 25.4}, {8.5, 11}}) {
        double scale =
            Math.min(1, Math.min(72 * (paper[0] - sides) / wide, 72 * (paper[1] - ends) / high));
        assertThat(11 * scale)
            .as("points on paper " + paper[1] + " in high")
            .isGreaterThan(8 - 0.01);
      }
      assertThat(sheet.createDrawingPatriarch().getCharts()).hasSizeLessThanOrEqualTo(1);
    }
  }

  private static List<String> texts(XSSFSheet sheet) {
    List<String> texts = new ArrayList<>();
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.STRING) {
          texts.add(cell.getStringCellValue());
        }
      }
    }
    return texts;
  }

  private static Row row(XSSFSheet sheet, String first) {
    for (Row row : sheet) {
      if (row.getCell(0) != null
          && row.getCell(0).getCellType() == CellType.STRING
          && row.getCell(0).getStringCellValue().equals(first)) {
        return row;
      }
    }
    throw new AssertionError("no row " + first);
  }

  @Test
  void saysWhatWasCastWhatToDoWhatHoldsAndWhatWouldBe() throws Exception {
    try (XSSFWorkbook book = book(audited, record, "en")) {
      XSSFSheet sheet = book.getSheetAt(0);
      List<String> texts = texts(sheet);
      List<String> order =
          List.of("1. ", "2. To do this week", "3. What holds now", "4. Tolerance, Ppk");
      int at = -1;
      for (String heading : order) {
        int next = -1;
        for (int i = at + 1; i < texts.size() && next < 0; i++) {
          next = texts.get(i).startsWith(heading) ? i : -1;
        }
        assertThat(next).as(heading).isGreaterThan(at);
        at = next;
      }
      // What is to be minded stands before the molds that are to be worked on.
      assertThat(
              texts.indexOf(
                  "Check first that the mold is dry. Mold work is hot and heavy: wheel stopped and locked, people back."))
          .isBetween(0, texts.indexOf("level or dress") - 1);
      assertThat(texts).contains("Who", "By when", "bottom left").doesNotContain("○ has passed");
      // Nothing of signals that have passed.
      audited.signals().stream()
          .filter(signal -> !signal.open())
          .forEach(signal -> assertThat(texts).doesNotContain(signal.id()));
      assertThat(sheet.createDrawingPatriarch().getCharts()).hasSize(1);
    }
  }

  /** Counted anew from the log's own lines. */
  @Test
  void setsTheSecondHalfAgainstTheFirst() throws Exception {
    List<String> lines = Files.readAllLines(Sample.TORDILLA.resolve("casting-log.csv"));
    List<String> heads = List.of(lines.get(0).split(",", -1));
    long from = Long.MAX_VALUE;
    long to = Long.MIN_VALUE;
    for (String line : lines.subList(1, lines.size())) {
      long at = at(line);
      from = Math.min(from, at);
      to = Math.max(to, at);
    }
    long[] cast = new long[2];
    long[] rejected = new long[2];
    double[] kilograms = new double[2];
    long[] weighed = new long[2];
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      int half = at(line) - from <= to - at(line) ? 0 : 1;
      cast[half]++;
      String kg = cells[heads.indexOf("mass_kg")];
      if (!kg.isEmpty()) {
        kilograms[half] += Double.parseDouble(kg);
        weighed[half]++;
      }
      rejected[half] += cells[heads.indexOf("disposition")].equals("rejected") ? 1 : 0;
    }
    try (XSSFWorkbook book = book(audited, record, "en")) {
      Row all = row(book.getSheetAt(0), "Cast");
      Row bad = row(book.getSheetAt(0), "Rejected");
      for (int half = 0; half < 2; half++) {
        assertThat(all.getCell(4 + 3 * half).getNumericCellValue()).isEqualTo(cast[half]);
        // Those without a mass weigh what the others do; sums in another order.
        assertThat(all.getCell(6 + 3 * half).getNumericCellValue())
            .isCloseTo(kilograms[half] / weighed[half] * cast[half] / 1000, within(1e-9));
        assertThat(bad.getCell(4 + 3 * half).getNumericCellValue()).isEqualTo(rejected[half]);
        assertThat(bad.getCell(5 + 3 * half).getNumericCellValue())
            .isEqualTo((double) rejected[half] / cast[half]);
      }
      assertThat(all.getCell(1).getNumericCellValue()).isEqualTo(cast[0] + cast[1]);
      assertThat(bad.getCell(10).getCellType()).isEqualTo(CellType.FORMULA);
    }
  }

  private static long at(String line) {
    return java.time.OffsetDateTime.parse(line.substring(0, line.indexOf(',')))
        .toInstant()
        .toEpochMilli();
  }

  @Test
  void leavesOutAnEarlierPeriodWhereTheRecordIsNotAtHand() throws Exception {
    try (XSSFWorkbook book = book(Reports.plant(), null, "en")) {
      assertThat(texts(book.getSheetAt(0)))
          .contains("1. Cast and rejected")
          .doesNotContain("First half", "Second half");
    }
  }

  @Test
  void leadsFromEachSignalThatHoldsToItsRow() throws Exception {
    try (XSSFWorkbook book = book(audited, record, "es")) {
      int led = 0;
      for (var link : book.getSheetAt(0).getHyperlinkList()) {
        CellReference to = new CellReference(link.getAddress());
        String said =
            book.getSheetAt(0)
                .getRow(link.getFirstRow())
                .getCell(link.getFirstColumn())
                .getStringCellValue();
        XSSFSheet sheet = requireNonNull(book.getSheet(to.getSheetName()), link.getAddress());
        if (said.matches("S\\d+")) {
          led++;
          assertThat(sheet.getRow(to.getRow()).getCell(to.getCol()).getStringCellValue())
              .isEqualTo(said);
        }
      }
      assertThat(led)
          .isPositive()
          .isLessThanOrEqualTo(
              (int) audited.signals().stream().filter(signal -> signal.open()).count());
    }
  }
}
