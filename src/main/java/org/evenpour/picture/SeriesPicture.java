package org.evenpour.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import org.evenpour.picture.EdgeLabels.Label;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
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
   * @param moments when it was, along turns; empty where that is not told
   */
  public record Axis(String title, double low, double high, List<Moment> moments) {
    /** Copies the list. */
    public Axis {
      moments = List.copyOf(moments);
    }

    /** Where no time is told. */
    public Axis(String title, double low, double high) {
      this(title, low, high, List.of());
    }
  }

  /**
   * When it was.
   *
   * @param at where a day, or an hour, begins
   * @param label the date or the hour
   */
  public record Moment(double at, String label) {}

  /**
   * The tolerance.
   *
   * @param label what it is called
   */
  public record Band(
      @Nullable Double lower, @Nullable Double target, @Nullable Double upper, String label) {
    /** No tolerance. */
    public static final Band NONE = new Band(null, null, null, "");

    /** Which way a value lies outside. */
    Mark mark(double value) {
      return lower != null && value < lower
          ? Mark.LOW
          : upper != null && value > upper ? Mark.HIGH : Mark.NONE;
    }
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
    Pen pen = Pen.on(g, ink);
    XYPlot plot = plot(pen, area);
    plot.setDomainAxis(Plots.turns(across, ink));
    return Plots.draw(pen, plot, area);
  }

  /** The plot without its turns, which it may share with others. */
  XYPlot plot(Pen pen, Rectangle2D area) {
    Ink ink = pen.ink();
    double above = ink.length(flags.isEmpty() ? 20 : isFlagBeforeTitleEnds(pen, area) ? 40 : 26);
    XYPlot plot = Plots.plot(null, Plots.upright(up, pen, above), above);
    boolean areFew = Plots.areFew(points.visible(across.low(), across.high()));
    double width = Math.max(0.8, ink.length(areFew ? 1 : 0.8));
    Plots.line(plot, 0, points, across, ink.data(), width, ink.length(3.2));
    Points flagged = points.onlyFlagged();
    Plots.values(
        plot,
        1,
        new Values(flagged, true),
        new DenseRenderer(false, true, (g, field) -> paintFlagged(pen, flagged, field)));
    List<Label> labels = new ArrayList<>();
    if (band.lower() != null || band.upper() != null) {
      plot.addRangeMarker(Plots.band(band, up, ink), Layer.BACKGROUND);
      double high = band.upper() == null ? up.high() : Math.min(up.high(), band.upper());
      labels.add(Label.plain(high, ink.length(7), band.label(), ink));
    }
    if (band.target() != null) {
      plot.addRangeMarker(Plots.level(band.target(), ink.hairline(), pen), Layer.BACKGROUND);
    }
    for (Line line : lines) {
      if (line.value() >= up.low() && line.value() <= up.high()) {
        plot.addRangeMarker(
            line.solid()
                ? Plots.level(line.value(), ink.dim(), pen)
                : new ValueMarker(line.value(), ink.dim(), pen.dashes()));
        labels.add(Label.plain(line.value(), 0, line.label(), ink));
      }
    }
    plot.setRangeAxis(1, new EdgeLabels(pen, labels, up, ink.length(13)));
    for (Change change : changes) {
      plot.addDomainMarker(new ValueMarker(change.at(), ink.event(), pen.dashes()));
    }
    plot.addAnnotation(new Note(pen, field -> paintChanges(pen, field)));
    plot.addAnnotation(new Note(pen, field -> paintFlags(pen, field)));
    return plot;
  }

  /** Whether a flag would stand where the title does, labels at the right left aside. */
  private boolean isFlagBeforeTitleEnds(Pen pen, Rectangle2D area) {
    Ink ink = pen.ink();
    NumberAxis turns = Plots.turns(across, ink);
    double end = area.getX() + pen.width(up.title(), ink.font(0.92)) + ink.length(20);
    double left = ink.length(56);
    Rectangle2D inner =
        new Rectangle2D.Double(area.getX() + left, 0, Math.max(1, area.getWidth() - left), 1);
    return flags.stream()
        .filter(flag -> flag.to() >= across.low() && flag.from() <= across.high())
        .anyMatch(flag -> turns.valueToJava2D(flag.from(), inner, RectangleEdge.BOTTOM) < end);
  }

  /**
   * A mark for each value outside the tolerance of its time, below or above; of marks that would
   * cover one another, one.
   */
  private boolean paintFlagged(Pen pen, Points flagged, Field field) {
    double size = pen.ink().length(7);
    Rectangle2D area = field.area();
    double left = area.getX() - size;
    double top = area.getY() - size;
    Rectangle2D seen =
        new Rectangle2D.Double(left, top, area.getWidth() + 2 * size, area.getHeight() + 2 * size);
    int columns = (int) (2 * seen.getWidth() / size) + 1;
    BitSet taken = new BitSet();
    Points.Range visible = flagged.visible(across.low(), across.high());
    for (int i = visible.first(); i < visible.end(); i++) {
      double x = field.x(flagged.x()[i]);
      double y = field.y(flagged.y()[i]);
      int cell = (int) (2 * (x - left) / size) + columns * (int) (2 * (y - top) / size);
      if (seen.contains(x, y) && !taken.get(cell)) {
        taken.set(cell);
        Mark mark = band.mark(flagged.y()[i]) == Mark.LOW ? Mark.LOW : Mark.HIGH;
        pen.fill(mark.at(x, y, size), pen.ink().of(mark));
      }
    }
    return true;
  }

  private List<Spot> paintChanges(Pen pen, Field field) {
    Ink ink = pen.ink();
    Rectangle2D data = field.area();
    List<Spot> spots = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    for (Change change : changes) {
      if (change.at() < across.low() || change.at() > across.high()) {
        continue;
      }
      double x = field.x(change.at());
      double size = ink.length(8);
      pen.fill(
          new Rectangle2D.Double(x - size / 2, data.getMaxY() - size / 2, size, size), ink.event());
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
    return spots;
  }

  private List<Spot> paintFlags(Pen pen, Field field) {
    Ink ink = pen.ink();
    Rectangle2D data = field.area();
    Font font = ink.bold(0.85);
    List<Spot> spots = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    List<Flag> ordered = new ArrayList<>(flags);
    ordered.sort(Comparator.comparingDouble(Flag::from));
    for (int i = 0; i < ordered.size(); i++) {
      Flag flag = ordered.get(i);
      if (flag.to() < across.low() || flag.from() > across.high()) {
        continue;
      }
      Color color = ink.of(flag.mark());
      double x = Math.max(data.getX(), field.x(flag.from()));
      double end = Math.min(data.getMaxX(), Math.max(x + ink.length(2), field.x(flag.to())));
      double y = data.getY() - ink.length(3);
      pen.fill(new Rectangle2D.Double(x, y, end - x, ink.length(3)), color);
      if (flag.from() >= across.low()) {
        pen.line(x, y, x, data.getMaxY(), color, pen.hair());
        Path2D pennant = new Path2D.Double();
        double size = ink.length(9);
        pennant.moveTo(x, y);
        pennant.lineTo(x, y - size);
        pennant.lineTo(x + size, y - size / 2);
        pennant.closePath();
        pen.fill(pennant, color);
      }
      double width = pen.width(flag.label(), font);
      double after = x + ink.length(12);
      boolean fits = after + width <= data.getMaxX();
      // Near the right edge it stands before its pennant.
      double left = fits ? after : x - ink.length(5) - width;
      double next = i + 1 < ordered.size() ? field.x(ordered.get(i + 1).from()) : data.getMaxX();
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
    return spots;
  }
}
