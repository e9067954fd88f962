package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jspecify.annotations.Nullable;

/**
 * Values turn by turn, with the tolerance as a soft band, limits as thin dashed lines, the center
 * as a thin solid one, and a small flag where a signal began. Lines are labeled where they end.
 *
 * @param points the values
 * @param across the turns that are visible
 * @param up the values that are visible
 * @param band lower end of the tolerance, target, upper end; NaN where there is none
 * @param lines limits and center
 * @param flags signals
 * @param changes what people did
 */
public record SeriesPicture(
    Points points,
    Axis across,
    Axis up,
    Band band,
    List<Line> lines,
    List<Flag> flags,
    List<Change> changes)
    implements Picture {

  private static final double LEFT = 56;

  /** Copies the lists. */
  public SeriesPicture {
    lines = List.copyOf(lines);
    flags = List.copyOf(flags);
    changes = List.copyOf(changes);
  }

  /**
   * An axis.
   *
   * @param title with its unit; empty = none
   */
  public record Axis(String title, double low, double high) {}

  /**
   * The tolerance.
   *
   * @param label what it is called
   */
  public record Band(
      @Nullable Double lower, @Nullable Double target, @Nullable Double upper, String label) {
    /** No tolerance. */
    public static final Band NONE = new Band(null, null, null, "");
  }

  /** A level line: a limit (dashed) or the center (solid). */
  public record Line(double value, String label, boolean solid) {}

  /**
   * A signal.
   *
   * @param from turn where it began
   * @param to turn where it ended
   * @param label short: {@code ▼ since 212}
   * @param name of the signal
   * @param says in one sentence
   */
  public record Flag(double from, double to, Mark mark, String label, String name, String says) {}

  /** Something that people did, such as a mold change. */
  public record Change(double at, String label, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    return paint(g, area, ink, rightMargin(Pen.on(g, ink)));
  }

  /** The same with a given margin at the right, so that several lie on the same turns. */
  Painted paint(Graphics2D g, Rectangle2D area, Ink ink, double right) {
    Pen pen = Pen.on(g, ink);
    Font small = ink.font(0.85);
    boolean isLowest = !across.title().isEmpty();
    double left = ink.length(LEFT);
    double below = ink.length(isLowest ? 42 : 8);
    double titled = area.getX() + pen.width(up.title(), ink.font(0.92)) + ink.length(12);
    double top =
        ink.length(flags.isEmpty() ? 20 : isFlagBefore(titled, area, left, right) ? 40 : 26);
    Rectangle2D lower =
        new Rectangle2D.Double(
            area.getX(), area.getY() + top, area.getWidth(), Math.max(1, area.getHeight() - top));
    NumberAxis turns = Plots.axis(across.title(), across.low(), across.high(), ink);
    turns.setStandardTickUnits(org.jfree.chart.axis.NumberAxis.createIntegerTickUnits());
    turns.setNumberFormatOverride(Plots.format(0));
    turns.setTickLabelsVisible(isLowest);
    NumberAxis values = Plots.axis("", up.low(), up.high(), ink);
    XYPlot plot = Plots.plot(turns, values, left, right, below);
    // The title stands over its axis, where it is read without turning one's head.
    pen.text(
        pen.fit(up.title(), ink.font(0.92), area.getWidth()),
        area.getX() + ink.length(4),
        area.getY() + ink.length(8),
        0,
        ink.font(0.92),
        ink.dim());
    Rectangle2D inner =
        new Rectangle2D.Double(
            lower.getX() + left,
            lower.getY(),
            Math.max(1, lower.getWidth() - left - right),
            Math.max(1, lower.getHeight() - below));
    paintBand(pen, inner);
    boolean areFew = Plots.areFew(points.visible(across.low(), across.high()));
    double width = Math.max(0.8, ink.length(areFew ? 1 : 0.8));
    Plots.line(plot, 0, points, ink.data(), width, ink.length(3.2));
    Rectangle2D data = Plots.draw(pen, plot, lower);
    List<Spot> spots = new ArrayList<>();
    paintFlagged(pen, values, data);
    paintChanges(pen, data, spots);
    paintFlags(pen, data, spots);
    paintLines(pen, values, data, small);
    return new Painted(spots, new Painted.Scale(data, across.low(), across.high()));
  }

  /** Whether a flag would stand where the title does. */
  private boolean isFlagBefore(double end, Rectangle2D area, double left, double right) {
    Rectangle2D data =
        new Rectangle2D.Double(
            area.getX() + left, 0, Math.max(1, area.getWidth() - left - right), 1);
    return flags.stream()
        .filter(flag -> flag.to() >= across.low() && flag.from() <= across.high())
        .anyMatch(flag -> x(flag.from(), data) < end);
  }

  /** What the labels at the lines' ends take. */
  double rightMargin(Pen pen) {
    Font font = pen.ink().font(0.85);
    double widest = 0;
    for (Line line : lines) {
      widest = Math.max(widest, pen.width(line.label(), font));
    }
    if (!band.label().isEmpty() && (band.lower() != null || band.upper() != null)) {
      widest = Math.max(widest, pen.width(band.label(), font));
    }
    return widest + pen.ink().length(widest > 0 ? 16 : 10);
  }

  private void paintBand(Pen pen, Rectangle2D inner) {
    if (band.lower() == null && band.upper() == null) {
      return;
    }
    double low = band.lower() == null ? up.low() : Math.max(up.low(), band.lower());
    double high = band.upper() == null ? up.high() : Math.min(up.high(), band.upper());
    if (high <= low) {
      return;
    }
    double y = y(high, inner);
    pen.fill(
        new Rectangle2D.Double(inner.getX(), y, inner.getWidth(), y(low, inner) - y),
        pen.ink().band());
    Double target = band.target();
    if (target != null && target > up.low() && target < up.high()) {
      double at = y(target, inner);
      pen.line(inner.getX(), at, inner.getMaxX(), at, pen.ink().hairline(), pen.hair());
    }
  }

  private double y(double value, Rectangle2D inner) {
    return inner.getMaxY() - (value - up.low()) / (up.high() - up.low()) * inner.getHeight();
  }

  private void paintFlagged(Pen pen, NumberAxis values, Rectangle2D data) {
    for (int index : points.flagged()) {
      double x = points.x()[index];
      if (x < across.low() || x > across.high()) {
        continue;
      }
      double value = points.y()[index];
      Double lower = band.lower();
      Mark mark = lower != null && value < lower ? Mark.LOW : Mark.HIGH;
      double px =
          data.getX() + (x - across.low()) / (across.high() - across.low()) * data.getWidth();
      double py = values.valueToJava2D(value, data, RectangleEdge.LEFT);
      pen.fill(mark.at(px, py, pen.ink().length(7)), pen.ink().of(mark));
    }
  }

  private double x(double turn, Rectangle2D data) {
    return data.getX() + (turn - across.low()) / (across.high() - across.low()) * data.getWidth();
  }

  private void paintChanges(Pen pen, Rectangle2D data, List<Spot> spots) {
    Ink ink = pen.ink();
    double free = Double.NEGATIVE_INFINITY;
    for (Change change : changes) {
      if (change.at() < across.low() || change.at() > across.high()) {
        continue;
      }
      double x = x(change.at(), data);
      pen.dashed(
          new java.awt.geom.Line2D.Double(x, data.getY(), x, data.getMaxY()),
          ink.event(),
          pen.hair());
      double size = ink.length(8);
      Shape mark = new Rectangle2D.Double(x - size / 2, data.getMaxY() - size / 2, size, size);
      pen.fill(mark, ink.event());
      Font font = ink.font(0.85);
      double width = pen.width(change.label(), font);
      boolean fits = x + size + width < data.getMaxX();
      double left = fits ? x + size : x - size - width;
      if (left > free) {
        pen.plate(left, data.getMaxY() - ink.length(13), width);
        pen.text(change.label(), left, data.getMaxY() - ink.length(13), 0, font, ink.event());
        free = left + width + size;
      }
      spots.add(
          new Spot(
              new Rectangle2D.Double(x - size, data.getY(), 2 * size, data.getHeight()),
              "",
              "",
              change.says()));
    }
  }

  private void paintFlags(Pen pen, Rectangle2D data, List<Spot> spots) {
    Ink ink = pen.ink();
    Font font = ink.bold(0.85);
    double free = Double.NEGATIVE_INFINITY;
    List<Flag> ordered = new ArrayList<>(flags);
    ordered.sort(Comparator.comparingDouble(Flag::from));
    for (int i = 0; i < ordered.size(); i++) {
      Flag flag = ordered.get(i);
      if (flag.to() < across.low() || flag.from() > across.high()) {
        continue;
      }
      double x = Math.max(data.getX(), x(flag.from(), data));
      double end = Math.min(data.getMaxX(), Math.max(x + ink.length(2), x(flag.to(), data)));
      double y = data.getY() - ink.length(3);
      pen.fill(new Rectangle2D.Double(x, y, end - x, ink.length(3)), ink.of(flag.mark()));
      if (flag.from() >= across.low()) {
        pen.line(x, y, x, data.getMaxY(), ink.of(flag.mark()), pen.hair());
        Path2D pennant = new Path2D.Double();
        double size = ink.length(9);
        pennant.moveTo(x, y);
        pennant.lineTo(x, y - size);
        pennant.lineTo(x + size, y - size / 2);
        pennant.closePath();
        pen.fill(pennant, ink.of(flag.mark()));
      }
      double width = pen.width(flag.label(), font);
      double after = x + ink.length(12);
      boolean fits = after + width <= data.getMaxX();
      // Near the right edge it stands before its pennant.
      double left = fits ? after : x - ink.length(5) - width;
      double next = i + 1 < ordered.size() ? x(ordered.get(i + 1).from(), data) : data.getMaxX();
      boolean isFree = left >= free && (!fits || next >= left + width || next <= after);
      if (isFree) {
        pen.text(flag.label(), left, y - ink.length(8), 0, font, ink.textOf(flag.mark()));
        free = left + width + ink.length(10);
      }
      free = Math.max(free, after); // what stands before a later pennant leaves this one free
      spots.add(
          new Spot(
              new Rectangle2D.Double(
                  x - ink.length(3), y - ink.length(18), end - x + ink.length(6), ink.length(26)),
              "signal",
              flag.name(),
              flag.says()));
    }
  }

  private record EndLabel(double y, String text, boolean strong) {}

  private void paintLines(Pen pen, NumberAxis values, Rectangle2D data, Font font) {
    Ink ink = pen.ink();
    List<EndLabel> labels = new ArrayList<>();
    for (Line line : lines) {
      if (line.value() < up.low() || line.value() > up.high()) {
        continue;
      }
      double y = values.valueToJava2D(line.value(), data, RectangleEdge.LEFT);
      if (line.solid()) {
        pen.line(data.getX(), y, data.getMaxX(), y, ink.dim(), pen.hair());
      } else {
        pen.dashed(
            new java.awt.geom.Line2D.Double(data.getX(), y, data.getMaxX(), y),
            ink.dim(),
            pen.hair());
      }
      labels.add(new EndLabel(y, line.label(), line.solid()));
    }
    if (!band.label().isEmpty() && (band.upper() != null || band.lower() != null)) {
      Double upper = band.upper();
      double high = upper == null ? up.high() : Math.min(up.high(), upper);
      labels.add(new EndLabel(y(high, data) + ink.length(7), band.label(), false));
    }
    labels.sort(Comparator.comparingDouble(EndLabel::y));
    double free = Double.NEGATIVE_INFINITY;
    for (EndLabel label : labels) {
      double y = Math.max(label.y(), free);
      pen.text(label.text(), data.getMaxX() + ink.length(6), y, 0, font, ink.dim());
      free = y + ink.length(13);
    }
  }
}
