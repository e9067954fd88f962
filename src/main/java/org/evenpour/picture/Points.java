package org.evenpour.picture;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A long series as pictures take it in: never changed once it is here.
 *
 * @param x ascending, such as turns
 * @param y in the unit that is shown; NaN = missing
 * @param flagged indices of points that are always shown, with a mark; ascending
 */
@SuppressWarnings("ArrayRecordComponent") // a million points are handed on, compared by value
public record Points(double[] x, double[] y, int[] flagged) {

  /** No point at all. */
  public static final Points NONE = new Points(new double[0], new double[0], new int[0]);

  /** How many points there are. */
  public int size() {
    return x.length;
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
