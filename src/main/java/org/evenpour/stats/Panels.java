package org.evenpour.stats;

import java.util.function.DoubleUnaryOperator;

/**
 * An interval cut into panels with Gauss–Legendre nodes in each, for functions that are smooth
 * within a panel but may have a kink where two meet.
 *
 * <p>A function is known by its values at all nodes; within a panel it is the polynomial through
 * them (barycentric form, Berrut and Trefethen 2004). Integrals over any part of the interval are
 * then weights on those values, which turns an integral equation with a kernel that breaks off into
 * a system of linear equations (product integration). Not changed once made.
 */
final class Panels {
  private final double[] breaks;
  private final int points;
  private final double[] nodes;
  private final double[] weights;
  private final GaussLegendre unit;
  private final double[] barycentric;

  private Panels(double[] breaks, int points) {
    this.breaks = breaks;
    this.points = points;
    this.unit = GaussLegendre.ofUnit(points);
    this.barycentric = barycentric(unit);
    int panels = breaks.length - 1;
    this.nodes = new double[panels * points];
    this.weights = new double[panels * points];
    for (int p = 0; p < panels; p++) {
      double width = breaks[p + 1] - breaks[p];
      for (int i = 0; i < points; i++) {
        nodes[p * points + i] = breaks[p] + width * unit.node(i);
        weights[p * points + i] = width * unit.weight(i);
      }
    }
  }

  /**
   * Panels from low to high, all of the same width.
   *
   * @param widest no panel is wider
   * @param points nodes in each panel
   */
  static Panels on(double low, double high, double widest, int points) {
    int parts = Math.max(1, (int) Math.ceil((high - low) / widest));
    double[] breaks = new double[parts + 1];
    for (int i = 0; i < parts; i++) {
      breaks[i] = low + (high - low) * i / parts;
    }
    breaks[parts] = high;
    return new Panels(breaks, points);
  }

  int size() {
    return nodes.length;
  }

  double node(int i) {
    return nodes[i];
  }

  /** Adds to row the weights w with Σ w·f(node) = ∫ kernel·f from low to high. */
  void addIntegral(double[] row, int offset, double low, double high, DoubleUnaryOperator kernel) {
    for (int p = 0; p < breaks.length - 1; p++) {
      double from = Math.max(low, breaks[p]);
      double to = Math.min(high, breaks[p + 1]);
      if (!(to > from)) {
        continue;
      }
      int first = p * points;
      // A whole panel: its own nodes; a part: nodes of its own, values there from the panel's.
      if (from == breaks[p] && to == breaks[p + 1]) {
        for (int i = first; i < first + points; i++) {
          row[offset + i] += weights[i] * kernel.applyAsDouble(nodes[i]);
        }
      } else {
        for (int i = 0; i < points; i++) {
          double y = from + (to - from) * unit.node(i);
          addValue(row, offset, p, y, (to - from) * unit.weight(i) * kernel.applyAsDouble(y));
        }
      }
    }
  }

  /** f at x, from its values at the nodes; outside the interval the outer panel goes on. */
  double valueAt(double x, double[] values) {
    double[] row = new double[size()];
    int p = 0;
    while (p < breaks.length - 2 && x > breaks[p + 1]) {
      p++;
    }
    addValue(row, 0, p, x, 1);
    double sum = 0;
    for (int i = p * points; i < (p + 1) * points; i++) {
      sum += row[i] * values[i];
    }
    return sum;
  }

  private void addValue(double[] row, int offset, int panel, double x, double factor) {
    int first = panel * points;
    double t = (x - breaks[panel]) / (breaks[panel + 1] - breaks[panel]);
    double total = 0;
    for (int i = 0; i < points; i++) {
      // At a node the barycentric form is 0/0.
      double distance = t - unit.node(i);
      if (distance == 0) {
        row[offset + first + i] += factor;
        return;
      }
      total += barycentric[i] / distance;
    }
    for (int i = 0; i < points; i++) {
      row[offset + first + i] += factor * barycentric[i] / (t - unit.node(i)) / total;
    }
  }

  /** (−1)ⁱ·√(x(1 − x)·weight) at Gauss–Legendre nodes (Wang and Xiang 2012). */
  private static double[] barycentric(GaussLegendre rule) {
    double[] b = new double[rule.size()];
    for (int i = 0; i < b.length; i++) {
      double x = rule.node(i);
      b[i] = (i % 2 == 0 ? 1 : -1) * Math.sqrt(x * (1 - x) * rule.weight(i));
    }
    return b;
  }
}
