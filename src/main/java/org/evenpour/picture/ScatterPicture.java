package org.evenpour.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import org.evenpour.picture.SeriesPicture.Axis;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jspecify.annotations.Nullable;

/**
 * One value against another, an anode a dot, with the effect of one on the other as a line through
 * the middle of the dots and its interval as a soft wedge. Dots that fall on the same spot are
 * drawn once, the darker the more there are.
 *
 * @param dots in any order
 * @param across the values of {@code x} that are visible
 * @param up the values of {@code y} that are visible
 * @param slope the effect; null where it is not known
 * @param says what the line shows
 */
public record ScatterPicture(Points dots, Axis across, Axis up, @Nullable Slope slope, String says)
    implements Picture {

  private static final double ABOVE = 26;
  private static final double CELL = 2.5;

  /** A choice: of more cells than this none is round. */
  private static final int MANY = 10_000;

  private static final int FAINTEST = 70;
  private static final int STEP = 25;

  /**
   * What one unit of {@code x} adds to {@code y}.
   *
   * @param x where the line goes through, with {@code y}: the middle of the dots
   * @param low lower end of its 95 % interval
   * @param high upper end
   * @param label short, with its unit
   */
  public record Slope(double x, double y, double low, double middle, double high, String label) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    String title = pen.fit(across.title(), ink.font(0.92), area.getWidth() - ink.length(66));
    NumberAxis axis = Plots.axis(new Axis(title, across.low(), across.high()), ink);
    axis.setFixedDimension(ink.length(42));
    double above = ink.length(ABOVE);
    XYPlot plot = Plots.plot(axis, Plots.upright(up, pen, above), above);
    plot.setRangeAxis(1, new EdgeLabels(pen, List.of(), up, 0));
    Plots.values(
        plot,
        0,
        new Values(dots, false),
        new DenseRenderer(false, true, (on, field) -> draw(on, field, ink)));
    if (slope != null) {
      line(plot, pen, slope);
      plot.addAnnotation(
          new Note(
              pen,
              field -> {
                pen.text(
                    pen.fit(slope.label(), ink.bold(0.92), area.getWidth() / 2),
                    field.area().getMaxX(),
                    field.area().getY() - above + ink.length(8),
                    1,
                    ink.bold(0.92),
                    ink.text());
                return List.of();
              }));
    }
    return Plots.draw(pen, plot, area);
  }

  private void line(XYPlot plot, Pen pen, Slope its) {
    double from = across.low();
    double to = across.high();
    double[] wedge = {
      from, its.y() + its.low() * (from - its.x()),
      to, its.y() + its.low() * (to - its.x()),
      to, its.y() + its.high() * (to - its.x()),
      from, its.y() + its.high() * (from - its.x())
    };
    Color accent = pen.ink().accent();
    XYPolygonAnnotation soft = new XYPolygonAnnotation(wedge, null, null, Pen.faint(accent, 70));
    soft.setToolTipText(says);
    plot.addAnnotation(soft);
    plot.addAnnotation(
        new XYLineAnnotation(
            from,
            its.y() + its.middle() * (from - its.x()),
            to,
            its.y() + its.middle() * (to - its.x()),
            Pen.stroke(pen.ink().length(1.8)),
            accent));
  }

  /** Counts dots by small cells, however many there are, and draws each cell once. */
  private boolean draw(Graphics2D g, Field field, Ink ink) {
    Rectangle2D area = field.area();
    double cell = ink.length(CELL);
    int columns = (int) Math.ceil(area.getWidth() / cell) + 1;
    int rows = (int) Math.ceil(area.getHeight() / cell) + 1;
    int[] counts = new int[columns * rows];
    double perColumn = field.perUnitAcross() / cell;
    double perRow = field.perUnitUp() / cell;
    for (int i = 0; i < dots.size(); i++) {
      double column = Math.floor((dots.x()[i] - across.low()) * perColumn);
      double row = Math.floor((up.high() - dots.y()[i]) * perRow);
      // Nothing is at or above NaN.
      if (column >= 0 && column < columns && row >= 0 && row < rows) {
        counts[(int) row * columns + (int) column]++;
      }
    }
    double size = cell * 1.2;
    // So many round dots would take longer than a frame, and could not be told from square ones.
    boolean areRound = Arrays.stream(counts).filter(count -> count > 0).count() < MANY;
    for (int at = 0; at < counts.length; at++) {
      if (counts[at] > 0) {
        double x = area.getX() + (at % columns) * cell;
        double y = area.getY() + (double) (at / columns) * cell;
        g.setColor(Pen.faint(ink.data(), Math.min(255, FAINTEST + STEP * counts[at])));
        g.fill(
            areRound
                ? new Ellipse2D.Double(x, y, size, size)
                : new Rectangle2D.Double(x, y, size, size));
      }
    }
    return true;
  }
}
