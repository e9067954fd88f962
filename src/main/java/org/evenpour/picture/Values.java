package org.evenpour.picture;

import org.jfree.data.DomainOrder;
import org.jfree.data.xy.DefaultXYDataset;

/** Points as the charting library takes them in, not copied; it searches ascending ones halving. */
final class Values extends DefaultXYDataset {
  private final transient Points points;
  private final boolean areAscending;

  Values(Points points, boolean areAscending) {
    this.points = points;
    this.areAscending = areAscending;
    addSeries("", new double[][] {points.x(), points.y()});
  }

  Points points() {
    return points;
  }

  /** The points between two places across, and maybe more. */
  Points.Range between(double from, double to) {
    return areAscending ? points.visible(from, to) : new Points.Range(0, points.size());
  }

  @Override
  public DomainOrder getDomainOrder() {
    return areAscending ? DomainOrder.ASCENDING : DomainOrder.NONE;
  }
}
