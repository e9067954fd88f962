package org.evenpour.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.ui.RectangleEdge;
import org.jspecify.annotations.Nullable;

/**
 * An axis that carries words at certain values instead of numbers at round ones: lines are labeled
 * where they end, rows where they begin.
 */
@SuppressWarnings("serial") // never written
final class EdgeLabels extends NumberAxis {
  private final transient Pen pen;
  private final transient List<Label> labels;
  private final double apart;

  /**
   * Words at a value.
   *
   * @param drop so many pixels below it
   * @param mark drawn between the words and the plot
   * @param behind behind the words, as high as one unit; null = nothing
   */
  record Label(
      double value,
      double drop,
      String text,
      Font font,
      Color color,
      Mark mark,
      @Nullable Color behind) {

    /** Words beside the end of a line. */
    static Label plain(double value, double drop, String text, Ink ink) {
      return new Label(value, drop, text, ink.font(0.85), ink.dim(), Mark.NONE, null);
    }
  }

  /**
   * @param range of the axis that the values are of
   * @param apart so far below one another words stand at least, in pixels
   */
  EdgeLabels(Pen pen, List<Label> labels, SeriesPicture.Axis range, double apart) {
    this.pen = pen;
    this.labels = new ArrayList<>(labels);
    this.apart = apart;
    setRange(range.low(), range.high());
  }

  @Override
  public AxisSpace reserveSpace(
      Graphics2D g, Plot plot, Rectangle2D area, RectangleEdge edge, @Nullable AxisSpace space) {
    double widest = labels.stream().mapToDouble(this::width).max().orElse(0);
    AxisSpace reserved = space == null ? new AxisSpace() : space;
    reserved.add(widest + pen.ink().length(10), edge);
    return reserved;
  }

  private double width(Label label) {
    return pen.width(label.text(), label.font()) + marks() + pen.ink().length(6);
  }

  /** What the widest mark takes, so that all words stand in one column. */
  private double marks() {
    return labels.stream()
        .filter(label -> label.mark() != Mark.NONE)
        .mapToDouble(label -> label.font().getSize2D())
        .max()
        .orElse(0);
  }

  @Override
  public AxisState draw(
      Graphics2D g,
      double cursor,
      Rectangle2D plotArea,
      Rectangle2D dataArea,
      RectangleEdge edge,
      @Nullable PlotRenderingInfo info) {
    boolean isLeft = edge == RectangleEdge.LEFT;
    double out = isLeft ? -1 : 1;
    labels.sort(Comparator.comparingDouble(label -> at(label, dataArea, edge)));
    double marks = marks();
    double free = Double.NEGATIVE_INFINITY;
    for (Label label : labels) {
      double y = Math.max(free, at(label, dataArea, edge));
      if (label.behind() != null) {
        double high = lengthToJava2D(1, dataArea, edge);
        double end = isLeft ? plotArea.getX() : plotArea.getMaxX();
        pen.fill(
            new Rectangle2D.Double(
                Math.min(end, cursor), y - high / 2, Math.abs(end - cursor), high),
            label.behind());
      }
      double x = cursor + out * pen.ink().length(6);
      if (label.mark() != Mark.NONE) {
        double size = label.font().getSize2D() * 0.6;
        pen.fill(label.mark().at(x + out * size / 2, y, size), pen.ink().of(label.mark()));
      }
      pen.text(label.text(), x + out * marks, y, isLeft ? 1 : 0, label.font(), label.color());
      free = y + apart;
    }
    AxisState state = new AxisState(cursor);
    state.setTicks(List.of());
    return state;
  }

  private double at(Label label, Rectangle2D area, RectangleEdge edge) {
    return valueToJava2D(label.value(), area, edge) + label.drop();
  }
}
