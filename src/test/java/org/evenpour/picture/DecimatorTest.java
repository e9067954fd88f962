package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class DecimatorTest {
  private static final int[] NONE = {};

  /** A random walk over turns that may share a place, with gaps. */
  private record Walk(double[] x, double[] y, int[] flagged) {
    static Walk of(long seed, int size, double gaps) {
      Random random = new Random(seed);
      double[] x = new double[size];
      double[] y = new double[size];
      double at = 0;
      for (int i = 0; i < size; i++) {
        at += random.nextInt(4) == 0 ? 0 : random.nextDouble();
        x[i] = at;
        y[i] = random.nextDouble() < gaps ? Double.NaN : random.nextGaussian();
      }
      int[] flagged = IntStream.range(0, size).filter(i -> random.nextInt(50) == 0).toArray();
      return new Walk(x, y, flagged);
    }
  }

  private static int column(double x, double from, double to, int columns) {
    return (int) Math.floor((x - from) * (columns / (to - from)));
  }

  @Property(tries = 300)
  void everyColumnKeepsItsFirstLastSmallestAndLargestValue(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 3000) int size,
      @ForAll @IntRange(min = 1, max = 120) int columns) {
    Walk walk = Walk.of(seed, size, 0.05);
    double from = walk.x()[size / 4];
    double to = Math.max(from + 1, walk.x()[size - 1 - size / 5]);
    int[] kept = Decimator.keep(walk.x(), walk.y(), from, to, columns, NONE);
    for (int column = 0; column < columns; column++) {
      int which = column;
      int[] raw =
          IntStream.range(0, size)
              .filter(i -> !Double.isNaN(walk.y()[i]))
              .filter(i -> walk.x()[i] >= from && walk.x()[i] <= to)
              .filter(i -> column(walk.x()[i], from, to, columns) == which)
              .toArray();
      int[] seen =
          Arrays.stream(kept)
              .filter(i -> !Double.isNaN(walk.y()[i]))
              .filter(i -> walk.x()[i] >= from && walk.x()[i] <= to)
              .filter(i -> column(walk.x()[i], from, to, columns) == which)
              .toArray();
      if (raw.length == 0) {
        assertThat(seen).isEmpty();
        continue;
      }
      assertThat(smallest(walk, seen)).isEqualTo(smallest(walk, raw));
      assertThat(largest(walk, seen)).isEqualTo(largest(walk, raw));
      assertThat(seen[0]).isEqualTo(raw[0]);
      assertThat(seen[seen.length - 1]).isEqualTo(raw[raw.length - 1]);
    }
  }

  private static double smallest(Walk walk, int[] indices) {
    return Arrays.stream(indices).mapToDouble(i -> walk.y()[i]).min().orElseThrow();
  }

  private static double largest(Walk walk, int[] indices) {
    return Arrays.stream(indices).mapToDouble(i -> walk.y()[i]).max().orElseThrow();
  }

  @Property(tries = 300)
  void flaggedPointsAndTheNewestAreNeverLeftOut(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 3000) int size,
      @ForAll @IntRange(min = 1, max = 60) int columns) {
    Walk walk = Walk.of(seed, size, 0.1);
    int[] kept =
        Decimator.keep(
            walk.x(), walk.y(), walk.x()[0], walk.x()[size - 1] + 1, columns, walk.flagged());
    assertThat(kept).contains(size - 1);
    assertThat(Arrays.stream(kept).boxed().toList())
        .containsAll(Arrays.stream(walk.flagged()).boxed().toList());
    assertThat(kept).isSorted().doesNotHaveDuplicates();
  }

  @Property(tries = 200)
  void atMostFourPointsAndAGapAreKeptForEachColumn(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int columns) {
    Walk walk = Walk.of(seed, 5000, 0.3);
    int[] kept = Decimator.keep(walk.x(), walk.y(), walk.x()[0], walk.x()[4999] + 1, columns, NONE);
    assertThat(kept.length).isLessThanOrEqualTo(5 * columns + 4);
  }

  @Test
  void aGapBetweenColumnsStaysAGap() {
    double[] x = IntStream.range(0, 1000).asDoubleStream().toArray();
    double[] y = new double[1000];
    Arrays.fill(y, 400, 600, Double.NaN);
    int[] kept = Decimator.keep(x, y, 0, 999, 10, NONE);
    assertThat(Arrays.stream(kept).filter(i -> Double.isNaN(y[i]))).isNotEmpty();
  }

  @Test
  void aSpikeAtTheNewestPointAndOneBeforeAGapAreKept() {
    double[] x = IntStream.range(0, 100_000).asDoubleStream().toArray();
    double[] y = new double[100_000];
    y[99_999] = 9;
    y[49_999] = 9;
    y[50_000] = Double.NaN;
    int[] kept = Decimator.keep(x, y, 0, 99_999, 500, NONE);
    assertThat(kept).contains(99_999, 49_999);
  }

  @Test
  void onePointMoreIsKeptAtEitherSideOfWhatIsVisible() {
    double[] x = {0, 1, 2, 3, 4, 5};
    double[] y = {0, 0, 0, 0, 0, 0};
    assertThat(Decimator.keep(x, y, 1.5, 3.5, 100, NONE)).containsExactly(1, 2, 3, 4);
  }

  @Test
  void nothingIsKeptOfNothing() {
    assertThat(Decimator.keep(new double[0], new double[0], 0, 1, 100, NONE)).isEmpty();
  }
}
