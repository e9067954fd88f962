package org.evenpour.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.evenpour.picture.SeriesPicture.Axis;
import org.jfree.chart.plot.XYPlot;
import org.jspecify.annotations.Nullable;

/**
 * One value against another, an anode a dot, with the effect of one on the other as a line through
 * the middle of the dots and its interval as a soft wedge. Dots that fall on the same spot are
 * drawn once, the darker the more there are.
 *
 * @param x one per dot
 * @param y as long as {@code x}
 * @param across the values of {@code x} that are visible
 * @param up the values of {@code y} that are visible
 * @param slope the effect; null where it is not known
 * @param says what it shows
 */
@SuppressWarnings("ArrayRecordComponent") // a million dots are handed on, compared by value
public record ScatterPicture(
    double[] x, double[] y, Axis across, Axis up, @Nullable Slope slope, String says)
    implements Picture {

  private static final double LEFT = 56;
  private static final double BELOW = 42;
  private static final double ABOVE = 26;
  private static final double CELL = 2.5;
  private static final int FAINTEST = 70;
  private static final int STEP = 25;

  /**
   * What one unit of {@code x} adds to {@code y}.
   *
   * @param low lower end of its 95 % interval
   * @param high upper end
   * @param label short, with its unit
   */
  public record Slope(double low, double middle, double high, String label) {}

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof ScatterPicture its
        && Arrays.equals(y, its.y)
        && Arrays.equals(x, its.x)
        && across.equals(its.across)
        && up.equals(its.up)
        && Objects.equals(slope, its.slope)
        && says.equals(its.says);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(y) + Arrays.hashCode(x);
  }

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    pen.text(
        pen.fit(up.title(), ink.font(0.92), area.getWidth()),
        area.getX() + ink.length(4),
        area.getY() + ink.length(8),
        0,
        ink.font(0.92),
        ink.dim());
    double above = ink.length(ABOVE);
    Rectangle2D lower =
        new Rectangle2D.Double(
            area.getX(),
            area.getY() + above,
            area.getWidth(),
            Math.max(1, area.getHeight() - above));
    String title = pen.fit(across.title(), ink.font(0.92), area.getWidth() - ink.length(LEFT + 10));
    XYPlot plot =
        Plots.plot(
            Plots.axis(title, across.low(), across.high(), ink),
            Plots.axis("", up.low(), up.high(), ink),
            ink.length(LEFT),
            ink.length(10),
            ink.length(BELOW));
    Plots.empty(plot);
    Rectangle2D data = Plots.draw(pen, plot, lower);
    Shape before = g.getClip();
    g.clip(data);
    double[] middle = dots(pen, data);
    Slope its = slope;
    if (its != null && middle.length > 0) {
      line(pen, data, its, middle);
    }
    g.setClip(before);
    if (its != null) {
      pen.text(
          pen.fit(its.label(), ink.bold(0.92), area.getWidth() / 2),
          area.getMaxX() - ink.length(10),
          area.getY() + ink.length(8),
          1,
          ink.bold(0.92),
          ink.text());
    }
    return new Painted(List.of(new Spot(data, "", "", says)), null);
  }

  /** Draws the dots; returns the means of those that are known, empty where none is. */
  private double[] dots(Pen pen, Rectangle2D data) {
    double cell = pen.ink().length(CELL);
    int columns = (int) Math.ceil(data.getWidth() / cell) + 1;
    int rows = (int) Math.ceil(data.getHeight() / cell) + 1;
    int[] counts = new int[Math.max(1, columns * rows)];
    double sumX = 0;
    double sumY = 0;
    long n = 0;
    for (int i = 0; i < x.length; i++) {
      if (Double.isNaN(x[i]) || Double.isNaN(y[i])) {
        continue;
      }
      sumX += x[i];
      sumY += y[i];
      n++;
      int column = (int) Math.floor((px(x[i], data) - data.getX()) / cell);
      int row = (int) Math.floor((py(y[i], data) - data.getY()) / cell);
      if (column >= 0 && column < columns && row >= 0 && row < rows) {
        counts[row * columns + column]++;
      }
    }
    Color dot = pen.ink().data();
    double size = cell * 1.2;
    for (int at = 0; at < counts.length; at++) {
      if (counts[at] > 0) {
        int dark = Math.min(255, FAINTEST + STEP * counts[at]);
        pen.fill(
            new Ellipse2D.Double(
                data.getX() + (at % columns) * cell,
                data.getY() + (double) (at / columns) * cell,
                size,
                size),
            new Color(dot.getRed(), dot.getGreen(), dot.getBlue(), dark));
      }
    }
    return n == 0 ? new double[0] : new double[] {sumX / n, sumY / n};
  }

  private void line(Pen pen, Rectangle2D data, Slope its, double[] middle) {
    Path2D wedge = new Path2D.Double();
    double[] ends = {across.low() - middle[0], across.high() - middle[0]};
    wedge.moveTo(px(across.low(), data), py(middle[1] + its.low() * ends[0], data));
    wedge.lineTo(px(across.high(), data), py(middle[1] + its.low() * ends[1], data));
    wedge.lineTo(px(across.high(), data), py(middle[1] + its.high() * ends[1], data));
    wedge.lineTo(px(across.low(), data), py(middle[1] + its.high() * ends[0], data));
    wedge.closePath();
    Color accent = pen.ink().accent();
    pen.fill(wedge, new Color(accent.getRed(), accent.getGreen(), accent.getBlue(), 70));
    pen.line(
        px(across.low(), data),
        py(middle[1] + its.middle() * ends[0], data),
        px(across.high(), data),
        py(middle[1] + its.middle() * ends[1], data),
        accent,
        pen.ink().length(1.8));
  }

  private double px(double value, Rectangle2D data) {
    return data.getX() + (value - across.low()) / (across.high() - across.low()) * data.getWidth();
  }

  private double py(double value, Rectangle2D data) {
    return data.getMaxY() - (value - up.low()) / (up.high() - up.low()) * data.getHeight();
  }
}
