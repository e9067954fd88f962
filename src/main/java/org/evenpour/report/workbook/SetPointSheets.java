package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.util.CellReference;
import org.evenpour.audit.SetPointReport;
import org.evenpour.audit.SetPointReport.Replay;
import org.evenpour.casting.Unit;
import org.evenpour.report.SetPointText;
import org.jspecify.annotations.Nullable;

/** Whether to adjust each ladle side, and what each rule would have made of this record. */
final class SetPointSheets {
  private static final int DEVIATION = 4; // column of the turns

  private SetPointSheets() {}

  /**
   * Where the turns of a side stand.
   *
   * @param firstRow number from 1
   * @param lastRow number from 1
   */
  record Source(SetPointReport side, String sheet, int firstRow, int lastRow) {}

  private static SetPointText text(Paper paper) {
    return SetPointText.of(paper.sentences(), paper.report());
  }

  /** The series behind the advice, turn by turn. */
  static List<Source> turns(Paper paper) {
    List<SetPointReport> sides =
        paper.report().setPoints().stream().filter(side -> !side.points().isEmpty()).toList();
    if (sides.isEmpty()) {
      return List.of();
    }
    String unit = text(paper).figures(sides.get(0)).unit().symbol();
    Table table =
        new Table(
            paper,
            paper.say("sheet.adjust_turns"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.side")),
                Column.figures(paper.say("head.turn")),
                Column.figures(paper.zoned("head.turn_at")),
                Column.figures(paper.say("head.deviation", unit)),
                Column.figures(paper.say("head.forecast_turn", unit)),
                Column.figures(paper.say("head.with_band", unit)),
                Column.figures(paper.say("head.compensated", unit))));
    List<Source> sources = new ArrayList<>();
    for (SetPointReport side : sides) {
      Unit shown = text(paper).figures(side).unit();
      CellStyle style = paper.styles().departure(2);
      int first = table.rowIndex() + 2;
      for (SetPointReport.Point point : side.points()) {
        table
            .next()
            .text(side.wheel())
            .text(side.side())
            .turn(point.turn())
            .date(point.at())
            .number(shown.differenceFromCanonical(point.deviation()), style)
            .number(shown.differenceFromCanonical(point.forecast()), style)
            .number(shown.differenceFromCanonical(point.withDeadband()), style)
            .number(shown.differenceFromCanonical(point.compensated()), style);
      }
      sources.add(new Source(side, table.sheetName(), first, table.rowIndex() + 1));
    }
    table.finish();
    return sources;
  }

  /** One row for each side; how far each rule leaves it off target is a formula over the turns. */
  static void write(Paper paper, List<Source> sources) {
    List<SetPointReport> sides = paper.report().setPoints();
    if (sides.isEmpty()) {
      return;
    }
    String unit = text(paper).figures(sides.get(0)).unit().symbol();
    List<Column> headings = new ArrayList<>();
    headings.add(Column.words(paper.say("head.wheel")));
    headings.add(Column.words(paper.say("head.side")));
    headings.add(Column.words(paper.say("head.answer")));
    for (String key :
        List.of(
            "head.move_by",
            "head.forecast",
            "head.low",
            "head.high",
            "head.deadband",
            "head.rms_alone",
            "head.rms_band",
            "head.moves_band",
            "head.rms_always",
            "head.between",
            "head.aim",
            "head.set_point",
            "head.moves_out",
            "head.turns",
            "head.lambda",
            "head.low",
            "head.high",
            "head.sigma_turn")) {
      headings.add(Column.figures(paper.say(key, unit)));
    }
    headings.add(Column.words(paper.say("head.words")));
    Table table = new Table(paper, paper.say("sheet.adjust"), headings);
    for (SetPointReport side : sides) {
      Source source = sources.stream().filter(one -> one.side() == side).findFirst().orElse(null);
      row(paper, table.next(), side, source);
    }
    table.finish();
  }

  private static void row(Paper paper, Table table, SetPointReport side, @Nullable Source source) {
    SetPointText text = text(paper);
    Unit unit = text.figures(side).unit();
    Styles styles = paper.styles();
    int decimals = text.figures(side).decimals();
    CellStyle departure = styles.departure(decimals);
    CellStyle number = styles.number(decimals);
    CellStyle fine = styles.number(decimals + 1);
    Replay banded = side.withDeadband();
    table
        .text(side.wheel())
        .text(side.side())
        .text(text.answer(side))
        .number(Paper.difference(unit, side.moveBy()), departure)
        .number(Paper.difference(unit, side.forecast()), departure)
        .number(Paper.difference(unit, side.forecastLow()), departure)
        .number(Paper.difference(unit, side.forecastHigh()), departure)
        .number(Paper.difference(unit, side.deadband()), number);
    rms(table, source, DEVIATION, side.leftAlone(), unit, fine);
    rms(table, source, DEVIATION + 2, banded, unit, fine);
    table.count(banded == null ? null : (Long) banded.moves());
    rms(table, source, DEVIATION + 3, side.compensated(), unit, fine);
    table
        .number(side.turnsBetweenMoves(), styles.number(0))
        .number(Paper.value(unit, side.aim()), number)
        .number(Paper.value(unit, side.setPoint()), number)
        .count(side.movesTakenOut())
        .count(side.turns())
        .number(side.lambda(), styles.number(2))
        .number(side.lambdaLow(), styles.number(2))
        .number(side.lambdaHigh(), styles.number(2))
        .number(Paper.difference(unit, side.sigma()), fine)
        .prose((text.line(side) + " " + text.funnel(side)).strip());
  }

  private static void rms(
      Table table,
      @Nullable Source source,
      int column,
      @Nullable Replay replay,
      Unit unit,
      CellStyle style) {
    if (replay == null || source == null) {
      table.blank();
      return;
    }
    String letter = CellReference.convertNumToColString(column);
    String range =
        "'" + source.sheet() + "'!" + letter + source.firstRow() + ":" + letter + source.lastRow();
    table.formula(
        "SQRT(SUMSQ(" + range + ")/COUNT(" + range + "))",
        unit.differenceFromCanonical(replay.rms()),
        style);
  }
}
