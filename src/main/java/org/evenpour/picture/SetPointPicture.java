package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.EdgeLabels.Label;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;

/**
 * Adjust or leave alone: for each ladle side its level turn by turn with the forecast and the
 * deadband, and beside it what three rules would have made of the same turns, all on one scale.
 *
 * @param sides from top to bottom
 * @param across the turns that are visible
 * @param up the deviations that are visible, 0 = on target
 */
public record SetPointPicture(List<Side> sides, Axis across, Axis up) implements Picture {

  /** Copies the list. */
  public SetPointPicture {
    sides = List.copyOf(sides);
  }

  /**
   * One ladle side.
   *
   * @param title what it is and what to do, in a line
   * @param mark which way it is off, where it is to be moved
   * @param level off target
   * @param forecast of each turn
   * @param deadband half of its width
   * @param deadbandLabel what it is called
   * @param forecastLabel what the forecast is called
   * @param rules what each would have made of the record
   */
  public record Side(
      String title,
      Mark mark,
      Points level,
      Points forecast,
      double deadband,
      String deadbandLabel,
      String forecastLabel,
      List<Rule> rules) {
    /** Copies the list. */
    public Side {
      rules = List.copyOf(rules);
    }
  }

  /**
   * What a rule would have made of the record.
   *
   * @param name {@code left alone}
   * @param figure how far off target that is, with its unit
   */
  public record Rule(String name, String figure, Points left) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double gap = ink.length(12);
    double each =
        (area.getHeight() - gap * Math.max(0, sides.size() - 1)) / Math.max(1, sides.size());
    List<Field> fields = new ArrayList<>();
    for (int i = 0; i < sides.size(); i++) {
      Rectangle2D row =
          new Rectangle2D.Double(
              area.getX(), area.getY() + i * (each + gap), area.getWidth(), Math.max(1, each));
      fields.addAll(side(pen, sides.get(i), row).fields());
    }
    return new Painted(List.of(), fields);
  }

  private Painted side(Pen pen, Side side, Rectangle2D row) {
    Ink ink = pen.ink();
    Font bold = ink.bold(1);
    pen.text(
        pen.fit(side.title(), bold, row.getWidth()),
        row.getX() + ink.length(4),
        row.getY() + ink.length(9),
        0,
        bold,
        ink.textOf(side.mark()));
    NumberAxis deviations = Plots.upright(up, pen, ink.length(20));
    CombinedRangeXYPlot beside = new CombinedRangeXYPlot(deviations);
    beside.setInsets(new RectangleInsets(ink.length(42), 0, 0, ink.length(10)));
    beside.setGap(ink.length(10));
    // A choice: the record takes more room than all that might have been made of it.
    beside.add(main(pen, side), 4);
    side.rules().forEach(rule -> beside.add(rule(pen, rule)));
    return Plots.draw(pen, beside, row);
  }

  private XYPlot main(Pen pen, Side side) {
    Ink ink = pen.ink();
    XYPlot plot = Plots.plot(Plots.turns(across, ink), null, 0);
    Plots.line(plot, 0, side.level(), across, ink.hairline(), 0.8, ink.length(3.2));
    Plots.line(plot, 1, side.forecast(), across, ink.text(), Math.max(1.2, ink.length(1.6)), 0);
    double half = side.deadband();
    plot.addRangeMarker(Plots.band(new Band(-half, null, half, ""), up, ink), Layer.BACKGROUND);
    for (double edge : new double[] {-half, half}) {
      plot.addRangeMarker(new ValueMarker(edge, ink.dim(), pen.dashes()));
    }
    plot.addRangeMarker(Plots.level(0, ink.dim(), pen));
    double last =
        side.forecast().size() == 0 ? Double.NaN : side.forecast().y()[side.forecast().size() - 1];
    Label forecast =
        new Label(
            Double.isNaN(last) ? 0 : Math.max(up.low(), Math.min(up.high(), last)),
            0,
            side.forecastLabel(),
            ink.bold(0.85),
            ink.text());
    Label deadband = Label.plain(Math.min(up.high(), half), 0, side.deadbandLabel(), ink);
    plot.setRangeAxis(1, new EdgeLabels(pen, List.of(deadband, forecast), up, ink.length(14)));
    return plot;
  }

  private XYPlot rule(Pen pen, Rule rule) {
    Ink ink = pen.ink();
    NumberAxis turns = Plots.turns(across, ink);
    turns.setVisible(false);
    XYPlot plot = Plots.plot(turns, null, 0);
    Plots.line(plot, 0, rule.left(), across, ink.data(), Math.max(0.8, ink.length(0.8)), 0);
    plot.addRangeMarker(Plots.level(0, ink.dim(), pen), Layer.BACKGROUND);
    plot.addAnnotation(
        new Note(
            pen,
            field -> {
              double x = field.area().getX();
              double y = field.area().getY();
              double width = field.area().getWidth();
              Font small = ink.font(0.85);
              Font bold = ink.bold(0.92);
              pen.text(
                  pen.fit(rule.name(), small, width), x, y - ink.length(28), 0, small, ink.dim());
              pen.text(
                  pen.fit(rule.figure(), bold, width), x, y - ink.length(12), 0, bold, ink.text());
              return List.of();
            }));
    return plot;
  }
}
