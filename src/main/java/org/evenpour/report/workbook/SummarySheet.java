package org.evenpour.report.workbook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.SetPointReport;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.Quiet;
import org.evenpour.report.RecordText;
import org.evenpour.report.RejectText;
import org.evenpour.report.Sentences;
import org.evenpour.report.SetPointText;
import org.evenpour.report.SettingSentences;
import org.evenpour.report.Topic;
import org.evenpour.report.VerdictSentences;
import org.evenpour.report.table.AnodeCells;
import org.evenpour.report.table.CapabilityTable;
import org.evenpour.report.table.PeriodTable;
import org.evenpour.report.workbook.Grid.Piece;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/**
 * The first sheet, one printed page that can be understood without the program: what was cast and
 * rejected, what to do, what holds now, capability and one picture. What has passed is not on it.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class SummarySheet {
  /** Choices: what a meeting can go through, and what one page holds. */
  private static final int MOST_MOLDS = 6;

  private static final int MOST_SIDES = 4;
  private static final int MOST_HOLDING = 8;

  /** Rows of the picture, the fewest and the most. */
  private static final int LEAST_ROWS = 9;

  private static final int MOST_ROWS = 16;

  /** What the foot takes. */
  private static final double FOOT_POINTS = 2 * (Printer.LINE_POINTS + 1);

  /** What the table of capability takes without its rows: headings in four lines, two sentences. */
  private static final double CAPABILITY_POINTS = 8.5 * Printer.LINE_POINTS;

  /** What is kept for signals that hold: three of them. */
  private static final double HOLDING_POINTS = 7 * Printer.LINE_POINTS;

  private final Paper paper;
  private final @Nullable CastingRecord record;
  private final AnodeCells anodes;
  private final Grid grid;
  private final SXSSFSheet sheet;
  private final VerdictSentences verdicts;

  private SummarySheet(
      Paper paper, SXSSFSheet sheet, @Nullable CastingRecord record, AnodeCells anodes) {
    this.anodes = anodes;
    this.paper = paper;
    this.sheet = sheet;
    this.record = record;
    grid = new Grid(paper, sheet);
    verdicts = new VerdictSentences(paper.report(), paper.sentences());
  }

  /** The sheet, still empty: it comes first, and leads to what is printed after it. */
  static SXSSFSheet create(Paper paper) {
    return paper.book().createSheet(paper.say("sheet.summary"));
  }

  /** Fills it when all else is printed. */
  static void write(
      Paper paper,
      Printer printer,
      SXSSFSheet sheet,
      @Nullable CastingRecord record,
      AnodeCells anodes) {
    new SummarySheet(paper, sheet, record, anodes).write(printer);
  }

  private void write(Printer printer) {
    head();
    found();
    cast(printer);
    toDo();
    holds(printer);
    capability(printer);
    picture(printer);
    foot();
    sheet.setDisplayGridlines(false);
    Printer.forPaper(paper, sheet);
    sheet.getPrintSetup().setLandscape(false);
    sheet.getPrintSetup().setFitHeight((short) 1);
    sheet.setMargin(PageMargin.TOP, Page.TOP);
    sheet.setMargin(PageMargin.BOTTOM, Page.BOTTOM);
    sheet
        .getWorkbook()
        .setPrintArea(
            sheet.getWorkbook().getSheetIndex(sheet), 0, Grid.COLUMNS - 1, 0, grid.next() - 1);
  }

  private void head() {
    RecordText its = new RecordText(paper.sentences(), paper.report().log());
    String title = paper.say("paper.title");
    grid.title(its.names().isEmpty() ? title : title + ": " + its.wheels());
    grid.prose(its.period("").strip() + "   " + its.counts());
  }

  /** The verdict in words. */
  private void found() {
    List<String> said = new ArrayList<>();
    worst()
        .forEach(
            one -> {
              CapabilityReport its = one.overall().capability();
              if (its != null && its.ppk() != null) {
                said.add(
                    paper.say(
                        one.inFull().isStable() ? "paper.worst" : "paper.worst.unstable",
                        paper.sentences().title(one.wheel(), one.name()),
                        Digits.number(its.ppk().value(), 2),
                        Sentences.percent(its.fractionOutsideObserved(), paper.words())));
              }
            });
    said.addAll(verdicts.overview());
    if (!said.isEmpty()) {
      grid.prose(String.join(" ", said), paper.styles().audited());
    }
  }

  /** The characteristic with the least Ppk, of each wheel. */
  private List<CharacteristicReport> worst() {
    return paper.report().log().wheels().stream()
        .flatMap(
            wheel ->
                paper.report().characteristics().stream()
                    .filter(one -> one.wheel().equals(wheel) && ppk(one) != null)
                    .min(Comparator.comparing(SummarySheet::ppk))
                    .stream())
        .toList();
  }

  private static Double ppk(CharacteristicReport one) {
    CapabilityReport its = one.overall().capability();
    return its == null || its.ppk() == null ? Double.POSITIVE_INFINITY : its.ppk().value();
  }

  private void cast(Printer printer) {
    Table<PeriodTable.Row> table = PeriodTable.of(paper.report(), record, paper.sentences());
    if (table.rows().isEmpty()) {
      return;
    }
    Instant middle = PeriodTable.middle(paper.report(), record);
    grid.section(
        middle == null
            ? paper.say("paper.cast")
            : paper.say("paper.cast.halves", paper.sentences().time(middle)));
    grid.table(printer, table);
  }

  /** Molds to act on and set-points, with room to write who does it and by when. */
  private void toDo() {
    List<MoldVerdict> all =
        paper.report().verdicts().stream().filter(one -> !verdicts.caution(one).isEmpty()).toList();
    List<SetPointReport> sides = SetPointText.told(paper.report());
    if (all.isEmpty() && sides.isEmpty()) {
      return;
    }
    grid.section(paper.say("paper.to_do"));
    String caution = verdicts.cautionOfAll();
    if (!caution.isEmpty()) {
      grid.prose(caution);
    }
    CellStyle heading = paper.styles().heading();
    grid.line(
        List.of(
            new Piece(1, heading, paper.say("head.mold")),
            new Piece(1, heading, paper.say("head.verdict")),
            new Piece(7, heading, paper.say("head.why")),
            new Piece(1, heading, paper.say("head.thick_side")),
            new Piece(1, heading, paper.say("paper.who")),
            new Piece(1, heading, paper.say("paper.by_when"))));
    // What to do leaves room for what holds.
    int told = 0;
    double least = reserved() + HOLDING_POINTS + sides.size() * 2 * Printer.LINE_POINTS;
    while (told < Math.min(MOST_MOLDS, all.size()) && room() - least >= 2 * Printer.LINE_POINTS) {
      MoldVerdict one = all.get(told++);
      act(
          (paper.sentences().nameWheels() ? one.wheel() + " " : "") + one.mold(),
          verdicts.verdict(one),
          verdicts.reason(one),
          verdicts.thickSide(one.thickSide()),
          paper.styles().audited());
    }
    if (all.size() > told) {
      more("paper.more.molds", all.size() - told, "sheet.verdicts");
    }
    SetPointText text = SetPointText.of(paper.sentences(), paper.report());
    for (SetPointReport one : sides.subList(0, Math.min(MOST_SIDES, sides.size()))) {
      act(text.who(one), text.answer(one), text.line(one), "", paper.styles().wrapped());
    }
    if (sides.size() > MOST_SIDES) {
      more("paper.more.sides", sides.size() - MOST_SIDES, "sheet.adjust");
    }
  }

  private void act(String who, String what, String why, String where, CellStyle style) {
    grid.line(
        List.of(
            new Piece(1, style, who),
            new Piece(1, style, what),
            new Piece(7, style, why),
            new Piece(1, style, where),
            new Piece(1, paper.styles().fillIn(), ""),
            new Piece(1, paper.styles().fillIn(), "")));
  }

  private void more(String key, int count, String sheetKey) {
    String name = paper.say(sheetKey);
    grid.line(
        List.of(
            new Piece(
                Grid.COLUMNS,
                paper.styles().link(),
                paper.say(key, paper.words().count(count), name),
                Printed.address(name, "A1"))));
  }

  /** What holds now, each with the way to its row, as far as there is room. */
  private void holds(Printer printer) {
    AuditReport report = paper.report();
    grid.section(paper.say("paper.holds"));
    List<List<Piece>> lines = new ArrayList<>();
    for (Topic topic : Topic.of(report)) {
      Signal first = topic.first();
      if (first.open()) {
        lines.add(
            led(
                first.id(),
                printer.place("signals", "signal", first.id()),
                paper.say("mark." + first.direction().id())
                    + " "
                    + paper.sentences().brief(topic)));
      }
    }
    RejectText rejects = new RejectText(paper.sentences());
    RejectText.ranked(report).stream()
        .filter(spell -> spell.signal().open())
        .forEach(spell -> lines.add(led("sheet.rejects", rejects.lead(spell))));
    SettingSentences settings = new SettingSentences(paper.sentences());
    SettingSentences.holding(report)
        .forEach(move -> lines.add(led("sheet.moves", settings.brief(move))));
    BeyondSentences beyond = new BeyondSentences(report, paper.sentences());
    beyond
        .holding()
        .forEach(
            one ->
                lines.add(
                    led(
                        "sheet.moves",
                        paper.say("mark." + one.direction().id()) + " " + beyond.sentence(one))));
    Quiet quiet = Quiet.of(report, paper.sentences());
    if (lines.isEmpty()) {
      (report.signals().isEmpty()
              ? quiet.lines(paper.words())
              : List.of(paper.say("paper.holds.none")))
          .forEach(grid::prose);
    }
    int told = 0;
    while (told < lines.size()
        && told < MOST_HOLDING
        && room() - reserved() >= Grid.height(lines.get(told)) + Printer.LINE_POINTS) {
      grid.line(lines.get(told++));
    }
    if (told < lines.size()) {
      more("paper.more.holding", lines.size() - told, "sheet.signals");
    }
    if (!report.signals().isEmpty()) {
      quiet.notLookedFor(paper.words()).stream().limit(1).forEach(grid::prose);
    }
  }

  private List<Piece> led(String sheetKey, String said) {
    String name = paper.say(sheetKey);
    return led(name, Printed.address(name, "A1"), said);
  }

  private List<Piece> led(String name, @Nullable String link, String said) {
    return List.of(
        new Piece(1, paper.styles().link(), name, link),
        new Piece(Grid.COLUMNS - 1, paper.styles().wrapped(), said));
  }

  private void capability(Printer printer) {
    Table<CharacteristicReport> overall =
        CapabilityTable.overall(paper.report(), paper.sentences(), anodes);
    if (overall.rows().isEmpty()) {
      return;
    }
    grid.section(paper.say("paper.capability"));
    grid.table(printer, overall);
    worst().stream()
        .map(verdicts::whatIf)
        .filter(said -> said != null)
        .limit(1)
        .forEach(said -> grid.prose(said, paper.styles().audited()));
  }

  private void picture(Printer printer) {
    List<CharacteristicReport> all = worst().isEmpty() ? paper.report().characteristics() : worst();
    CharacteristicReport drawn =
        all.stream().min(Comparator.comparing(SummarySheet::ppk)).orElse(null);
    if (drawn == null || drawn.molds().isEmpty()) {
      return;
    }
    grid.gap();
    int first = grid.next();
    int rows =
        (int)
            Math.max(LEAST_ROWS, Math.min(MOST_ROWS, (room() - FOOT_POINTS) / Printer.LINE_POINTS));
    grid.leave(rows);
    MoldPicture.draw(paper, printer, sheet, drawn, first, first + rows);
  }

  private void foot() {
    CellStyle gray = paper.styles().audited();
    int notes = paper.report().notes().size();
    String name = paper.say("sheet.notes");
    grid.line(
        List.of(
            notes == 0
                ? new Piece(3, gray, "")
                : new Piece(
                    3,
                    paper.styles().link(),
                    paper.say("paper.more.notes", notes),
                    Printed.address(name, "A1")),
            new Piece(
                Grid.COLUMNS - 3,
                gray,
                paper.say("paper.gray", paper.say("sheet.specification")))));
    grid.prose(paper.say("safety"));
  }

  /** How much of a page of US Letter, the less high one, is left. */
  private double room() {
    return Page.highest(false, Page.LEAST_SCALE) - grid.points();
  }

  /** What must be left for capability, the picture and the foot. */
  private double reserved() {
    return CAPABILITY_POINTS
        + (paper.report().characteristics().size() + LEAST_ROWS) * Printer.LINE_POINTS
        + FOOT_POINTS;
  }
}
