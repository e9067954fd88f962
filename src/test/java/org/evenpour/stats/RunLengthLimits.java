package org.evenpour.stats;

/** Limits for a wanted run length in control, for the charts that experiments compare with. */
public final class RunLengthLimits {
  private RunLengthLimits() {}

  /** h of a two-sided CUSUM with this run length in control, by {@link RunLength#cusum}. */
  public static double cusum(double k, double arl) {
    // Siegmund's approximation grows by exp(2kh)
    double guess = Math.max(0.2, Math.log1p(4 * k * k * arl) / (2 * k) - 1.166);
    double target = Math.log(arl);
    return Root.ofIncreasing(
        h -> Math.log(RunLength.cusum(k, h, 0)) - target, guess, 0.1, 1e-6, 200);
  }
}
