package org.evenpour.stats;

import java.util.Arrays;

/**
 * A chart as what it may remember after a point that gave no signal, and the weights with which one
 * memory leads to the next; what is missing to 1 is the probability of a signal.
 *
 * @param first weights after the first point
 * @param next for each memory, the weights after one more point
 */
record SignalChain(double[] first, double[][] next) {

  /** L = 1 + first·(I − next)⁻¹·1, by elimination. */
  double mean() {
    return 1 + dot(first, solve(next, ones(first.length)));
  }

  /**
   * (I − next)⁻¹·b, by Gauss's elimination with the largest of each column as its pivot.
   *
   * <p>Hipparchus's LU decomposition gives the same to the last bit ({@code SignalChainTest}), for
   * each element takes the same steps in the same order there; but it goes down the columns of
   * matrices that lie in memory row by row, and takes three times as long. Some n³/3 steps.
   */
  static double[] solve(double[][] next, double[] b) {
    int n = b.length;
    double[][] a = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i][j] = (i == j ? 1 : 0) - next[i][j];
      }
    }
    double[] x = b.clone();
    for (int k = 0; k < n; k++) {
      bringUp(largest(a, k), k, a, x);
      double[] pivots = a[k];
      // No pivot is too small: at run lengths of 1e10 the matrix is all but singular, and is meant
      // so.
      for (int i = k + 1; i < n; i++) {
        double[] row = a[i];
        double times = row[k] / pivots[k];
        for (int j = k + 1; j < n; j++) {
          row[j] -= times * pivots[j];
        }
        x[i] -= times * x[k];
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      x[k] /= a[k][k];
      for (int i = 0; i < k; i++) {
        x[i] -= x[k] * a[i][k];
      }
    }
    return x;
  }

  /** In which row from the k-th on the k-th column is largest; of equals the first. */
  private static int largest(double[][] a, int k) {
    int largest = k;
    for (int i = k + 1; i < a.length; i++) {
      if (Math.abs(a[i][k]) > Math.abs(a[largest][k])) {
        largest = i;
      }
    }
    return largest;
  }

  private static void bringUp(int from, int to, double[][] a, double[] x) {
    double[] row = a[from];
    a[from] = a[to];
    a[to] = row;
    double value = x[from];
    x[from] = x[to];
    x[to] = value;
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
