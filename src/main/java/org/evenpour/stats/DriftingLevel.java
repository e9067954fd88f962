package org.evenpour.stats;

/**
 * How fast the level of a series wanders: λ of an IMA(0,1,1), whose best forecast is the EWMA with
 * weight λ. λ = 0: the level stands still, what varies is noise and there is nothing to follow; λ =
 * 1: a random walk.
 *
 * <p>λ by least squares of the one-step errors, e = x − forecast, forecast += λe, with the level at
 * the beginning fitted too (Box and Jenkins): for each λ the best one is a ratio of sums; λ by a
 * search over a grid of 50 and golden section. The 95 % interval is where n·ln(S(λ)/S) ≤ 3.84 (the
 * profile likelihood). With λ = 0 in it the record does not show that the level wanders; that is
 * then the finding, and cautious, for at this boundary the statistic is smaller than χ² (Davis and
 * Dunsmuir 1996): a level that stands still is taken for a wandering one in fewer than 5 of 100
 * records.
 *
 * <p>NaN is a missing point: the forecast stands. Fewer than 8 points, or none that differ, leave
 * all undefined (NaN). A step of the level, or a stationary autocorrelation, looks like wandering
 * too. O(n) for each of some 150 λ.
 *
 * @param lambda the estimate, 0 where the interval holds 0
 * @param fitted the estimate before that
 * @param low 95 % limit
 * @param high 95 % limit
 * @param sigma s.d. of the one-step errors at {@code lambda}
 * @param forecast of the point after the last, at {@code lambda}
 */
public record DriftingLevel(
    double lambda, double fitted, double low, double high, double sigma, double forecast) {
  private static final int FEWEST = 8;

  /** 95 % point of χ² with one degree of freedom. */
  private static final double BEYOND_CHANCE = 3.841458820694124;

  public static DriftingLevel of(double[] x) {
    long n = Moments.of(x).count();
    if (n < FEWEST || !(Moments.of(x).variance() > 0)) {
      return new DriftingLevel(
          Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
    double best = 0;
    double least = Double.POSITIVE_INFINITY;
    // A grid first: S may have more than one valley.
    int grid = 50;
    for (int i = 0; i <= grid; i++) {
      double s = Fit.of(x, i / (double) grid).squares;
      if (s < least) {
        least = s;
        best = i / (double) grid;
      }
    }
    double fitted = minimum(x, Math.max(0, best - 1.0 / grid), Math.min(1, best + 1.0 / grid));
    // Golden section never quite reaches 0 or 1, and either may be the best.
    if (Fit.of(x, fitted).squares > least) {
      fitted = best;
    }
    least = Fit.of(x, fitted).squares;
    double enough = least * Math.exp(BEYOND_CHANCE / (double) n);
    // The profile, not the curvature at the estimate: near λ = 0 S is nothing like a parabola.
    double low = boundary(x, fitted, 0, enough);
    double high = boundary(x, fitted, 1, enough);
    double lambda = low > 0 ? fitted : 0;
    Fit fit = Fit.of(x, lambda);
    // one degree of freedom for the level, one for λ where it was fitted
    double df = (double) n - (lambda > 0 ? 2 : 1);
    return new DriftingLevel(lambda, fitted, low, high, Math.sqrt(fit.squares / df), fit.forecast);
  }

  /** Whether the record shows that the level wanders. */
  public boolean wanders() {
    return lambda > 0;
  }

  /**
   * The forecast of each point from those before it, at {@code lambda}; the first is the fitted
   * level at the beginning. At a missing point the forecast stands.
   *
   * @param x the series that this was estimated from
   */
  public double[] forecasts(double[] x) {
    double[] forecasts = new double[x.length];
    Fit fit = Fit.of(x, lambda);
    double level = fit.start;
    for (int i = 0; i < x.length; i++) {
      forecasts[i] = level;
      if (!Double.isNaN(x[i])) {
        level += lambda * (x[i] - level);
      }
    }
    return forecasts;
  }

  /**
   * S.d. of the coming level about its forecast: σ√λ, the steady state of the filter of a random
   * walk seen through noise (variances λ²σ² and (1 − λ)σ²; Kalman gain λ); never less than σ/√n,
   * which is all that is left where the level stands still.
   *
   * @param points how many the forecast rests on
   */
  public double levelSigma(long points) {
    return sigma * Math.sqrt(Math.max(lambda, 1.0 / (double) points));
  }

  private static double minimum(double[] x, double from, double to) {
    double golden = 0.5 * (Math.sqrt(5) - 1);
    double low = from;
    double high = to;
    while (high - low > 1e-7) {
      double a = high - golden * (high - low);
      double b = low + golden * (high - low);
      if (Fit.of(x, a).squares <= Fit.of(x, b).squares) {
        high = b;
      } else {
        low = a;
      }
    }
    return 0.5 * (low + high);
  }

  /** Where S passes what is enough between the estimate and an end; that end where it doesn't. */
  private static double boundary(double[] x, double fitted, double end, double enough) {
    if (Fit.of(x, end).squares <= enough) {
      return end;
    }
    double inside = fitted;
    double outside = end;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (inside + outside);
      if (Fit.of(x, middle).squares <= enough) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return 0.5 * (inside + outside);
  }

  /** The errors for one λ: linear in the first level m, e = e₀ − m·(1 − λ)ᵗ, so m is a ratio. */
  private record Fit(double squares, double start, double forecast) {

    static Fit of(double[] x, double lambda) {
      double forecast = 0;
      double weight = 1;
      double ee = 0;
      double ew = 0;
      double ww = 0;
      // From the first value: what all have in common would cancel in ee − level·ew.
      double origin = first(x);
      for (double value : x) {
        if (Double.isNaN(value)) {
          continue;
        }
        double e = value - origin - forecast;
        ee += e * e;
        ew += e * weight;
        ww += weight * weight;
        forecast += lambda * e;
        weight *= 1 - lambda;
      }
      double level = ew / ww;
      // A difference of sums, which rounding may take below 0.
      return new Fit(
          Math.max(0, ee - level * ew), origin + level, origin + forecast + level * weight);
    }

    private static double first(double[] x) {
      for (double value : x) {
        if (!Double.isNaN(value)) {
          return value;
        }
      }
      return 0;
    }
  }
}
