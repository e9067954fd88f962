package org.evenpour.stats;

/**
 * The EWMA, with or without a limit for single points, as a chain: L(z) = 1 + ∫ L(y) φ((y − (1 −
 * λ)z)/λ − δ)/λ dy over |y| ≤ h and |x| = |y − (1 − λ)z|/λ ≤ c (Crowder 1987).
 */
final class EwmaChain {
  private static final int POINTS = 16;

  /** Limits this near to their end, relatively, no longer widen. */
  private static final double WIDE_ENOUGH = 1e-13;

  private EwmaChain() {}

  /**
   * Constant limits ± L·√(λ/(2 − λ)) from the first point on.
   *
   * @param limit of single points, in sigma; infinite for none
   * @param start where the average starts
   */
  static SignalChain constant(
      double lambda, double width, double limit, double shift, double start) {
    double h = width * Math.sqrt(lambda / (2 - lambda));
    Panels panels = panels(lambda, h, limit);
    int n = panels.size();
    double[][] next = new double[n][n];
    for (int i = 0; i < n; i++) {
      fill(next[i], panels, panels.node(i), lambda, h, limit, shift);
    }
    double[] first = new double[n];
    fill(first, panels, start, lambda, h, limit, shift);
    return new SignalChain(first, next);
  }

  private static void fill(
      double[] row, Panels panels, double z, double lambda, double h, double limit, double shift) {
    double kept = (1 - lambda) * z;
    panels.addIntegral(
        row,
        0,
        Math.max(-h, kept - lambda * limit),
        Math.min(h, kept + lambda * limit),
        y -> Normal.density((y - kept) / lambda - shift) / lambda);
  }

  /** Where the points' limit reaches the average's: a kink there, and at that point's images. */
  private static Panels panels(double lambda, double h, double limit) {
    double reach = lambda * limit;
    if (lambda == 1 || reach - (1 - lambda) * h >= h) {
      return Panels.on(-h, h, 2 * h, nodes(2 * h / lambda));
    }
    double[] breaks = new double[8];
    double kink = -h;
    for (int i = 0; i < 4; i++) {
      kink = (kink + reach) / (1 - lambda);
      breaks[2 * i] = kink;
      breaks[2 * i + 1] = -kink;
    }
    return Panels.on(-h, h, 2 * lambda, POINTS, breaks);
  }

  /**
   * Limits ± L·√(λ/(2 − λ)·(1 − (1 − λ)²ᵗ)), by the density of the average while nothing has
   * signalled, carried forward from point to point.
   */
  static RunLengthDistribution widening(double lambda, double width, double shift) {
    double end = width * Math.sqrt(lambda / (2 - lambda));
    int n = nodes(2 * end / lambda);
    int widening =
        lambda == 1 ? 1 : (int) Math.ceil(0.5 * Math.log(WIDE_ENOUGH) / Math.log1p(-lambda));
    GaussLegendre unit = GaussLegendre.on(-1, 1, n);
    return RunLengthDistribution.of(
        new Front(lambda, end, widening, shift, unit)::advance, widening);
  }

  /** The density after so many points; owned by the thread that advances it. */
  private static final class Front {
    private final double lambda;
    private final double end;
    private final int widening;
    private final double shift;
    private final GaussLegendre unit;
    private int t;
    private double halfWidth;
    private double[] density = {};
    private double[][] fixed = {};

    Front(double lambda, double end, int widening, double shift, GaussLegendre unit) {
      this.lambda = lambda;
      this.end = end;
      this.widening = widening;
      this.shift = shift;
      this.unit = unit;
    }

    /** Takes one more point and gives the probability that none has signalled. */
    double advance() {
      t++;
      int n = unit.size();
      double h = t > widening ? end : end * Math.sqrt(-Math.expm1(2 * t * Math.log1p(-lambda)));
      double[] moved = new double[n];
      if (t == 1) {
        for (int j = 0; j < n; j++) {
          moved[j] = Normal.density(h * unit.node(j) / lambda - shift) / lambda;
        }
      } else {
        boolean still = h == halfWidth;
        if (still && fixed.length == 0) {
          fixed = kernel(h);
        }
        double[][] kernel = still ? fixed : kernel(h);
        for (int j = 0; j < n; j++) {
          moved[j] = SignalChain.dot(kernel[j], density);
        }
      }
      halfWidth = h;
      density = moved;
      double sum = 0;
      for (int j = 0; j < n; j++) {
        sum += h * unit.weight(j) * moved[j];
      }
      return sum;
    }

    private double[][] kernel(double h) {
      int n = unit.size();
      double[][] kernel = new double[n][n];
      for (int j = 0; j < n; j++) {
        for (int i = 0; i < n; i++) {
          double u = (h * unit.node(j) - (1 - lambda) * halfWidth * unit.node(i)) / lambda;
          kernel[j][i] = halfWidth * unit.weight(i) * Normal.density(u - shift) / lambda;
        }
      }
      return kernel;
    }
  }

  private static int nodes(double width) {
    return 24 + (int) Math.ceil(8 * Math.min(width, 60));
  }
}
