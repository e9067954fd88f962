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

  /** Words at a value, or so many pixels below it. */
  record Label(double value, double drop, String text, Font font, Color color) {

    /** Words beside the end of a line. */
    static Label plain(double value, double drop, String text, Ink ink) {
      return new Label(value, drop, text, ink.font(0.85), ink.dim());
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
    double widest = 0;
    for (Label label : labels) {
      widest = Math.max(widest, pen.width(label.text(), label.font()) + pen.ink().length(6));
    }
    AxisSpace reserved = space == null ? new AxisSpace() : space;
    reserved.add(widest + pen.ink().length(10), edge);
    return reserved;
  }

  @Override
  public AxisState draw(
      Graphics2D g,
      double cursor,
      Rectangle2D whole,
      Rectangle2D area,
      RectangleEdge edge,
      @Nullable PlotRenderingInfo info) {
    boolean isLeft = edge == RectangleEdge.LEFT;
    double x = cursor + pen.ink().length(isLeft ? -6 : 6);
    labels.sort(Comparator.comparingDouble(label -> at(label, area, edge)));
    double free = Double.NEGATIVE_INFINITY;
    for (Label label : labels) {
      double y = Math.max(free, at(label, area, edge));
      pen.text(label.text(), x, y, isLeft ? 1 : 0, label.font(), label.color());
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
