package org.evenpour.view.model;

import org.jspecify.annotations.Nullable;

/**
 * What the crew has chosen on the board. Never changes; each key makes another one.
 *
 * @param wheel that is shown; null = the one that cast last
 * @param ring which characteristic the wheel's bars show; null = thickness where it is measured,
 *     for that is the mold's own
 * @param signal which of the signals is chosen, from 0
 * @param eighths how many eighths of a turn, counterclockwise, the pouring spot was moved from
 *     where the profile puts it
 * @param isReversed whether the wheel turns the other way than the profile says
 */
public record BoardChoice(
    @Nullable String wheel, @Nullable String ring, int signal, int eighths, boolean isReversed) {

  /** Nothing was chosen yet. */
  public static final BoardChoice NONE = new BoardChoice(null, null, 0, 0, false);

  /** Another wheel. */
  public BoardChoice withWheel(@Nullable String other) {
    return new BoardChoice(other, ring, 0, eighths, isReversed);
  }

  /** Another characteristic about the wheel. */
  public BoardChoice withRing(String other) {
    return new BoardChoice(wheel, other, signal, eighths, isReversed);
  }

  /** Another signal. */
  public BoardChoice withSignal(int other) {
    return new BoardChoice(wheel, ring, other, eighths, isReversed);
  }

  /** The pouring spot an eighth of a turn further. */
  public BoardChoice turned() {
    return new BoardChoice(wheel, ring, signal, (eighths + 1) % 8, isReversed);
  }

  /** The wheel turning the other way. */
  public BoardChoice reversed() {
    return new BoardChoice(wheel, ring, signal, eighths, !isReversed);
  }
}
