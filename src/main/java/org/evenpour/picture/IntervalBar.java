package org.evenpour.picture;

import java.awt.Color;
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
      draw(
          pen,
          area.getX(),
          area.getMaxX(),
          y,
          x(low == null ? value : low, area),
          x(value, area),
          x(high == null ? value : high, area),
          ink.of(mark),
          1);
    }
    return Painted.PLAIN;
  }

  private double x(double value, Rectangle2D area) {
    return area.getX() + (value - from) / (to - from) * area.getWidth();
  }

  static void draw(
      Pen pen,
      double from,
      double to,
      double y,
      double low,
      double middle,
      double high,
      Color color,
      double times) {
    double left = Math.max(from, Math.min(to, low));
    double right = Math.max(from, Math.min(to, high));
    pen.line(left, y, right, y, color, pen.ink().length(2) * times);
    if (middle >= from && middle <= to) {
      double size = pen.ink().length(7) * times;
      pen.fill(new Ellipse2D.Double(middle - size / 2, y - size / 2, size, size), color);
    }
  }
}
