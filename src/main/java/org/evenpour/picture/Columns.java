package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;

/**
 * What the line through a long series covers in each column of pixels: from its least to its
 * greatest value there, crossings from point to point included. Where there are more points than
 * pixels that is all that could be seen of them, and it is drawn in a fraction of the time. Each
 * visible point is looked at once.
 *
 * @param low least value of each column; NaN where the line does not come
 * @param high greatest value
 */
@SuppressWarnings("ArrayRecordComponent") // made for one drawing, never compared
record Columns(double[] low, double[] high) {

  /** A choice: with more points than this to a column, a line is drawn column by column. */
  private static final int DENSE = 2;

  /** How many columns of pixels an area has. */
  static int across(Rectangle2D area, Graphics2D g) {
    return (int) Math.ceil(area.getWidth() * Math.max(1, g.getTransform().getScaleX()));
  }

  /** Whether columns are so much fewer than points that a line is better drawn by them. */
  static boolean areFewer(Points.Range points, int columns) {
    return points.size() > DENSE * columns;
  }

  /**
   * The line from one edge to the other, edges included; a missing value is a gap, a value between
   * two gaps a point.
   *
   * @param from left edge of what is visible
   * @param to right edge
   * @param columns how many pixels lie between the edges
   */
  static Columns of(Points points, double from, double to, int columns) {
    Columns made = new Columns(new double[columns], new double[columns]);
    Arrays.fill(made.low, Double.NaN);
    Arrays.fill(made.high, Double.NaN);
    double scale = columns / (to - from);
    Points.Range visible = points.visible(from, to);
    boolean isDown = false;
    double beforeAt = 0;
    double before = 0;
    for (int i = visible.first(); i < visible.end(); i++) {
      double value = points.y()[i];
      if (Double.isNaN(value)) {
        isDown = false;
        continue;
      }
      double x = points.x()[i];
      double at = x == to ? Math.nextDown((double) columns) : (x - from) * scale;
      if (isDown) {
        made.cross(beforeAt, before, at, value);
      } else {
        made.cover((int) Math.floor(at), value, value);
      }
      isDown = true;
      beforeAt = at;
      before = value;
    }
    return made;
  }

  /** From one point to the next, column by column. */
  private void cross(double fromAt, double from, double toAt, double to) {
    int first = (int) Math.floor(fromAt);
    int last = (int) Math.floor(toAt);
    if (first == last) {
      cover(first, Math.min(from, to), Math.max(from, to));
      return;
    }
    double slope = (to - from) / (toAt - fromAt);
    int end = Math.min(low.length - 1, last);
    for (int column = Math.max(0, first); column <= end; column++) {
      double enters = column <= fromAt ? from : from + slope * (column - fromAt);
      double leaves = column + 1 >= toAt ? to : from + slope * (column + 1 - fromAt);
      cover(column, Math.min(enters, leaves), Math.max(enters, leaves));
    }
  }

  private void cover(int column, double least, double greatest) {
    if (column < 0 || column >= low.length) {
      return;
    }
    // Of a NaN nothing is greater or smaller.
    low[column] = low[column] <= least ? low[column] : least;
    high[column] = high[column] >= greatest ? high[column] : greatest;
  }

  /**
   * Draws it, sharp at its sides.
   *
   * @param field from the left to the right edge
   * @param width of a level line
   */
  void paint(Graphics2D g, Field field, Color color, double width) {
    Rectangle2D area = field.area();
    AffineTransform before = g.getTransform();
    Object smooth = g.getRenderingHint(RenderingHints.KEY_ANTIALIASING);
    double scale = Math.max(1, before.getScaleX());
    g.scale(1 / scale, 1 / scale); // one column is one pixel of what is drawn on
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
    g.setColor(color);
    // Lines stay sharp in a drawing that is enlarged later, where narrow areas show seams.
    Stroke stroke = g.getStroke();
    g.setStroke(new BasicStroke(1));
    int left = (int) Math.round(area.getX() * scale);
    int above = (int) Math.round(area.getY() * scale);
    int below = (int) Math.round(area.getMaxY() * scale);
    double half = Math.max(1, width * scale) / 2;
    for (int column = 0; column < low.length; column++) {
      if (Double.isNaN(low[column])) {
        continue;
      }
      double middle = field.y(high[column]) * scale;
      double foot = field.y(low[column]) * scale;
      int y = (int) Math.round(Math.max(above, middle - half));
      int end = (int) Math.round(Math.min(below, foot + half));
      if (end > y) {
        g.drawLine(left + column, y, left + column, end - 1);
      }
    }
    g.setStroke(stroke);
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, smooth);
    g.setTransform(before);
  }
}
