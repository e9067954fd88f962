package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * The last values as a line that fits into the cell of a table, the newest one as a dot; all cells
 * of a column share one scale.
 *
 * @param values in their order; NaN = missing
 * @param low value at the bottom
 * @param high value at the top
 * @param center a hairline
 */
@SuppressWarnings("ArrayRecordComponent") // handed on, never compared
public record SparkLine(double[] values, double low, double high, double center)
    implements Picture {

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double middle = y(center, area);
    pen.line(area.getX(), middle, area.getMaxX(), middle, ink.hairline(), pen.hair());
    Path2D line = new Path2D.Double();
    boolean down = false;
    double size = ink.length(4);
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        down = false;
        continue;
      }
      double x = area.getX() + (area.getWidth() - size) * i / Math.max(1, values.length - 1);
      if (down) {
        line.lineTo(x, y(values[i], area));
      } else {
        line.moveTo(x, y(values[i], area));
      }
      down = true;
    }
    pen.draw(line, ink.data(), pen.hair());
    if (values.length > 0 && down) {
      double y = y(values[values.length - 1], area);
      double x = area.getX() + (values.length == 1 ? 0 : area.getWidth() - size);
      pen.fill(new Ellipse2D.Double(x - size / 2, y - size / 2, size, size), ink.text());
    }
    return Painted.PLAIN;
  }

  private double y(double value, Rectangle2D area) {
    double part = (value - low) / (high - low);
    return area.getMaxY() - Math.max(0, Math.min(1, part)) * area.getHeight();
  }
}
