package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import java.util.Random;
import org.evenpour.casting.Specification;
import org.evenpour.findings.MoldVerdict.Trend;
import org.junit.jupiter.api.Test;

/** Against series whose trend is known. */
class MoldTrendTest {
  private static final Specification MM = new Specification(43.0, 45.0, 47.0);

  /** φ is the autocorrelation; innovations have the s.d. that makes the series' s.d. 0.3. */
  private static double[] series(Random random, int n, double start, double perCast, double phi) {
    double[] y = new double[n];
    double noise = random.nextGaussian() * 0.3;
    for (int i = 0; i < n; i++) {
      y[i] = start + perCast * i + noise;
      noise = phi * noise + Math.sqrt(1 - phi * phi) * 0.3 * random.nextGaussian();
    }
    return y;
  }

  @Test
  void forecastsWhenALineMeetsTheTolerance() {
    double[] y = series(new Random(5), 200, 45, -0.005, 0);
    Trend trend = Objects.requireNonNull(MoldTrend.of(y, MM, 26));
    assertThat(trend.isClear()).isTrue();
    // 45 − 0.005·199 = 44.005 at the last cast, and 201 more to 43
    assertThat(Objects.requireNonNull(trend.castsLeft())).isCloseTo(201, within(30.0));
    assertThat(Objects.requireNonNull(trend.castsLeftLow())).isLessThan(201);
    assertThat(Objects.requireNonNull(trend.castsLeftHigh())).isGreaterThan(201);
  }

  @Test
  void saysNothingOfAStepOrOfFewCasts() {
    double[] step = series(new Random(6), 200, 45, 0, 0);
    for (int i = 100; i < step.length; i++) {
      step[i] -= 0.8;
    }
    assertThat(Objects.requireNonNull(MoldTrend.of(step, MM, 26)).isClear()).isFalse();
    assertThat(Objects.requireNonNull(MoldTrend.of(step, MM, 26)).castsLeft()).isNull();
    assertThat(MoldTrend.of(series(new Random(7), 24, 45, -0.1, 0), MM, 26)).isNull();
    assertThat(MoldTrend.of(new double[50], MM, 26)).isNull();
  }

  /**
   * 95 % intervals of slope and of casts left must hold the truth about 95 times in 100 under
   * autocorrelation: at least 92 in 1000 tries, 4 standard errors below.
   */
  @Test
  void coversTheTruthUnderAutocorrelation() {
    Random random = new Random(20261125);
    int slopes = 0;
    int casts = 0;
    int forecasts = 0;
    int tries = 1000;
    for (int i = 0; i < tries; i++) {
      Trend trend =
          Objects.requireNonNull(MoldTrend.of(series(random, 200, 45, -0.005, 0.5), MM, 26));
      slopes += trend.low() <= -0.5 && -0.5 <= trend.high() ? 1 : 0;
      Double low = trend.castsLeftLow();
      Double high = trend.castsLeftHigh();
      if (low != null && high != null) {
        forecasts++;
        casts += low <= 201 && 201 <= high ? 1 : 0;
      }
    }
    assertThat(slopes).isGreaterThanOrEqualTo(tries * 92 / 100);
    assertThat(forecasts).isGreaterThan(tries / 2);
    assertThat((double) casts / forecasts).isGreaterThan(0.92);
  }

  /** Of 26 molds without a trend, one in twenty wheels may call one clear. */
  @Test
  void rarelyCallsATrendOfSoundMoldsClear() {
    Random random = new Random(11);
    int wheels = 400;
    int wrong = 0;
    for (int w = 0; w < wheels; w++) {
      boolean any = false;
      for (int m = 0; m < 26; m++) {
        any |=
            Objects.requireNonNull(MoldTrend.of(series(random, 120, 45, 0, 0.3), MM, 26)).isClear();
      }
      wrong += any ? 1 : 0;
    }
    assertThat((double) wrong / wheels).isLessThan(0.08);
  }
}
