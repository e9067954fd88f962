package org.evenpour.stats;

import java.util.Arrays;

/**
 * How the values of a two-way table resemble one another, and what they are then worth to the
 * intervals of capability.
 *
 * <p>Model: {@code x = center + column effect + b(row) + e}. Column effects are fixed: the same
 * columns will come again, so that they are no error of sampling. {@code b}, one for each row, is a
 * first-order autoregression of coefficient φ over the rows in their order; {@code e} is one of its
 * own in each column, mostly with a coefficient of 0. Values are normal.
 *
 * <p>With γ the autocovariances and M values a row, sums over all lags give
 *
 * <ul>
 *   <li>the mean: {@code n·Var = M·Σγ_b + Σγ_e}, with {@code Σφᵏ = (1 + φ)/(1 − φ)};
 *   <li>the overall variance: {@code n·Var(s²)/2 = M·Σγ_b² + 2Σγ_bγ_e + Σγ_e² + 2·fixed·Σγ_e}, with
 *       {@code Σφ²ᵏ = (1 + φ²)/(1 − φ²)} (Bartlett 1946), and degrees of freedom by matching it
 *       with a χ² (Satterthwaite 1946);
 *   <li>the mean moving range: {@code n·Var} is proportional to the sum of {@code g(ρ) = ρ·asin ρ +
 *       √(1 − ρ²) − 1} over the correlations ρ of one difference with all others of its own and the
 *       other columns (the covariance of |X| and |Y| of a bivariate normal distribution);
 *   <li>s² falls short of the variance by that of the mean.
 * </ul>
 *
 * <p>All are given as the share of what they would be for independent values.
 */
public final class Resemblance {
  /** With fewer rows nothing is said of how they follow one another: a choice. */
  private static final int FEWEST_ROWS = 8;

  /** A column of fewer values has the correlation of all columns together: a choice. */
  private static final int FEWEST_IN_COLUMN = 50;

  /** The most that a coefficient may be: a choice, worth a thirty-ninth of the values. */
  private static final double MOST = 0.95;

  /** φ is raised by so many times (1 + 2φ)/rows: see {@link #raised}. A choice. */
  private static final double ALLOWANCE = 3;

  private static final int ROUNDS = 12;

  /** Nothing is known to resemble anything. */
  public static final Resemblance NONE = new Resemblance(0, 0, 0, Double.NaN, 0, new double[0]);

  private final int rows;
  private final double shared;
  private final double phi;
  private final double own;
  private final double ownPhi;
  private final double[] columnPhi;

  private Resemblance(
      int rows, double shared, double phi, double own, double ownPhi, double[] columnPhi) {
    this.rows = rows;
    this.shared = shared;
    this.phi = phi;
    this.own = own;
    this.ownPhi = ownPhi;
    this.columnPhi = columnPhi;
  }

  /**
   * Of a table; {@link #NONE} where rows cannot be told from columns.
   *
   * <p>{@code e} by the residual mean square, its coefficient by the residuals' lag-one products in
   * each column. The variance of {@code b} is that of the row effects less what {@code e} leaves in
   * them; its coefficient is their lag-one autocovariance over that variance. What estimating a
   * mean takes from an autocorrelated variance and covariance is put back, by iteration.
   * Coefficients are between 0 and 0.95. One pass over the values.
   *
   * @param fit of the same table
   * @param row of each value, never falling: the order of time
   * @param column of each value
   * @param x values; NaN = missing
   */
  public static Resemblance of(TwoWay fit, int[] row, int[] column, double[] x) {
    if (!fit.isDefined() || fit.rowsUsed() < 2) {
      return NONE;
    }
    double[] rowEffects = fit.rowEffects();
    double[] columnEffects = fit.columnEffects();
    double[] last = new double[columnEffects.length];
    double[] products = new double[last.length];
    double[] squares = new double[last.length];
    double[] pairs = new double[last.length];
    double[] count = new double[last.length];
    int[] inRow = new int[rowEffects.length];
    Arrays.fill(last, Double.NaN);
    for (int i = 0; i < x.length; i++) {
      double e = x[i] - fit.center() - rowEffects[row[i]] - columnEffects[column[i]];
      if (Double.isNaN(e)) {
        continue;
      }
      int c = column[i];
      if (!Double.isNaN(last[c])) {
        products[c] += e * last[c];
        // Both values of a pair: the ratio then cannot pass 1, however few they are.
        squares[c] += 0.5 * (e * e + last[c] * last[c]);
        pairs[c]++;
      }
      last[c] = e;
      count[c]++;
      inRow[row[i]]++;
    }
    double ownPhi =
        coefficient(
            Arrays.stream(products).sum(),
            Arrays.stream(squares).sum(),
            Arrays.stream(pairs).sum() / fit.columnsUsed());
    double[] columnPhi = new double[last.length];
    for (int c = 0; c < last.length; c++) {
      columnPhi[c] =
          count[c] < FEWEST_IN_COLUMN ? ownPhi : coefficient(products[c], squares[c], pairs[c]);
    }
    // The mean of a column takes more than one degree of freedom where its values hang together.
    double own = fit.componentResidual() * (1 + (level(ownPhi) - 1) / fit.rowsUsed());
    double inverse = 0;
    for (int n : inRow) {
      inverse += n == 0 ? 0 : 1.0 / n;
    }
    // What the row's own scatter leaves in its mean.
    double ofMean = own * inverse / fit.rowsUsed();
    double[] b = ofRows(rowEffects, fit.rowsUsed(), ofMean, ownPhi);
    return new Resemblance(fit.rowsUsed(), b[0], b[1], own, ownPhi, columnPhi);
  }

  /** A lag-one correlation about a mean that was estimated from some pairs. */
  private static double coefficient(double products, double squares, double pairs) {
    double phi = 0;
    if (!(squares > 0) || pairs < 2) {
      return phi;
    }
    for (int i = 0; i < ROUNDS; i++) {
      // What the estimated mean took; held to half, or few pairs and a high φ would feed each other
      double mean = Math.min(0.5, level(phi) / pairs) * squares;
      phi = Math.max(0, Math.min(MOST, (products + mean) / (squares + mean)));
    }
    return phi;
  }

  /** Variance and coefficient of what lies under the row effects. */
  private static double[] ofRows(double[] effect, int rows, double ofMean, double ownPhi) {
    double mean = 0;
    for (double each : effect) {
      mean += Double.isNaN(each) ? 0 : each / rows;
    }
    double squares = 0;
    double products = 0;
    long pairs = 0;
    double before = Double.NaN;
    for (double each : effect) {
      double d = each - mean;
      squares += Double.isNaN(d) ? 0 : d * d / rows;
      if (!Double.isNaN(d * before)) {
        products += d * before;
        pairs++;
      }
      before = d;
    }
    boolean enough = rows >= FEWEST_ROWS && pairs > 0;
    double product = enough ? products / pairs : 0;
    double variance = 0;
    double phi = 0;
    for (int i = 0; i < ROUNDS; i++) {
      // What taking the mean of all rows out took, from the variance and from each product alike.
      double lost = Math.min(squares / 2, (variance * level(phi) + ofMean * level(ownPhi)) / rows);
      variance = Math.max(0, squares + lost - ofMean);
      phi =
          enough && variance > 0
              // What own scatter leaves in row means is correlated too where ownPhi is.
              ? Math.max(0, Math.min(MOST, (product + lost - ownPhi * ofMean) / variance))
              : 0;
    }
    return new double[] {variance, phi};
  }

  /** Variance that the values of a row share. */
  public double shared() {
    return shared;
  }

  /** Correlation of what one row's values share with the next row's. */
  public double phi() {
    return phi;
  }

  /** Variance of each value's own. */
  public double own() {
    return own;
  }

  /** Correlation of each value's own with that of the next one in the same column. */
  public double ownPhi() {
    return ownPhi;
  }

  /**
   * What all values, or those of some group, are worth.
   *
   * @param n how many there are
   * @param itsRows how many rows they stand in
   * @param sd of the values; what it has more than rows and residuals make is fixed
   */
  public Worth of(long n, long itsRows, double sd) {
    if (!(shared + own > 0) || !(sd > 0) || itsRows < 1) {
      return Worth.INDEPENDENT;
    }
    double fixed = Math.max(0, sd * sd - shared - own);
    return new Sums((double) n / itsRows, shared, own, ownPhi).worth(n, fixed);
  }

  /**
   * What the values of one column are worth.
   *
   * @param n how many there are
   * @param sd of the values; what it has more than rows make is the column's own
   */
  public Worth ofColumn(int column, long n, double sd) {
    if (!(shared + own > 0) || !(sd > 0)) {
      return Worth.INDEPENDENT;
    }
    double variance = sd * sd;
    double rest = Math.max(0, variance - shared);
    return new Sums(1, variance - rest, rest, columnPhi[column]).worth(n, 0);
  }

  /**
   * What values are worth to an interval, as shares of what independent ones would be; 1 where they
   * are.
   *
   * @param level for the mean beside the overall s.d.
   * @param spread for the overall s.d.
   * @param levelWithin for the mean beside the sigma within
   * @param spreadWithin for the sigma within
   * @param pulledIn by which share s² falls short of the variance
   */
  public record Worth(
      double level, double spread, double levelWithin, double spreadWithin, double pulledIn) {
    /** Each value is worth one. */
    public static final Worth INDEPENDENT = new Worth(1, 1, 1, 1, 0);
  }

  /** Σφᵏ over all lags: the values that a mean needs for what one independent value tells. */
  private static double level(double phi) {
    return (1 + phi) / (1 - phi);
  }

  /**
   * φ with an allowance for its error. An estimate that came out low makes the interval too narrow
   * by more than one that came out high makes it too wide, and comes with a low variance. With this
   * allowance the intervals keep what they promise from some 30 rows on (CapabilityExperiment).
   */
  private double raised() {
    return shared > 0 && rows >= FEWEST_ROWS
        ? Math.min(MOST, phi + ALLOWANCE * (1 + 2 * phi) / rows)
        : phi;
  }

  /** The sums over all lags for values with so many in a row. */
  private final class Sums {
    private final double perRow;
    private final double b;
    private final double e;
    private final double ePhi;

    Sums(double perRow, double b, double e, double ePhi) {
      this.perRow = perRow;
      this.b = b;
      this.e = e;
      this.ePhi = ePhi;
    }

    Worth worth(long n, double fixed) {
      double total = fixed + b + e;
      double within = b * (1 - phi) + e * (1 - ePhi);
      double careful = raised();
      double ofMean = perRow * b * level(phi) + e * level(ePhi);
      // n − 1 makes s² right for independent values; only what the mean takes beyond that is lost.
      double lost = (ofMean - total) / n / total;
      return new Worth(
          // The width asks for caution, the center does not: φ as estimated there.
          total / (perRow * b * level(careful) + e * level(ePhi)),
          total * total / squares(careful, fixed),
          within / ofMean,
          ranges(0.5, 0, 0, 0, 1) / rangesOf(within),
          Math.max(0, Math.min(0.5, lost)));
    }

    private double squares(double careful, double fixed) {
      return perRow * b * b * level(careful * careful)
          + 2 * b * e * level(careful * ePhi)
          + e * e * level(ePhi * ePhi)
          + 2 * fixed * e * level(ePhi);
    }

    private double rangesOf(double within) {
      return ranges(
          e * (1 - ePhi) * (1 - ePhi) / (2 * within),
          ePhi,
          b * (1 - phi) * (1 - phi) / (2 * within),
          b * (1 - phi) / within,
          perRow);
    }

    /**
     * Σg over one difference and all others.
     *
     * @param ofOwn by how much the next difference is correlated the other way for e
     * @param ofShared the same for b
     * @param inRow correlation of two differences between the same two rows
     */
    private double ranges(
        double ofOwn, double ownFades, double ofShared, double inRow, double columns) {
      // One difference with itself, g(1), and with those of the same rows in the other columns.
      double sum = Math.PI / 2 - 1 + (columns - 1) * g(inRow);
      double one = ofOwn;
      double other = ofShared;
      // g is nearly ρ²/2, so what is left out is below 1e-11; it is even, so signs don't matter.
      while (one + other > 1e-6) {
        sum += 2 * (g(one + other) + (columns - 1) * g(other));
        one *= ownFades;
        other *= phi;
      }
      return sum;
    }

    private static double g(double correlation) {
      double r = Math.min(1, correlation);
      return r * Math.asin(r) + Math.sqrt(1 - r * r) - 1;
    }
  }
}
