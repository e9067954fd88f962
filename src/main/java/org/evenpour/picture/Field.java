package org.evenpour.picture;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.plot.XYPlot;

/**
 * Where the values of a plot lie, as its own axes have it.
 *
 * @param plot with its axes and values
 * @param area that they fill
 */
public record Field(XYPlot plot, Rectangle2D area) {

  /** A choice: so many pixels from a value one still points at it. */
  private static final double REACH = 6;

  /** The value at a pixel across. */
  public double value(double x) {
    return plot.getDomainAxis().java2DToValue(x, area, plot.getDomainAxisEdge());
  }

  /** The pixel across of a value. */
  public double x(double value) {
    return plot.getDomainAxis().valueToJava2D(value, area, plot.getDomainAxisEdge());
  }

  /** Value at the left edge. */
  public double from() {
    return plot.getDomainAxis().getLowerBound();
  }

  /** Value at the right edge. */
  public double to() {
    return plot.getDomainAxis().getUpperBound();
  }

  /** The pixel of a value upward. */
  double y(double value) {
    return plot.getRangeAxis().valueToJava2D(value, area, plot.getRangeAxisEdge());
  }

  /** How many pixels one unit takes across. */
  double perUnitAcross() {
    return plot.getDomainAxis().lengthToJava2D(1, area, plot.getDomainAxisEdge());
  }

  /** How many pixels one unit takes upward. */
  double perUnitUp() {
    return plot.getRangeAxis().lengthToJava2D(1, area, plot.getRangeAxisEdge());
  }

  /** What the value nearest to a place tells; empty where none is near. */
  String says(Point2D place) {
    if (!area.contains(place)) {
      return "";
    }
    double across = perUnitAcross();
    double up = perUnitUp();
    double x = value(place.getX());
    double y = plot.getRangeAxis().java2DToValue(place.getY(), area, plot.getRangeAxisEdge());
    double nearest = REACH;
    String says = "";
    for (int i = 0; i < plot.getDatasetCount(); i++) {
      if (plot.getDataset(i) instanceof Values values) {
        Points points = values.points();
        Points.Range near = values.between(x - REACH / across, x + REACH / across);
        int found = -1;
        for (int k = near.first(); k < near.end(); k++) {
          double away = Math.hypot((points.x()[k] - x) * across, (points.y()[k] - y) * up);
          if (away < nearest) {
            nearest = away;
            found = k;
          }
        }
        says = found < 0 ? says : points.says().apply(found);
      }
    }
    return says;
  }
}
