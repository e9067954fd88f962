package org.evenpour.picture;

import java.util.Arrays;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A long series as pictures take it in: never changed once it is here.
 *
 * @param x such as turns; ascending where a line goes through the points
 * @param y in the unit that is shown; NaN = missing
 * @param flagged indices of points that are always shown, with a mark; ascending
 * @param says what a point tells who points at it, by its index; no part of how a picture looks,
 *     and so none of what makes two of them equal
 */
@SuppressWarnings("ArrayRecordComponent") // a million points are handed on, compared by value
public record Points(double[] x, double[] y, int[] flagged, IntFunction<String> says) {

  /** No point at all. */
  public static final Points NONE = new Points(new double[0], new double[0], new int[0]);

  /** Points that tell nothing. */
  public Points(double[] x, double[] y, int[] flagged) {
    this(x, y, flagged, index -> "");
  }

  /** The same points, which tell this. */
  public Points saying(IntFunction<String> words) {
    return new Points(x, y, flagged, words);
  }

  /** How many points there are. */
  public int size() {
    return x.length;
  }

  /** Some of the points, one after the other. */
  record Range(int first, int end) {
    int size() {
      return end - first;
    }
  }

  /**
   * The points between two places, and one more at either side, so that lines enter and leave a
   * picture. Found by binary search.
   */
  Range visible(double from, double to) {
    int first = Math.max(0, firstAtLeast(x, from) - 1);
    return new Range(
        first, Math.max(first, Math.min(x.length, firstAtLeast(x, Math.nextUp(to)) + 1)));
  }

  /** The flagged points alone. */
  Points onlyFlagged() {
    return new Points(
        Arrays.stream(flagged).mapToDouble(index -> x[index]).toArray(),
        Arrays.stream(flagged).mapToDouble(index -> y[index]).toArray(),
        new int[0]);
  }

  /** The first index whose value is at least this; the length where there is none. */
  public static int firstAtLeast(double[] ascending, double value) {
    int low = 0;
    int high = ascending.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (ascending[middle] < value) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Points its
        && Arrays.equals(y, its.y)
        && Arrays.equals(x, its.x)
        && Arrays.equals(flagged, its.flagged);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(y) + Arrays.hashCode(x);
  }
}
