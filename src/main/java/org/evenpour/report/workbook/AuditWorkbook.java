package org.evenpour.report.workbook;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.util.TempFile;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.audit.AuditReport;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.PartFiles;
import org.evenpour.report.FinishedFile;
import org.evenpour.report.Sentences;
import org.evenpour.report.Words;
import org.evenpour.report.workbook.TurnsSheet.Source;
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
    write(report, record, file, zone, anodes -> {});
  }

  /**
   * The same for somebody who waits.
   *
   * @param written is told, on the thread that writes, how many anodes are on their sheet; may
   *     throw an unchecked exception to give up, and then nothing is left behind
   */
  public static void write(
      AuditReport report,
      @Nullable CastingRecord record,
      Path file,
      ZoneId zone,
      LongConsumer written)
      throws IOException {
    FinishedFile.write(file, out -> write(report, record, out, zone, written));
  }

  /** Writes the workbook to a stream and leaves it open. */
  public static void write(
      AuditReport report, @Nullable CastingRecord record, OutputStream out, ZoneId zone)
      throws IOException {
    write(report, record, out, zone, anodes -> {});
  }

  private static void write(
      AuditReport report,
      @Nullable CastingRecord record,
      OutputStream out,
      ZoneId zone,
      LongConsumer written)
      throws IOException {
    TempFile.setTempFileCreationStrategy(SheetFiles.ONLY);
    Path dated = PartFiles.temporary("evenpour-workbook", ".xlsx");
    try {
      try (SXSSFWorkbook book = new SXSSFWorkbook(ROWS_IN_MEMORY);
          OutputStream into = new BufferedOutputStream(Files.newOutputStream(dated))) {
        book.setCompressTempFiles(true);
        sheets(
            new Paper(book, new Styles(book), Sentences.of(report, Words.english(), zone), report),
            record,
            written);
        describe(book, report);
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
    SummarySheet.write(paper);
    List<Source> sources = TurnsSheet.write(paper);
    List<SetPointSheets.Source> sides = SetPointSheets.turns(paper);
    int turns = paper.book().getNumberOfSheets();
    if (!sources.isEmpty()) {
      WheelPictures.write(paper, sources);
    }
    RankingPictures.write(paper);
    VerdictsSheet.write(paper);
    SpreadSheet.write(paper);
    SignalsSheet.write(paper);
    SettingMovesSheet.write(paper);
    BeyondSheet.write(paper);
    CausesSheet.write(paper);
    MoldsSheet.write(paper);
    CapabilitySheet.write(paper);
    GroupsSheet.write(paper);
    SetPointSheets.write(paper, sides);
    GaugeSheet.write(paper);
    RunTestsSheet.write(paper);
    EffectsSheet.write(paper);
    RecordSheets.settings(paper);
    RecordSheets.events(paper);
    RecordSheets.setAside(paper);
    // The turns had to be written before the pictures of them, and stand behind everything else.
    int sheets = paper.book().getNumberOfSheets();
    for (int moved = 1; moved < turns; moved++) {
      paper.book().setSheetOrder(paper.book().getSheetName(1), sheets - 1);
    }
    if (record != null) {
      AnodesSheet.write(paper, record, written);
    }
    paper.book().setActiveSheet(0);
    paper.book().setForceFormulaRecalculation(true);
  }

  /** Whose it is; dated by the last cast, for the time of writing would differ from run to run. */
  private static void describe(SXSSFWorkbook book, AuditReport report) {
    POIXMLProperties properties = book.getXSSFWorkbook().getProperties();
    POIXMLProperties.CoreProperties core = properties.getCoreProperties();
    Optional<Date> date = Optional.of(Date.from(report.log().lastCastAt()));
    core.setCreator("Evenpour");
    core.setTitle(Words.english().say("paper.title"));
    core.setCreated(date);
    core.setModified(date);
    properties.getExtendedProperties().setApplication("Evenpour");
  }
}
