package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunTestsTest {

  /** The ids that reports may rely on, in the order of Nelson (1984). */
  @Test
  void testsAreCalledAsReportsPromise() {
    assertThat(Arrays.stream(RunTest.values()).map(RunTest::id))
        .containsExactly(
            "beyond-limit",
            "nine-one-side",
            "six-trending",
            "fourteen-alternating",
            "two-of-three-outer",
            "four-of-five-middle",
            "fifteen-inner",
            "eight-outside-inner");
    for (RunTest test : RunTest.values()) {
      assertThat(RunTest.of(test.id())).isSameAs(test);
      assertThat(test.mask()).isEqualTo(1 << Arrays.asList(RunTest.values()).indexOf(test));
    }
    assertThatThrownBy(() -> RunTest.of("ten-one-side")).hasMessageContaining("ten-one-side");
  }

  @ParameterizedTest
  @CsvSource({
    // the shortest series that completes each pattern, in sigmas about the center
    "beyond-limit,3.1",
    "nine-one-side,.1 .2 .1 .2 .1 .2 .1 .2 .1",
    "six-trending,-.3 -.2 -.1 .1 .2 .3",
    "fourteen-alternating,.1 -.1 .1 -.1 .1 -.1 .1 -.1 .1 -.1 .1 -.1 .1 -.1",
    "two-of-three-outer,2.1 0 2.1",
    "four-of-five-middle,-1.1 -1.2 0 -1.2 -1.1",
    "fifteen-inner,.1 .2 .2 -.3 -.3 .4 .4 -.5 -.5 .6 .6 -.7 -.7 .8 .8",
    "eight-outside-inner,1.1 1.2 -1.1 -1.2 1.2 -1.2 -1.1 1.1"
  })
  void aPatternCountsOnceWhereItCompletes(String id, String series) {
    double[] x = Arrays.stream(series.trim().split(" ")).mapToDouble(Double::parseDouble).toArray();
    RunTest test = RunTest.of(id);
    RunTests tests = new RunTests(0, 1);
    for (int i = 0; i < x.length; i++) {
      assertThat((tests.accept(x[i]) & test.mask()) != 0).isEqualTo(i == x.length - 1);
    }
    assertThat(tests.count(test)).isEqualTo(1);
  }

  @Test
  void aRunOfTenCountsTwice() {
    RunTests tests = new RunTests(5, 1);
    for (int i = 0; i < 10; i++) {
      tests.accept(5.5 + 0.001 * (i % 2));
    }
    assertThat(tests.count(RunTest.NINE_ONE_SIDE)).isEqualTo(2);
  }

  @Test
  void aPointOnAThresholdIsNeitherBeyondNorWithin() {
    RunTests tests = new RunTests(0, 1);
    assertThat(tests.accept(3)).isZero();
    tests.reset();
    for (int i = 0; i < 20; i++) {
      assertThat(tests.accept(i % 3 == 0 ? 1 : -1) & RunTest.FIFTEEN_INNER.mask()).isZero();
    }
    assertThat(tests.count(RunTest.EIGHT_OUTSIDE_INNER)).isZero();
    tests.reset();
    for (int i = 0; i < 20; i++) {
      tests.accept(i == 8 ? 0 : 0.5);
    }
    // eight, the center, eleven
    assertThat(tests.count(RunTest.NINE_ONE_SIDE)).isEqualTo(3);
  }

  @Test
  void zeroIsZeroWhateverItsSign() {
    RunTests tests = new RunTests(0, 1);
    for (int i = 0; i < 20; i++) {
      assertThat(tests.accept(i % 2 == 0 ? -0.0 : 0.0) & ~RunTest.FIFTEEN_INNER.mask()).isZero();
    }
  }

  @Test
  void aPointInsideDoesNotCompleteAPatternOfOuterPoints() {
    RunTests tests = new RunTests(0, 1);
    tests.accept(2.5);
    tests.accept(2.6);
    assertThat(tests.accept(0.5) & RunTest.TWO_OF_THREE_OUTER.mask()).isZero();
    assertThat(tests.count(RunTest.TWO_OF_THREE_OUTER)).isEqualTo(1);
  }

  @Test
  void missingPointsBreakNothing() {
    RunTests tests = new RunTests(0, 1);
    for (double x : new double[] {-.3, -.2, Double.NaN, -.1, .1, Double.NaN, .2, .3}) {
      tests.accept(x);
    }
    assertThat(tests.count(RunTest.SIX_TRENDING)).isEqualTo(1);
  }

  @Test
  void nothingFiresWithoutASigma() {
    for (double sigma : new double[] {0, Double.NaN, -1, Double.POSITIVE_INFINITY}) {
      RunTests tests = new RunTests(0, sigma);
      for (int i = 0; i < 30; i++) {
        assertThat(tests.accept(i)).isZero();
      }
    }
    assertThat(new RunTests(Double.NaN, 1).accept(9)).isZero();
  }

  @Test
  void restartForgetsPointsButKeepsCounts() {
    RunTests tests = new RunTests(0, 1);
    tests.accept(2.5);
    tests.accept(4);
    tests.restart();
    assertThat(tests.accept(2.5)).isZero();
    assertThat(tests.count(RunTest.TWO_OF_THREE_OUTER)).isEqualTo(1);
    tests.reset();
    assertThat(tests.count(RunTest.TWO_OF_THREE_OUTER)).isZero();
  }

  @Test
  void otherLengthsAreKept() {
    RunTests tests = new RunTests(0, 1, new RunTest.Lengths(7, 7, 14, 15, 8));
    for (int i = 0; i < 7; i++) {
      int done = tests.accept(0.1 + 0.01 * i);
      assertThat(done)
          .isEqualTo(i < 6 ? 0 : RunTest.NINE_ONE_SIDE.mask() | RunTest.SIX_TRENDING.mask());
    }
    assertThatThrownBy(() -> new RunTest.Lengths(0, 6, 14, 15, 8))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Property(tries = 300)
  void streamingAgreesWithLookingBackOnSeriesFullOfTies(
      @ForAll @Size(min = 1, max = 120) List<@IntRange(min = -7, max = 7) Integer> x) {
    // halves of sigma: many points on the center and on thresholds
    agreesWithLookingBack(x.stream().mapToDouble(v -> 388 + v).toArray(), 388, 2);
  }

  @Test
  void streamingAgreesWithLookingBackOnRandomSeries() {
    Random random = new Random(19);
    for (int trial = 0; trial < 60; trial++) {
      double persistence = trial % 4 * 0.3 - 0.3;
      double[] x = new double[800];
      double last = 0;
      for (int i = 0; i < x.length; i++) {
        last = persistence * last + random.nextGaussian();
        x[i] = 388.3 + 1.7 * last * (trial % 3 == 0 ? 0.4 : 1);
      }
      agreesWithLookingBack(x, 388.3, 1.7);
    }
  }

  private static void agreesWithLookingBack(double[] x, double center, double sigma) {
    RunTests tests = new RunTests(center, sigma);
    long[] counts = new long[8];
    for (int i = 0; i < x.length; i++) {
      int expected = lookBack(x, i, center, sigma);
      assertThat(tests.accept(x[i])).isEqualTo(expected);
      for (RunTest test : RunTest.values()) {
        if ((expected & test.mask()) != 0) {
          counts[Arrays.asList(RunTest.values()).indexOf(test)]++;
        }
      }
    }
    assertThat(Arrays.stream(RunTest.values()).mapToLong(tests::count))
        .containsExactly(Arrays.stream(counts).boxed().toArray(Long[]::new));
  }

  /** The definitions, taken literally at one point. */
  private static int lookBack(double[] x, int i, double c, double s) {
    DoublePredicate above = v -> v > c;
    DoublePredicate below = v -> v < c;
    DoublePredicate high1 = v -> v > c + s;
    DoublePredicate low1 = v -> v < c - s;
    DoublePredicate high2 = v -> v > c + 2 * s;
    DoublePredicate low2 = v -> v < c - 2 * s;
    boolean[] fires = {
      x[i] > c + 3 * s || x[i] < c - 3 * s,
      all(x, i, 9, above) || all(x, i, 9, below),
      steps(x, i, 5, 1, 1) || steps(x, i, 5, -1, -1),
      steps(x, i, 13, 1, -1) || steps(x, i, 13, -1, 1),
      among(x, i, 3, 2, high2) || among(x, i, 3, 2, low2),
      among(x, i, 5, 4, high1) || among(x, i, 5, 4, low1),
      all(x, i, 15, v -> v < c + s && v > c - s),
      all(x, i, 8, high1.or(low1))
    };
    return IntStream.range(0, 8).map(t -> fires[t] ? 1 << t : 0).sum();
  }

  private static boolean all(double[] x, int i, int length, DoublePredicate test) {
    return i >= length - 1 && Arrays.stream(x, i - length + 1, i + 1).allMatch(test);
  }

  private static boolean among(double[] x, int i, int of, int needed, DoublePredicate test) {
    return test.test(x[i])
        && Arrays.stream(x, Math.max(0, i - of + 1), i + 1).filter(test).count() >= needed;
  }

  private static boolean steps(double[] x, int i, int steps, int newest, int before) {
    if (i < steps) {
      return false;
    }
    for (int k = 0; k < steps; k++) {
      int sign = k % 2 == 0 ? newest : before;
      if (!((x[i - k] - x[i - k - 1]) * sign > 0)) {
        return false;
      }
    }
    return true;
  }
}
