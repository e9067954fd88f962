package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/**
 * Adjust or leave alone: for each ladle side its level turn by turn with the forecast and the
 * deadband, and beside it what three rules would have made of the same turns, all on one scale.
 *
 * @param sides from top to bottom
 * @param across the turns that are visible
 * @param up the deviations that are visible, 0 = on target
 */
public record SetPointPicture(List<Side> sides, SeriesPicture.Axis across, SeriesPicture.Axis up)
    implements Picture {

  private static final double LEFT = 52;

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
    Painted painted = Painted.PLAIN;
    for (int i = 0; i < sides.size(); i++) {
      Rectangle2D row =
          new Rectangle2D.Double(
              area.getX(), area.getY() + i * (each + gap), area.getWidth(), Math.max(1, each));
      painted = side(pen, sides.get(i), row);
    }
    // Of several rows, all on the same turns.
    Painted.Scale scale = painted.scale();
    return scale == null
        ? painted
        : new Painted(
            List.of(),
            new Painted.Scale(
                new Rectangle2D.Double(
                    scale.area().getX(), area.getY(), scale.area().getWidth(), area.getHeight()),
                scale.from(),
                scale.to()));
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
    double top = row.getY() + ink.length(24);
    double high = Math.max(1, row.getMaxY() - top);
    double wide = row.getWidth() * (side.rules().isEmpty() ? 1 : 0.58);
    Rectangle2D main = new Rectangle2D.Double(row.getX(), top, wide, high);
    Rectangle2D data = main(pen, side, main);
    double x = main.getMaxX() + ink.length(6);
    double small = (row.getMaxX() - x) / Math.max(1, side.rules().size());
    for (Rule rule : side.rules()) {
      rule(
          pen,
          rule,
          new Rectangle2D.Double(x, data.getY(), small - ink.length(10), data.getHeight()));
      x += small;
    }
    return new Painted(List.of(), new Painted.Scale(data, across.low(), across.high()));
  }

  private Rectangle2D main(Pen pen, Side side, Rectangle2D area) {
    Ink ink = pen.ink();
    Font font = ink.font(0.85);
    double right =
        Math.max(
                pen.width(side.deadbandLabel(), font),
                pen.width(side.forecastLabel(), ink.bold(0.85)))
            + ink.length(20);
    double above = ink.length(18);
    pen.text(
        up.title(),
        area.getX() + ink.length(4),
        area.getY() + ink.length(6),
        0,
        ink.font(0.92),
        ink.dim());
    NumberAxis turns = Plots.axis(across.title(), across.low(), across.high(), ink);
    turns.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    turns.setNumberFormatOverride(Plots.format(0));
    NumberAxis values = Plots.axis("", up.low(), up.high(), ink);
    XYPlot plot = Plots.plot(turns, values, ink.length(LEFT), right, ink.length(42));
    Rectangle2D lower =
        new Rectangle2D.Double(
            area.getX(),
            area.getY() + above,
            area.getWidth(),
            Math.max(1, area.getHeight() - above));
    Rectangle2D inner =
        new Rectangle2D.Double(
            lower.getX() + ink.length(LEFT),
            lower.getY(),
            Math.max(1, lower.getWidth() - ink.length(LEFT) - right),
            Math.max(1, lower.getHeight() - ink.length(42)));
    band(pen, side.deadband(), inner);
    Plots.line(plot, 0, side.level(), ink.hairline(), 0.8, ink.length(3.2));
    Plots.line(plot, 1, side.forecast(), ink.text(), Math.max(1.2, ink.length(1.6)), 0);
    Rectangle2D data = Plots.draw(pen, plot, lower);
    double l = values.valueToJava2D(side.deadband(), data, RectangleEdge.LEFT);
    for (double y :
        new double[] {l, values.valueToJava2D(-side.deadband(), data, RectangleEdge.LEFT)}) {
      if (y > data.getY() && y < data.getMaxY()) {
        pen.dashed(new Line2D.Double(data.getX(), y, data.getMaxX(), y), ink.dim(), pen.hair());
      }
    }
    zero(pen, data);
    double x = data.getMaxX() + ink.length(6);
    double deadbandAt = Math.max(data.getY(), l);
    double last = last(side.forecast());
    double at =
        Double.isNaN(last)
            ? data.getCenterY()
            : values.valueToJava2D(last, data, RectangleEdge.LEFT);
    double apart = ink.length(14);
    at = Math.min(data.getMaxY(), Math.max(data.getY(), at));
    at = Math.abs(at - deadbandAt) < apart ? deadbandAt + apart : at;
    pen.text(side.deadbandLabel(), x, deadbandAt, 0, font, ink.dim());
    pen.text(side.forecastLabel(), x, at, 0, ink.bold(0.85), ink.text());
    return data;
  }

  private void rule(Pen pen, Rule rule, Rectangle2D data) {
    Ink ink = pen.ink();
    Font small = ink.font(0.85);
    pen.text(
        pen.fit(rule.name(), small, data.getWidth()),
        data.getX(),
        data.getY() - ink.length(28),
        0,
        small,
        ink.dim());
    pen.text(
        pen.fit(rule.figure(), ink.bold(0.92), data.getWidth()),
        data.getX(),
        data.getY() - ink.length(12),
        0,
        ink.bold(0.92),
        ink.text());
    NumberAxis turns = Plots.axis("", across.low(), across.high(), ink);
    turns.setVisible(false);
    NumberAxis values = Plots.axis("", up.low(), up.high(), ink);
    values.setVisible(false);
    XYPlot plot = Plots.plot(turns, values, 0, 0, 0);
    Plots.line(plot, 0, rule.left(), ink.data(), Math.max(0.8, ink.length(0.8)), 0);
    zero(pen, data);
    Plots.draw(pen, plot, data);
  }

  private void band(Pen pen, double half, Rectangle2D inner) {
    double high = y(Math.min(up.high(), half), inner);
    double low = y(Math.max(up.low(), -half), inner);
    pen.fill(
        new Rectangle2D.Double(inner.getX(), high, inner.getWidth(), Math.max(0, low - high)),
        pen.ink().band());
  }

  private void zero(Pen pen, Rectangle2D data) {
    double y = y(0, data);
    pen.line(data.getX(), y, data.getMaxX(), y, pen.ink().dim(), pen.hair());
  }

  private double y(double value, Rectangle2D data) {
    return data.getMaxY() - (value - up.low()) / (up.high() - up.low()) * data.getHeight();
  }

  private static double last(Points points) {
    return points.size() == 0 ? Double.NaN : points.y()[points.size() - 1];
  }
}
