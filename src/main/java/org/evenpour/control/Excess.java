package org.evenpour.control;

/**
 * By how much sums of innovations over some turns scatter more than those of independent values
 * would: what a first-order model leaves of a longer memory.
 *
 * <p>The mean square of block sums over the block's length and over the mean square of single
 * values (batch means). Owned by one thread.
 */
final class Excess {
  private static final int LONGEST = 32;
  private static final int LEAST_BLOCKS = 10;

  /** Standard errors above 1 from which it is believed. */
  private static final double CLEAR = 2;

  private final int length;
  private double sum;
  private int inBlock;
  private double squaresOfSums;
  private int blocks;
  private double squares;
  private long values;

  /**
   * @param points of each series
   */
  Excess(int points) {
    // A dozen blocks of each series, for fewer tell no variance.
    length = Math.max(4, Math.min(LONGEST, points / 12));
  }

  /** The next innovation of a series. */
  void add(double u) {
    squares += u * u;
    values++;
    sum += u;
    inBlock++;
    if (inBlock == length) {
      squaresOfSums += sum * sum;
      blocks++;
      breakHere();
    }
  }

  /** What comes next does not follow on what came before. */
  void breakHere() {
    sum = 0;
    inBlock = 0;
  }

  /** At least 1. */
  double ratio() {
    if (blocks < LEAST_BLOCKS || squares == 0) {
      return 1;
    }
    double ratio = squaresOfSums / blocks / length / (squares / values);
    // √(2/blocks) is the relative error of a variance; what is within it would widen by chance.
    return ratio > 1 + CLEAR * Math.sqrt(2.0 / blocks) ? ratio : 1;
  }
}
