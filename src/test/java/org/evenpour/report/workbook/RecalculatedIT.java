package org.evenpour.report.workbook;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.CastingRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The sample's workbook, recalculated hard by LibreOffice Calc, whose arithmetic is not ours.
 * Passed over where it is not installed.
 */
class RecalculatedIT {
  /** Sums of some thousand values in another order, and a spreadsheet's own normal distribution. */
  private static final double SAME = 1e-9;

  /** What the profile says, and what somebody types over it. */
  private static final Map<String, String> CHANGED =
      Map.of(
          "lower: 385, target: 390, upper: 395", "lower: 384.6, target: 389.7, upper: 396.3",
          "lower: 43.2, target: 44.7, upper: 46.2", "lower: 43.05, target: 44.65, upper: 46.45",
          "upper: 2.5", "upper: 2.25");

  private static final Map<String, Double> TYPED =
      Map.of(
          "mass_lower", 384.6,
          "mass_target", 389.7,
          "mass_upper", 396.3,
          "thickness_lower", 43.05,
          "thickness_target", 44.65,
          "thickness_upper", 46.45,
          "wedge_upper", 2.25);

  /** Grays of figures and sentences that stay as audited. */
  private static final String GRAY = "FF595959";

  @TempDir static Path folder;

  private static Path audited;

  @BeforeAll
  static void auditsTheSample() throws Exception {
    assumeTrue(isInstalled(), "LibreOffice is not installed: workbooks are not recalculated");
    audited = folder.resolve("audited.xlsx");
    write(Sample.TORDILLA, audited);
  }

  private static boolean isInstalled() {
    return Stream.of(requireNonNull(System.getenv("PATH")).split(java.io.File.pathSeparator, -1))
        .anyMatch(one -> Files.isExecutable(Path.of(one, "soffice")));
  }

  private static void write(Path sample, Path file) throws Exception {
    CastingRecord record = Sample.read(sample);
    AuditWorkbook.write(Audit.run(record), record, file, ZoneId.of("-03:00"));
  }

  /** From a stream: POI writes what was changed back into a file that it opened by its name. */
  private static XSSFWorkbook opened(Path file) throws Exception {
    try (var in = Files.newInputStream(file)) {
      return new XSSFWorkbook(in);
    }
  }

  /** Opened, every formula computed anew, and saved again. */
  private static XSSFWorkbook recalculated(Path file) throws Exception {
    Path profile = folder.resolve("calc");
    Path settings = profile.resolve("user/registrymodifications.xcu");
    if (!Files.exists(settings)) {
      Files.createDirectories(requireNonNull(settings.getParent()));
      Files.writeString(
          settings,
          """
          <?xml version="1.0" encoding="UTF-8"?>
          <oor:items xmlns:oor="http://openoffice.org/2001/registry" \
          xmlns:xs="http://www.w3.org/2001/XMLSchema" \
          xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
          <item oor:path="/org.openoffice.Office.Calc/Formula/Load">\
          <prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
          </oor:items>
          """);
    }
    Path out = Files.createTempDirectory(folder, "recalculated");
    Process calc =
        new ProcessBuilder(
                "soffice",
                "-env:UserInstallation=" + profile.toUri(),
                "--headless",
                "--convert-to",
                "xlsx:Calc MS Excel 2007 XML",
                "--outdir",
                out.toString(),
                file.toString())
            .redirectErrorStream(true)
            .redirectOutput(out.resolve("log.txt").toFile())
            .start();
    assertThat(calc.waitFor(240, TimeUnit.SECONDS)).as("LibreOffice ends").isTrue();
    return opened(out.resolve(file.getFileName()));
  }

  private static boolean isGray(Cell cell) {
    var color = ((XSSFCell) cell).getCellStyle().getFont().getXSSFColor();
    return color != null && GRAY.equals(color.getARGBHex());
  }

  private static boolean isNumber(Cell cell) {
    return cell.getCellType() == CellType.NUMERIC
        || (cell.getCellType() == CellType.FORMULA
            && cell.getCachedFormulaResultType() == CellType.NUMERIC);
  }

  private static boolean isSame(double one, double other) {
    return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(other));
  }

  @Test
  void everyFormulaGivesWhatStoodInItsCell() throws Exception {
    List<String> wrong = new ArrayList<>();
    int formulas = 0;
    try (XSSFWorkbook before = opened(audited);
        XSSFWorkbook after = recalculated(audited)) {
      for (Sheet sheet : before) {
        assertThat(after.getSheet(sheet.getSheetName())).as(sheet.getSheetName()).isNotNull();
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA) {
              formulas++;
              Cell its =
                  after
                      .getSheet(sheet.getSheetName())
                      .getRow(cell.getRowIndex())
                      .getCell(cell.getColumnIndex());
              if (!isNumber(its)
                  || !isSame(its.getNumericCellValue(), cell.getNumericCellValue())) {
                wrong.add(
                    sheet.getSheetName()
                        + " "
                        + cell.getAddress()
                        + " "
                        + cell.getCellFormula()
                        + ": "
                        + cell.getNumericCellValue()
                        + " became "
                        + ((XSSFCell) its).getRawValue());
              }
            }
          }
        }
        int charts =
            before.getSheet(sheet.getSheetName()).createDrawingPatriarch().getCharts().size();
        assertThat(after.getSheet(sheet.getSheetName()).createDrawingPatriarch().getCharts().size())
            .as("charts on " + sheet.getSheetName())
            .isEqualTo(charts);
      }
    }
    assertThat(formulas).isGreaterThan(2_000);
    assertThat(wrong.stream().limit(40).toList()).as(wrong.size() + " of " + formulas).isEmpty();
  }

  @Test
  void limitsThatAreTypedInGiveWhatAnAuditWithThemGives() throws Exception {
    Path changed = folder.resolve("changed");
    Files.createDirectories(changed);
    for (String name : List.of("casting-log.csv", "events.csv", "profile.yaml")) {
      Files.copy(Sample.TORDILLA.resolve(name), changed.resolve(name));
    }
    String profile = Files.readString(changed.resolve("profile.yaml"));
    for (var one : CHANGED.entrySet()) {
      assertThat(profile).contains(one.getKey());
      profile = profile.replace(one.getKey(), one.getValue());
    }
    Files.writeString(changed.resolve("profile.yaml"), profile);
    Path fresh = folder.resolve("fresh.xlsx");
    write(changed, fresh);

    Path typed = folder.resolve("typed.xlsx");
    try (XSSFWorkbook book = opened(audited);
        OutputStream out = Files.newOutputStream(typed)) {
      TYPED.forEach(
          (name, value) -> {
            CellReference at =
                new CellReference(requireNonNull(book.getName(name), name).getRefersToFormula());
            book.getSheet(at.getSheetName())
                .getRow(at.getRow())
                .getCell(at.getCol())
                .setCellValue(value);
          });
      book.write(out);
    }
    List<String> wrong = new ArrayList<>();
    int compared = 0;
    int moved = 0;
    try (XSSFWorkbook before = opened(audited);
        XSSFWorkbook after = recalculated(typed);
        XSSFWorkbook audit = opened(fresh)) {
      for (Name name : before.getAllNames()) {
        if (!name.getNameName().startsWith("table_")) {
          continue;
        }
        Map<String, Row> expected = new HashMap<>();
        Map<Row, String> keys = keyed(before, name.getNameName());
        keyed(audit, name.getNameName()).forEach((row, key) -> expected.put(key, row));
        Sheet sheet =
            after.getSheet(area(before, name.getNameName()).getFirstCell().getSheetName());
        for (var one : keys.entrySet()) {
          Row ours = sheet.getRow(one.getKey().getRowNum());
          Row theirs = expected.get(one.getValue());
          if (theirs == null) {
            wrong.add(name.getNameName() + " has no row " + one.getValue());
            continue;
          }
          int shift =
              area(audit, name.getNameName()).getFirstCell().getCol()
                  - area(before, name.getNameName()).getFirstCell().getCol();
          for (Cell cell : one.getKey()) {
            if (!isIn(area(before, name.getNameName()), cell) || isGray(cell)) {
              continue;
            }
            Cell now = requireNonNull(ours.getCell(cell.getColumnIndex()));
            Cell then = theirs.getCell(cell.getColumnIndex() + shift);
            if (!isNumber(cell)) {
              continue;
            }
            compared++;
            if (then == null
                || !isNumber(then)
                || !isNumber(now)
                || !isSame(now.getNumericCellValue(), then.getNumericCellValue())) {
              wrong.add(
                  name.getNameName()
                      + " "
                      + cell.getAddress()
                      + " of "
                      + one.getValue()
                      + ": "
                      + now
                      + " where an audit has "
                      + then);
            } else if (!isSame(now.getNumericCellValue(), cell.getNumericCellValue())) {
              moved++;
            }
          }
        }
      }
    }
    assertThat(wrong.stream().limit(40).toList()).as(wrong.size() + " of " + compared).isEmpty();
    assertThat(moved).isGreaterThan(1_000);
  }

  private static AreaReference area(XSSFWorkbook book, String table) {
    return new AreaReference(
        requireNonNull(book.getName(table), table).getRefersToFormula(),
        book.getSpreadsheetVersion());
  }

  private static boolean isIn(AreaReference area, Cell cell) {
    return cell.getColumnIndex() >= area.getFirstCell().getCol()
        && cell.getColumnIndex() <= area.getLastCell().getCol();
  }

  /** A table's rows by what they are about: words and labels that are neither gray nor many. */
  private static Map<Row, String> keyed(XSSFWorkbook book, String table) {
    AreaReference area = area(book, table);
    Sheet sheet = book.getSheet(area.getFirstCell().getSheetName());
    Map<Row, String> keys = new LinkedHashMap<>();
    Map<String, Integer> seen = new HashMap<>();
    for (int i = area.getFirstCell().getRow() + 1; i <= area.getLastCell().getRow(); i++) {
      StringBuilder key = new StringBuilder();
      for (Cell cell : sheet.getRow(i)) {
        boolean isLabel =
            cell.getCellType() == CellType.NUMERIC
                && cell.getCellStyle().getDataFormatString().equals("0")
                && cell.getCellStyle().getIndention() == 1;
        if (isIn(area, cell)
            && !isGray(cell)
            && (cell.getCellType() == CellType.STRING || isLabel)) {
          key.append(cell).append(" | ");
        }
      }
      int number = seen.merge(key.toString(), 1, Integer::sum);
      keys.put(sheet.getRow(i), key.append(number).toString());
    }
    return keys;
  }
}
