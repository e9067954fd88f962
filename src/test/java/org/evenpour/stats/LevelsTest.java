package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the library's sorting, bit by bit. */
class LevelsTest {
  private static final double[] ODD = {
    0.0,
    -0.0,
    Double.NaN,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    Double.MIN_VALUE,
    -1e300
  };

  @Test
  void ordersValuesOfFewLevelsAsTheLibraryDoes() {
    Random random = new Random(7);
    for (int levels : new int[] {1, 2, 30, 700, 4000}) {
      double[] x =
          random
              .ints(50_000, 0, levels)
              .mapToDouble(k -> k % 97 == 5 ? ODD[k % ODD.length] : Math.round(k * 7919.0) / 10.0)
              .toArray();
      double[] expected = x.clone();
      Arrays.sort(expected);

      assertThat(Levels.sort(x)).isTrue();

      assertThat(bits(x)).isEqualTo(bits(expected));
    }
  }

  @Test
  void leavesValuesOfManyLevelsAsTheyAre() {
    double[] x = new Random(8).doubles(20_000).toArray();
    double[] before = x.clone();

    assertThat(Levels.sort(x)).isFalse();
    assertThat(x).isEqualTo(before);

    Arrays.sort(before);
    assertThat(Robust.ascending(x)).isEqualTo(before);
  }

  private static long[] bits(double[] x) {
    return Arrays.stream(x).mapToLong(Double::doubleToLongBits).toArray();
  }
}
