package org.evenpour.link;

import java.util.List;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Setting;
import org.jspecify.annotations.Nullable;

/**
 * What was found of one setting or event beside one episode.
 *
 * @param setting null for an event
 * @param event null for a setting
 * @param movedBy how far the setting moved; NaN for events and categories
 * @param p probability of such a move, or of such an event so near, by chance
 * @param expected what the move would do to the characteristic, by a category's levels that of the
 *     one after less that of the one before; NaN where that is not known
 * @param share expected over the signal's size; NaN where that is not known
 * @param shareLow lower end of its 95 % interval
 * @param shareHigh upper end
 * @param effectProven whether the effect itself is beyond chance; for an event, whether it happened
 *     at the very place of the signal
 * @param timingFits whether it moved when the signal began
 * @param sinceTurn the wheel's number of the turn in which it moved
 * @param togetherWith settings that it cannot be told from on this record
 */
public record Finding(
    @Nullable Setting setting,
    @Nullable CastingEvent event,
    double movedBy,
    double p,
    double expected,
    double share,
    double shareLow,
    double shareHigh,
    boolean effectProven,
    boolean timingFits,
    int sinceTurn,
    List<String> togetherWith) {

  /** How well it goes with the signal. */
  public enum Grade {
    /** It moved, beyond chance, when the signal began, and its effect explains a good part. */
    STRONG,
    /**
     * It moved, beyond chance, but its effect or its timing is unproven; or its effect is proven,
     * and explains a good part, but so far it often moves by itself.
     */
    MOVED,
    /** Nothing speaks for it, or its effect is known to be too small. */
    NONE
  }

  /** A share smaller than this is not "a good part"; a choice. */
  private static final double GOOD_PART = 0.3;

  /** Below this false discovery rate a move counts as real. */
  public static final double FALSE_DISCOVERIES = 0.05;

  /** Which questions of the audit belong together: each kind has its own false discovery rate. */
  public enum Question {
    /** Did a setting move? */
    SETTING,
    /** Was something done to this very mold? */
    MOLD_EVENT,
    /** Did something happen to the whole wheel? */
    WHEEL_EVENT
  }

  /** The kind of question that was asked. */
  public Question question() {
    if (event == null) {
      return Question.SETTING;
    }
    return event.mold() == null ? Question.WHEEL_EVENT : Question.MOLD_EVENT;
  }

  /** Whether it is worth telling of: an event that lies far off is not. */
  public boolean isNear() {
    return event == null || timingFits;
  }

  /** Whether it is proven to explain a good part: effect beyond chance, timing and share. */
  public boolean isProvenToExplain() {
    return event == null && effectProven && timingFits && share >= GOOD_PART && shareLow > 0;
  }

  private boolean isCategory() {
    return setting != null && setting.numbers() == null;
  }

  /**
   * The grade. A category, which changes by the clock, is at most {@link Grade#MOVED}.
   *
   * @param q false discovery rate at which the move counts as real
   */
  public Grade grade(double q) {
    if (event != null) {
      // An event has no size that could explain anything: its timing is all there is.
      if (!timingFits || p >= FALSE_DISCOVERIES) {
        return Grade.NONE;
      }
      // What was done to the very mold is asked of few molds; what befalls the wheel, of all.
      boolean isReal = question() == Question.MOLD_EVENT || q < FALSE_DISCOVERIES;
      return effectProven && isReal ? Grade.STRONG : Grade.MOVED;
    }
    if (!(q < FALSE_DISCOVERIES)) {
      // What always wanders, or changes by the clock, never moves beyond chance. What such a move
      // does is none the less known; that a category was another one is no estimate.
      boolean isKnown = isProvenToExplain() && (isCategory() || shareLow >= GOOD_PART);
      return isKnown ? Grade.MOVED : Grade.NONE;
    }
    if (shareHigh < GOOD_PART) {
      return Grade.NONE; // it moved, and by all that is known its move is too small to matter
    }
    // A category changes by the clock, so one always changed near an onset.
    return !isCategory() && isProvenToExplain() ? Grade.STRONG : Grade.MOVED;
  }
}
