package org.evenpour.findings;

import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What stands beside the effect of one unit of a setting, or of the levels of a category: what the
 * record can tell at all, how much of the scatter it is, where the setting may stand, whether the
 * line is straight, and what trial would tell more.
 *
 * @param known what the record can tell
 * @param share of the variance that the setting makes, between 0 and 1; null where the effect is
 *     not known
 * @param window where the setting keeps the characteristic within tolerance; null unless the effect
 *     is proven and there is a specification
 * @param line null where the effect is not known
 * @param trial null unless it would tell what the record cannot
 * @param levels of a category; null for a number, and where they cannot be compared
 * @param togetherWith settings that moved together with this one so that one of them acts, and the
 *     record cannot tell which
 */
public record EffectInFull(
    Known known,
    @Nullable Estimate share,
    @Nullable Window window,
    @Nullable Line line,
    @Nullable Trial trial,
    @Nullable Levels levels,
    List<String> togetherWith) {

  /** Nothing is known. */
  public static final EffectInFull NOTHING =
      new EffectInFull(Known.NEVER_MOVED, null, null, null, null, null, List.of());

  /** Too few levels of a category came again. */
  public static final EffectInFull CAME_ONCE =
      new EffectInFull(Known.CAME_ONCE, null, null, null, null, null, List.of());

  /** What the record can tell of an effect. */
  public enum Known {
    /**
     * There is one: its interval does not hold zero; the levels of a category differ beyond chance,
     * at 1 %.
     */
    PROVEN,
    /** If there is one, all that was recorded of the setting moves the mean by next to nothing. */
    SMALL,
    /** There may be one that matters, or none: the record cannot tell. */
    OPEN,
    /** The setting never moved, or hardly anything is written down. */
    NEVER_MOVED,
    /** A category changed, but too few of its levels came again to be compared. */
    CAME_ONCE
  }

  /**
   * How the levels of a category differ.
   *
   * @param p probability of levels that differ so much by chance
   * @param each in the order in which they first came
   */
  public record Levels(double p, List<Level> each) {}

  /**
   * One level of a category.
   *
   * @param name as written in the log
   * @param effect the mean of its visits less the mean over the levels that came again, in the
   *     characteristic's unit
   * @param low lower end of its 95 % interval
   * @param high upper end
   * @param visits how often it came
   * @param turns known turns outside start-up in which it stood
   * @param compared whether it came back, half of the record apart, and so took part
   */
  public record Level(
      String name,
      double effect,
      double low,
      double high,
      int visits,
      int turns,
      boolean compared) {}

  /**
   * Where a setting keeps a characteristic within tolerance, two standard deviations of everything
   * else kept clear of each limit, and never beyond what was recorded: so the mean of all molds by
   * a straight line. Both ends are null where everything else alone scatters too widely.
   *
   * @param low in the setting's unit and digits
   * @param high in the setting's unit and digits
   * @param held what the record says of it; null where the ends are
   */
  public record Window(@Nullable Double low, @Nullable Double high, @Nullable Held held) {
    /**
     * Whether the record bears it out: clearly fewer lay outside tolerance within it than beyond.
     */
    public boolean isBorneOut() {
      return held != null && held.isClear();
    }
  }

  /**
   * The anodes of the record, by where the setting stood.
   *
   * @param inside cast within the window
   * @param insideOut of these, outside tolerance
   * @param molds whose anodes those are
   * @param beyond cast beyond it
   * @param beyondOut of these, outside tolerance
   * @param isClear whether the share outside is lower within than beyond, beyond chance, for as
   *     many windows as the audit asks of
   */
  public record Held(
      long inside, long insideOut, int molds, long beyond, long beyondOut, boolean isClear) {}

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
