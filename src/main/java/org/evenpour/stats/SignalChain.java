package org.evenpour.stats;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * A chart as what it may remember after a point that gave no signal, and the weights with which one
 * memory leads to the next; what is missing to 1 is the probability of a signal.
 *
 * @param first weights after the first point
 * @param next for each memory, the weights after one more point
 */
record SignalChain(double[] first, double[][] next) {

  /** L = 1 + first·(I − next)⁻¹·1, by LU decomposition. */
  double mean() {
    return 1 + dot(first, solve(next, ones(first.length)));
  }

  /** (I − next)⁻¹·b. */
  static double[] solve(double[][] next, double[] b) {
    int n = b.length;
    double[][] a = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i][j] = (i == j ? 1 : 0) - next[i][j];
      }
    }
    // No pivot is too small: at run lengths of 1e10 the matrix is all but singular, and is meant so
    return new LUDecomposition(new Array2DRowRealMatrix(a, false), 0)
        .getSolver()
        .solve(new ArrayRealVector(b, false))
        .toArray();
  }

  static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
