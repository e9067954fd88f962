package org.evenpour.control;

import java.util.Arrays;

/** The scatter within a turn, robust against a few molds that are off. */
final class Scatter {
  /**
   * The largest residuals that are left out: a sector of a few molds is no matter of the whole
   * wheel.
   */
  private static final double LEFT_OUT = 0.2;

  private static final int LEAST = 4;

  private Scatter() {}

  /**
   * The logarithm of the mean size of a turn's residuals over sigma, the largest fifth left out.
   * Its usual value and its own scatter are taken from the base period.
   *
   * @param sizes absolute residuals; sorted by this call
   * @param n how many of them count
   * @param sigma from pour to pour
   * @return NaN with fewer than four, or where they are all zero
   */
  static double of(double[] sizes, int n, double sigma) {
    int kept = n - (int) Math.ceil(LEFT_OUT * n);
    if (kept < LEAST) {
      return Double.NaN;
    }
    // Absolute values and not squares: one pour that is left in cannot make a turn of it.
    Arrays.sort(sizes, 0, n);
    double sum = 0;
    for (int i = 0; i < kept; i++) {
      sum += sizes[i];
    }
    // Of a logarithm the scatter is the same whatever sigma is.
    return sum > 0 ? Math.log(sum / kept / sigma) : Double.NaN;
  }
}
