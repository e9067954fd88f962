package org.evenpour.stats;

/**
 * Average run lengths of CUSUMs: how many points they take to signal, the signalling one included,
 * for independent normal values with known mean and sigma.
 *
 * <p>Shifts and limits are in units of sigma of what is plotted; shift 0 is in control and a shift
 * is there from the first point on. Sums start at 0. With L(s) the length from a sum that stands at
 * s, L(s) = 1 + L(0)·Φ(k − s − δ) + ∫ L(y) φ(y + k − s − δ) dy over y from 0 to h (Page 1954),
 * solved by Gauss–Legendre quadrature (Nyström), whose nodes grow with h, to some 8 digits.
 * Milliseconds each.
 */
public final class RunLength {

  private RunLength() {}

  /** Upper CUSUM alone. */
  public static double cusumOneSided(double k, double h, double shift) {
    // Nodes by the sigma: the kernel is a density of s.d. 1, whatever h.
    Panels panels = Panels.on(0, h, h, 24 + (int) Math.ceil(8 * Math.min(h, 60)));
    int n = panels.size();
    // the sum has an atom at 0 and a density above it
    double[][] next = new double[n + 1][n + 1];
    fill(next[0], panels, 0, k, h, shift);
    for (int i = 1; i <= n; i++) {
      fill(next[i], panels, panels.node(i - 1), k, h, shift);
    }
    return new SignalChain(next[0], next).mean();
  }

  private static void fill(
      double[] row, Panels panels, double s, double k, double h, double shift) {
    double step = k - s - shift;
    row[0] = Normal.cdf(step);
    panels.addIntegral(row, 1, 0, h, y -> Normal.density(y + step));
  }

  /** Upper and lower CUSUM together: 1/L = 1/L⁺ + 1/L⁻, exact. */
  public static double cusum(double k, double h, double shift) {
    double up = cusumOneSided(k, h, shift);
    double down = shift == 0 ? up : cusumOneSided(k, h, -shift);
    return 1 / (1 / up + 1 / down);
  }
}
