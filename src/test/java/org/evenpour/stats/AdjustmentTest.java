package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Adjust or leave alone. */
class AdjustmentTest {

  /**
   * Interval and inflation computed independently by a chain of equal cells, extrapolated (Python,
   * SciPy); and within some per cent the approximations of Box and Luceño (1997), from memory: (1 +
   * 1.1Λ + Λ²)(1 − 0.115 exp(−9.2(Λ^0.3 − 0.88)²)) and (1 + 0.06Λ²)/(1 − 0.647Φ(1.35(ln Λ − 0.67)))
   * − 1.
   */
  @ParameterizedTest
  @CsvSource({
    "0.5,1.60704021,0.030471048",
    "1,2.78292702,0.190596473",
    "2,6.91350264,0.859980344",
    "3,13.0856491,1.87792216",
    "5,31.4153895,4.92221535",
    "10,112.241362,18.3839864"
  })
  void intervalsAndInflationAgree(double halfWidth, double interval, double inflation) {
    BoundedAdjustment b = BoundedAdjustment.of(halfWidth);
    assertThat(b.interval()).isCloseTo(interval, within(1e-7 * interval));
    assertThat(b.inflation()).isCloseTo(inflation, within(1e-7 * inflation));
    double square = halfWidth * halfWidth;
    double near = Math.pow(halfWidth, 0.3) - 0.88;
    double approximate =
        (1 + 1.1 * halfWidth + square) * (1 - 0.115 * Math.exp(-9.2 * near * near));
    assertThat(b.interval()).isCloseTo(approximate, within(0.01 * approximate));
    double tail = Normal.cdf(1.35 * (Math.log(halfWidth) - 0.67));
    assertThat(b.inflation())
        .isCloseTo((1 + 0.06 * square) / (1 - 0.647 * tail) - 1, within(0.012 + 0.01 * inflation));
  }

  @Test
  void withoutADeadbandEveryPointIsAnAdjustment() {
    BoundedAdjustment b = BoundedAdjustment.of(0);
    assertThat(b.interval()).isEqualTo(1);
    assertThat(b.meanSquare(0.3, 2)).isEqualTo(4);
    assertThat(BoundedAdjustment.of(1e-9).interval()).isCloseTo(1, within(1e-8));
    assertThatThrownBy(() -> BoundedAdjustment.of(61)).hasMessageContaining("deadband");
  }

  /** The replay on a long wandering record meets the equations, within three standard errors. */
  @Test
  void theReplayMeetsTheEquations() {
    double lambda = 0.3;
    double limit = 2 * lambda * 1.5;
    BoundedAdjustment b = BoundedAdjustment.of(2);
    Moments meanSquares = new Moments();
    Moments intervals = new Moments();
    Random random = new Random(1963);
    for (int run = 0; run < 200; run++) {
      double[] x = wandering(random, 2000, lambda, 1.5);
      Funnel funnel = Funnel.deadband(x, lambda, limit);
      meanSquares.add(funnel.meanSquare());
      intervals.add(2000.0 / funnel.adjustments());
    }
    assertThat(meanSquares.mean())
        .isCloseTo(b.meanSquare(lambda, 1.5), within(3 * meanSquares.sd() / Math.sqrt(200)));
    // the last interval of a record is cut short: 1/2 a part in 290 adjustments
    assertThat(intervals.mean())
        .isCloseTo(
            b.interval(), within(3 * intervals.sd() / Math.sqrt(200) + b.interval() * 0.002));
    assertThat(b.limit(lambda * 1.5)).isCloseTo(limit, within(1e-15));
  }

  private static double[] wandering(Random random, int n, double lambda, double sigma) {
    double[] x = new double[n];
    double level = 0;
    for (int t = 0; t < n; t++) {
      double a = sigma * random.nextGaussian();
      x[t] = level + a;
      level += lambda * a;
    }
    return x;
  }

  @Test
  void theCheapestDeadbandCostsLessThanItsNeighbors() {
    BoundedAdjustment best = cheapest(1, 3, 0.5);
    // what one adjustment costs against λ²σ² off target
    double relative = 3 / 0.25;
    double cost = best.inflation() + relative / best.interval();
    for (double factor : new double[] {0.3, 0.8, 0.97, 1.03, 1.2, 3}) {
      BoundedAdjustment other = BoundedAdjustment.of(factor * best.halfWidth());
      assertThat(other.inflation() + relative / other.interval()).isGreaterThan(cost);
    }
    // far out Λ⁴ is near 6 times the relative cost (Box and Jenkins 1963)
    assertThat(cheapest(1, 1e5, 1).halfWidth()).isCloseTo(Math.pow(6e5, 0.25), within(1.5));
    assertThat(cheapest(1, 0, 1).halfWidth()).isZero();
    assertThat(cheapest(1, 1e-4, 1).halfWidth()).isLessThan(1);
    assertThat(BoundedAdjustment.cheapest(1, 1, 0)).isNull();
    assertThat(BoundedAdjustment.cheapest(1, 1e9, 1)).isNull();
    assertThatThrownBy(() -> BoundedAdjustment.cheapest(0, 1, 1)).hasMessageContaining("cost");
  }

  private static BoundedAdjustment cheapest(double off, double adjustment, double lambdaSigma) {
    return Objects.requireNonNull(BoundedAdjustment.cheapest(off, adjustment, lambdaSigma));
  }

  /**
   * The Nile: λ computed independently by explicit least squares (SciPy). The local level by
   * maximum likelihood, which is not quite least squares, has variances 15098.52 and 1469.18,
   * computed independently (SciPy 1.17, Kalman filter and Nelder-Mead), and so a steady gain of
   * 0.26706; Durbin and Koopman (2001) print 15099 and 1469 (from memory).
   */
  @Test
  void wandersLikeTheNile() {
    DriftingLevel level = DriftingLevel.of(Reference.column("nile.csv", "flow"));
    assertThat(level.fitted()).isCloseTo(0.2457281, within(1e-5)).isCloseTo(0.267, within(0.025));
    assertThat(level.lambda()).isEqualTo(level.fitted());
    assertThat(level.low()).isCloseTo(0.1016412, within(1e-5));
    assertThat(level.high()).isCloseTo(0.4982721, within(1e-5));
    assertThat(level.sigma()).isCloseTo(144.2317591, within(1e-3));
    assertThat(level.wanders()).isTrue();
  }

  /** λ comes back, and its interval covers it, near 95 % of the time. */
  @Test
  void findsTheWeightOfASimulatedLevel() {
    Random random = new Random(1997);
    Moments fitted = new Moments();
    int covered = 0;
    for (int run = 0; run < 300; run++) {
      DriftingLevel level = DriftingLevel.of(wandering(random, 300, 0.25, 2));
      fitted.add(level.fitted());
      covered += level.low() <= 0.25 && 0.25 <= level.high() ? 1 : 0;
    }
    assertThat(fitted.mean()).isCloseTo(0.25, within(0.02));
    assertThat(covered / 300.0).isBetween(0.9, 0.99);
  }

  /** Pure noise is left alone in more than 95 of 100 records, short or long. */
  @ParameterizedTest
  @CsvSource({"20", "80", "400"})
  void leavesNoiseAlone(int n) {
    Random random = new Random(1996);
    int wanders = 0;
    for (int run = 0; run < 400; run++) {
      double[] x = random.doubles(n).map(u -> 388 + Normal.quantile(u)).toArray();
      wanders += DriftingLevel.of(x).wanders() ? 1 : 0;
    }
    assertThat(wanders / 400.0).isLessThanOrEqualTo(0.05);
  }

  @Test
  void aLevelThatStandsStillForecastsItsMean() {
    double[] x = {3, Double.NaN, 1, 3, 1, 3, 1, 3, 1, 3, 1};
    DriftingLevel level = DriftingLevel.of(x);
    assertThat(level.wanders()).isFalse();
    assertThat(level.forecast()).isCloseTo(2, within(1e-12));
    // squared deviations 10, 9 degrees of freedom
    assertThat(level.sigma()).isCloseTo(Math.sqrt(10 / 9.0), within(1e-12));
    assertThat(DriftingLevel.of(new double[] {1, 2, 3}).lambda()).isNaN();
    assertThat(DriftingLevel.of(new double[20]).wanders()).isFalse();
  }

  /** Deming's second rule of the funnel doubles the variance of noise. */
  @Test
  void compensatingAlwaysDoublesTheVarianceOfNoise() {
    double[] byHand = {1, -2, Double.NaN, 3};
    Funnel always = Funnel.compensateAlways(byHand);
    // 1, then −2 − 1, then 3 + 2
    assertThat(always.meanSquare()).isCloseTo((1 + 9 + 25) / 3.0, within(1e-12));
    assertThat(always.adjustments()).isEqualTo(3);
    Funnel alone = Funnel.leaveAlone(byHand);
    assertThat(alone.meanSquare()).isCloseTo(14 / 3.0, within(1e-12));
    assertThat(alone.adjustments()).isZero();

    double[] noise = new Random(2).doubles(100_000).map(Normal::quantile).toArray();
    double ratio = Math.pow(Funnel.compensateAlways(noise).sd() / Funnel.leaveAlone(noise).sd(), 2);
    assertThat(ratio).isCloseTo(2, within(0.02));
    // a level that wanders much is better followed; noise is better left to the deadband
    double[] wandering = wandering(new Random(3), 5000, 0.9, 1);
    assertThat(Funnel.compensateAlways(wandering).meanSquare())
        .isLessThan(Funnel.leaveAlone(wandering).meanSquare());
    assertThat(Funnel.deadband(wandering, 0.9, 0).meanSquare()).isCloseTo(1, within(0.06));
    assertThat(Funnel.leaveAlone(new double[0]).meanSquare()).isNaN();
    assertThatThrownBy(() -> Funnel.deadband(noise, 2, 1)).hasMessageContaining("lambda");
  }
}
