package org.evenpour.findings;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to do with one mold, by documented rules, and the figures that they went by. A proposal: the
 * plant's own procedure decides.
 *
 * @param serial of the mold that is in the position now; null where the log has none
 * @param verdict null where nothing can be said: no tolerance is known
 * @param reason the rule that decided
 * @param characteristic that it decided by; null where the reason concerns none
 * @param signal id of the signal that it decided by; null where none did
 * @param setting the recorded setting that stands apart at this mold, which it decided by; null
 *     where none did
 * @param casts on the mold in this record, since it was changed or dressed
 * @param tellsWear whether it was seen over casts and days enough to tell wear
 * @param isNew whether the mold was changed within this record, so that {@code casts} are all its
 *     casts if it was new then
 * @param castsOnMold all casts on it, where the log says so or it was changed within this record
 * @param tonnes cast on it, where {@code castsOnMold} and its mean mass are known
 * @param thickSide null where no thickness points are recorded, or their places are not known
 * @param standings one for each characteristic, and one of {@code plan_area} where mass and
 *     thickness are both known
 */
public record MoldVerdict(
    String wheel,
    String mold,
    @Nullable String serial,
    @Nullable Verdict verdict,
    Reason reason,
    @Nullable String characteristic,
    @Nullable String signal,
    @Nullable String setting,
    long casts,
    boolean tellsWear,
    boolean isNew,
    @Nullable Long castsOnMold,
    @Nullable Double tonnes,
    @Nullable ThickSide thickSide,
    List<Standing> standings) {

  /** Copies the list. */
  public MoldVerdict {
    standings = List.copyOf(standings);
  }

  /** How the mold stands in a characteristic; null where it has no value of it. */
  public @Nullable Standing standing(@Nullable String name) {
    return standings.stream()
        .filter(one -> one.characteristic().equals(name))
        .findFirst()
        .orElse(null);
  }

  /** What to do, the mildest first. */
  public enum Verdict {
    KEEP,
    WATCH,
    /** Level or dress. */
    LEVEL,
    REPLACE
  }

  /** The rules in the order in which they are asked; the first that applies decides. */
  public enum Reason {
    /** As many tonnes as molds are published to last. */
    LIFE,
    /** A clear trend that meets the specification soon. */
    WEARS,
    /** Its own scatter is wider than the tolerance. */
    SCATTERS,
    /** Fewer casts than tell anything. */
    FEW,
    /**
     * Off, and a recorded setting stands apart at this mold: the mold is not what to look at first.
     */
    SETTING,
    /** Wedge beyond the decision limits and beyond what the tolerance has room for. */
    WEDGE,
    /** Thickness off at constant mass. */
    CAVITY,
    /** Thickness off, and the log does not tell mold from pour. */
    THICKNESS,
    /** The mold now in the position differs from the one before. */
    STEP,
    /** A signal that still holds. */
    SIGNAL,
    /** It is rejected more often than the others, or just now more often than usual. */
    REJECTS,
    /** A clear trend that leaves time. */
    TREND,
    /** Mass off, or mass and thickness together. */
    POUR,
    /** Off beyond chance; the tolerance may have room for it. */
    NEAR,
    /** No specification to judge by. */
    NO_TOLERANCE,
    /** Nothing speaks against it. */
    SOUND,
    /** Nothing speaks against it by mass alone, which tells of neither level nor wear. */
    MASS_ALONE
  }

  /**
   * How a mold stands in one characteristic since it was changed or dressed, turn effects taken
   * out.
   *
   * @param casts that have a value
   * @param effectiveCasts how many independent ones they are worth
   * @param level on the characteristic's own scale
   * @param offset from the mean of all molds, with its 95 % interval
   * @param shrunk the offset drawn in by as much as chance may have made it, with its interval
   * @param decisionLimit the offset stands out where it lies further from zero (analysis of means)
   * @param standsOut whether it does
   * @param sd of its anodes, everything included; null with fewer than two
   * @param room distance from the level to the nearer specification limit over 3 s.d., with its
   *     interval: the mold's own Ppk
   * @param step against the mold, or the state, before
   * @param trend null with too few casts
   */
  public record Standing(
      String characteristic,
      long casts,
      double effectiveCasts,
      double level,
      double offset,
      double offsetLow,
      double offsetHigh,
      @Nullable Double shrunk,
      @Nullable Double shrunkLow,
      @Nullable Double shrunkHigh,
      @Nullable Double decisionLimit,
      boolean standsOut,
      @Nullable Double sd,
      AuditReport.@Nullable Estimate room,
      AuditReport.@Nullable Estimate step,
      @Nullable Trend trend) {}

  /**
   * How a mold changes with its casts, against the other molds.
   *
   * @param per100 change in 100 casts, with its 95 % interval
   * @param isClear beyond chance, all molds considered, and a drift rather than a step
   * @param castsLeft until the level meets the specification limit that it goes to; null unless
   *     clear, and where there is no such limit
   * @param castsLeftLow lower end of its 95 % interval
   * @param castsLeftHigh upper end; null where there is none
   */
  public record Trend(
      double per100,
      double low,
      double high,
      boolean isClear,
      @Nullable Double castsLeft,
      @Nullable Double castsLeftLow,
      @Nullable Double castsLeftHigh) {}

  /**
   * Where a mold's anodes are thick, by a plane through the thickness points.
   *
   * @param toRight thickness at the right points over that at the left ones, in mm
   * @param toTop thickness at the top points over that at the bottom ones, in mm
   * @param error standard error of either
   * @param side {@code top}, {@code top_left}, …; null where the tilt is not beyond chance, or too
   *     small to matter
   */
  public record ThickSide(double toRight, double toTop, double error, @Nullable String side) {}
}
