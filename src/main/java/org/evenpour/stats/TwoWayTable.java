package org.evenpour.stats;

import java.util.Arrays;

/**
 * The values of a two-way table, gathered by rows, and what the normal equations take from it.
 * Deviations are from the mean of all values. Columns without values have no position.
 */
final class TwoWayTable {
  /** Values of row r are start[r] … start[r + 1]. */
  final int[] start;

  final int[] position;
  final int rows;
  final int rowsUsed;
  final int columnsUsed;
  final int used;
  final double mean;

  /** Mean deviation of each row. */
  final double[] rowMean;

  /** Number and sum of deviations of each used column. */
  final double[] columnCount;

  final double[] columnSum;

  private final int[] column;
  private final double[] y;

  TwoWayTable(int[] row, int[] columnGiven, double[] x, int n) {
    rows = 1 + Arrays.stream(row, 0, n).max().orElse(-1);
    int columns = 1 + Arrays.stream(columnGiven, 0, n).max().orElse(-1);
    start = new int[rows + 1];
    boolean inOrder = true;
    Moments all = new Moments();
    int[] inColumn = new int[columns];
    for (int i = 0; i < n; i++) {
      all.add(x[i]);
      if (Double.isNaN(x[i])) {
        inOrder = false;
      } else {
        start[row[i] + 1]++;
        inColumn[columnGiven[i]]++;
      }
      inOrder &= i == 0 || row[i] >= row[i - 1];
    }
    for (int r = 0; r < rows; r++) {
      start[r + 1] += start[r];
    }
    used = start[rows];
    mean = all.mean();
    // A log is in the order of time, and so is not copied.
    if (inOrder) {
      column = columnGiven;
      y = x;
    } else {
      column = new int[used];
      y = new double[used];
      int[] next = Arrays.copyOf(start, rows);
      for (int i = 0; i < n; i++) {
        if (!Double.isNaN(x[i])) {
          int at = next[row[i]]++;
          column[at] = columnGiven[i];
          y[at] = x[i];
        }
      }
    }
    position = new int[columns];
    int positions = 0;
    for (int c = 0; c < columns; c++) {
      position[c] = inColumn[c] > 0 ? positions++ : -1;
    }
    columnsUsed = positions;
    columnCount = new double[positions];
    columnSum = new double[positions];
    rowMean = new double[rows];
    int filled = 0;
    for (int r = 0; r < rows; r++) {
      double sum = 0;
      for (int i = start[r]; i < start[r + 1]; i++) {
        // From the mean of all: without the level plain doubles are enough for effects.
        double d = deviation(i);
        sum += d;
        columnSum[at(i)] += d;
        columnCount[at(i)]++;
      }
      rowMean[r] = sum / size(r);
      filled += size(r) > 0 ? 1 : 0;
    }
    rowsUsed = filled;
  }

  int size(int r) {
    return start[r + 1] - start[r];
  }

  /** The position of the column in which the i-th value stands. */
  int at(int i) {
    return position[column[i]];
  }

  double deviation(int i) {
    return y[i] - mean;
  }

  /** Whether every value can be reached from every other through common rows and columns. */
  boolean isConnected() {
    int[] part = new int[columnsUsed];
    Arrays.setAll(part, p -> p);
    for (int r = 0; r < rows; r++) {
      for (int i = start[r] + 1; i < start[r + 1]; i++) {
        int a = root(part, at(i - 1));
        int b = root(part, at(i));
        part[b] = a;
      }
    }
    for (int p = 1; p < columnsUsed; p++) {
      if (root(part, p) != root(part, 0)) {
        return false;
      }
    }
    return used > 0;
  }

  private static int root(int[] part, int p) {
    int at = p;
    while (part[at] != at) {
      // Each look-up halves the way for the next ones.
      part[at] = part[part[at]];
      at = part[at];
    }
    return at;
  }
}
