package org.evenpour.audit;

import org.evenpour.audit.AuditReport.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What stands beside the effect of one unit of a setting: what the record can tell at all, how much
 * of the scatter it is, where the setting may stand, whether the line is straight, and what trial
 * would tell more.
 *
 * @param known what the record can tell
 * @param share of the variance that the setting makes, between 0 and 1; null where the effect is
 *     not known
 * @param window where the setting keeps the characteristic within tolerance; null unless the effect
 *     is proven and there is a specification
 * @param line null where the effect is not known
 * @param trial null unless it would tell what the record cannot
 */
public record EffectInFull(
    Known known,
    @Nullable Estimate share,
    @Nullable Window window,
    @Nullable Line line,
    @Nullable Trial trial) {

  /** Nothing is known. */
  public static final EffectInFull NOTHING =
      new EffectInFull(Known.NEVER_MOVED, null, null, null, null);

  /** What the record can tell of an effect. */
  public enum Known {
    /** There is one: its interval does not hold zero. */
    PROVEN,
    /** If there is one, all that was recorded of the setting moves the mean by next to nothing. */
    SMALL,
    /** There may be one that matters, or none: the record cannot tell. */
    OPEN,
    /** The setting never moved, or hardly anything is written down. */
    NEVER_MOVED
  }

  /**
   * Where a setting keeps a characteristic within tolerance, two standard deviations of everything
   * else kept clear of each limit, and never beyond what was recorded. Both ends are null where
   * everything else alone scatters too widely.
   *
   * @param low in the setting's unit
   * @param high in the setting's unit
   */
  public record Window(@Nullable Double low, @Nullable Double high) {}

  /**
   * Whether the effect is a straight line.
   *
   * @param curvature probability that the setting's square goes with the characteristic so by
   *     chance
   * @param lagOne autocorrelation of what is left over
   * @param isBent whether the curvature is beyond chance, at 1 %
   * @param isWandering whether what is left over still wanders, so that the interval may be too
   *     narrow
   */
  public record Line(double curvature, double lagOne, boolean isBent, boolean isWandering) {}

  /**
   * A small trial, turn against turn: low and high in pairs, the order in each pair drawn by lot.
   *
   * @param low one level, within what was recorded
   * @param high the other
   * @param holdTurns how long each is held; the last turn of them counts
   * @param turns in all
   * @param difference between the two levels, in the characteristic's unit, that it would show
   * @param power how often it would
   */
  public record Trial(
      double low, double high, int holdTurns, int turns, double difference, double power) {}
}
