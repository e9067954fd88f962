package org.evenpour.stats;

import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.Gamma;

/**
 * Analysis of means: which of k group means differ from the mean of all, with one error rate for
 * all of them together (Ott 1967; Nelson 1983).
 *
 * <p>A group stands out where |mean − grand mean| &gt; h·s·√((N − n)/(N·n)), with n of the N values
 * in it and s² an estimate of the variance within with ν degrees of freedom.
 */
public final class AnalysisOfMeans {
  /** Deviations beyond this many sigma have no weight. */
  private static final double FAR = 9;

  private static final GaussLegendre CHI = GaussLegendre.on(-1, 1, 24);

  private static final Panels DEVIATIONS = Panels.on(0, FAR, FAR / 12, 12);

  /** By k, P(all within d) for the d of DEVIATIONS, kept once computed. */
  private static final ConcurrentHashMap<Integer, double[]> INSIDE = new ConcurrentHashMap<>();

  private AnalysisOfMeans() {}

  /**
   * h for k groups of equal size, exact: the 1 − alpha point of max |tᵢ| of k Student's t with
   * correlation −1/(k − 1).
   *
   * <p>The deviations of k independent normal values from their mean are those values given that
   * their sum is 0, so with d = h·w·√(1 − 1/k) and w² = χ²/ν, P(max ≤ h | w) = √(2πk)·g(0), where g
   * is the density at 0 of the sum of k normal densities cut at ± d. For k up to 4 g(0) is one
   * integral of closed forms; for more it is (1/2π)∫ ψ(t)ᵏ dt with ψ(t) = ∫ φ(x) cos(tx) dx over ±
   * d, by the trapezoidal rule, which is exact once its step is below 2π over the reach of the sum.
   * That function of d is computed once for each k and then averaged over w by Gauss–Legendre
   * quadrature. Some 8 digits; a third of a second for a new k, then a millisecond.
   *
   * @param alpha chance of any group standing out where none differs, above 0 to below 1
   * @param k groups, from 2
   * @param nu degrees of freedom of s, from 1; may be infinite
   */
  public static double criticalValue(double alpha, int k, double nu) {
    check(alpha, k, nu);
    if (k == 2) {
      // both deviate by the same
      return quantileOfT(alpha, nu);
    }
    // A deviation has the variance 1 − 1/k: its group is part of the mean that it is held against.
    double scale = Math.sqrt(1 - 1.0 / k);
    double[] inside = INSIDE.computeIfAbsent(k, AnalysisOfMeans::inside);
    return quantile(
        h -> h * scale >= FAR ? 1 : DEVIATIONS.valueAt(h * scale, inside),
        alpha,
        nu,
        studentGuess(alpha, k, nu));
  }

  private static double[] inside(int k) {
    double[] inside = new double[DEVIATIONS.size()];
    for (int i = 0; i < inside.length; i++) {
      inside[i] = probabilityWithin(DEVIATIONS.node(i), k);
    }
    return inside;
  }

  /**
   * The 1 − alpha point of the Studentized maximum modulus: max |tᵢ| of k t with independent
   * numerators over one s, E (2Φ(m·w) − 1)ᵏ = 1 − alpha. It is never below the exact h (Šidák
   * 1967), whatever the sizes of the groups.
   */
  public static double maximumModulus(double alpha, int k, double nu) {
    check(alpha, k, nu);
    return quantile(
        z -> Math.exp(k * Math.log1p(-2 * Normal.upperTail(z))),
        alpha,
        nu,
        studentGuess(alpha, k, nu));
  }

  /**
   * Decision limits for each group's mean: grand mean ± h·s·√((N − n)/(N·n)).
   *
   * <p>Groups of one size get the exact h. For unequal sizes the correlations differ from pair to
   * pair; then h is the Studentized maximum modulus (Nelson 1989), a little wide: the error rate is
   * at most alpha. A group without values has undefined limits and doesn't count.
   *
   * @param counts values in each group
   * @param grandMean the mean of all values
   * @param s estimate of sigma within groups
   */
  public static Limits[] limits(
      double alpha, long[] counts, double grandMean, double s, double nu) {
    int k = 0;
    double total = 0;
    boolean equal = true;
    long size = 0;
    for (long n : counts) {
      if (n > 0) {
        equal = equal && (k == 0 || n == size);
        size = n;
        k++;
        total += n;
      }
    }
    Limits[] limits = new Limits[counts.length];
    double h =
        k < 2 || !(nu >= 1)
            ? Double.NaN
            : equal ? criticalValue(alpha, k, nu) : maximumModulus(alpha, k, nu);
    for (int g = 0; g < counts.length; g++) {
      double n = counts[g];
      limits[g] =
          n > 0 && h > 0 && s >= 0
              ? Limits.around(grandMean, s * Math.sqrt((total - n) / (total * n)), h)
              : Limits.UNDEFINED;
    }
    return limits;
  }

  /** The x with E[inside(x·w)] = 1 − alpha, w² = χ²/ν. */
  private static double quantile(
      DoubleUnaryOperator inside, double alpha, double nu, double guess) {
    // On the logarithm: h is above 0, and with one degree of freedom may be huge.
    double x =
        Root.ofIncreasing(
            y -> alpha - outside(inside, Math.exp(y), nu), Math.log(guess), 0.02, -20, 50);
    return Math.exp(x);
  }

  /**
   * E[1 − inside(x·w)], over the w where x·w is not far out, in panels as narrow as w is spread;
   * the density of w is 2·(ν/2)^(ν/2)/Γ(ν/2)·w^(ν−1)·exp(−νw²/2).
   */
  private static double outside(DoubleUnaryOperator inside, double x, double nu) {
    // What lies outside is averaged and not what lies inside: the rule's error is then a part of
    // alpha, and where x·w is beyond FAR there is nothing to add.
    if (Double.isInfinite(nu)) {
      return 1 - inside.applyAsDouble(x);
    }
    // The s.d. of w is some 1/√(2ν): this is nearly 13 of them.
    double reach = 9 / Math.sqrt(nu);
    double low = Math.max(0, 1 - reach);
    double high = Math.min(1 + reach, FAR / x);
    // Logarithms, for Γ(ν/2) overflows from ν = 344 on.
    double constant = Math.log(2) + 0.5 * nu * Math.log(0.5 * nu) - Gamma.logGamma(0.5 * nu);
    double sum = 0;
    int panels = 10;
    for (int p = 0; p < panels && high > low; p++) {
      GaussLegendre rule =
          CHI.movedTo(low + (high - low) * p / panels, low + (high - low) * (p + 1) / panels);
      sum +=
          rule.integral(
              w ->
                  (1 - inside.applyAsDouble(x * w))
                      * Math.exp(constant + (nu - 1) * Math.log(w) - 0.5 * nu * w * w));
    }
    return sum;
  }

  /** P(|Xᵢ − mean| ≤ d for all of k normal values). */
  private static double probabilityWithin(double d, int k) {
    double density =
        switch (k) {
          // The edges at ± d let ψ fall as 1/t only: for so few groups ∫ ψᵏ would hardly converge.
          case 3 -> 2 * GaussLegendre.on(0, d, 40).integral(x -> Normal.density(x) * pair(x, d));
          case 4 -> 2 * GaussLegendre.on(0, 2 * d, 60).integral(x -> pair(x, d) * pair(x, d));
          default -> densityOfSum(d, k);
        };
    // Rounding alone would lift it above 1.
    return Math.min(1, Math.sqrt(2 * Math.PI * k) * density);
  }

  /**
   * Density at x of the sum of two normal densities cut at ± d: φ(x/√2)/√2·(2Φ(√2(d − x/2)) − 1).
   */
  private static double pair(double x, double d) {
    double reach = Math.sqrt(2) * (d - 0.5 * Math.abs(x));
    return reach <= 0
        ? 0
        : Math.sqrt(0.5) * Normal.density(x * Math.sqrt(0.5)) * (1 - 2 * Normal.upperTail(reach));
  }

  private static double densityOfSum(double d, int k) {
    // the sum reaches ± kd at most, and no further than some 10 of its sigmas in earnest
    double period = Math.min(1.01 * k * d, 10 * Math.sqrt(k)) + 1e-3;
    double step = 2 * Math.PI / period;
    GaussLegendre rule = GaussLegendre.on(0, d, 200);
    double[] mass = new double[rule.size()];
    double all = 0;
    for (int i = 0; i < mass.length; i++) {
      mass[i] = 2 * rule.weight(i) * Normal.density(rule.node(i));
      all += mass[i];
    }
    // ψ is even: t = 0 counts half and all others twice
    double sum = 0.5 * Math.pow(all, k);
    // |ψ| ≤ (2φ(d) + ∫|φ′|)/t, and the density cut within d has no more than that
    double edge = 2 * Normal.density(0);
    for (int m = 1; m < 5000; m++) {
      double t = m * step;
      double psi = 0;
      for (int i = 0; i < mass.length; i++) {
        psi += mass[i] * Math.cos(t * rule.node(i));
      }
      sum += Math.pow(psi, k);
      double bound = Math.exp(-0.5 * t * t) + 2 * Normal.density(d) / t * (1 + d / t);
      // Beyond t·d = 250 the 200 nodes no longer follow the cosine.
      if (Math.pow(Math.min(bound, edge / t), k) * t < 1e-13 * step || t * d > 250) {
        break;
      }
    }
    return sum * step / Math.PI;
  }

  private static double studentGuess(double alpha, int k, double nu) {
    // Bonferroni's bound, which lies just above the root
    return quantileOfT(alpha / k, nu);
  }

  private static double quantileOfT(double alpha, double nu) {
    return Double.isInfinite(nu)
        ? -Normal.quantile(0.5 * alpha)
        : StudentT.quantile(1 - 0.5 * alpha, nu);
  }

  private static void check(double alpha, int k, double nu) {
    if (!(alpha > 0 && alpha < 1) || k < 2 || !(nu >= 1)) {
      throw new IllegalArgumentException(
          "analysis of means needs alpha between 0 and 1, 2 groups and 1 degree of freedom, not "
              + alpha
              + ", "
              + k
              + " and "
              + nu);
    }
  }
}
