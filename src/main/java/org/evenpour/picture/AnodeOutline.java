package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The anode with its two lugs, and at each thickness point what was measured there: the value, and
 * a disc whose size says how far the point departs from the mean of all.
 *
 * @param points thickness by point
 * @param unit symbol
 * @param decimals of the values
 * @param caption one line below
 */
public record AnodeOutline(List<Point> points, String unit, int decimals, String caption)
    implements Picture {

  /** Copies the list. */
  public AnodeOutline {
    points = List.copyOf(points);
  }

  /**
   * One point.
   *
   * @param name as the column names it: {@code top_left}
   * @param value in the unit that is shown
   * @param departure from the mean over the points
   * @param says in words
   */
  public record Point(String name, double value, double departure, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double foot = caption.isEmpty() ? 0 : ink.length(26);
    // About 1270 mm over the lugs by 960 mm of body: the usual proportions (common practice).
    double scale = Math.min(area.getWidth() / 1300, (area.getHeight() - foot) / 1010);
    double cx = area.getCenterX();
    double top = area.getY() + (area.getHeight() - foot - 980 * scale) / 2;
    Shape outline = outline(cx, top, scale);
    pen.fill(outline, ink.band());
    pen.draw(outline, ink.dim(), pen.hair());
    double most = points.stream().mapToDouble(point -> Math.abs(point.departure())).max().orElse(0);
    List<Spot> spots = new ArrayList<>();
    Font number = ink.bold(1);
    Font small = ink.font(0.85);
    for (Point point : points) {
      double[] at = place(point.name());
      double x = cx + at[0] * 400 * scale;
      double y = top + (490 + at[1] * 370) * scale;
      Mark mark =
          Math.abs(point.departure()) < most * 0.25
              ? Mark.NONE
              : point.departure() > 0 ? Mark.HIGH : Mark.LOW;
      double size = most == 0 ? 0 : Math.abs(point.departure()) / most * ink.length(16);
      Shape disc = mark.at(x, y - ink.length(18), Math.max(ink.length(4), size));
      pen.fill(disc, ink.of(mark));
      pen.text(Plots.format(decimals).format(point.value()), x, y, 0.5, number, ink.text());
      String signed = Plots.format(decimals + 1).format(point.departure());
      pen.text(
          point.departure() > 0 ? "+" + signed : signed,
          x,
          y + ink.length(15),
          0.5,
          small,
          ink.textOf(mark));
      spots.add(
          new Spot(
              new Rectangle2D.Double(
                  x - ink.length(26), y - ink.length(28), ink.length(52), ink.length(52)),
              "",
              "",
              point.says()));
    }
    if (foot > 0) {
      pen.text(
          pen.fit(caption, small, area.getWidth()),
          cx,
          area.getMaxY() - foot / 2,
          0.5,
          small,
          ink.dim());
    }
    return new Painted(spots, List.of());
  }

  private static Shape outline(double cx, double top, double scale) {
    double half = 480 * scale;
    double lug = 635 * scale;
    double deep = 110 * scale;
    double bottom = top + 980 * scale;
    double slope = 40 * scale;
    Path2D path = new Path2D.Double();
    path.moveTo(cx - lug, top);
    path.lineTo(cx + lug, top);
    path.lineTo(cx + lug, top + deep);
    path.lineTo(cx + half, top + deep + slope);
    path.lineTo(cx + half, bottom);
    path.lineTo(cx - half, bottom);
    path.lineTo(cx - half, top + deep + slope);
    path.lineTo(cx - lug, top + deep);
    path.closePath();
    return path;
  }

  /** Where a point lies, from −1 to 1 both ways, by the words in its name. */
  private static double[] place(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    double x = lower.contains("left") ? -0.78 : lower.contains("right") ? 0.78 : 0;
    double y =
        lower.contains("top") || lower.contains("upper")
            ? -0.66
            : lower.contains("bottom") || lower.contains("lower") ? 0.78 : 0.08;
    return new double[] {x, y};
  }
}
