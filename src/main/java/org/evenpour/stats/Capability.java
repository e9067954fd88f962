package org.evenpour.stats;

import org.evenpour.stats.Resemblance.Worth;
import org.jspecify.annotations.Nullable;

/**
 * Capability indices with 95 % confidence intervals; null where an index is not defined.
 *
 * @param cp (upper − lower)/(6 sigma within)
 * @param cpk the smaller of cpl and cpu
 * @param cpl (mean − lower)/(3 sigma within)
 * @param cpu (upper − mean)/(3 sigma within)
 * @param pp (upper − lower)/(6 sd overall)
 * @param ppk as cpk, with the overall sd
 * @param cpm (upper − lower)/(6 √(mean squared deviation from the target))
 * @param fractionOutsideExpected of normal values with this mean and overall sd; NaN without sd
 */
public record Capability(
    @Nullable Estimate cp,
    @Nullable Estimate cpk,
    @Nullable Estimate cpl,
    @Nullable Estimate cpu,
    @Nullable Estimate pp,
    @Nullable Estimate ppk,
    @Nullable Estimate cpm,
    double fractionOutsideExpected) {

  /** On either side of a 95 % interval. */
  private static final double TAIL = 0.025;

  /** A value with its confidence limits. */
  public record Estimate(double value, double low, double high) {}

  /**
   * The indices of n independent values: see {@link #of(long, double, double, double, double,
   * Double, Double, Double, Worth)}.
   */
  public static Capability of(
      long n,
      double mean,
      double sigmaWithin,
      double dfWithin,
      double sdOverall,
      @Nullable Double lower,
      @Nullable Double target,
      @Nullable Double upper) {
    return of(n, mean, sigmaWithin, dfWithin, sdOverall, lower, target, upper, Worth.INDEPENDENT);
  }

  /**
   * The indices of n values.
   *
   * <p>Intervals: Cp and Pp exact by χ² with the degrees of freedom of their sigma; Cpl and Cpu
   * exact by the noncentral t distribution (Chou, Owen and Borrego 1990); Cpk and Ppk by Bissell
   * (1990), index ± 1.96 √(1/(9n) + index²/(2 df)); Cpm by the χ² approximation of Boyles (1991).
   * All suppose normal values of a stable process. The within sigma of a moving range has fewer
   * degrees of freedom than n − 1: see {@link MovingRange#degreesOfFreedom}. Cp and Cpk use the
   * within sigma, Pp, Ppk and Cpm the overall one, and so does the fraction outside.
   *
   * <p>For values that are not independent n and the degrees of freedom are multiplied by what they
   * are worth to the mean and to the sigma ({@link Resemblance}), which makes "exact" approximate,
   * and the intervals of Pp, Ppk and Cpm are taken about an overall s.d. that is made good for what
   * its mean took from it. The indices stay as they are.
   *
   * <p>Undefined are: all indices with fewer than two values or a sigma that is not above 0; Cp, Pp
   * and Cpm for a one-sided specification; Cpm without a target. Some microseconds, a millisecond
   * for Cpl and Cpu.
   *
   * @param dfWithin degrees of freedom of sigmaWithin if the values were independent, any real
   *     number above 0
   * @param worth what the values are worth
   */
  public static Capability of(
      long n,
      double mean,
      double sigmaWithin,
      double dfWithin,
      double sdOverall,
      @Nullable Double lower,
      @Nullable Double target,
      @Nullable Double upper,
      Worth worth) {
    if (lower == null && upper == null) {
      throw new IllegalArgumentException("a capability needs a lower or an upper specification");
    }
    if (lower != null && upper != null && !(lower < upper)) {
      throw new IllegalArgumentException(
          "the lower specification " + lower + " is not below the upper one " + upper);
    }
    boolean within = n > 1 && sigmaWithin > 0 && dfWithin > 0;
    boolean overall = n > 1 && sdOverall > 0;
    // A limit that isn't there is infinitely far and never the nearer one.
    double cplValue = lower == null ? Double.POSITIVE_INFINITY : (mean - lower) / 3;
    double cpuValue = upper == null ? Double.POSITIVE_INFINITY : (upper - mean) / 3;
    double nearer = Math.min(cplValue, cpuValue);
    boolean twoSided = lower != null && upper != null;
    // Over the sigmas below, so that within and overall share the rest.
    double sixth = lower != null && upper != null ? (upper - lower) / 6 : Double.NaN;
    Interval inside = new Interval(n * worth.levelWithin(), dfWithin * worth.spreadWithin(), 1);
    Interval all =
        new Interval(
            n * worth.level(), (n - 1.0) * worth.spread(), Math.sqrt(1 - worth.pulledIn()));
    return new Capability(
        within && twoSided ? inside.spread(sixth / sigmaWithin) : null,
        within ? inside.nearest(nearer / sigmaWithin) : null,
        within && lower != null ? inside.oneSided(cplValue / sigmaWithin) : null,
        within && upper != null ? inside.oneSided(cpuValue / sigmaWithin) : null,
        overall && twoSided ? all.spread(sixth / sdOverall) : null,
        overall ? all.nearest(nearer / sdOverall) : null,
        overall && twoSided && target != null
            ? aboutTarget(sixth, n, mean - target, sdOverall, worth)
            : null,
        fractionOutside(mean, sdOverall, lower, upper));
  }

  /**
   * The makers of intervals.
   *
   * @param n values that the mean is worth
   * @param df degrees of freedom of the sigma
   * @param shrink the expected sigma over the true one
   */
  private record Interval(double n, double df, double shrink) {
    Estimate spread(double index) {
      double center = index * shrink;
      return new Estimate(
          index,
          // The index goes as 1/s, and s²/σ² is χ²/df.
          center * Math.sqrt(ChiSquare.quantile(TAIL, df) / df),
          center * Math.sqrt(ChiSquare.quantile(1 - TAIL, df) / df));
    }

    Estimate nearest(double index) {
      double center = index * shrink;
      // 1/9n is the error of the mean in units of 3 sigma, the rest that of the sigma
      double half =
          Normal.quantile(1 - TAIL) * Math.sqrt(1 / (9.0 * n) + center * center / (2 * df));
      return new Estimate(index, center - half, center + half);
    }

    Estimate oneSided(double index) {
      double scale = 3 * Math.sqrt(n);
      // 3√n times the index is a noncentral t, its δ 3√n times the true index
      double t = scale * index * shrink;
      return new Estimate(
          index,
          // The low limit is the δ by which a t as large comes once in 40 times.
          NoncentralT.noncentrality(t, df, 1 - TAIL) / scale,
          NoncentralT.noncentrality(t, df, TAIL) / scale);
    }
  }

  private static Estimate aboutTarget(
      double sixth, long n, double offTarget, double sd, Worth worth) {
    // Σ(x − T)²/n = s²(n − 1)/n + (mean − T)²: about a given target no degree is lost
    double variance = sd * sd * (n - 1) / n;
    double whole = variance / (1 - worth.pulledIn());
    double off = offTarget * offTarget;
    double index = sixth / Math.sqrt(variance + off);
    double ratio = off / whole;
    // Boyles' n(1 + r)²/(1 + 2r), each term with what the values are worth to it
    double df = n * (1 + ratio) * (1 + ratio) / (1 / worth.spread() + 2 * ratio / worth.level());
    return new Interval(n, df, Math.sqrt((variance + off) / (whole + off))).spread(index);
  }

  private static double fractionOutside(
      double mean, double sd, @Nullable Double lower, @Nullable Double upper) {
    if (!(sd > 0)) {
      return Double.NaN;
    }
    // Each tail by itself: as 1 − Φ a few in a million would lose their digits.
    double below = lower == null ? 0 : Normal.cdf((lower - mean) / sd);
    double above = upper == null ? 0 : Normal.upperTail((upper - mean) / sd);
    return below + above;
  }
}
