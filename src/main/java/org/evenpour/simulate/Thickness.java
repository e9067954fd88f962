package org.evenpour.simulate;

/** Thickness in mm at the four corners and the center of one anode. */
record Thickness(
    double topLeftMm,
    double topRightMm,
    double bottomLeftMm,
    double bottomRightMm,
    double centerMm) {

  double meanMm() {
    return (topLeftMm + topRightMm + bottomLeftMm + bottomRightMm + centerMm) / 5;
  }

  /** The largest minus the smallest. */
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
}
