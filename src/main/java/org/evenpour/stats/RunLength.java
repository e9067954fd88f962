package org.evenpour.stats;

import java.util.Collection;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * Average run lengths: how many points a chart takes to signal, the signalling one included, for
 * independent normal values with known mean and sigma.
 *
 * <p>Shifts and limits are in units of sigma of what is plotted; shift 0 is in control. Run lengths
 * start with the chart at rest (zero state). For CUSUM and EWMA the integral equation is solved by
 * Gauss–Legendre quadrature (Nyström), whose nodes grow with the width of the chart, to some 8
 * digits.
 */
public final class RunLength {
  private RunLength() {}

  /** Points beyond ± limit alone: 1/P. */
  public static double shewhart(double limit, double shift) {
    return 1 / (Normal.upperTail(limit - shift) + Normal.upperTail(limit + shift));
  }

  /** The limit, in sigmas, that gives this run length in control. */
  public static double shewhartLimit(double arl) {
    checkTarget(arl);
    return -Normal.quantile(0.5 / arl);
  }

  /**
   * A 3-sigma chart with any of the run tests but trends and alternations, which compare values
   * instead of zones; by a finite Markov chain (Champ and Woodall 1987). A tenth of a second for
   * all six.
   */
  public static double runTests(Collection<RunTest> tests, RunTest.Lengths lengths, double shift) {
    return new RunTestLength(tests, lengths).of(shift);
  }

  /**
   * Upper CUSUM alone: L(s) = 1 + L(0)·Φ(k − s − δ) + ∫₀ʰ L(y) φ(y + k − s − δ) dy (Page 1954), an
   * atom at 0 and a density above it.
   *
   * @param headStart where the sum starts, 0 to h
   */
  public static double cusumOneSided(double k, double h, double shift, double headStart) {
    double step = k - shift;
    GaussLegendre rule = GaussLegendre.on(0, h, nodes(h));
    int n = rule.size();
    double[][] a = new double[n + 1][n + 1];
    double[] ones = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      double s = i == 0 ? 0 : rule.node(i - 1);
      ones[i] = 1;
      a[i][0] = -Normal.cdf(step - s);
      for (int j = 1; j <= n; j++) {
        a[i][j] = -rule.weight(j - 1) * Normal.density(rule.node(j - 1) + step - s);
      }
      a[i][i] += 1;
    }
    double[] length = solve(a, ones);
    double sum = 1 + length[0] * Normal.cdf(step - headStart);
    for (int j = 1; j <= n; j++) {
      sum += length[j] * rule.weight(j - 1) * Normal.density(rule.node(j - 1) + step - headStart);
    }
    return sum;
  }

  /** Upper and lower CUSUM together: 1/L = 1/L⁺ + 1/L⁻, exact without a head start. */
  public static double cusum(double k, double h, double shift) {
    double up = cusumOneSided(k, h, shift, 0);
    double down = cusumOneSided(k, h, -shift, 0);
    return 1 / (1 / up + 1 / down);
  }

  /** Both CUSUMs with the same head start s (Lucas and Crosier 1982). */
  public static double cusum(double k, double h, double shift, double headStart) {
    double up = cusumOneSided(k, h, shift, headStart);
    double down = cusumOneSided(k, h, -shift, headStart);
    double up0 = cusumOneSided(k, h, shift, 0);
    double down0 = cusumOneSided(k, h, -shift, 0);
    return (up * down0 + down * up0 - up0 * down0) / (up0 + down0);
  }

  /** h of a two-sided CUSUM with this run length in control. */
  public static double cusumLimit(double k, double arl) {
    checkTarget(arl);
    // Siegmund's approximation grows by exp(2kh)
    double guess = Math.max(0.2, Math.log1p(4 * k * k * arl) / (2 * k) - 1.166);
    return limit(h -> cusum(k, h, 0), guess, arl);
  }

  /**
   * EWMA with limits ± L·√(λ/(2 − λ)) from the start: L(z) = 1 + ∫ L(y) φ((y − (1 − λ)z)/λ − δ)/λ
   * dy (Crowder 1987).
   */
  public static double ewma(double lambda, double width, double shift) {
    double h = width * Math.sqrt(lambda / (2 - lambda));
    GaussLegendre rule = GaussLegendre.on(-h, h, nodes(2 * h / lambda));
    int n = rule.size();
    double[][] a = new double[n][n];
    double[] ones = new double[n];
    for (int i = 0; i < n; i++) {
      ones[i] = 1;
      for (int j = 0; j < n; j++) {
        double u = (rule.node(j) - (1 - lambda) * rule.node(i)) / lambda - shift;
        a[i][j] = -rule.weight(j) * Normal.density(u) / lambda;
      }
      a[i][i] += 1;
    }
    double[] length = solve(a, ones);
    double sum = 1;
    for (int j = 0; j < n; j++) {
      sum += length[j] * rule.weight(j) * Normal.density(rule.node(j) / lambda - shift) / lambda;
    }
    return sum;
  }

  /** L of an EWMA with limits constant from the start and this run length in control. */
  public static double ewmaLimit(double lambda, double arl) {
    checkTarget(arl);
    return limit(width -> ewma(lambda, width, 0), shewhartLimit(arl), arl);
  }

  private static double limit(DoubleUnaryOperator runLength, double guess, double arl) {
    double target = Math.log(arl);
    return Root.ofIncreasing(
        x -> Math.log(runLength.applyAsDouble(x)) - target, guess, 0.1, 1e-6, 200);
  }

  private static int nodes(double width) {
    return 24 + (int) Math.ceil(8 * Math.min(width, 60));
  }

  private static double[] solve(double[][] a, double[] b) {
    return new LUDecomposition(new Array2DRowRealMatrix(a, false), 0)
        .getSolver()
        .solve(new ArrayRealVector(b, false))
        .toArray();
  }

  private static void checkTarget(double arl) {
    if (!(arl > 1 && arl < 1e12)) {
      throw new IllegalArgumentException(
          "a run length to aim at lies above 1 and below 1e12 points, not at " + arl);
    }
  }
}
