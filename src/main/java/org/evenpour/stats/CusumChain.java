package org.evenpour.stats;

/**
 * The upper CUSUM and, beside it, an upper limit for single points, as a chain: L(s) = 1 + L(0)·Φ(k
 * − s − δ) + ∫ L(y) φ(y + k − s − δ) dy over y from 0 to min(h, s + c − k) (Page 1954, with the
 * points' limit c of Lucas 1982): an atom at 0 and a density above it.
 */
final class CusumChain {
  private static final double WIDEST = 2;
  private static final int POINTS = 16;

  private CusumChain() {}

  /**
   * @param limit of single points, in sigma; infinite for none
   * @param headStart where the sum starts, 0 to h
   */
  static SignalChain upper(double k, double h, double limit, double shift, double headStart) {
    Panels panels = panels(k, h, limit);
    int n = panels.size();
    double[][] next = new double[n + 1][n + 1];
    fill(next[0], panels, 0, k, h, limit, shift);
    for (int i = 1; i <= n; i++) {
      fill(next[i], panels, panels.node(i - 1), k, h, limit, shift);
    }
    double[] first = new double[n + 1];
    fill(first, panels, headStart, k, h, limit, shift);
    return new SignalChain(first, next);
  }

  private static void fill(
      double[] row, Panels panels, double s, double k, double h, double limit, double shift) {
    double step = k - s - shift;
    row[0] = Normal.cdf(Math.min(step, limit - shift));
    panels.addIntegral(row, 1, 0, Math.min(h, s + limit - k), y -> Normal.density(y + step));
  }

  /**
   * Without a limit for points the length is smooth in s: one panel. With one it has kinks where
   * the limit begins to cut off what would pass h, and at that point's own images.
   */
  private static Panels panels(double k, double h, double limit) {
    double reach = limit - k;
    if (!(reach > 0 && reach < h)) {
      return Panels.on(0, h, h, 24 + (int) Math.ceil(8 * Math.min(h, 60)));
    }
    int kinks = (int) Math.min(8, Math.ceil(h / reach));
    double[] breaks = new double[kinks];
    for (int i = 0; i < kinks; i++) {
      breaks[i] = h - (i + 1) * reach;
    }
    return Panels.on(0, h, WIDEST, POINTS, breaks);
  }
}
