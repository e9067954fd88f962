package org.evenpour.stats;

/**
 * Individual values and their moving ranges as a chain: L(x) = 1 + ∫ L(y) φ(y − δ) dy over |y| ≤ c
 * and |y − x| ≤ r; the first point has no range (Crowder 1987).
 */
final class MovingRangeChain {
  private static final double WIDEST = 1.5;
  private static final int POINTS = 16;

  private MovingRangeChain() {}

  static SignalChain of(double limit, double rangeLimit, double shift) {
    double c = Math.min(limit, 9 + Math.abs(shift));
    // a kink where a range begins to reach beyond c, and at that point's images
    int kinks = Math.min(20, (int) Math.ceil(2 * c / rangeLimit));
    double[] breaks = new double[2 * kinks];
    for (int i = 0; i < kinks; i++) {
      breaks[2 * i] = c - (i + 1) * rangeLimit;
      breaks[2 * i + 1] = (i + 1) * rangeLimit - c;
    }
    Panels panels = Panels.on(-c, c, WIDEST, POINTS, breaks);
    int n = panels.size();
    double[][] next = new double[n][n];
    for (int i = 0; i < n; i++) {
      double x = panels.node(i);
      panels.addIntegral(
          next[i], 0, x - rangeLimit, x + rangeLimit, y -> Normal.density(y - shift));
    }
    double[] first = new double[n];
    panels.addIntegral(first, 0, -c, c, y -> Normal.density(y - shift));
    return new SignalChain(first, next);
  }
}
