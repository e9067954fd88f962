package org.evenpour.stats;

/**
 * Exponentially weighted moving average with its limits (Roberts 1959; Lucas and Saccucci 1990).
 *
 * <p>z_t = λx_t + (1 − λ)z_{t−1} from z_0 = center; limits center ± L·sigma·√(λ/(2−λ)·(1 −
 * (1−λ)^{2t})), which widen to their asymptote. NaN is skipped. Not thread-safe: owned by the
 * thread that accepts.
 */
public final class Ewma {
  private final double lambda;
  private final double width;
  private final double center;
  private final double sigma;
  private double value;
  private double decay = 1;

  /**
   * @param lambda weight of the newest value, above 0 to 1
   * @param width L, half-width of the limits in standard deviations of the average
   */
  public Ewma(double lambda, double width, double center, double sigma) {
    if (!(lambda > 0 && lambda <= 1)) {
      throw new IllegalArgumentException("lambda lies above 0 and at most at 1, not at " + lambda);
    }
    this.lambda = lambda;
    this.width = width;
    this.center = center;
    this.sigma = sigma;
    this.value = center;
  }

  /** Takes the next value; true where the average is then outside its time-varying limits. */
  public boolean accept(double x) {
    if (Double.isNaN(x)) {
      return false;
    }
    value += lambda * (x - value);
    decay *= (1 - lambda) * (1 - lambda);
    return limits().excludes(value);
  }

  public double value() {
    return value;
  }

  /** The limits that hold for the newest average. */
  public Limits limits() {
    return Limits.around(center, sigma * Math.sqrt(lambda / (2 - lambda) * (1 - decay)), width);
  }

  /** The limits that hold after many values. */
  public Limits asymptoticLimits() {
    return Limits.around(center, sigma * Math.sqrt(lambda / (2 - lambda)), width);
  }

  /** Begins again at the center. */
  public void reset() {
    value = center;
    decay = 1;
  }
}
