package org.evenpour.stats;

import org.jspecify.annotations.Nullable;

/**
 * What may be called within or outside a specification, given what the gauge may be wrong by (the
 * decision rule of ISO 14253-1): the specification is reduced by a guard band for acceptance and
 * enlarged by it for rejection; a value between says neither.
 *
 * <p>Guard band g = z·u, with u the standard uncertainty (σ of the gauge, bias corrected) and z the
 * one-sided normal quantile of the confidence: 1.645 at 95 %. A value right at the acceptance limit
 * is then within the specification with that probability, if nothing else is known of it and the
 * other limit is far.
 *
 * @param guard g
 * @param acceptLow lowest value that proves conformity; null without a lower limit
 * @param acceptHigh highest value that proves conformity; null without an upper limit
 * @param rejectBelow values below prove nonconformity; null without a lower limit
 * @param rejectAbove values above prove nonconformity; null without an upper limit
 */
public record GuardBand(
    double guard,
    @Nullable Double acceptLow,
    @Nullable Double acceptHigh,
    @Nullable Double rejectBelow,
    @Nullable Double rejectAbove) {

  /** What a measured value proves. */
  public enum Verdict {
    WITHIN,
    UNDECIDED,
    OUTSIDE
  }

  /**
   * @param sigmaGauge standard uncertainty, 0 or more
   * @param confidence one-sided, from 0.5 to below 1, as 0.95
   */
  public static GuardBand of(
      @Nullable Double lower, @Nullable Double upper, double sigmaGauge, double confidence) {
    if (!(sigmaGauge >= 0) || !(confidence >= 0.5 && confidence < 1)) {
      throw new IllegalArgumentException(
          "a guard band needs an uncertainty of 0 or more and a confidence from 0.5 to below 1, not "
              + sigmaGauge
              + " and "
              + confidence);
    }
    // one-sided: an anode near one limit is far from the other.
    double guard = sigmaGauge == 0 ? 0 : sigmaGauge * Normal.quantile(confidence);
    return new GuardBand(
        guard,
        lower == null ? null : lower + guard,
        upper == null ? null : upper - guard,
        lower == null ? null : lower - guard,
        upper == null ? null : upper + guard);
  }

  /** Whether any value can prove conformity: the guard bands leave room between them. */
  public boolean leavesRoom() {
    return acceptLow == null || acceptHigh == null || acceptLow <= acceptHigh;
  }

  /** A NaN proves nothing. */
  public Verdict verdict(double x) {
    if ((rejectBelow != null && x < rejectBelow) || (rejectAbove != null && x > rejectAbove)) {
      return Verdict.OUTSIDE;
    }
    boolean within =
        !Double.isNaN(x)
            && (acceptLow == null || x >= acceptLow)
            && (acceptHigh == null || x <= acceptHigh);
    return within ? Verdict.WITHIN : Verdict.UNDECIDED;
  }
}
