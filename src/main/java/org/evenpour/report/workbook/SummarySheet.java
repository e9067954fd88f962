package org.evenpour.report.workbook;

import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.NextSteps;
import org.evenpour.report.Quiet;
import org.evenpour.report.RejectText;
import org.evenpour.report.SettingSentences;
import org.evenpour.report.Topic;
import org.evenpour.report.table.CapabilityTable;
import org.evenpour.table.Table;

/**
 * The first sheet: what the meeting should look at first.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class SummarySheet {
  private static final int COLUMNS = 12; // of the table of characteristics
  private static final int WIDTH = 11;
  private static final int FIRST_WIDTH = 26;
  private static final int TOPICS = 15;

  private final Paper paper;
  private final SXSSFSheet sheet;
  private int rows;

  private SummarySheet(Paper paper) {
    this.paper = paper;
    this.sheet = paper.book().createSheet(paper.say("sheet.summary"));
  }

  static void write(Paper paper, Printer printer) {
    new SummarySheet(paper).write(printer);
  }

  private void write(Printer printer) {
    for (int i = 0; i < COLUMNS; i++) {
      sheet.setColumnWidth(i, (i == 0 ? FIRST_WIDTH : i == COLUMNS - 1 ? WIDTH + 4 : WIDTH) * 256);
    }
    AuditReport report = paper.report();
    AuditReport.Log log = report.log();
    List<String> wheels = log.wheels().stream().filter(name -> !name.isEmpty()).toList();
    Row title = sheet.createRow(rows++);
    title.setHeightInPoints(24);
    put(title, 0, paper.styles().title(), title(wheels));
    prose(
        paper
            .say(
                "summary.period",
                "",
                paper.sentences().date(log.firstCastAt()),
                paper.sentences().date(log.lastCastAt()),
                paper.sentences().zoneName())
            .strip());
    prose(
        paper.say(
            "summary.counts",
            paper.words().count(log.rowsKept()),
            paper.words().count(log.molds()),
            paper.words().count(log.turns()),
            paper.words().count(log.rowsRead()),
            paper.words().count(log.rowsSetAside())));
    if (!log.files().isEmpty()) {
      prose(paper.say("paper.logs", String.join(", ", log.files())));
    }
    rows++;
    Table<CharacteristicReport> overall = CapabilityTable.overall(report, paper.sentences());
    printer.within(sheet, rows, overall);
    rows += overall.rows().size() + 2;
    List<String> rejects = new RejectText(paper.sentences()).lines(report);
    if (!rejects.isEmpty()) {
      rejects.forEach(this::prose);
      rows++;
    }
    topics();
    moves();
    if (!report.notes().isEmpty()) {
      rows++;
      section(paper.say("paper.notes"));
      report.notes().forEach(note -> prose(note.toString()));
    }
    rows++;
    prose(paper.say("paper.guide"));
    sheet.setDisplayGridlines(false);
    Printer.forPaper(sheet, paper.words());
  }

  private String title(List<String> wheels) {
    String name = paper.say("paper.title");
    return switch (wheels.size()) {
      case 0 -> name;
      case 1 -> name + ": " + paper.say("summary.wheel", wheels.get(0));
      default -> name + ": " + paper.say("summary.wheels", paper.words().list(wheels));
    };
  }

  private static void put(Row row, int column, CellStyle style, String text) {
    Cell cell = row.createCell(column);
    cell.setCellStyle(style);
    cell.setCellValue(Texts.cell(text));
  }

  private void section(String text) {
    put(sheet.createRow(rows++), 0, paper.styles().section(), text);
  }

  /** A sentence over the whole width, as high as it needs. */
  private void prose(String text) {
    int width = FIRST_WIDTH + (COLUMNS - 1) * WIDTH;
    int lines = Printer.linesOf(Texts.cell(text), width - 10);
    Row row = sheet.createRow(rows);
    row.setHeightInPoints(Math.min(400, 15f * lines + 2));
    put(row, 0, paper.styles().wrapped(), text);
    sheet.addMergedRegion(new CellRangeAddress(rows, rows, 0, COLUMNS - 1));
    rows++;
  }

  /** Settings that moved and of which no signal tells. */
  private void moves() {
    List<SettingsWatched.Move> holding = SettingSentences.holding(paper.report());
    if (!holding.isEmpty()) {
      rows++;
      section(paper.say("summary.moves"));
      SettingSentences sentences = new SettingSentences(paper.sentences());
      holding.stream().limit(TOPICS).map(sentences::sentence).forEach(this::prose);
    }
  }

  /** Where the wheel stands off beyond what its settings explain. */
  private void beyond() {
    BeyondSentences sentences = new BeyondSentences(paper.report(), paper.sentences());
    sentences.all().stream()
        .limit(TOPICS)
        .map(one -> paper.say("mark." + one.direction().id()) + " " + sentences.sentence(one))
        .forEach(this::prose);
  }

  private void topics() {
    List<Topic> topics = Topic.of(paper.report());
    Quiet quiet = Quiet.of(paper.report(), paper.sentences());
    if (topics.isEmpty()) {
      beyond();
      quiet.lines(paper.words()).forEach(this::section);
      return;
    }
    section(paper.say("summary.look"));
    boolean advised = false;
    for (Topic topic : topics.subList(0, Math.min(TOPICS, topics.size()))) {
      prose(
          paper.say("mark." + topic.first().direction().id())
              + " "
              + paper.sentences().topic(topic));
      Link best = topic.best();
      advised |= best != null && !paper.sentences().advice(best).isEmpty();
    }
    String left =
        new NextSteps(paper.report(), paper.sentences())
            .once(topics.subList(0, Math.min(TOPICS, topics.size())));
    if (!left.isEmpty()) {
      prose(left);
      advised = true;
    }
    if (topics.size() > TOPICS) {
      prose(paper.say("paper.more", topics.size() - TOPICS));
    }
    beyond();
    quiet.notLookedFor(paper.words()).forEach(this::prose);
    if (advised) {
      rows++;
      section(paper.say("safety"));
    }
  }
}
