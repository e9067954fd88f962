package org.evenpour.stats;

/**
 * Tabular cumulative sums of what exceeds an allowance, upward and downward (Page 1954).
 *
 * <p>C⁺ = max(0, C⁺ + x − target − k), C⁻ = max(0, C⁻ + target − x − k); a signal where one passes
 * h strictly. All in the unit of x. NaN is skipped. Not thread-safe: owned by the thread that
 * accepts.
 */
public final class Cusum {
  private final double target;
  private final double allowance;
  private final double decision;
  private double upper;
  private double lower;
  private long sinceUpperZero;
  private long sinceLowerZero;

  /**
   * @param allowance k, half the shift to find fastest
   * @param decision h
   */
  public Cusum(double target, double allowance, double decision) {
    this.target = target;
    this.allowance = allowance;
    this.decision = decision;
  }

  /** Takes the next value; true where a sum is then above the decision value. */
  public boolean accept(double x) {
    if (Double.isNaN(x)) {
      return false;
    }
    upper = Math.max(0, upper + (x - target - allowance));
    lower = Math.max(0, lower + (target - x - allowance));
    sinceUpperZero = upper > 0 ? sinceUpperZero + 1 : 0;
    sinceLowerZero = lower > 0 ? sinceLowerZero + 1 : 0;
    return signalsHigh() || signalsLow();
  }

  public boolean signalsHigh() {
    return upper > decision;
  }

  public boolean signalsLow() {
    return lower > decision;
  }

  public double upper() {
    return upper;
  }

  public double lower() {
    return lower;
  }

  /**
   * Values since the upper sum was last 0: the shift began this many values ago, the newest one.
   */
  public long sinceUpperZero() {
    return sinceUpperZero;
  }

  public long sinceLowerZero() {
    return sinceLowerZero;
  }

  /** Level estimated from the sum that signals: target ± (k + C/N); NaN where none is above 0. */
  public double estimatedLevel() {
    if (upper >= lower) {
      return target + allowance + upper / sinceUpperZero;
    }
    return target - allowance - lower / sinceLowerZero;
  }

  /** Starts both sums anew from a head start, 0 for none (Lucas and Crosier 1982: h/2). */
  public void restart(double headStart) {
    upper = headStart;
    lower = headStart;
    sinceUpperZero = 0;
    sinceLowerZero = 0;
  }
}
