package org.evenpour.report.workbook;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Causes;
import org.evenpour.audit.MadeCrews;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.Reports;
import org.evenpour.report.table.TurnTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumData;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTScatterSer;

class AuditWorkbookTest {
  private static final ZoneId SANTIAGO = ZoneId.of("America/Santiago");

  @TempDir Path folder;

  private XSSFWorkbook written(AuditReport report) throws IOException {
    Path file = folder.resolve("audit.xlsx");
    AuditWorkbook.write(report, null, file, SANTIAGO);
    return new XSSFWorkbook(file.toFile().getPath());
  }

  /** Index of the headings of the table that has the filter. */
  private static int head(Sheet sheet) {
    var filter = ((XSSFSheet) sheet).getCTWorksheet().getAutoFilter();
    return filter == null ? 0 : CellRangeAddress.valueOf(filter.getRef()).getFirstRow();
  }

  private static int column(Sheet sheet, String heading) {
    for (Cell cell : sheet.getRow(head(sheet))) {
      if (cell.getStringCellValue().equals(heading)) {
        return cell.getColumnIndex();
      }
    }
    throw new AssertionError("no heading " + heading + " on " + sheet.getSheetName());
  }

  private static Cell cell(Sheet sheet, int row, String heading) {
    return requireNonNull(sheet.getRow(head(sheet) + row).getCell(column(sheet, heading)), heading);
  }

  @Test
  void putsTheSheetsInTheOrderOfAMeeting() throws IOException {
    try (XSSFWorkbook book = written(Reports.plant())) {
      List<String> names = new ArrayList<>();
      book.forEach(sheet -> names.add(sheet.getSheetName()));
      assertThat(names)
          .containsExactly(
              "Summary",
              "Specification",
              "Whole wheel",
              "Mold offsets",
              "Limits used",
              "Signals",
              "Links",
              "Molds",
              "Capability",
              "Run tests",
              "Effects",
              "Events",
              "Set-aside rows",
              "Notes",
              "Turns");
      assertThat(book.getActiveSheetIndex()).isZero();
    }
  }

  @Test
  void givesEachLevelOfACategoryItsRow() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0.12, 0.04, -0.16);
    var levels =
        requireNonNull(MadeCrews.setting(report, "crew").effects().get(0).inFull().levels());
    try (XSSFWorkbook book = written(report)) {
      Sheet effects = book.getSheet("Effects");
      assertThat(cell(effects, 1, "Setting").getStringCellValue()).isEqualTo("crew");
      assertThat(cell(effects, 1, "Known").getStringCellValue()).isEqualTo("an effect");
      assertThat(cell(effects, 1, "Chance of such levels").getNumericCellValue())
          .isEqualTo(levels.p());
      for (int i = 0; i < 3; i++) {
        var level = levels.each().get(i);
        assertThat(cell(effects, 2 + i, "Level").getStringCellValue()).isEqualTo(level.name());
        assertThat(cell(effects, 2 + i, "Effect of the level").getNumericCellValue())
            .isEqualTo(level.effect());
        assertThat(cell(effects, 2 + i, "Effect of the level, 95 % from").getNumericCellValue())
            .isEqualTo(level.low());
        assertThat(cell(effects, 2 + i, "Effect of the level, 95 % to").getNumericCellValue())
            .isEqualTo(level.high());
        assertThat(cell(effects, 2 + i, "Visits").getNumericCellValue()).isEqualTo(level.visits());
        assertThat(cell(effects, 2 + i, "Turns known").getNumericCellValue())
            .isEqualTo(level.turns());
      }
      assertThat(cell(effects, 5, "Setting").getStringCellValue()).isEqualTo("wash batch");
      assertThat(cell(effects, 5, "Known").getStringCellValue()).isEqualTo("did not come back");
    }
  }

  @Test
  void tellsWhatPeopleMarkedAndMakesNoFormulaOfIt() throws IOException {
    AuditReport plant = Reports.plant();
    Signal signal = plant.signals().get(0);
    Link link = signal.links().get(0);
    Instant at = Instant.parse("2024-05-20T12:00:00Z");
    List<CauseMark> marks =
        List.of(
            Causes.mark(signal, link.cause(), Verdict.RIGHT, "=1+1", "@why", at),
            Causes.mark(signal, new Cause(Kind.OTHER, "=A1"), Verdict.WRONG, "Eva", "-2", at));
    try (XSSFWorkbook book = written(Causes.joined(plant, marks))) {
      assertThat(book.getSheetIndex("Causes")).isEqualTo(book.getSheetIndex("Links") + 1);
      Sheet causes = book.getSheet("Causes");
      assertThat(book.getSheet("Causes").getDrawingPatriarch().getCharts()).hasSize(1);
      List<String> texts = new ArrayList<>();
      for (String name : List.of("Causes", "Links", "Signals")) {
        for (Row row : book.getSheet(name)) {
          for (Cell cell : row) {
            assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
            texts.add(cell.toString());
          }
        }
      }
      assertThat(texts).contains("=A1", "=1+1", "@why", "-2", "✓ right", "✗ wrong");
      Row first = causes.getRow(1);
      assertThat(first.getLastCellNum() - first.getFirstCellNum()).isEqualTo(8);
      assertThat(first.getCell(first.getFirstCellNum() + 3).getNumericCellValue()).isEqualTo(1);
      assertThat(first.getCell(first.getFirstCellNum() + 7).getNumericCellValue()).isEqualTo(1);
    }
    try (XSSFWorkbook book = written(plant)) {
      assertThat(book.getSheetIndex("Causes")).isNegative();
    }
  }

  @Test
  void writesNumbersAsNumbersAndTimesInThePlantsZone() throws IOException {
    AuditReport plant = Reports.plant();
    try (XSSFWorkbook book = written(plant)) {
      Sheet molds = book.getSheet("Molds");
      MoldReport seventh = plant.characteristics().get(0).molds().get(6);
      assertThat(cell(molds, 7, "Mold").getNumericCellValue()).isEqualTo(7);
      assertThat(cell(molds, 7, "Mean").getNumericCellValue()).isEqualTo(seventh.mean());
      assertThat(cell(molds, 7, "Off the wheel's center by").getNumericCellValue())
          .isEqualTo(seventh.offset());
      assertThat(molds.getLastRowNum()).isEqualTo(3 * 26);
      Sheet signals = book.getSheet("Signals");
      assertThat(cell(signals, 2, "Signal").getStringCellValue()).isEqualTo("S1");
      assertThat(cell(signals, 2, "Which way").getStringCellValue()).isEqualTo("▼ thin");
      assertThat(cell(signals, 2, "Since (America/Santiago)").getLocalDateTimeCellValue())
          .isEqualTo(LocalDateTime.of(2024, 5, 14, 4, 38, 40));
      assertThat(cell(signals, 2, "By how much").getNumericCellValue()).isEqualTo(-1.1);
    }
  }

  @Test
  void makesTablesThatPrintAndFilter() throws IOException {
    try (XSSFWorkbook book = written(Reports.plant())) {
      XSSFSheet molds = book.getSheet("Molds");
      assertThat(molds.getPaneInformation().isFreezePane()).isTrue();
      assertThat(molds.getPaneInformation().getHorizontalSplitPosition()).isEqualTo((short) 1);
      assertThat(molds.getCTWorksheet().getAutoFilter().getRef()).startsWith("A1:").endsWith("79");
      assertThat(molds.getRepeatingRows().formatAsString()).isEqualTo("1:1");
      assertThat(molds.getPrintSetup().getLandscape()).isTrue();
      assertThat(molds.getPrintSetup().getFitWidth()).isEqualTo((short) 1);
      assertThat(molds.getFooter().getRight()).isEqualTo("Page &P of &N");
    }
  }

  @Test
  void drawsEveryPictureWithItsPointsInside() throws IOException {
    AuditReport plant = Reports.plant();
    try (XSSFWorkbook book = written(plant)) {
      List<XSSFChart> wheel = book.getSheet("Whole wheel").getDrawingPatriarch().getCharts();
      List<XSSFChart> molds = book.getSheet("Mold offsets").getDrawingPatriarch().getCharts();
      assertThat(wheel).hasSize(3);
      assertThat(molds).hasSize(3);
      XSSFChart mass = wheel.get(0);
      assertThat(mass.getTitleText().getString())
          .isEqualTo(
              "Mass of the whole wheel, turn by turn; limits proposed by the program, approved by nobody");
      CTScatterSer[] series = mass.getCTChart().getPlotArea().getScatterChartArray(0).getSerArray();
      CTScatterSer turns = series[6];
      assertThat(turns.getYVal().getNumRef().getF()).isEqualTo("Turns!$D$2:$D$231");
      CTNumData points = turns.getYVal().getNumRef().getNumCache();
      assertThat(points.getPtCount().getVal()).isEqualTo(230);
      assertThat(points.sizeOfPtArray()).isEqualTo(229); // the first turn is start-up
      assertThat(Double.parseDouble(points.getPtArray(0).getV()))
          .isEqualTo(
              requireNonNull(plant.characteristics().get(0).wheelChart()).points().get(1).value());
      // What a picture remembers is what stands in the cells that it names.
      Sheet sheet = book.getSheet("Turns");
      assertThat(sheet.getRow(2).getCell(3).getNumericCellValue())
          .isEqualTo(Double.parseDouble(points.getPtArray(0).getV()));
      assertThat(sheet.getRow(1).getCell(4).getNumericCellValue())
          .isEqualTo(
              Double.parseDouble(
                  series[7].getYVal().getNumRef().getNumCache().getPtArray(0).getV()));
      assertThat(series[8].getYVal().getNumRef().getNumCache().sizeOfPtArray()).isPositive();
      assertThat(series[4].getTx().getV()).isEqualTo("upper limit 390.54");
    }
  }

  @Test
  void saysWhatEachPictureShowsToThoseWhoHearIt() throws IOException {
    int pictures = 0;
    try (XSSFWorkbook book = written(Reports.plant())) {
      for (Sheet sheet : book) {
        var drawing = ((XSSFSheet) sheet).createDrawingPatriarch();
        for (int i = 0; i < drawing.getCharts().size(); i++) {
          pictures++;
          assertThat(
                  drawing
                      .getCTDrawing()
                      .getTwoCellAnchorArray(i)
                      .getGraphicFrame()
                      .getNvGraphicFramePr()
                      .getCNvPr()
                      .getDescr())
              .isNotBlank()
              .isEqualTo(drawing.getCharts().get(i).getTitleText().getString());
        }
      }
    }
    assertThat(pictures).isEqualTo(7);
  }

  @Test
  void drawsALongRecordFromAThinnedSheetThatKeepsEveryExtreme() throws IOException {
    AuditReport plant = Reports.plant(4_000);
    try (XSSFWorkbook book = written(plant)) {
      Sheet thinned = book.getSheet("Turns thinned");
      XSSFChart mass = book.getSheet("Whole wheel").getDrawingPatriarch().getCharts().get(0);
      CTScatterSer turns = mass.getCTChart().getPlotArea().getScatterChartArray(0).getSerArray(6);
      assertThat(turns.getYVal().getNumRef().getF()).startsWith("'Turns thinned'!$E$2:");
      assertThat(turns.getYVal().getNumRef().getNumCache().getPtCount().getVal())
          .isBetween(1_500L, (long) TurnTables.PICTURE_POINTS);
      double largest = Double.NEGATIVE_INFINITY;
      for (Row row : thinned) {
        Cell value = row.getCell(4);
        if (row.getRowNum() > 0 && value != null && row.getCell(1).toString().equals("mass")) {
          largest = Math.max(largest, value.getNumericCellValue());
        }
      }
      assertThat(largest)
          .isEqualTo(
              requireNonNull(plant.characteristics().get(0).wheelChart()).points().stream()
                  .mapToDouble(AuditReport.TurnPoint::value)
                  .max()
                  .orElseThrow());
      assertThat(book.getSheet("Turns").getLastRowNum()).isEqualTo(4_000);
    }
  }

  @Test
  void letsAMeetingRecalculateWithTheAuditsOwnFiguresInTheCells() throws IOException {
    AuditReport plant = Reports.plant();
    try (XSSFWorkbook book = written(plant)) {
      Sheet capability = book.getSheet("Capability");
      Cell cpk = cell(capability, 2, "Cpk");
      assertThat(cpk.getCellFormula()).isEqualTo("MIN(mass_upper-F3,F3-mass_lower)/(3*H3)");
      assertThat(cpk.getNumericCellValue())
          .isEqualTo(
              requireNonNull(
                      requireNonNull(plant.characteristics().get(0).molds().get(0).capability())
                          .cpk())
                  .value());
      assertThat(cell(capability, 1, "Lower spec").getCellFormula()).isEqualTo("mass_lower");
      assertThat(cell(capability, 1, "Ppk").getCellFormula())
          .isEqualTo("MIN(mass_upper-F2,F2-mass_lower)/(3*G2)");
      // Another program's arithmetic gives the same.
      var evaluator = book.getCreationHelper().createFormulaEvaluator();
      int formulas = 0;
      for (Sheet sheet : book) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA) {
              formulas++;
              double given = cell.getNumericCellValue();
              assertThat(evaluator.evaluate(cell).getNumberValue())
                  .as(cell.getAddress() + " on " + sheet.getSheetName())
                  .isCloseTo(given, within(1e-9 * Math.max(1, Math.abs(given))));
            }
          }
        }
      }
      assertThat(formulas).isGreaterThan(500);
    }
  }

  @Test
  void neverMakesAFormulaOrALinkOfALogsText() throws IOException {
    AuditReport nasty = Reports.nasty();
    try (XSSFWorkbook book = written(nasty)) {
      int texts = 0;
      for (Sheet sheet : book) {
        // Links lead to sheets of this book, whose names are ours, and nowhere else.
        for (var link : sheet.getHyperlinkList()) {
          assertThat(link.getType()).isEqualTo(HyperlinkType.DOCUMENT);
          CellReference to = new CellReference(link.getAddress());
          assertThat(book.getSheet(to.getSheetName())).as(link.getAddress()).isNotNull();
        }
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA) {
              // Functions, cells, our own names of limits, and places on our own sheets.
              assertThat(cell.getCellFormula())
                  .matches(
                      "([A-Z0-9()*/,+.:^-]|(mass|thickness|wedge|characteristic_\\d)_[a-z]+|[A-Z][a-z]+!)+")
                  .doesNotContain("\"");
            } else if (cell.getCellType() == CellType.STRING) {
              texts++;
              assertThat(((XSSFCell) cell).getCellStyle().getQuotePrefixed())
                  .as(cell.getAddress() + " on " + sheet.getSheetName())
                  .isTrue();
            }
          }
        }
      }
      assertThat(texts).isGreaterThan(100);
      Sheet molds = book.getSheet("Molds");
      assertThat(cell(molds, 1, "Mold").getStringCellValue()).isEqualTo("=1+1");
      assertThat(cell(molds, 5, "Mold").getStringCellValue()).isEqualTo("007");
      assertThat(cell(molds, 6, "Mold").getNumericCellValue()).isEqualTo(12);
      assertThat(cell(molds, 7, "Mold").getStringCellValue()).isEqualTo("café \ud83d\ude00 \ufffd");
      assertThat(cell(molds, 8, "Mold").getStringCellValue())
          .isEqualTo("a\ufffdb\ufffd[31mc\td\ne\nf\u2028g");
      String huge =
          cell(book.getSheet("Set-aside rows"), 1, "The row as it stands").getStringCellValue();
      assertThat(huge).hasSize(32_767).startsWith("=xxx").endsWith("x…");
    }
  }

  @Test
  void leavesBlankWhatIsNotKnown() throws IOException {
    try (XSSFWorkbook book = written(Reports.bare())) {
      for (Sheet sheet : book) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            // Places to write in by hand, on the first sheet, are empty.
            if (cell.getCellType() != CellType.BLANK || book.getSheetIndex(sheet) > 0) {
              assertThat(cell.getCellType()).isIn(CellType.STRING, CellType.NUMERIC);
            }
          }
        }
      }
      Sheet molds = book.getSheet("Molds");
      assertThat(molds.getRow(1).getCell(column(molds, "s.d."))).isNull();
      assertThat(molds.getRow(1).getCell(column(molds, "Cpk"))).isNull();
      assertThat(book.getSheet("Whole wheel")).isNull();
    }
  }

  @Test
  void writesTheSameBytesWhereverAndWheneverItRuns() throws IOException {
    byte[] here = bytes();
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Pago_Pago"));
      assertThat(bytes()).isEqualTo(here);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  private static byte[] bytes() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    AuditWorkbook.write(Reports.plant(), null, bytes, SANTIAGO);
    return bytes.toByteArray();
  }

  @Test
  void leavesNoFileWhereItFails() throws IOException {
    AuditReport plant = Reports.plant();
    AuditReport broken =
        Reports.with(plant, List.of(Reports.moldSignal("S1", "3", 10, Double.NaN)));
    Path file = folder.resolve("audit.xlsx");
    assertThat(catchThrowable(() -> AuditWorkbook.write(broken, null, file, SANTIAGO))).isNotNull();
    try (var files = Files.list(folder)) {
      assertThat(files).isEmpty();
    }
  }
}
