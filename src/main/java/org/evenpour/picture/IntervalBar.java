package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import org.jspecify.annotations.Nullable;

/**
 * A value as a dot on its interval, small enough for the cell of a table; all cells of a column
 * share one scale, whose reference stands as a hairline.
 *
 * @param from value at the left edge
 * @param to value at the right edge
 * @param reference the hairline: zero, or 1.33
 * @param low lower end; null where there is no interval
 * @param value the dot; null = nothing is drawn but the hairline
 * @param high upper end
 * @param mark gives the color
 */
public record IntervalBar(
    double from,
    double to,
    double reference,
    @Nullable Double low,
    @Nullable Double value,
    @Nullable Double high,
    Mark mark)
    implements Picture {

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double y = area.getCenterY();
    double zero = x(reference, area);
    pen.line(zero, area.getY(), zero, area.getMaxY(), ink.hairline(), pen.hair());
    if (value != null) {
      double left = x(low == null ? value : low, area);
      double right = x(high == null ? value : high, area);
      pen.line(left, y, right, y, ink.of(mark), ink.length(2));
      if (value >= from && value <= to) {
        double size = ink.length(7);
        pen.fill(
            new Ellipse2D.Double(x(value, area) - size / 2, y - size / 2, size, size),
            ink.of(mark));
      }
    }
    return Painted.PLAIN;
  }

  private double x(double its, Rectangle2D area) {
    double part = (its - from) / (to - from);
    return area.getX() + Math.max(0, Math.min(1, part)) * area.getWidth();
  }
}
