package org.evenpour.stats;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * The additive two-way analysis x = center + row effect + column effect + residual of an unbalanced
 * table: turns against molds.
 *
 * <p>Least squares. What is computed: rows are eliminated and the normal equations of the columns,
 * C·b = q, solved by Cholesky, exact without iteration (Searle 1987, Linear Models for Unbalanced
 * Data, ch. 4); complete rows share one term of C, so that a nearly complete table costs O(N) and
 * any other O(N·columns). Columns are to be the fewer. Effects of rows and of columns each add up
 * to 0 over those that have values; rows and columns without values have NaN.
 *
 * <p>Variance components are Henderson's method III: row component = (SS(rows | columns) − (R −
 * 1)·MSE)/(N − Σ over columns of Σ n²/n_column), the column one likewise; raw ones may be negative.
 *
 * <p>Where the table falls into parts without a common row or column, effects across parts have no
 * meaning: everything is NaN and {@link #isConnected} says so. Without residual degrees of freedom
 * the components are NaN. NaN values are missing. Not changed once made.
 */
public final class TwoWay {
  private final double center;
  private final double[] rowEffects;
  private final double[] columnEffects;
  private final boolean connected;
  private final long count;
  private final long residualDf;
  private final double ssResidual;
  private final double ssRows;
  private final double ssColumns;
  private final int rowsUsed;
  private final int columnsUsed;
  private final double rowDivisor;
  private final double columnDivisor;

  /**
   * Fits the first n entries: x[i] stands in row[i] and column[i], both from 0.
   *
   * @param n number of entries to use
   */
  public static TwoWay fit(int[] row, int[] column, double[] x, int n) {
    return new TwoWay(new TwoWayTable(row, column, x, n));
  }

  private TwoWay(TwoWayTable table) {
    count = table.used;
    rowsUsed = table.rowsUsed;
    columnsUsed = table.columnsUsed;
    connected = table.isConnected();
    rowEffects = new double[table.rows];
    columnEffects = new double[table.position.length];
    Arrays.fill(rowEffects, Double.NaN);
    Arrays.fill(columnEffects, Double.NaN);
    if (!connected) {
      residualDf = 0;
      center = Double.NaN;
      ssRows = Double.NaN;
      ssColumns = Double.NaN;
      ssResidual = Double.NaN;
      rowDivisor = Double.NaN;
      columnDivisor = Double.NaN;
      return;
    }
    residualDf = (long) table.used - rowsUsed - columnsUsed + 1;

    Equations equations = new Equations(table);
    rowDivisor = table.used - equations.squaresOverColumns;
    columnDivisor = table.used - equations.squaresOverRows;
    double[] b = equations.solution();
    double adjusted = 0;
    double ssColumnsAlone = 0;
    for (int p = 0; p < columnsUsed; p++) {
      adjusted += b[p] * equations.q[p];
      ssColumnsAlone += table.columnSum[p] * table.columnSum[p] / table.columnCount[p];
    }
    double ssRowsAlone = 0;
    double meanOfRows = 0;
    double residual = 0;
    for (int r = 0; r < table.rows; r++) {
      int size = table.size(r);
      if (size == 0) {
        continue;
      }
      ssRowsAlone += size * table.rowMean[r] * table.rowMean[r];
      double sum = 0;
      for (int i = table.start[r]; i < table.start[r + 1]; i++) {
        sum += b[table.at(i)];
      }
      double effect = table.rowMean[r] - sum / size;
      for (int i = table.start[r]; i < table.start[r + 1]; i++) {
        // From what is left of each value: a difference of the sums of squares would cancel.
        double e = table.deviation(i) - effect - b[table.at(i)];
        residual += e * e;
      }
      rowEffects[r] = effect;
      meanOfRows += effect / rowsUsed;
    }
    ssResidual = residual;
    ssColumns = Math.max(0, adjusted);
    // Either order of fitting makes the same whole: rows + columns|rows = columns + rows|columns.
    ssRows = Math.max(0, ssRowsAlone + adjusted - ssColumnsAlone);
    // Row effects are to add up to 0; what they have in common is the level.
    center = table.mean + meanOfRows;
    for (int r = 0; r < table.rows; r++) {
      rowEffects[r] -= meanOfRows;
    }
    for (int c = 0; c < columnEffects.length; c++) {
      if (table.position[c] >= 0) {
        columnEffects[c] = b[table.position[c]];
      }
    }
  }

  /** The normal equations of the columns, rows eliminated. */
  private static final class Equations {
    private final double[][] normal;
    private final double[] q;
    private double squaresOverRows;
    private double squaresOverColumns;

    Equations(TwoWayTable table) {
      int m = table.columnsUsed;
      normal = new double[m][m];
      q = table.columnSum.clone();
      double[] squaresByColumn = new double[m];
      int[] inCell = new int[m];
      double complete = 0;
      for (int r = 0; r < table.rows; r++) {
        int from = table.start[r];
        int to = table.start[r + 1];
        int size = to - from;
        boolean distinct = true;
        double squares = 0;
        for (int i = from; i < to; i++) {
          int p = table.at(i);
          // n² of the cell grows by 1, 3, 5, …
          int growth = 2 * inCell[p]++ + 1;
          distinct &= growth == 1;
          squares += growth;
          squaresByColumn[p] += growth;
          q[p] -= table.rowMean[r];
        }
        for (int i = from; i < to; i++) {
          // Only what was touched: to clear all would cost rows times columns.
          inCell[table.at(i)] = 0;
        }
        if (size == 0) {
          continue;
        }
        squaresOverRows += squares / size;
        // A complete row takes the same from every pair of columns: counted here, taken off once.
        if (distinct && size == m) {
          complete += 1.0 / size;
        } else {
          subtractPairs(table, from, to);
        }
      }
      for (int p = 0; p < m; p++) {
        squaresOverColumns += squaresByColumn[p] / table.columnCount[p];
        for (int k = 0; k < m; k++) {
          normal[p][k] -= complete;
        }
        normal[p][p] += table.columnCount[p];
      }
    }

    private void subtractPairs(TwoWayTable table, int from, int to) {
      double share = 1.0 / (to - from);
      for (int i = from; i < to; i++) {
        double[] line = normal[table.at(i)];
        for (int k = from; k < to; k++) {
          line[table.at(k)] -= share;
        }
      }
    }

    /** b with C·b = q and Σb = 0: C plus a constant in every place is positive definite. */
    double[] solution() {
      int m = q.length;
      if (m == 1) {
        return new double[1];
      }
      // As large as C's own elements, so that neither is lost in the other; Σq = 0, so Σb = 0.
      double shift = 0;
      for (int p = 0; p < m; p++) {
        shift += normal[p][p] / m / m;
      }
      for (double[] line : normal) {
        for (int p = 0; p < m; p++) {
          line[p] += shift;
        }
      }
      return new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-9, 0)
          .getSolver()
          .solve(new ArrayRealVector(q, false))
          .toArray();
    }
  }

  /** The level: mean of rows over columns, each with equal weight. */
  public double center() {
    return center;
  }

  public double[] rowEffects() {
    return rowEffects.clone();
  }

  public double[] columnEffects() {
    return columnEffects.clone();
  }

  /** Whether every value can be compared with every other through common rows and columns. */
  public boolean isConnected() {
    return connected;
  }

  /** Whether effects and components are defined: connected, with residual degrees of freedom. */
  public boolean isDefined() {
    return connected && residualDf > 0;
  }

  public long count() {
    return count;
  }

  public long residualDf() {
    return residualDf;
  }

  public double ssResidual() {
    return ssResidual;
  }

  /** SS(rows | columns), with R − 1 degrees of freedom. */
  public double ssRows() {
    return ssRows;
  }

  /** SS(columns | rows), with C − 1 degrees of freedom. */
  public double ssColumns() {
    return ssColumns;
  }

  /** Rows that have values. */
  public int rowsUsed() {
    return rowsUsed;
  }

  /** Columns that have values. */
  public int columnsUsed() {
    return columnsUsed;
  }

  /** Residual mean square, the residual component. */
  public double componentResidual() {
    return isDefined() ? ssResidual / residualDf : Double.NaN;
  }

  /** Row component, not below 0. */
  public double componentRows() {
    return floor(rawComponentRows());
  }

  /** Column component, not below 0. */
  public double componentColumns() {
    return floor(rawComponentColumns());
  }

  /** NaN with a single row too. */
  public double rawComponentRows() {
    return rowsUsed < 2 ? Double.NaN : (ssRows - (rowsUsed - 1) * componentResidual()) / rowDivisor;
  }

  /** NaN with a single column too. */
  public double rawComponentColumns() {
    return columnsUsed < 2
        ? Double.NaN
        : (ssColumns - (columnsUsed - 1) * componentResidual()) / columnDivisor;
  }

  private static double floor(double raw) {
    return raw < 0 ? 0 : raw;
  }
}
