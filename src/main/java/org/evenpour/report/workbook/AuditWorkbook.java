package org.evenpour.report.workbook;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.util.TempFile;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.PartFiles;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.FinishedFile;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.AnodeCells;
import org.evenpour.report.table.CapabilityTable;
import org.evenpour.report.table.GaugeTable;
import org.evenpour.report.table.LimitsTable;
import org.evenpour.report.table.MoldTable;
import org.evenpour.report.table.MoveTables;
import org.evenpour.report.table.RecordTables;
import org.evenpour.report.table.RejectTables;
import org.evenpour.report.table.SetPointTables;
import org.evenpour.report.table.SettingTables;
import org.evenpour.report.table.SignalTables;
import org.evenpour.report.table.SpecificationTable;
import org.evenpour.report.table.TurnTables;
import org.evenpour.report.table.TurnTables.Point;
import org.evenpour.report.table.TurnTables.Source;
import org.evenpour.report.table.TurnTables.Turn;
import org.evenpour.report.table.VerdictTables;
import org.evenpour.table.Table;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * An audit report as a workbook (ECMA-376) that a plant meeting can open, recalculate and argue
 * with: numbers as numbers in the units that people read, times as times, pictures with their
 * points, formulas where they help, and never a formula made of a log's text.
 *
 * <p>Rows stream to a temporary file, so that a long log needs little memory. The same report gives
 * the same bytes.
 */
public final class AuditWorkbook {
  private static final int ROWS_IN_MEMORY = 200;

  /** Anodes are printed whole, as far as anybody has paper. */
  private static final int ANODE_PAGES = 100;

  private AuditWorkbook() {}

  /**
   * Writes the workbook, which appears under its name only when it is whole.
   *
   * @param record adds a sheet with every anode; null leaves it out
   * @param zone in which times are told
   * @throws IOException if it cannot be written: says why and what would mend it
   */
  public static void write(
      AuditReport report, @Nullable CastingRecord record, Path file, ZoneId zone)
      throws IOException {
    write(report, record, file, zone, Words.english(), anodes -> {});
  }

  /**
   * The same for somebody who waits.
   *
   * @param words the language
   * @param written is told, on the thread that writes, how many anodes are on their sheet; may
   *     throw an unchecked exception to give up, and then nothing is left behind
   */
  public static void write(
      AuditReport report,
      @Nullable CastingRecord record,
      Path file,
      ZoneId zone,
      Words words,
      LongConsumer written)
      throws IOException {
    FinishedFile.write(file, out -> write(report, record, out, zone, words, written));
  }

  /** Writes the workbook to a stream and leaves it open. */
  public static void write(
      AuditReport report, @Nullable CastingRecord record, OutputStream out, ZoneId zone)
      throws IOException {
    write(report, record, out, zone, Words.english());
  }

  /** The same in another language. */
  public static void write(
      AuditReport report,
      @Nullable CastingRecord record,
      OutputStream out,
      ZoneId zone,
      Words words)
      throws IOException {
    write(report, record, out, zone, words, anodes -> {});
  }

  private static void write(
      AuditReport report,
      @Nullable CastingRecord record,
      OutputStream out,
      ZoneId zone,
      Words words,
      LongConsumer written)
      throws IOException {
    TempFile.setTempFileCreationStrategy(SheetFiles.ONLY);
    Path dated = PartFiles.temporary("evenpour-workbook", ".xlsx");
    try {
      try (SXSSFWorkbook book = new SXSSFWorkbook(ROWS_IN_MEMORY);
          OutputStream into = new BufferedOutputStream(Files.newOutputStream(dated))) {
        book.setCompressTempFiles(true);
        sheets(
            new Paper(book, new Styles(book), Sentences.of(report, words, zone), report),
            record,
            written);
        describe(book, report, words);
        book.write(into);
      }
      FixedZip.copy(dated, out);
    } catch (RuntimeException e) {
      // POI hides that there is no room for its sheets.
      if (e.getCause() instanceof IOException why) {
        throw why;
      }
      throw e;
    } finally {
      PartFiles.drop(dated);
    }
  }

  private static void sheets(Paper paper, @Nullable CastingRecord record, LongConsumer written) {
    AuditReport report = paper.report();
    Sentences sentences = paper.sentences();
    Printer printer = new Printer(paper);
    SXSSFSheet summary = SummarySheet.create(paper);
    printer.printIfAny(SpecificationTable.of(report, sentences));
    AnodeCells counted = AnodeCells.of(record);
    List<Table<Integer>> anodes = anodes(sentences, record);
    anodes.forEach(printer::announce);
    Table<Turn> turns = TurnTables.turns(report, sentences);
    List<Source> charted = TurnTables.sources(report, turns);
    Table<Point> thinned = TurnTables.thinned(charted, sentences);
    int before = paper.book().getNumberOfSheets();
    printer.printIfAny(turns);
    printer.printIfAny(thinned);
    printer.printIfAny(SetPointTables.turns(report, sentences));
    int first = paper.book().getNumberOfSheets();
    if (!charted.isEmpty()) {
      WheelPictures.write(paper, printer, TurnTables.thinned(charted, thinned));
    }
    RankingPictures.write(paper, printer);
    printer.printIfAny(VerdictTables.verdicts(report, sentences));
    printer.printIfAny(VerdictTables.standings(report, sentences));
    printer.together(
        paper.say("sheet.rejects"),
        List.of(
            RejectTables.classes(report, sentences),
            RejectTables.spells(report, sentences),
            RejectTables.charges(report, sentences),
            RejectTables.places(report, sentences)),
        0);
    SpreadSheet.write(paper, printer);
    printer.print(LimitsTable.of(report, sentences));
    printer.print(SignalTables.signals(report, sentences), 2, rows -> {});
    printer.print(SignalTables.links(report, sentences));
    printer.together(
        paper.say("sheet.moves"),
        List.of(MoveTables.settings(report, sentences), MoveTables.beyond(report, sentences)),
        0);
    CausesSheet.write(paper, printer);
    printer.print(MoldTable.of(report, sentences, counted));
    printer.print(CapabilityTable.of(report, sentences, counted));
    printer.printIfAny(CapabilityTable.groups(report, sentences, counted));
    printer.printIfAny(SetPointTables.sides(report, sentences));
    printer.printIfAny(GaugeTable.of(report, sentences));
    printer.print(RecordTables.tests(report, sentences));
    printer.together(
        paper.say("sheet.effects"),
        List.of(
            SettingTables.settings(report, sentences), SettingTables.effects(report, sentences)),
        0);
    printer.print(RecordTables.events(report, sentences));
    printer.print(RecordTables.setAside(report, sentences));
    NotesSheet.write(paper);
    // The turns had to be written before the pictures of them, and stand behind everything else.
    int sheets = paper.book().getNumberOfSheets();
    for (int moved = before; moved < first; moved++) {
      paper.book().setSheetOrder(paper.book().getSheetName(before), sheets - 1);
    }
    // Last, for it leads to the others and draws from them.
    SummarySheet.write(paper, printer, summary, record, counted);
    long done = 0;
    for (Table<Integer> table : anodes) {
      long others = done;
      printer.print(table, ANODE_PAGES, rows -> written.accept(others + rows));
      done += table.rows().size();
    }
    paper.book().setActiveSheet(0);
    paper.book().setForceFormulaRecalculation(true);
  }

  /** Every usable anode of the log, a table for each wheel. */
  private static List<Table<Integer>> anodes(Sentences sentences, @Nullable CastingRecord record) {
    List<Table<Integer>> tables = new ArrayList<>();
    List<WheelRecord> wheels = record == null ? List.of() : record.wheels();
    String name = sentences.words().say("sheet.anodes");
    for (int i = 0; i < wheels.size(); i++) {
      tables.add(
          RecordTables.anodes(
              AnodeCells.key(i),
              wheels.size() == 1 ? name : name + " " + (i + 1),
              wheels.get(i),
              sentences,
              Characteristic::displayUnit));
    }
    return tables;
  }

  /** Whose it is; dated by the last cast, for the time of writing would differ from run to run. */
  private static void describe(SXSSFWorkbook book, AuditReport report, Words words) {
    POIXMLProperties properties = book.getXSSFWorkbook().getProperties();
    POIXMLProperties.CoreProperties core = properties.getCoreProperties();
    Optional<Date> date = Optional.of(Date.from(report.log().lastCastAt()));
    core.setCreator("Evenpour");
    core.setTitle(words.say("paper.title"));
    core.setCreated(date);
    core.setModified(date);
    properties.getExtendedProperties().setApplication("Evenpour");
  }
}
