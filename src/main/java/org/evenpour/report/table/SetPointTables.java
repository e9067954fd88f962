package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Point;
import org.evenpour.findings.SetPointReport.Replay;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.SetPointText;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Whether to adjust each ladle side, and what each rule would have made of this record. */
public final class SetPointTables {
  private static final String TURNS = "adjust_turns";

  private SetPointTables() {}

  /** A turn of a ladle side. */
  public record Turn(SetPointReport side, Point point) {}

  private static List<Turn> rows(AuditReport report) {
    return report.setPoints().stream()
        .flatMap(side -> side.points().stream().map(point -> new Turn(side, point)))
        .toList();
  }

  private static String unit(AuditReport report, SetPointText text) {
    return report.setPoints().isEmpty()
        ? ""
        : text.figures(report.setPoints().get(0)).unit().symbol();
  }

  /** The series behind the advice, turn by turn. */
  public static Table<Turn> turns(AuditReport report, Sentences sentences) {
    SetPointText text = SetPointText.of(sentences, report);
    String unit = unit(report, text);
    Function<ToDoubleFunction<Point>, Function<Turn, @Nullable Double>> shown =
        of ->
            row ->
                text.figures(row.side())
                    .unit()
                    .differenceFromCanonical(of.applyAsDouble(row.point()));
    Digits digits = Digits.signed(2);
    return new Table<>(
        TURNS,
        sentences.words().say("sheet.adjust_turns"),
        Columns.<Turn>of(sentences)
            .wheel(row -> row.side().wheel())
            .text("side", row -> row.side().side())
            .turn("turn", row -> row.point().turn())
            .time("turn_at", row -> row.point().at())
            .figure("deviation", digits, shown.apply(Point::deviation))
            .with(unit)
            .asAudited()
            .figure("forecast_turn", digits, shown.apply(Point::forecast))
            .with(unit)
            .asAudited()
            .figure("with_band", digits, shown.apply(Point::withDeadband))
            .with(unit)
            .asAudited()
            .figure("compensated", digits, shown.apply(Point::compensated))
            .with(unit)
            .asAudited()
            .list(),
        rows(report));
  }

  /** One row for each side; how far each rule leaves it off target is a formula over the turns. */
  public static Table<SetPointReport> sides(AuditReport report, Sentences sentences) {
    SetPointText text = SetPointText.of(sentences, report);
    Words words = sentences.words();
    String unit = unit(report, text);
    List<SetPointReport> turns = new ArrayList<>();
    rows(report).forEach(row -> turns.add(row.side()));
    Function<SetPointReport, Figures> figures = text::figures;
    Function<Function<SetPointReport, @Nullable Double>, Function<SetPointReport, Cell>> off =
        of ->
            side ->
                new Cell.Figure(
                    Columns.difference(figures.apply(side).unit(), of.apply(side)),
                    Digits.signed(figures.apply(side).decimals()));
    return new Table<>(
        "adjust",
        words.say("sheet.adjust"),
        Columns.<SetPointReport>of(sentences)
            .wheel(SetPointReport::wheel)
            .text("side", SetPointReport::side)
            .text("answer", text::answer)
            .asAudited()
            .prose("words", 60, side -> (text.line(side) + " " + text.funnel(side)).strip())
            .asAudited()
            .figure("move_by", off.apply(SetPointReport::moveBy))
            .with(unit)
            .asAudited()
            .figure("forecast", off.apply(SetPointReport::forecast))
            .with(unit)
            .asAudited()
            .figure("low", off.apply(SetPointReport::forecastLow))
            .asAudited()
            .figure("high", off.apply(SetPointReport::forecastHigh))
            .asAudited()
            .figure(
                "deadband",
                side -> plain(figures, side, Unit::differenceFromCanonical, side.deadband()))
            .with(unit)
            .asAudited()
            .figure("rms_alone", side -> rms(turns, figures, side, side.leftAlone(), "deviation"))
            .with(unit)
            .asAudited()
            .figure("rms_band", side -> rms(turns, figures, side, side.withDeadband(), "with_band"))
            .with(unit)
            .asAudited()
            .count(
                "moves_band",
                side -> side.withDeadband() == null ? null : (Long) side.withDeadband().moves())
            .asAudited()
            .figure(
                "rms_always", side -> rms(turns, figures, side, side.compensated(), "compensated"))
            .with(unit)
            .asAudited()
            .figure("between", Digits.plain(0), SetPointReport::turnsBetweenMoves)
            .asAudited()
            .figure("aim", side -> plain(figures, side, Unit::fromCanonical, side.aim()))
            .with(unit)
            .asAudited()
            .figure("set_point", side -> plain(figures, side, Unit::fromCanonical, side.setPoint()))
            .with(unit)
            .count("moves_out", SetPointReport::movesTakenOut)
            .count("turns", SetPointReport::turns)
            .figure("lambda", Digits.plain(2), SetPointReport::lambda)
            .asAudited()
            .figure("lambda_low", Digits.plain(2), SetPointReport::lambdaLow)
            .like("low")
            .asAudited()
            .figure("lambda_high", Digits.plain(2), SetPointReport::lambdaHigh)
            .like("high")
            .asAudited()
            .spread("sigma_turn", figures, SetPointReport::sigma)
            .with(unit)
            .asAudited()
            .list(),
        report.setPoints());
  }

  /** Makes a figure that is shown of one that was computed. */
  private interface Shown {
    double of(Unit unit, double computed);
  }

  private static Cell plain(
      Function<SetPointReport, Figures> figures,
      SetPointReport side,
      Shown shown,
      @Nullable Double computed) {
    Figures its = figures.apply(side);
    return new Cell.Figure(
        computed == null ? null : (Double) shown.of(its.unit(), computed),
        Digits.plain(its.decimals()));
  }

  private static Cell rms(
      List<SetPointReport> turns,
      Function<SetPointReport, Figures> figures,
      SetPointReport side,
      @Nullable Replay replay,
      String column) {
    Figures its = figures.apply(side);
    int from = turns.indexOf(side);
    if (replay == null || from < 0) {
      return Cell.BLANK;
    }
    String range = "{" + TURNS + "/" + column + ":" + from + "-" + turns.lastIndexOf(side) + "}";
    return new Cell.Computed(
        "SQRT(SUMSQ(" + range + ")/COUNT(" + range + "))",
        new Cell.Figure(
            its.unit().differenceFromCanonical(replay.rms()), Digits.plain(its.decimals() + 1)));
  }
}
