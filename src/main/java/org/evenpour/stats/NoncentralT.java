package org.evenpour.stats;

/**
 * The noncentral t distribution, T = (Z + δ)/√(χ²/ν), by quadrature over the chi variable.
 *
 * <p>P(T ≤ t) = E Φ(t·w − δ), w = √(χ²_ν/ν), with Gauss–Legendre nodes over the whole range where w
 * has weight; the density is normalised by the same quadrature. Good to some 12 digits for any real
 * ν from 1.
 */
final class NoncentralT {
  private static final int PANELS = 6;
  private static final GaussLegendre RULE = GaussLegendre.on(-1, 1, 24);

  private NoncentralT() {}

  static double cdf(double t, double df, double noncentrality) {
    Chi chi = Chi.of(df);
    return chi.mean(t, noncentrality);
  }

  /** The δ for which P(T ≤ t) = p: falling in p. */
  static double noncentrality(double t, double df, double p) {
    Chi chi = Chi.of(df);
    // Nearly normal about δ with this s.d., t put in place of δ.
    double spread = Math.sqrt(1 + t * t / (2 * df));
    return Root.ofIncreasing(
        delta -> p - chi.mean(t, delta),
        t - Normal.quantile(p) * spread,
        0.1 * spread,
        -1e300,
        1e300);
  }

  /** Nodes of w with their probabilities. */
  private static final class Chi {
    private final double[] nodes;
    private final double[] probabilities;

    private Chi(double[] nodes, double[] probabilities) {
      this.nodes = nodes;
      this.probabilities = probabilities;
    }

    static Chi of(double df) {
      // the density of w falls as exp(−df·(w − 1)²) or faster about its mode
      double reach = 9 / Math.sqrt(df);
      double low = Math.max(0, 1 - reach);
      double high = 1 + reach;
      int perPanel = RULE.size();
      double[] nodes = new double[PANELS * perPanel];
      double[] probabilities = new double[PANELS * perPanel];
      double total = 0;
      double width = (high - low) / PANELS;
      for (int panel = 0; panel < PANELS; panel++) {
        GaussLegendre rule = RULE.movedTo(low + panel * width, low + (panel + 1) * width);
        for (int i = 0; i < perPanel; i++) {
          double w = rule.node(i);
          int at = panel * perPanel + i;
          nodes[at] = w;
          // 1 at w = 1 whatever df, so nothing overflows; w² − 1 in factors, for it cancels there
          probabilities[at] =
              rule.weight(i) * Math.exp((df - 1) * Math.log(w) - 0.5 * df * (w - 1) * (w + 1));
          total += probabilities[at];
        }
      }
      for (int i = 0; i < probabilities.length; i++) {
        // By its own sum: no Γ, and the rule's errors above and below cancel.
        probabilities[i] /= total;
      }
      return new Chi(nodes, probabilities);
    }

    double mean(double t, double delta) {
      double sum = 0;
      for (int i = 0; i < nodes.length; i++) {
        sum += probabilities[i] * Normal.cdf(t * nodes[i] - delta);
      }
      return sum;
    }
  }
}
