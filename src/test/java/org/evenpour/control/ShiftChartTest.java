package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.Onset;
import org.evenpour.stats.RunLengthLimits;
import org.junit.jupiter.api.Test;

class ShiftChartTest {
  /**
   * Montgomery, Introduction to Statistical Quality Control, Table 9.1: 20 values of N(10, 1), then
   * 10 of N(11, 1). With k = 0.5 and h = 5 the cumulative sum first signals at 29, as the book has
   * it (the book's answer from memory).
   */
  @Test
  void signalsWhereTheHandbookDoes() {
    double[] x = {
      9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40,
      10.08, 9.37, 10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62,
      11.31, 10.52
    };
    ShiftChart chart = chart(0.5, 5, 0);
    for (int i = 0; i < x.length; i++) {
      chart.accept(i + 1, i, x[i] - 10, 0, 1);
    }

    assertThat(chart.episodes()).hasSize(1);
    assertThat(chart.episodes().get(0).firstTurn()).isEqualTo(29);
    // The book places the shift after period 22, where the sum was last zero.
    assertThat(chart.episodes().get(0).sinceTurn()).isBetween(21, 24);
  }

  /**
   * Its in-control run length is that of a two-sided cumulative sum, within three standard errors.
   */
  @Test
  void alarmsAsRarelyAsRunLengthsSay() {
    double h = RunLengthLimits.cusum(0.5, 200);
    SplittableRandom random = new SplittableRandom(42);
    int runs = 2000;
    long total = 0;
    double squares = 0;
    for (int run = 0; run < runs; run++) {
      ShiftChart chart = chart(0.5, h, 0);
      int n = 0;
      while (!chart.isOpen()) {
        chart.accept(n, n, random.nextGaussian(), 0, 1);
        n++;
      }
      total += n;
      squares += (double) n * n;
    }
    double mean = (double) total / runs;
    double error = Math.sqrt((squares / runs - mean * mean) / runs);

    assertThat(mean).isCloseTo(200, within(3 * error));
  }

  @Test
  void isNotEndedByOneWildPour() {
    ShiftChart chart = chart(0.5, 5, 0);
    for (int i = 0; i < 60; i++) {
      chart.accept(i, i, i == 40 ? -9 : 2.5, 0, 1);
    }

    assertThat(chart.episodes()).hasSize(1);
    assertThat(chart.isOpen()).isTrue();
  }

  /**
   * What is told of a shift of one and a half sigma, looked at after each of 60 points: how often
   * the onset is told anew, beside the onset of the greatest likelihood at each look, and by how
   * many points it is wrong in the end.
   */
  @Test
  void tellsAnOnsetAnewOnlyWhereItIsTold() {
    int series = 400;
    double[] changes = new double[2];
    double[] error = new double[2];
    for (int s = 0; s < series; s++) {
      SplittableRandom random = new SplittableRandom(s);
      ShiftChart chart = chart(0.5, 5, 0);
      double[] z = new double[40 + 60];
      int[] before = {-1, -1};
      for (int i = 0; i < z.length; i++) {
        z[i] = random.nextGaussian() + (i < 40 ? 0 : 1.5);
        chart.accept(i, i, z[i], 0, 1);
        if (i < 40 || !chart.isOpen()) {
          continue;
        }
        int[] told = {
          chart.episodes().get(chart.episodes().size() - 1).sinceTurn(),
          Onset.find(z, i + 1, 1, 1).index()
        };
        for (int k = 0; k < 2; k++) {
          changes[k] += before[k] >= 0 && told[k] != before[k] ? 1.0 / series : 0;
          before[k] = told[k];
        }
      }
      for (int k = 0; k < 2; k++) {
        error[k] += Math.abs(before[k] - 40) / (double) series;
      }
    }
    // 0.5 and 1.6 times; the error is 3.2 points, as it is where each look tells it anew.
    assertThat(changes[0]).isLessThan(0.4 * changes[1]);
    assertThat(error[0]).isLessThan(3.6);
  }

  @Test
  void remembersNoMoreThanItSays() {
    ShiftChart chart = chart(0.5, 5, 0);
    for (int i = 0; i < 50_000; i++) {
      chart.accept(i, i, i < 20_000 ? (i % 2 == 0 ? 0.4 : -0.4) : 2, 0, 1);
    }

    Episode episode = chart.episodes().get(0);
    assertThat(episode.sinceTurn()).isEqualTo(20_000);
    assertThat(episode.lastTurn()).isEqualTo(49_999);
    assertThat(episode.points()).isLessThanOrEqualTo(ShiftChart.TRACE);
  }

  @Test
  void tellsARampFromAStep() {
    double[] ramp = new double[120];
    double[] step = new double[120];
    SplittableRandom random = new SplittableRandom(5);
    for (int i = 0; i < 120; i++) {
      double noise = random.nextGaussian();
      ramp[i] = noise + (i < 60 ? 0 : 0.08 * (i - 59));
      step[i] = noise + (i < 60 ? 0 : 2.4);
    }

    assertThat(Onset.find(ramp, 120, 1, 1).ramp()).isTrue();
    assertThat(Onset.find(ramp, 120, 1, 1).index()).isBetween(45, 75);
    assertThat(Onset.find(step, 120, 1, 1).ramp()).isFalse();
    assertThat(Onset.find(step, 120, 1, 1).index()).isBetween(57, 62);
    assertThat(Onset.find(step, 120, -1, 1).index()).isNotEqualTo(60);
  }

  /** With one sum alone: the other one's limit is out of reach. */
  private static ShiftChart chart(double k, double h, double correlation) {
    return new ShiftChart(
        Episode.Chart.MOLD,
        0,
        new LimitsInForce.SeriesLimits(0, 1, correlation, 0, 1, new CusumPair(k, h, 2 * k, 1e9)),
        true,
        1);
  }
}
