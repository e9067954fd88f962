package org.evenpour.stats;

import java.util.Arrays;

/**
 * Puts values in ascending order that have few different levels, as what is written down to 0.1 kg
 * has: they are counted, and only the levels are sorted. O(n), two passes. By the very bits of each
 * value, so that the order is that of {@link Arrays#sort(double[])}: −0 before 0, NaN last.
 */
final class Levels {
  private static final int SLOT_BITS = 13;

  /** Half of the slots: with more the next free one is far. */
  private static final int MOST = 1 << (SLOT_BITS - 1);

  private final long[] bits = new long[1 << SLOT_BITS];
  private final int[] counts = new int[1 << SLOT_BITS];
  private int levels;

  private Levels() {}

  /**
   * Sorts, if that can be done by counting.
   *
   * @return false, and nothing done, where there are too many levels
   */
  static boolean sort(double[] x) {
    Levels levels = new Levels();
    return levels.count(x) && levels.lay(x);
  }

  private boolean count(double[] x) {
    for (double value : x) {
      // Any NaN as the one, for they are one level.
      long its = Double.doubleToLongBits(value);
      int at = slot(its);
      if (counts[at]++ == 0) {
        bits[at] = its;
        if (++levels > MOST) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean lay(double[] x) {
    double[] ascending = new double[levels];
    int n = 0;
    for (int at = 0; at < counts.length; at++) {
      if (counts[at] > 0) {
        ascending[n++] = Double.longBitsToDouble(bits[at]);
      }
    }
    Arrays.sort(ascending);
    int from = 0;
    for (double level : ascending) {
      int to = from + counts[slot(Double.doubleToLongBits(level))];
      Arrays.fill(x, from, to, level);
      from = to;
    }
    return true;
  }

  /** Where a level is counted; open addressing. */
  private int slot(long its) {
    // Fibonacci hashing (Knuth, The Art of Computer Programming 3, 6.4)
    int at = (int) ((its * 0x9E3779B97F4A7C15L) >>> (64 - SLOT_BITS));
    while (counts[at] > 0 && bits[at] != its) {
      at = (at + 1) & (counts.length - 1);
    }
    return at;
  }
}
