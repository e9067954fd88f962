package org.evenpour.control;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Limits that somebody approved for one characteristic of one wheel. A version never changes; it is
 * followed by another one, or retired.
 *
 * @param wheel its name; empty where the log has no wheel column
 * @param unit suffix of the unit that its figures are in
 * @param version from 1, for this wheel and characteristic; 0 = not approved yet
 * @param validFrom turns that begin then or later are judged by it
 * @param approvedAt when it was approved
 * @param who approved it
 * @param why in their words
 * @param base what it rests on
 * @param leftOut of the base period, and why
 * @param molds in the order of the limits' offsets
 * @param sides ladle sides in the order of the limits' indices
 * @param limits with indices of this version's own molds and sides
 */
public record LimitsVersion(
    String wheel,
    String characteristic,
    String unit,
    int version,
    Instant validFrom,
    Instant approvedAt,
    String who,
    String why,
    Base base,
    List<LeftOut> leftOut,
    List<MoldBase> molds,
    List<String> sides,
    LimitsInForce limits) {

  /** Copies the lists. */
  public LimitsVersion {
    leftOut = List.copyOf(leftOut);
    molds = List.copyOf(molds);
    sides = List.copyOf(sides);
  }

  /**
   * A base period.
   *
   * @param logs names of the logs
   * @param turns that have an anode in it
   * @param anodes that the limits rest on
   */
  public record Base(
      List<String> logs, Instant firstCastAt, Instant lastCastAt, int turns, long anodes) {
    /** Copies the list. */
    public Base {
      logs = List.copyOf(logs);
    }
  }

  /**
   * A mold in the base period.
   *
   * @param serial of the mold that cast last; empty where the log has none
   * @param casts that its offset rests on; 0 = it has no offset yet
   */
  public record MoldBase(String mold, String serial, long casts) {}

  /** Why anodes of a base period were left out. */
  public enum Reason {
    /** Molds were cold after a stop. */
    START_UP,
    /** A mold stood off its usual level. */
    MOLD_SHIFTED,
    /** One pour far from what was expected of it. */
    FAR_POUR,
    /** The whole wheel was out of its normal state; left out of its center and sigma only. */
    TURN_SHIFTED,
    /** Cast in a mold that is no longer there, or too few casts in the one that is. */
    OLD_MOLD,
    /** A base has no more turns. */
    BEYOND_BASE,
    /** Somebody said so. */
    BY_HAND;

    /** As it is written. */
    public String id() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A stretch that was left out.
   *
   * @param note more about it; empty where the reason says all
   * @param mold null = every mold
   * @param from when its first anode was cast
   * @param to when its last anode was cast
   */
  public record LeftOut(
      Reason reason, String note, @Nullable String mold, Instant from, Instant to, long anodes) {}

  /** The same under a number, approved. */
  public LimitsVersion numbered(int number) {
    return new LimitsVersion(
        wheel,
        characteristic,
        unit,
        number,
        validFrom,
        approvedAt,
        who,
        why,
        base,
        leftOut,
        molds,
        sides,
        limits);
  }

  /** The same, approved by somebody. */
  public LimitsVersion approved(Instant from, Instant at, String by, String because) {
    return new LimitsVersion(
        wheel,
        characteristic,
        unit,
        version,
        from,
        at,
        by,
        because,
        base,
        leftOut,
        molds,
        sides,
        limits);
  }

  /** Whether it is of that characteristic of that wheel. */
  public boolean isOf(String itsWheel, String itsCharacteristic) {
    return wheel.equals(itsWheel) && characteristic.equals(itsCharacteristic);
  }

  /** The offset of a mold; NaN where it has none. */
  public double offset(String mold) {
    for (int i = 0; i < molds.size(); i++) {
      if (molds.get(i).mold().equals(mold)) {
        return limits.offsets()[i];
      }
    }
    return Double.NaN;
  }

  /** Standard error of a mold's offset; NaN where it has none. */
  public double offsetError(String mold) {
    double gain = limits.pour().gain();
    for (MoldBase one : molds) {
      if (one.mold().equals(mold) && one.casts() > 0) {
        // 1/gain² is by how much φ widens the variance of a mean.
        return limits.pour().sigma() / gain / Math.sqrt(one.casts());
      }
    }
    return Double.NaN;
  }

  /** Standard error of the wheel's center. */
  public double centerError() {
    double gain = limits.wheel().gain();
    return limits.wheel().sigma() / gain / Math.sqrt(Math.max(1, base.turns()));
  }
}
