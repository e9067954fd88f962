package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far each mold stands from the wheel's center, with its 95 % interval, one row a mold on one
 * scale.
 *
 * @param rows from top to bottom
 * @param title of the scale, with its unit
 * @param span the scale goes from minus to plus this
 * @param chosen label of the chosen mold; null = none
 */
public record MoldIntervals(List<Row> rows, String title, double span, @Nullable String chosen)
    implements Picture {

  /** Copies the list. */
  public MoldIntervals {
    rows = List.copyOf(rows);
  }

  /**
   * One mold.
   *
   * @param value shown at the right, with its sign
   * @param says in words
   */
  public record Row(
      String label, double low, double middle, double high, Mark mark, String value, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    List<Spot> spots = new ArrayList<>();
    double foot = ink.length(40);
    double pitch = (area.getHeight() - foot) / Math.max(1, rows.size());
    double times = Math.max(0.5, Math.min(1, pitch / ink.length(17)));
    Font font = ink.font(times);
    double left = ink.length(8);
    double right = ink.length(8);
    for (Row row : rows) {
      left = Math.max(left, pen.width(row.label(), font) + ink.length(24));
      right = Math.max(right, pen.width(row.value(), font) + ink.length(16));
    }
    double from = area.getX() + left;
    double to = area.getMaxX() - right;
    double zero = (from + to) / 2;
    double scale = (to - from) / 2 / span;
    double bottom = area.getY() + pitch * rows.size();
    pen.line(zero, area.getY(), zero, bottom, ink.dim(), pen.hair());
    for (double part : new double[] {-1, -0.5, 0.5, 1}) {
      double x = zero + part * (to - from) / 2;
      pen.line(x, area.getY(), x, bottom, ink.hairline(), pen.hair() * 0.6);
    }
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      double y = area.getY() + pitch * (i + 0.5);
      Rectangle2D whole =
          new Rectangle2D.Double(area.getX(), y - pitch / 2, area.getWidth(), pitch);
      if (row.label().equals(chosen)) {
        pen.fill(whole, ink.chosen());
      }
      pen.text(row.label(), from - ink.length(20), y, 1, font, ink.text());
      if (row.mark() != Mark.NONE) {
        pen.fill(
            row.mark().at(from - ink.length(10), y, ink.length(8) * times), ink.of(row.mark()));
      }
      IntervalBar.draw(
          pen,
          from,
          to,
          y,
          zero + row.low() * scale,
          zero + row.middle() * scale,
          zero + row.high() * scale,
          ink.of(row.mark()),
          times);
      pen.text(row.value(), area.getMaxX() - ink.length(4), y, 1, font, ink.textOf(row.mark()));
      spots.add(new Spot(whole, "mold", row.label(), row.says()));
    }
    Font small = ink.font(0.85);
    double y = bottom + ink.length(9);
    int decimals = span < 0.2 ? 2 : span < 2 ? 1 : 0;
    for (double part : new double[] {-1, 0, 1}) {
      String label = Plots.format(decimals).format(part * span);
      pen.text(
          part > 0 ? "+" + label : label, zero + part * (to - from) / 2, y, 0.5, small, ink.dim());
    }
    pen.text(title, zero, y + ink.length(18), 0.5, ink.font(0.92), ink.dim());
    return new Painted(spots, null);
  }

  /** A round number at least as large as every departure. */
  public static double roundSpan(double most) {
    if (!(most > 0) || Double.isInfinite(most)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(most)));
    for (double lead : new double[] {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8}) {
      if (lead * power >= most) {
        return lead * power;
      }
    }
    return 10 * power;
  }
}
