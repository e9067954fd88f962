package org.evenpour.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * A linear regression whose errors wander: generalised least squares with errors that are a
 * first-order autoregression of coefficient φ, seen through white noise that has the share {@code
 * noise} of their variance.
 *
 * <p>φ and the share are those of the largest restricted likelihood (Patterson and Thompson 1971)
 * on a grid, refined once; the series are made white by the Kalman filter (Harvey and Phillips
 * 1979), gaps and separate stretches included, and {@link LeastSquares} fits what is white.
 *
 * <p>A short series does not tell φ well, and an error as if it did is too small. So the errors are
 * averaged over the grid: each point weighs as the restricted likelihood says, {@code w ∝
 * exp(−Δ/2)} with Δ its distance from the best in −2 log likelihood, and the variance of a
 * coefficient is {@code Σ w·(variance + (coefficient − the best's)²)}, as in the averaging of
 * models (Hoeting et al. 1999). What moves as slowly as the errors do rests on few of them: how
 * much a variance V differs over the grid, weighed likewise, gives it the degrees of freedom {@code
 * 2/(2/ν + var(V)/V²)}, ν those of the residuals (Satterthwaite 1946). O(grid·n·p²). Not changed
 * once made.
 */
public final class SeriesRegression {
  // Closer towards 1, for (1 + φ)/(1 − φ), what a value's worth is divided by, grows fastest there.
  private static final double[] PHI = {0, 0.2, 0.4, 0.55, 0.7, 0.8, 0.88, 0.94, 0.97, 0.985, 0.995};
  private static final double[] NOISE = {0, 0.1, 0.25, 0.5, 0.75, 0.9};

  /** A column of which the others leave a smaller part is too near to them for normal equations. */
  private static final double APART = 1e-9;

  private final double phi;
  private final double noise;
  private final double[][] white;
  private final double[] whiteValues;
  private final LeastSquares fit;
  private final double[] errors;
  private final double[] freedom;

  private SeriesRegression(
      double phi,
      double noise,
      double[][] white,
      double[] whiteValues,
      LeastSquares fit,
      double[] errors,
      double[] freedom) {
    this.phi = phi;
    this.noise = noise;
    this.white = white;
    this.whiteValues = whiteValues;
    this.fit = fit;
    this.errors = errors;
    this.freedom = freedom;
  }

  /**
   * Fits y to the columns; there is no intercept unless a column is one.
   *
   * @param columns each of n values
   * @param y n values
   * @param time when each was taken, in whole steps, rising within a stretch
   * @param stretch a number that changes where the errors start anew
   * @throws IllegalArgumentException if there are fewer values than columns, or a column is a
   *     combination of the others
   */
  public static SeriesRegression of(double[][] columns, double[] y, int[] time, int[] stretch) {
    List<Candidate> grid = new ArrayList<>();
    for (double phi : PHI) {
      for (double noise : NOISE) {
        // Without memory all of it is white: the shares are one and the same point.
        if (phi > 0 || noise == 0) {
          grid.add(Candidate.of(columns, y, time, stretch, phi, noise));
        }
      }
    }
    Candidate best = Collections.min(grid);
    double phi = best.phi;
    double noise = best.noise;
    if (phi > 0) {
      for (double nearPhi : new double[] {phi - 0.06, phi - 0.03, phi, phi + 0.015, phi + 0.06}) {
        for (double nearNoise : new double[] {noise - 0.06, noise, noise + 0.06}) {
          if (nearPhi > 0 && nearPhi < 0.998 && nearNoise >= 0 && nearNoise < 0.96) {
            Candidate near = Candidate.of(columns, y, time, stretch, nearPhi, nearNoise);
            best = near.compareTo(best) < 0 ? near : best;
          }
        }
      }
    }
    SeriesRegression fit = with(columns, y, time, stretch, best.phi, best.noise);
    double[] freedom = new double[columns.length];
    // Over the grid alone: with the refined points the neighborhood of the best would count twice.
    double[] errors = averaged(grid, best, fit.fit, freedom);
    return new SeriesRegression(
        fit.phi, fit.noise, fit.white, fit.whiteValues, fit.fit, errors, freedom);
  }

  /**
   * Errors over the grid, each point by its likelihood; the best fit counts once, whether it is a
   * point of the grid or lies between.
   *
   * @param mostLikely the candidate of the best fit
   * @param freedom into which their degrees of freedom
   */
  @SuppressWarnings("ReferenceEquality") // the very candidate; one like it would weigh as well
  private static double[] averaged(
      List<Candidate> grid, Candidate mostLikely, LeastSquares best, double[] freedom) {
    double[] errors = best.standardErrors();
    double weights = 1;
    int p = errors.length;
    double[] away = new double[p];
    double[] sum = new double[p];
    double[] squares = new double[p];
    for (int j = 0; j < p; j++) {
      sum[j] = errors[j] * errors[j];
      squares[j] = sum[j] * sum[j];
    }
    for (Candidate one : grid) {
      double weight = one == mostLikely ? 0 : Math.exp((mostLikely.criterion - one.criterion) / 2);
      if (weight > 0) {
        weights += weight;
        for (int j = 0; j < p; j++) {
          double off = one.coefficients[j] - best.coefficients()[j];
          away[j] += weight * off * off;
          sum[j] += weight * one.variances[j];
          squares[j] += weight * one.variances[j] * one.variances[j];
        }
      }
    }
    for (int j = 0; j < p; j++) {
      // E[V²]/E[V]² − 1 over the grid
      double differs = Math.max(0, squares[j] * weights / (sum[j] * sum[j]) - 1);
      freedom[j] = 2 / (2.0 / Math.max(1, best.degreesOfFreedom()) + differs);
      errors[j] = Math.sqrt((sum[j] + away[j]) / weights);
    }
    return errors;
  }

  /** Fits y to the columns where φ and the share of white noise are known. */
  public static SeriesRegression with(
      double[][] columns, double[] y, int[] time, int[] stretch, double phi, double noise) {
    Whitening whitening = new Whitening(time, stretch, phi, noise);
    double[][] white = new double[columns.length][];
    double[][] rows = new double[y.length][columns.length];
    for (int j = 0; j < columns.length; j++) {
      white[j] = whitening.of(columns[j]);
      for (int i = 0; i < y.length; i++) {
        rows[i][j] = white[j][i];
      }
    }
    double[] values = whitening.of(y);
    LeastSquares fit = LeastSquares.fit(rows, values, false);
    double[] freedom = new double[columns.length];
    Arrays.fill(freedom, fit.degreesOfFreedom());
    return new SeriesRegression(phi, noise, white, values, fit, fit.standardErrors(), freedom);
  }

  /**
   * The fit at one point of the grid, by the normal equations.
   *
   * @param criterion −2 log of the restricted likelihood, but for a constant; infinite where y is
   *     fitted exactly or the columns are dependent
   */
  @SuppressWarnings("ArrayRecordComponent") // lives within one fit
  private record Candidate(
      double phi, double noise, double criterion, double[] coefficients, double[] variances)
      implements Comparable<Candidate> {

    static Candidate of(
        double[][] columns, double[] y, int[] time, int[] stretch, double phi, double noise) {
      Whitening whitening = new Whitening(time, stretch, phi, noise);
      int p = columns.length;
      double[][] white = new double[p + 1][];
      for (int j = 0; j < p; j++) {
        white[j] = whitening.of(columns[j]);
      }
      white[p] = whitening.of(y);
      // Normal equations, for the grid only chooses and weighs: the fit itself is by orthogonal
      // factors. With y as the last column the last pivot is the root of what is left over.
      RealMatrix products = products(white);
      // To length 1 first, or the units would decide which columns count as dependent.
      double[] scale = unit(products);
      double logDet = 0;
      for (int j = 0; j < p; j++) {
        logDet += 2 * Math.log(scale[j]);
      }
      double[] coefficients = new double[p];
      double[] variances = new double[p];
      double[][] l;
      try {
        l = new CholeskyDecomposition(products, 1e-9, 1e-13).getL().getData();
      } catch (MathRuntimeException e) {
        return new Candidate(phi, noise, Double.POSITIVE_INFINITY, coefficients, variances);
      }
      for (int j = 0; j < p; j++) {
        logDet += 2 * Math.log(l[j][j]);
      }
      int df = y.length - p;
      double rss = Math.pow(l[p][p] * scale[p], 2);
      // The last row of L is L⁻¹X'y: what is left is to solve with L'.
      for (int j = p - 1; j >= 0; j--) {
        double sum = l[p][j];
        for (int k = j + 1; k < p; k++) {
          sum -= l[k][j] * coefficients[k];
        }
        coefficients[j] = sum / l[j][j];
      }
      double[] column = new double[p];
      for (int j = 0; j < p; j++) {
        // Column j of L⁻¹; the sum of squares down it is the diagonal of the inverse.
        for (int i = j; i < p; i++) {
          double sum = i == j ? 1 : 0;
          for (int k = j; k < i; k++) {
            sum -= l[i][k] * column[k];
          }
          column[i] = sum / l[i][i];
          variances[j] += column[i] * column[i];
        }
      }
      for (int j = 0; j < p; j++) {
        coefficients[j] *= scale[p] / scale[j];
        variances[j] *= rss / df / (scale[j] * scale[j]);
      }
      // ln|X'V⁻¹X| and n − p: what the coefficients took from the likelihood is put back.
      double criterion = df * Math.log(rss / df) + whitening.logVariance + logDet;
      return new Candidate(phi, noise, criterion, coefficients, variances);
    }

    @Override
    public int compareTo(Candidate other) {
      return Double.compare(criterion, other.criterion);
    }
  }

  /** Makes the diagonal of products ones; gives the square roots of what it was. */
  private static double[] unit(RealMatrix products) {
    int p = products.getRowDimension();
    double[] scale = new double[p];
    for (int j = 0; j < p; j++) {
      scale[j] = Math.sqrt(Math.max(Double.MIN_NORMAL, products.getEntry(j, j)));
    }
    for (int j = 0; j < p; j++) {
      for (int k = 0; k < p; k++) {
        products.multiplyEntry(j, k, 1 / (scale[j] * scale[k]));
      }
    }
    return scale;
  }

  private static RealMatrix products(double[][] columns) {
    int p = columns.length;
    RealMatrix products = new Array2DRowRealMatrix(p, p);
    for (int j = 0; j < p; j++) {
      for (int k = 0; k <= j; k++) {
        double sum = 0;
        for (int i = 0; i < columns[j].length; i++) {
          sum += columns[j][i] * columns[k][i];
        }
        products.setEntry(j, k, sum);
        products.setEntry(k, j, sum);
      }
    }
    return products;
  }

  /** In the order of the columns. */
  public double coefficient(int column) {
    return fit.coefficients()[column];
  }

  /**
   * Standard error of a coefficient where the errors are as modelled; not knowing φ and the share
   * is part of it where they were fitted.
   */
  public double error(int column) {
    return errors[column];
  }

  /** Degrees of freedom of that error. */
  public double freedom(int column) {
    return freedom[column];
  }

  /**
   * Standard errors that allow for what the model leaves of autocorrelation and of uneven spread:
   * Newey and West (1987) with Bartlett weights over this many steps, never below the modelled
   * ones.
   *
   * @param stretch as given to the fit
   */
  public double[] robustErrors(int[] stretch, int steps) {
    int p = white.length;
    int n = whiteValues.length;
    double[] modelled = fit.standardErrors();
    RealMatrix inverse = inverse();
    double[] residuals = fit.residuals();
    double[] errors = new double[p];
    double[] score = new double[n];
    for (int j = 0; j < p; j++) {
      double[] weight = inverse == null ? weightsByOthers(j) : weights(inverse.getRow(j));
      for (int i = 0; i < n; i++) {
        score[i] = weight[i] * residuals[i];
      }
      double variance = 0;
      for (int lag = 0; lag <= steps; lag++) {
        double sum = 0;
        for (int i = lag; i < n; i++) {
          sum += stretch[i] == stretch[i - lag] ? score[i] * score[i - lag] : 0;
        }
        // Weights that fall to 0 keep the sum from coming out below 0.
        variance += (lag == 0 ? 1 : 2 * (1 - lag / (steps + 1.0))) * sum;
      }
      // Residuals are smaller than errors: p coefficients were fitted to them.
      variance *= n / (double) Math.max(1, n - p);
      errors[j] = Math.max(modelled[j], Math.sqrt(Math.max(0, variance)));
    }
    return errors;
  }

  /** (X'X)⁻¹; null where the columns are too near to each other for the normal equations. */
  private @Nullable RealMatrix inverse() {
    RealMatrix products = products(white);
    try {
      CholeskyDecomposition factors = new CholeskyDecomposition(products, 1e-6, 0);
      RealMatrix l = factors.getL();
      for (int j = 0; j < white.length; j++) {
        if (l.getEntry(j, j) * l.getEntry(j, j) < APART * products.getEntry(j, j)) {
          return null;
        }
      }
      return factors.getSolver().getInverse();
    } catch (MathRuntimeException e) {
      return null;
    }
  }

  /** What each value weighs in a coefficient: a row of (X'X)⁻¹X'. */
  private double[] weights(double[] row) {
    double[] weights = new double[whiteValues.length];
    for (int i = 0; i < weights.length; i++) {
      for (int k = 0; k < row.length; k++) {
        weights[i] += row[k] * white[k][i];
      }
    }
    return weights;
  }

  /**
   * The same from what the other columns leave of that one, e/e'e (Frisch and Waugh 1933), by
   * orthogonal factors, which stand columns that lie close together.
   */
  private double[] weightsByOthers(int column) {
    double[] left = white[column].clone();
    int p = white.length;
    if (p > 1) {
      double[][] others = new double[left.length][p - 1];
      for (int i = 0; i < left.length; i++) {
        for (int k = 0; k < p - 1; k++) {
          others[i][k] = white[k < column ? k : k + 1][i];
        }
      }
      left = LeastSquares.fit(others, left, false).residuals();
    }
    double squares = 0;
    for (double v : left) {
      squares += v * v;
    }
    for (int i = 0; i < left.length; i++) {
      left[i] /= squares;
    }
    return left;
  }

  /**
   * Probability that a column that is not in the fit would get such a coefficient by chance: of
   * {@link #ratioIfAdded} by Student's t. 1 where the column is a combination of the others.
   */
  public double addedColumn(double[] column, int[] time, int[] stretch) {
    int df = degreesOfFreedom() - 1;
    return df < 1 ? 1 : StudentT.twoSided(ratioIfAdded(column, time, stretch), df);
  }

  /**
   * The coefficient over its standard error that a column would have which is not in the fit, φ and
   * the share as fitted, without fitting again (Frisch and Waugh 1933). 0 where the column is a
   * combination of the others. O(n·p²).
   *
   * @param column n values
   * @param time as given to the fit
   * @param stretch as given to the fit
   */
  public double ratioIfAdded(double[] column, int[] time, int[] stretch) {
    double[] added = new Whitening(time, stretch, phi, noise).of(column);
    int p = white.length;
    double[][] all = Arrays.copyOf(white, p + 1);
    all[p] = added;
    RealMatrix products = products(all);
    double[] scale = unit(products);
    double apart;
    try {
      double[][] l = new CholeskyDecomposition(products, 1e-9, 0).getL().getData();
      apart = l[p][p] * l[p][p] * scale[p] * scale[p];
    } catch (MathRuntimeException e) {
      return 0;
    }
    double along = 0;
    double rss = 0;
    double[] residuals = fit.residuals();
    for (int i = 0; i < added.length; i++) {
      // Residuals stand at right angles to the fit: the column need not be freed of it first.
      along += added[i] * residuals[i];
      rss += residuals[i] * residuals[i];
    }
    int df = degreesOfFreedom() - 1;
    double left = rss - along * along / apart;
    if (df < 1 || !(apart > 1e-10 * scale[p] * scale[p]) || !(left > 0)) {
      return 0;
    }
    return along / Math.sqrt(apart) / Math.sqrt(left / df);
  }

  /**
   * Lag-1 autocorrelation of what is left, which is white where the model holds; pairs within a
   * stretch only.
   *
   * @param stretch as given to the fit
   */
  public double residualLagOne(int[] stretch) {
    double[] residuals = fit.residuals();
    double pairs = 0;
    double squares = 0;
    for (int i = 0; i < residuals.length; i++) {
      squares += residuals[i] * residuals[i];
      pairs += i > 0 && stretch[i] == stretch[i - 1] ? residuals[i] * residuals[i - 1] : 0;
    }
    return squares == 0 ? 0 : pairs / squares;
  }

  /** How much of a column the others make up, after whitening: R² of the column on them. */
  public double madeUpByOthers(int column) {
    double squares = 0;
    for (double v : white[column]) {
      squares += v * v;
    }
    // The standard error already has in it what the others leave: no second regression.
    double relative = fit.standardErrors()[column] / fit.residualSd();
    return Math.max(0, 1 - 1 / (squares * relative * relative));
  }

  /** Correlation of two columns, about zero, after whitening. */
  public double correlation(int one, int other) {
    double xy = 0;
    double xx = 0;
    double yy = 0;
    for (int i = 0; i < whiteValues.length; i++) {
      xy += white[one][i] * white[other][i];
      xx += white[one][i] * white[one][i];
      yy += white[other][i] * white[other][i];
    }
    return xx == 0 || yy == 0 ? 0 : xy / Math.sqrt(xx * yy);
  }

  /** Values less coefficients. */
  public int degreesOfFreedom() {
    return fit.degreesOfFreedom();
  }

  /** Coefficient of the errors' autoregression. */
  public double phi() {
    return phi;
  }

  /** Share of the errors' variance that is white. */
  public double noise() {
    return noise;
  }

  /** S.d. of the errors: of one value about the line. */
  public double sd() {
    return fit.residualSd();
  }

  /**
   * Makes series white: one-step-ahead prediction errors over their s.d., where the errors' s.d. is
   * 1. Not changed once made.
   */
  public static final class Whitening {
    private final double[] weight;
    private final double[] scale;
    private final double[] fade;
    private final double phi;
    private final boolean[] first;
    private final double logVariance;

    /**
     * @param time of each value, in whole steps
     * @param stretch a number that changes where the errors start anew
     */
    public Whitening(int[] time, int[] stretch, double phi, double noise) {
      this.phi = phi;
      int n = time.length;
      weight = new double[n];
      scale = new double[n];
      fade = new double[n];
      first = new boolean[n];
      double log = 0;
      double variance = 1 - noise;
      double known = Double.NaN;
      double itsScale = 0;
      double itsWeight = 0;
      double itsLog = 0;
      for (int i = 0; i < n; i++) {
        first[i] = i == 0 || stretch[i] != stretch[i - 1];
        if (first[i]) {
          variance = 1 - noise;
        } else {
          int gap = time[i] - time[i - 1];
          fade[i] = gap == 1 ? phi : Math.pow(phi, gap);
          double f = fade[i] * fade[i];
          // Over a gap the level is forgotten, and its variance goes back to that of a first value.
          variance = f * variance + (1 - f) * (1 - noise);
        }
        // Without gaps the variance soon stays what it is, and with it what follows from it.
        if (variance != known) {
          known = variance;
          double total = variance + noise;
          itsScale = 1 / Math.sqrt(total);
          itsWeight = variance / total;
          itsLog = Math.log(total);
        }
        scale[i] = itsScale;
        weight[i] = itsWeight;
        variance *= 1 - itsWeight;
        log += itsLog;
      }
      logVariance = log;
    }

    /**
     * Logarithm of the determinant of the errors' correlations: what a likelihood pays for them.
     */
    public double logVariance() {
      return logVariance;
    }

    /** A series made white; as long as the times. */
    public double[] of(double[] series) {
      return of(series, 0);
    }

    /**
     * A series made white.
     *
     * @param from before which it is all zeros
     */
    public double[] of(double[] series, int from) {
      // Nothing to predict from, and the variance is 1.
      if (phi == 0) {
        return series.clone();
      }
      double[] white = new double[series.length];
      double level = 0;
      for (int i = from; i < series.length; i++) {
        level = first[i] ? 0 : level * fade[i];
        double d = series[i] - level;
        white[i] = d * scale[i];
        level += weight[i] * d;
      }
      return white;
    }
  }

  /** A series of zeros from here to there and ones elsewhere: a level of its own. */
  public static double[] between(int length, int from, int to) {
    double[] column = new double[length];
    Arrays.fill(column, from, to, 1);
    return column;
  }
}
