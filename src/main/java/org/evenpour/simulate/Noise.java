package org.evenpour.simulate;

import java.util.SplittableRandom;

/**
 * Seeded random numbers whose every bit is fixed: the polar method of Marsaglia and Bray (1964) on
 * {@link SplittableRandom}, with {@link StrictMath}, so that a seed gives the same log everywhere.
 *
 * <p>Owned by the thread that draws.
 */
final class Noise {
  private final SplittableRandom random;
  private double spare;
  private boolean hasSpare;

  Noise(SplittableRandom random) {
    this.random = random;
  }

  /** From N(0, sd²). */
  double normal(double sd) {
    if (hasSpare) {
      hasSpare = false;
      return sd * spare;
    }
    double u;
    double v;
    double s;
    do {
      u = 2 * random.nextDouble() - 1;
      v = 2 * random.nextDouble() - 1;
      s = u * u + v * v;
    } while (s >= 1 || s == 0);
    double factor = StrictMath.sqrt(-2 * StrictMath.log(s) / s);
    spare = v * factor;
    hasSpare = true;
    return sd * u * factor;
  }

  /**
   * From N(0, sd²) within two standard deviations: a mold that is worse is not put on the wheel.
   */
  double normalWithinTwo(double sd) {
    double value;
    do {
      value = normal(sd);
    } while (StrictMath.abs(value) > 2 * sd);
    return value;
  }

  /** The next value of a first-order autoregression whose long-run spread is sd. */
  double next(double last, double correlation, double sd) {
    return correlation * last + normal(sd * StrictMath.sqrt(1 - correlation * correlation));
  }

  /** Exponential with this mean. */
  double exponential(double mean) {
    return -mean * StrictMath.log(1 - random.nextDouble());
  }

  /** Uniform in [from, to). */
  double between(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  /** Uniform in [from, to], whole numbers. */
  int whole(int from, int to) {
    return from + random.nextInt(to - from + 1);
  }

  boolean happens(double probability) {
    return random.nextDouble() < probability;
  }

  int sign() {
    return random.nextBoolean() ? 1 : -1;
  }
}
