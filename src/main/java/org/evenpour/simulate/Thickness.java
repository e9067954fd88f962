package org.evenpour.simulate;

/** Thickness in mm at the four corners and the center of one anode; NaN = not written down. */
record Thickness(
    double topLeftMm,
    double topRightMm,
    double bottomLeftMm,
    double bottomRightMm,
    double centerMm) {
  static final int POINTS = 5;

  /** An anode that nobody measured. */
  static final Thickness NONE =
      new Thickness(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

  /** NaN where a point is. */
  double meanMm() {
    return (topLeftMm + topRightMm + bottomLeftMm + bottomRightMm + centerMm) / 5;
  }

  /** The largest minus the smallest; NaN where a point is. */
  double wedgeMm() {
    double largest =
        Math.max(Math.max(topLeftMm, topRightMm), Math.max(bottomLeftMm, bottomRightMm));
    double smallest =
        Math.min(Math.min(topLeftMm, topRightMm), Math.min(bottomLeftMm, bottomRightMm));
    return Math.max(largest, centerMm) - Math.min(smallest, centerMm);
  }

  /** As the gauge shows it, to 0.1 mm. */
  Thickness rounded() {
    return new Thickness(
        Decimal.rounded(topLeftMm, 1),
        Decimal.rounded(topRightMm, 1),
        Decimal.rounded(bottomLeftMm, 1),
        Decimal.rounded(bottomRightMm, 1),
        Decimal.rounded(centerMm, 1));
  }

  /** The same without one point, 0 to 4 as they stand above: NaN there. */
  Thickness without(int point) {
    return new Thickness(
        point == 0 ? Double.NaN : topLeftMm,
        point == 1 ? Double.NaN : topRightMm,
        point == 2 ? Double.NaN : bottomLeftMm,
        point == 3 ? Double.NaN : bottomRightMm,
        point == 4 ? Double.NaN : centerMm);
  }
}
