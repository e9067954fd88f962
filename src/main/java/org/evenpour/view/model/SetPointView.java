package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.evenpour.casting.Unit;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Point;
import org.evenpour.findings.SetPointReport.Replay;
import org.evenpour.picture.Mark;
import org.evenpour.picture.Points;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SetPointPicture;
import org.evenpour.picture.SetPointPicture.Rule;
import org.evenpour.report.Figures;
import org.evenpour.report.GaugeText;
import org.evenpour.report.SetPointText;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Adjust or leave alone, and what the gauge is worth, as the desk shows them. */
public final class SetPointView {
  private SetPointView() {}

  /** The sides of the chosen wheel. */
  public static List<SetPointReport> sides(Desk desk) {
    return desk.report().setPoints().stream()
        .filter(side -> side.wheel().equals(desk.selection().wheel()))
        .toList();
  }

  /** What to do at each side of the chosen wheel, and why. */
  public static String said(Desk desk) {
    SetPointText text = SetPointText.of(desk.sentences(), desk.report());
    List<String> lines = new ArrayList<>();
    for (SetPointReport side : sides(desk)) {
      lines.add((text.line(side) + " " + text.funnel(side)).strip());
    }
    return String.join("\n", lines);
  }

  /** What the gauges are worth; empty where none was given. */
  public static String gauges(Desk desk) {
    GaugeText text = new GaugeText(desk.sentences());
    List<String> lines = new ArrayList<>();
    for (GaugeReport gauge : desk.report().gauges()) {
      lines.addAll(text.lines(gauge));
    }
    return String.join("\n", lines);
  }

  /** The picture of all sides of the chosen wheel; null where too little is known. */
  public static @Nullable SetPointPicture picture(Desk desk) {
    SetPointText text = SetPointText.of(desk.sentences(), desk.report());
    Words words = desk.look().language().report();
    List<SetPointPicture.Side> sides = new ArrayList<>();
    double reach = 0;
    String symbol = "";
    for (SetPointReport side : sides(desk)) {
      Double deadband = side.deadband();
      Double forecast = side.forecast();
      if (deadband == null || forecast == null) {
        continue;
      }
      Figures figures = text.figures(side);
      Unit unit = figures.unit();
      symbol = unit.symbol();
      double half = unit.differenceFromCanonical(deadband);
      reach = Math.max(reach, half);
      for (Point point : side.points()) {
        reach = Math.max(reach, Math.abs(unit.differenceFromCanonical(point.deviation())));
      }
      int decimals = figures.decimals();
      Function<ToDoubleFunction<Point>, Points> left = value -> points(desk, side, figures, value);
      sides.add(
          new SetPointPicture.Side(
              text.who(side) + ": " + text.answer(side),
              side.moveBy() == null ? Mark.NONE : forecast > 0 ? Mark.HIGH : Mark.LOW,
              left.apply(Point::deviation),
              left.apply(Point::forecast),
              half,
              words.say("chart.adjust.band", figures.size(deadband, decimals)),
              words.say("chart.adjust.forecast") + " " + figures.departure(forecast, decimals),
              List.of(
                  rule("alone", side.leftAlone(), figures, words, left.apply(Point::deviation)),
                  rule(
                      "rule", side.withDeadband(), figures, words, left.apply(Point::withDeadband)),
                  rule(
                      "always",
                      side.compensated(),
                      figures,
                      words,
                      left.apply(Point::compensated)))));
    }
    double high = reach > 0 ? 1.08 * reach : 1;
    return sides.isEmpty()
        ? null
        : new SetPointPicture(
            sides, Charts.turns(desk), new Axis(words.say("head.deviation", symbol), -high, high));
  }

  private static Rule rule(
      String key, @Nullable Replay replay, Figures figures, Words words, Points left) {
    return new Rule(
        words.say("chart.adjust." + key),
        replay == null
            ? words.say("missing")
            : words.say("chart.rms", figures.size(replay.rms(), figures.decimals() + 1)),
        left);
  }

  private static Points points(
      Desk desk, SetPointReport side, Figures figures, ToDoubleFunction<Point> value) {
    List<Point> points = side.points();
    double[] x = new double[points.size()];
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      Point point = points.get(i);
      x[i] = desk.wheel().place(point.turn(), point.at()) + 0.5;
      y[i] = figures.unit().differenceFromCanonical(value.applyAsDouble(point));
    }
    int decimals = figures.decimals() + 1;
    return new Points(x, y, new int[0])
        .saying(
            Charts.turns(
                desk,
                i -> points.get(i).turn(),
                i -> points.get(i).at(),
                i -> figures.departure(value.applyAsDouble(points.get(i)), decimals)));
  }
}
