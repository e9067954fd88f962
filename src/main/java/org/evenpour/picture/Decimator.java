package org.evenpour.picture;

import java.util.Arrays;

/**
 * Leaves out the points of a long series that could not be seen: of each pixel column the first,
 * the smallest, the largest and the last are kept, so that what is drawn covers the same pixels.
 *
 * <p>Flagged points and the newest point are always kept; a gap (NaN) that is as wide as a column
 * stays a gap. The visible part is found by binary search, then each of its points is looked at
 * once. Static functions, any thread.
 */
public final class Decimator {
  private Decimator() {}

  /**
   * Indices of the points to draw, ascending: those in the visible range, one more at either side
   * (so that lines enter and leave the picture), thinned out where there are many.
   *
   * @param x ascending, ties allowed, no NaN
   * @param y as long as {@code x}; NaN = missing
   * @param from left edge of what is visible
   * @param to right edge
   * @param columns how many pixels lie between the edges
   * @param flagged indices that must not be left out, ascending
   */
  public static int[] keep(
      double[] x, double[] y, double from, double to, int columns, int[] flagged) {
    int first = Math.max(0, firstAtLeast(x, from) - 1);
    int end = Math.min(x.length, firstAtLeast(x, Math.nextUp(to)) + 1);
    if (end <= first || columns < 1) {
      return new int[0];
    }
    if (end - first <= 4 * columns) {
      int[] all = new int[end - first];
      Arrays.setAll(all, i -> first + i);
      return all;
    }
    Kept kept = new Kept(columns, flagged, first);
    double scale = columns / (to - from);
    int column = Integer.MIN_VALUE;
    int low = -1;
    int high = -1;
    int start = -1;
    int last = -1;
    int gap = -1;
    for (int i = first; i < end; i++) {
      double value = y[i];
      if (Double.isNaN(value)) {
        if (gap < 0) {
          gap = i;
        }
        continue;
      }
      int at = (int) Math.floor((x[i] - from) * scale);
      if (at != column) {
        kept.add(start, low, high, last);
        if (gap >= 0) {
          kept.add(gap);
        }
        column = at;
        start = i;
        low = i;
        high = i;
      } else if (value < y[low]) {
        low = i;
      } else if (value > y[high]) {
        high = i;
      }
      last = i;
      gap = -1;
    }
    kept.add(start, low, high, last);
    if (gap >= 0) {
      kept.add(gap);
    }
    kept.add(end - 1);
    return kept.close(end);
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

  /** Collects indices in ascending order, flagged ones among them. Owned by one call. */
  private static final class Kept {
    private int[] indices;
    private int size;
    private final int[] flagged;
    private int nextFlag;

    Kept(int columns, int[] flagged, int first) {
      this.indices = new int[4 * columns + 16];
      this.flagged = flagged;
      int at = Arrays.binarySearch(flagged, first);
      this.nextFlag = at < 0 ? -at - 1 : at;
    }

    void add(int start, int low, int high, int last) {
      if (start < 0) {
        return;
      }
      add(start);
      add(Math.min(low, high));
      add(Math.max(low, high));
      add(last);
    }

    void add(int index) {
      while (nextFlag < flagged.length && flagged[nextFlag] < index) {
        append(flagged[nextFlag++]);
      }
      append(index);
    }

    int[] close(int end) {
      while (nextFlag < flagged.length && flagged[nextFlag] < end) {
        append(flagged[nextFlag++]);
      }
      return Arrays.copyOf(indices, size);
    }

    private void append(int index) {
      if (size > 0 && indices[size - 1] >= index) {
        return;
      }
      if (size == indices.length) {
        indices = Arrays.copyOf(indices, size * 2);
      }
      indices[size++] = index;
    }
  }
}
