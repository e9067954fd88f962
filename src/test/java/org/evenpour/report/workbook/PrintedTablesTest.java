package org.evenpour.report.workbook;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Causes;
import org.evenpour.audit.Sample;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.Reports;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.AnodeCells;
import org.evenpour.report.table.CapabilityTable;
import org.evenpour.report.table.CauseTable;
import org.evenpour.report.table.GaugeTable;
import org.evenpour.report.table.LimitsTable;
import org.evenpour.report.table.MoldTable;
import org.evenpour.report.table.MoveTables;
import org.evenpour.report.table.PeriodTable;
import org.evenpour.report.table.RecordTables;
import org.evenpour.report.table.RejectTables;
import org.evenpour.report.table.SetPointTables;
import org.evenpour.report.table.SettingTables;
import org.evenpour.report.table.SignalTables;
import org.evenpour.report.table.SpecificationTable;
import org.evenpour.report.table.SpreadTables;
import org.evenpour.report.table.TurnTables;
import org.evenpour.report.table.VerdictTables;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Table;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every table that is declared, against the sheet that it is printed on, cell by cell. */
class PrintedTablesTest {
  private static final ZoneId ZONE = ZoneId.of("America/Santiago");

  /** Sheets of sentences alone. */
  private static final Set<String> NO_TABLE = Set.of("Notes");

  record Case(String name, AuditReport report, @Nullable CastingRecord record) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> cases() throws Exception {
    CastingRecord sample = Sample.read(Sample.TORDILLA);
    AuditReport audited = Audit.run(sample);
    AuditReport plant = Reports.plant();
    Signal signal = plant.signals().get(0);
    CauseMark mark =
        Causes.mark(
            signal,
            signal.links().get(0).cause(),
            Verdict.RIGHT,
            "Eva",
            "nozzle found shut",
            Instant.parse("2024-05-20T12:00:00Z"));
    return Stream.of(
        new Case("sample", audited, sample),
        new Case("marked", Causes.joined(plant, List.of(mark)), null),
        new Case("long", Reports.plant(4_000), null),
        new Case("nasty", Reports.nasty(), null),
        new Case("bare", Reports.bare(), null));
  }

  /** Every table of a report, whether it is printed or not. */
  private static List<Table<?>> tables(AuditReport report, @Nullable CastingRecord record) {
    Sentences sentences = Sentences.of(report, Words.english(), ZONE);
    AnodeCells anodes = AnodeCells.of(record);
    Table<TurnTables.Turn> turns = TurnTables.turns(report, sentences);
    List<TurnTables.Source> sources = TurnTables.sources(report, turns);
    Table<TurnTables.Point> thinned = TurnTables.thinned(sources, sentences);
    List<Table<?>> tables =
        new ArrayList<>(
            List.of(
                turns,
                thinned,
                TurnTables.lines(TurnTables.thinned(sources, thinned), sentences),
                SpecificationTable.of(report, sentences),
                LimitsTable.of(report, sentences),
                MoldTable.of(report, sentences, anodes),
                MoldTable.offsets(report, sentences),
                CapabilityTable.overall(report, sentences, anodes),
                PeriodTable.of(report, record, sentences),
                VerdictTables.verdicts(report, sentences),
                VerdictTables.standings(report, sentences),
                SpreadTables.parts(report, sentences),
                SpreadTables.without(report, sentences),
                SignalTables.signals(report, sentences),
                SignalTables.links(report, sentences),
                MoveTables.settings(report, sentences),
                MoveTables.beyond(report, sentences),
                CauseTable.of(report, sentences),
                RejectTables.classes(report, sentences),
                RejectTables.places(report, sentences),
                RejectTables.spells(report, sentences),
                RejectTables.charges(report, sentences),
                CapabilityTable.of(report, sentences, anodes),
                CapabilityTable.groups(report, sentences, anodes),
                SetPointTables.turns(report, sentences),
                SetPointTables.sides(report, sentences),
                GaugeTable.of(report, sentences),
                RecordTables.tests(report, sentences),
                RecordTables.events(report, sentences),
                RecordTables.setAside(report, sentences),
                SettingTables.settings(report, sentences),
                SettingTables.effects(report, sentences)));
    if (record != null) {
      for (WheelRecord wheel : record.wheels()) {
        tables.add(
            RecordTables.anodes("anodes", "Anodes", wheel, sentences, Characteristic::displayUnit));
      }
    }
    return tables;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void everySheetHoldsTheTableThatItIsNamedAfter(Case made) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    AuditWorkbook.write(made.report(), made.record(), bytes, ZONE);
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes.toByteArray()))) {
      Set<String> sheets = new TreeSet<>();
      for (Table<?> table : tables(made.report(), made.record())) {
        Name name = book.getName("table_" + table.key());
        // A table that holds anything is printed.
        if (!table.rows().isEmpty()) {
          assertThat(name).as(table.key()).isNotNull();
        }
        if (name != null) {
          AreaReference at =
              new AreaReference(name.getRefersToFormula(), book.getSpreadsheetVersion());
          sheets.add(requireNonNull(at.getFirstCell().getSheetName()));
          compare(table, book, at);
        }
      }
      for (Sheet sheet : book) {
        assertThat(sheets.contains(sheet.getSheetName()))
            .as(sheet.getSheetName())
            .isEqualTo(!NO_TABLE.contains(sheet.getSheetName()));
      }
    }
  }

  private static <R> void compare(Table<R> table, XSSFWorkbook book, AreaReference at) {
    Sheet sheet = book.getSheet(at.getFirstCell().getSheetName());
    int first = at.getFirstCell().getCol();
    int head = at.getFirstCell().getRow();
    Map<String, Integer> letters = new HashMap<>();
    for (int i = 0; i < table.columns().size(); i++) {
      Column<R> column = table.columns().get(i);
      letters.put(column.key(), first + i);
      assertThat(sheet.getRow(head).getCell(first + i).getStringCellValue())
          .isEqualTo(Texts.cell(column.heading()))
          .isNotEmpty()
          .doesNotContain("{");
    }
    assertThat(at.getLastCell().getCol()).isEqualTo((short) (first + letters.size() - 1));
    assertThat(sheet.getRow(head).getLastCellNum()).isEqualTo((short) (first + letters.size()));
    assertThat(at.getLastCell().getRow()).isEqualTo(head + table.rows().size());
    for (int i = 0; i < table.rows().size(); i++) {
      Row row = sheet.getRow(head + i + 1);
      for (Column<R> column : table.columns()) {
        String where = sheet.getSheetName() + " row " + (i + 1) + " " + column.key();
        compare(
            where,
            column.cell().apply(table.rows().get(i)),
            row.getCell(requireNonNull(letters.get(column.key()))));
      }
    }
  }

  private static void compare(
      String where, Cell cell, org.apache.poi.ss.usermodel.@Nullable Cell found) {
    Cell declared =
        cell instanceof Cell.AsAudited audited
            ? audited.cell()
            : cell instanceof Cell.Named named ? named.figure() : cell;
    if (cell instanceof Cell.AsAudited && found != null) {
      var color = ((XSSFCell) found).getCellStyle().getFont().getXSSFColor();
      assertThat(color == null ? "" : color.getARGBHex()).as(where).isEqualTo("FF595959");
    }
    if (declared.text().isEmpty()
        || (declared instanceof Cell.Figure figure && figure.value() == null)) {
      assertThat(found).as(where).isNull();
      return;
    }
    var shown = requireNonNull(found, where);
    if (declared instanceof Cell.Time time) {
      assertThat(shown.getLocalDateTimeCellValue().plusNanos(500_000))
          .as(where)
          .isBetween(
              LocalDateTime.ofInstant(time.at(), ZONE).minusSeconds(1),
              LocalDateTime.ofInstant(time.at(), ZONE).plusSeconds(1));
    } else if (declared instanceof Cell.Figure figure) {
      number(where, figure, shown);
    } else if (declared instanceof Cell.Computed computed) {
      number(where, computed.figure(), shown);
      assertThat(shown.getCellType()).as(where).isEqualTo(CellType.FORMULA);
      assertThat(shown.getCellFormula()).as(where).doesNotContain("{");
    } else if (shown.getCellType() == CellType.NUMERIC) {
      assertThat(declared).as(where).isInstanceOf(Cell.Label.class);
      assertThat(shown.getNumericCellValue())
          .as(where)
          .isEqualTo(Double.parseDouble(declared.text()));
    } else {
      assertThat(shown.getStringCellValue()).as(where).isEqualTo(readBack(declared.text()));
    }
  }

  /** What the file gives back of a text: escapes of ECMA-376 were only written. */
  private static String readBack(String text) {
    return Texts.cell(text).replace("_x005F_", "_");
  }

  private static void number(
      String where, Cell.Figure figure, org.apache.poi.ss.usermodel.Cell shown) {
    assertThat(shown.getNumericCellValue()).as(where).isEqualTo(figure.value());
    assertThat(shown.getCellStyle().getDataFormatString())
        .as(where)
        .isEqualTo(figure.digits().format());
  }

  @Test
  void noTwoTablesHaveOneKeyAndEveryColumnHasAName() {
    Set<String> keys = new TreeSet<>();
    for (Table<?> table : tables(Reports.plant(), null)) {
      assertThat(keys.add(table.key())).as(table.key()).isTrue();
      assertThat(table.columns().stream().map(Column::heading))
          .as("headings of %s", table.key())
          .doesNotHaveDuplicates();
      for (Column<?> column : table.columns()) {
        assertThat(column.name()).as(table.key() + "/" + column.key()).isNotBlank();
      }
    }
  }
}
