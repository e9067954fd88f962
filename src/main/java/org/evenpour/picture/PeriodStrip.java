package org.evenpour.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.SeriesPicture.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jspecify.annotations.Nullable;

/**
 * The whole period as one thin line, signals as marks on it, and the stretch of turns that was
 * chosen.
 *
 * @param points the wheel turn by turn
 * @param low value at the bottom
 * @param high value at the top
 * @param from first turn
 * @param to last turn
 * @param flags signals
 * @param stretch chosen turns; null = all
 * @param moments when it was
 */
public record PeriodStrip(
    Points points,
    double low,
    double high,
    double from,
    double to,
    List<SeriesPicture.Flag> flags,
    @Nullable Part stretch,
    List<SeriesPicture.Moment> moments)
    implements Picture {

  /** Some of the turns. */
  public record Part(double from, double to) {}

  /** Copies the list. */
  public PeriodStrip {
    flags = List.copyOf(flags);
    moments = List.copyOf(moments);
  }

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    Rectangle2D inner =
        new Rectangle2D.Double(
            area.getX(),
            area.getY() + ink.length(10),
            area.getWidth(),
            Math.max(1, area.getHeight() - ink.length(moments.isEmpty() ? 12 : 24)));
    Axis across = new Axis("", from, to);
    NumberAxis turns = Plots.axis(across, ink);
    NumberAxis values = Plots.axis(new Axis("", low, high), ink);
    turns.setVisible(false);
    values.setVisible(false);
    XYPlot plot = Plots.plot(turns, values, 0);
    Plots.line(plot, 0, points, across, ink.dim(), pen.hair(), 0);
    Field scale = new Field(plot, inner);
    if (stretch != null) {
      double left = scale.x(stretch.from());
      double right = scale.x(stretch.to());
      pen.fill(
          new Rectangle2D.Double(left, area.getY(), right - left, area.getHeight()), ink.chosen());
    }
    Plots.draw(pen, plot, inner);
    List<Spot> spots = new ArrayList<>();
    for (SeriesPicture.Flag flag : flags) {
      double left = scale.x(flag.from());
      double right = Math.max(left + ink.length(2), scale.x(flag.to()));
      Color color = ink.of(flag.mark());
      double y = area.getY() + ink.length(5);
      pen.fill(new Rectangle2D.Double(left, y - ink.length(1), right - left, ink.length(2)), color);
      pen.fill(flag.mark().at(left, y, ink.length(8)), color);
      spots.add(
          new Spot(
              new Rectangle2D.Double(
                  left - ink.length(5), area.getY(), right - left + ink.length(10), ink.length(12)),
              "signal",
              flag.name(),
              flag.says()));
    }
    double foot = area.getMaxY() - ink.length(5);
    Plots.moments(pen, moments, scale::x, foot, area);
    if (stretch != null) {
      for (double edge : new double[] {stretch.from(), stretch.to()}) {
        double x = scale.x(edge);
        pen.line(x, area.getY(), x, area.getMaxY(), ink.accent(), ink.length(2));
      }
    }
    return new Painted(spots, List.of(scale));
  }
}
