package org.evenpour.stats;

import java.util.Arrays;

/**
 * A linear regression by least squares.
 *
 * <p>Minimises Σ(y − b₀ − Σ bⱼxⱼ)². What is computed: Householder QR of the columns scaled to unit
 * length, then iterative refinement of the augmented system r + Xb = y, Xᵀr = 0 with residuals in
 * double-double (Björck 1967), so that the result is nearly that of exact arithmetic on the doubles
 * where the columns are far from dependent. Standard errors come from R, refined in the same way
 * where the columns are nearly dependent. O(n·p²), twice the memory of x. Not changed once made.
 */
public final class LeastSquares {
  private static final double DEPENDENT = 1e-14;
  private static final double NEARLY_DEPENDENT = 1e-4;

  private final double[] coefficients;
  private final double[] standardErrors;
  private final double[] residuals;
  private final double residualSumOfSquares;
  private final double rSquared;
  private final int degreesOfFreedom;

  private LeastSquares(
      double[] coefficients,
      double[] standardErrors,
      double[] residuals,
      double residualSumOfSquares,
      double rSquared,
      int degreesOfFreedom) {
    this.coefficients = coefficients;
    this.standardErrors = standardErrors;
    this.residuals = residuals;
    this.residualSumOfSquares = residualSumOfSquares;
    this.rSquared = rSquared;
    this.degreesOfFreedom = degreesOfFreedom;
  }

  /**
   * Fits y to the columns of x, one row an observation; with an intercept, it is coefficient 0.
   *
   * @throws IllegalArgumentException if there are fewer observations than coefficients, a value is
   *     NaN or infinite, or a column is a combination of the others
   */
  public static LeastSquares fit(double[][] x, double[] y, boolean intercept) {
    int n = y.length;
    int given = x.length == 0 ? 0 : x[0].length;
    int p = given + (intercept ? 1 : 0);
    if (x.length != n || p == 0 || n < p) {
      throw new IllegalArgumentException(
          x.length + " rows and " + n + " values are not enough for " + p + " coefficients");
    }
    double[][] columns = new double[p][n];
    double[] scale = new double[p];
    for (int j = 0; j < p; j++) {
      int source = j - (intercept ? 1 : 0);
      double squares = 0;
      for (int i = 0; i < n; i++) {
        double value = source < 0 ? 1 : x[i][source];
        columns[j][i] = value;
        squares += value * value;
      }
      // a power of two, so that scaling doesn't round
      scale[j] = Math.scalb(1.0, -Math.getExponent(Math.sqrt(squares)));
      for (int i = 0; i < n; i++) {
        columns[j][i] *= scale[j];
      }
      if (!Double.isFinite(squares) || squares == 0) {
        throw new IllegalArgumentException(
            "column " + (source + 1) + " has a missing or infinite value, or nothing but zeros");
      }
    }
    for (double value : y) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("y has a missing or infinite value");
      }
    }
    return new Householder(columns).fit(y, scale, intercept);
  }

  /** Intercept first, if there is one, then one a column. */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /** In the order of the coefficients; NaN without degrees of freedom. */
  public double[] standardErrors() {
    return standardErrors.clone();
  }

  public double[] residuals() {
    return residuals.clone();
  }

  public int degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** √(RSS/df); NaN without degrees of freedom. */
  public double residualSd() {
    return degreesOfFreedom > 0 ? Math.sqrt(residualSumOfSquares / degreesOfFreedom) : Double.NaN;
  }

  public double residualSumOfSquares() {
    return residualSumOfSquares;
  }

  /** 1 − RSS/TSS, with TSS about the mean, or about 0 without an intercept; NaN if TSS is 0. */
  public double rSquared() {
    return rSquared;
  }

  /** Columns factored as Q·R, and solutions of the augmented system by it. */
  private static final class Householder {
    private final double[][] columns;
    private final double[][] reflectors;
    private final double[] diagonal;
    private final int n;
    private final int p;

    Householder(double[][] columns) {
      this.columns = columns;
      this.p = columns.length;
      this.n = columns[0].length;
      this.reflectors = new double[p][];
      this.diagonal = new double[p];
      for (int j = 0; j < p; j++) {
        reflectors[j] = columns[j].clone();
      }
      for (int j = 0; j < p; j++) {
        double[] v = reflectors[j];
        double squares = 0;
        for (int i = j; i < n; i++) {
          squares += v[i] * v[i];
        }
        // The sign with which v[j] − norm adds up and doesn't cancel.
        double norm = Math.copySign(Math.sqrt(squares), -v[j]);
        diagonal[j] = norm;
        // Columns are of length 1 to 2, so this little is what rounding leaves of one.
        if (Math.abs(norm) <= DEPENDENT) {
          throw new IllegalArgumentException(
              "column " + (j + 1) + " of the regression is a combination of those before it");
        }
        // v is kept in place of the zeroed part, scaled to vᵀv = 2
        v[j] -= norm;
        double length = 0;
        for (int i = j; i < n; i++) {
          length += v[i] * v[i];
        }
        double toTwo = Math.sqrt(2 / length);
        for (int i = j; i < n; i++) {
          v[i] *= toTwo;
        }
        for (int k = j + 1; k < p; k++) {
          reflect(v, reflectors[k], j);
        }
      }
    }

    private void reflect(double[] v, double[] target, int from) {
      double dot = 0;
      for (int i = from; i < n; i++) {
        dot += v[i] * target[i];
      }
      for (int i = from; i < n; i++) {
        target[i] -= dot * v[i];
      }
    }

    LeastSquares fit(double[] y, double[] scale, boolean intercept) {
      Solution solution = solve(y, new double[p]);
      int df = n - p;
      double rss = 0;
      for (double r : solution.r) {
        rss += r * r;
      }
      double tss = 0;
      if (intercept) {
        // Σy² − n·mean² would lose the digits that all y have in common
        tss = Moments.of(y).sumOfSquares().value();
      } else {
        for (double value : y) {
          tss += value * value;
        }
      }
      double smallest = Arrays.stream(diagonal).map(Math::abs).min().orElse(0);
      double[] errors = new double[p];
      for (int j = 0; j < p; j++) {
        double variance =
            // As near to each other as that, R alone would lose four digits and more.
            smallest < NEARLY_DEPENDENT ? refinedInverseDiagonal(j) : inverseDiagonal(j);
        errors[j] = df > 0 ? Math.sqrt(rss / df * variance) * scale[j] : Double.NaN;
      }
      double[] b = solution.b;
      for (int j = 0; j < p; j++) {
        b[j] *= scale[j];
      }
      return new LeastSquares(b, errors, solution.r, rss, tss > 0 ? 1 - rss / tss : Double.NaN, df);
    }

    /** (XᵀX)⁻¹ⱼⱼ = ‖R⁻ᵀeⱼ‖². */
    private double inverseDiagonal(int j) {
      double[] h = new double[p];
      h[j] = 1;
      solveTransposed(h);
      return Arrays.stream(h).map(v -> v * v).sum();
    }

    private double refinedInverseDiagonal(int j) {
      double[] g = new double[p];
      // With f = 0 and g = −eⱼ the augmented system says XᵀXb = eⱼ.
      g[j] = -1;
      return solve(new double[n], g).b[j];
    }

    /** r and b of r + Xb = f, Xᵀr = g. */
    private Solution solve(double[] f, double[] g) {
      Solution s = new Solution(new double[n], new double[p]);
      double last = Double.POSITIVE_INFINITY;
      double[] f1 = f.clone();
      double[] g1 = g.clone();
      for (int iteration = 0; iteration < 20; iteration++) {
        Solution correction = solveOnce(f1, g1);
        double change = relativeChange(s.b, correction.b);
        // No longer halved: what is left is the rounding of the residuals themselves.
        if (iteration > 1 && !(change < 0.5 * last)) {
          break;
        }
        for (int i = 0; i < n; i++) {
          s.r[i] += correction.r[i];
        }
        for (int j = 0; j < p; j++) {
          s.b[j] += correction.b[j];
        }
        if (iteration > 0 && change < 1e-17) {
          break;
        }
        last = change;
        residual(f, g, s, f1, g1);
      }
      return s;
    }

    private static double relativeChange(double[] b, double[] change) {
      double largest = 0;
      double size = 0;
      for (int j = 0; j < b.length; j++) {
        largest = Math.max(largest, Math.abs(change[j]));
        size = Math.max(size, Math.abs(b[j] + change[j]));
      }
      return size == 0 ? 0 : largest / size;
    }

    /** f − r − Xb and g − Xᵀr, each summed in double-double. */
    private void residual(double[] f, double[] g, Solution s, double[] f1, double[] g1) {
      double[] low = new double[n];
      for (int i = 0; i < n; i++) {
        // r is part of the unknowns: refined as b is, it carries what a single residual would lose.
        double d = f[i] - s.r[i];
        double back = d - f[i];
        low[i] = (f[i] - (d - back)) - (s.r[i] + back);
        f1[i] = d;
      }
      for (int j = 0; j < p; j++) {
        double[] column = columns[j];
        double b = -s.b[j];
        double high = g[j];
        double lost = 0;
        for (int i = 0; i < n; i++) {
          // TwoSum and TwoProduct, what they lose gathered by itself; one pass for both residuals
          double product = column[i] * b;
          double sum = f1[i] + product;
          double t = sum - f1[i];
          low[i] += (f1[i] - (sum - t)) + (product - t) + Math.fma(column[i], b, -product);
          f1[i] = sum;
          double q = column[i] * -s.r[i];
          double total = high + q;
          double u = total - high;
          lost += (high - (total - u)) + (q - u) + Math.fma(column[i], -s.r[i], -q);
          high = total;
        }
        g1[j] = high + lost;
      }
      for (int i = 0; i < n; i++) {
        f1[i] += low[i];
      }
    }

    private Solution solveOnce(double[] f, double[] g) {
      double[] h = g.clone();
      solveTransposed(h);
      double[] d = f.clone();
      for (int j = 0; j < p; j++) {
        reflect(reflectors[j], d, j);
      }
      double[] b = new double[p];
      for (int j = p - 1; j >= 0; j--) {
        double sum = d[j] - h[j];
        for (int k = j + 1; k < p; k++) {
          sum -= reflectors[k][j] * b[k];
        }
        b[j] = sum / diagonal[j];
      }
      // h in place of what the columns took, and Xᵀr = g holds by construction.
      System.arraycopy(h, 0, d, 0, p);
      for (int j = p - 1; j >= 0; j--) {
        reflect(reflectors[j], d, j);
      }
      return new Solution(d, b);
    }

    /** Rᵀh = g in place. */
    private void solveTransposed(double[] h) {
      for (int j = 0; j < p; j++) {
        double sum = h[j];
        for (int k = 0; k < j; k++) {
          sum -= reflectors[j][k] * h[k];
        }
        h[j] = sum / diagonal[j];
      }
    }
  }

  private static final class Solution {
    private final double[] r;
    private final double[] b;

    Solution(double[] r, double[] b) {
      this.r = r;
      this.b = b;
    }
  }
}
