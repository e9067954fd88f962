package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class ChangePointTest {

  /**
   * The Nile (Cobb 1978): change after 1898, means 1097.75 and 849.97, F 75.93; the longer figures
   * are from exact rational arithmetic.
   */
  @Test
  void datesTheNile() {
    double[] flow = Reference.column("nile.csv", "flow");
    ChangePoint.Step step = ChangePoint.step(flow, 0, flow.length);
    assertThat(1871 + step.index()).isEqualTo(1899);
    assertThat(step.meanBefore()).isCloseTo(1097.75, within(1e-9));
    assertThat(step.meanAfter())
        .isCloseTo(849.97, within(0.005))
        .isCloseTo(849.9722222, within(5e-8));
    assertThat(step.rss()).isCloseTo(1597457.1944444445, within(1e-8));
    assertThat(step.f())
        .isCloseTo(75.93, within(0.005))
        .isCloseTo(75.92976942748544, within(1e-12));
    ChangePoint.Ranks ranks = ChangePoint.pettitt(flow, 0, flow.length);
    assertThat(1871 + ranks.index()).isEqualTo(1899);
    assertThat(ranks.k()).isEqualTo(1617);
    assertThat(ranks.pValue()).isCloseTo(3.591e-7, within(5e-11));
  }

  @Test
  void findsAPlantedStepExactly() {
    double[] x = {9, 1, 1, 1, 5, 5, Double.NaN, 5, 9};
    ChangePoint.Step step = ChangePoint.step(x, 1, 8);
    assertThat(step.index()).isEqualTo(4);
    assertThat(step.meanBefore()).isEqualTo(1);
    assertThat(step.meanAfter()).isEqualTo(5);
    assertThat(step.rss()).isCloseTo(0, within(1e-12));
    assertThat(step.f()).isGreaterThan(1e12);
  }

  @Test
  void findsAPlantedRampExactly() {
    double[] x = new double[40];
    for (int i = 0; i < 40; i++) {
      x[i] = 388 + 0.25 * Math.max(0, i - 17);
    }
    x[25] = Double.NaN;
    ChangePoint.Ramp ramp = ChangePoint.ramp(x, 0, 40);
    assertThat(ramp.knot()).isEqualTo(17);
    assertThat(ramp.slope()).isCloseTo(0.25, within(1e-12));
    assertThat(ramp.level()).isCloseTo(388, within(1e-11));
    assertThat(ramp.rss()).isCloseTo(0, within(1e-9));
  }

  @Test
  void aSeriesWithoutValuesHasNoChange() {
    assertThat(ChangePoint.step(new double[] {3}, 0, 1).index()).isEqualTo(-1);
    assertThat(ChangePoint.step(new double[0], 0, 0).rss()).isNaN();
    assertThat(ChangePoint.ramp(new double[] {3}, 0, 1).knot()).isEqualTo(-1);
    assertThat(ChangePoint.ramp(new double[] {Double.NaN, 3}, 0, 2).f()).isNaN();
    assertThat(ChangePoint.pettitt(new double[] {3}, 0, 1).index()).isEqualTo(-1);
    assertThat(ChangePoint.pettitt(new double[] {3}, 0, 1).pValue()).isNaN();
  }

  @Property(tries = 200)
  void theStepIsTheBestOfAll(
      @ForAll @Size(min = 2, max = 30) List<@IntRange(min = -20, max = 20) Integer> values) {
    double[] x = values.stream().mapToDouble(Integer::doubleValue).toArray();
    double best = Double.POSITIVE_INFINITY;
    for (int k = 1; k < x.length; k++) {
      double rss =
          Moments.of(Arrays.copyOfRange(x, 0, k)).sumOfSquares().value()
              + Moments.of(Arrays.copyOfRange(x, k, x.length)).sumOfSquares().value();
      best = Math.min(best, rss);
    }
    assertThat(ChangePoint.step(x, 0, x.length).rss()).isCloseTo(best, within(1e-9));
  }

  @Test
  void theRampIsTheBestOfAll() {
    Random random = new Random(3);
    for (int trial = 0; trial < 50; trial++) {
      double[] x = random.doubles(25).toArray();
      if (trial % 2 == 0) {
        x[7] = Double.NaN;
        x[24] = Double.NaN;
      }
      double best = Double.POSITIVE_INFINITY;
      double[] y = Arrays.stream(x).filter(v -> !Double.isNaN(v)).toArray();
      // with the last value missing, a knot at 23 has nothing behind it
      for (int k = 0; k < (trial % 2 == 0 ? 23 : 24); k++) {
        double[][] column = new double[y.length][1];
        int at = 0;
        for (int i = 0; i < 25; i++) {
          if (!Double.isNaN(x[i])) {
            column[at++][0] = Math.max(0, i - k);
          }
        }
        best = Math.min(best, LeastSquares.fit(column, y, true).residualSumOfSquares());
      }
      assertThat(ChangePoint.ramp(x, 0, 25).rss()).isCloseTo(best, within(1e-10));
    }
  }
}
