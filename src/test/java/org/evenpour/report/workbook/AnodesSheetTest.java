package org.evenpour.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.SettingProfile;
import org.evenpour.casting.Specification;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.LongColumn;
import org.evenpour.column.Pages;
import org.evenpour.report.Reports;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.Columns;
import org.evenpour.table.Table;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnodesSheetTest {
  @TempDir Path folder;

  private final Pages pages = Pages.ofMemory();

  private DoubleColumn numbers(double... values) {
    DoubleColumn column = new DoubleColumn(pages);
    for (double value : values) {
      column.add(value);
    }
    return column;
  }

  private IntColumn indices(int... values) {
    IntColumn column = new IntColumn(pages);
    for (int value : values) {
      column.add(value);
    }
    return column;
  }

  private static Labels labels(String... names) {
    Labels labels = new Labels();
    for (String name : names) {
      labels.index(name);
    }
    return labels;
  }

  private CastingRecord record() {
    LongColumn at = new LongColumn(pages);
    LongColumn line = new LongColumn(pages);
    at.add(0);
    at.add(60_000);
    line.add(2);
    line.add(3);
    WheelRecord wheel =
        new WheelRecord(
            "N2",
            WheelProfile.DEFAULT,
            labels("17", "=1+1"),
            labels("A"),
            new Labels(),
            at,
            indices(1, 1),
            indices(0, 1),
            indices(0, -1),
            indices(-1, -1),
            line,
            List.of(
                new Characteristic(
                    "mass",
                    Unit.KG,
                    Unit.of("lb"),
                    Specification.NONE,
                    numbers(0.45359237 * 800, Double.NaN))),
            List.of(new ThicknessPoint("top_left", numbers(43.2, 43.4))),
            List.of(
                new Setting(
                    "wash_volume_ml",
                    Unit.of("ml"),
                    SettingProfile.NONE,
                    numbers(410.5, Double.NaN),
                    null,
                    new Labels()),
                new Setting(
                    "crew",
                    Unit.NONE,
                    SettingProfile.NONE,
                    null,
                    indices(0, -1),
                    labels("@night"))),
            null,
            null,
            null);
    return new CastingRecord(
        List.of("log.csv"), List.of(wheel), List.of(), 2, 0, List.of(), List.of());
  }

  @Test
  void writesEveryAnodeInTheUnitsThatPeopleRead() throws IOException {
    Path file = folder.resolve("audit.xlsx");
    AuditWorkbook.write(Reports.bare(), record(), file, ZoneOffset.UTC);
    try (XSSFWorkbook book = new XSSFWorkbook(file.toString())) {
      Sheet sheet = book.getSheet("Anodes");
      assertThat(sheet.getRow(0).cellIterator())
          .toIterable()
          .extracting(Object::toString)
          .containsExactly(
              "Wheel",
              "Turn",
              "When (UTC)",
              "Mold",
              "Ladle side",
              "mass, lb",
              "top left, mm",
              "wash volume, mL",
              "crew");
      assertThat(sheet.getRow(1).getCell(2).getLocalDateTimeCellValue())
          .isEqualTo(LocalDateTime.of(1970, 1, 1, 0, 0));
      assertThat(sheet.getRow(1).getCell(3).getNumericCellValue()).isEqualTo(17);
      assertThat(sheet.getRow(1).getCell(5).getNumericCellValue()).isEqualTo(800);
      assertThat(sheet.getRow(1).getCell(7).getNumericCellValue()).isEqualTo(410.5);
      assertThat(sheet.getRow(1).getCell(8).getStringCellValue()).isEqualTo("@night");
      assertThat(sheet.getRow(2).getCell(3).getCellType()).isEqualTo(CellType.STRING);
      for (int missing : new int[] {4, 5, 7, 8}) {
        assertThat(sheet.getRow(2).getCell(missing)).isNull();
      }
    }
  }

  @Test
  void goesOnOnAnotherSheetWhereOneIsFull() throws IOException {
    try (SXSSFWorkbook book = new SXSSFWorkbook()) {
      Paper paper =
          new Paper(
              book,
              new Styles(book),
              new Sentences(Words.english(), ZoneOffset.UTC, false, false, Map.of()),
              Reports.bare());
      Columns<Integer> columns = Columns.of(paper.sentences());
      new Printer(paper, 4)
          .print(
              new Table<>(
                  "turns",
                  "Anodes",
                  columns.turn("turn", turn -> turn).list(),
                  List.of(1, 2, 3, 4, 5, 6, 7)));
      assertThat(book.getNumberOfSheets()).isEqualTo(3);
      assertThat(book.getSheetName(2)).isEqualTo("Anodes part 3");
      assertThat(book.getSheetAt(2).getRow(0).getCell(0).getStringCellValue()).isEqualTo("Turn");
      assertThat(book.getSheetAt(2).getRow(1).getCell(0).getNumericCellValue()).isEqualTo(7);
    }
  }
}
