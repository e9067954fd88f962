package org.evenpour.view.model;

import org.jspecify.annotations.Nullable;

/**
 * What the crew has chosen on the board. Never changes; each key makes another one.
 *
 * @param wheel that is shown; null = the one that cast last
 * @param ring which characteristic the wheel's bars show; null = thickness where it is measured,
 *     for that is the mold's own
 * @param signal which of the signals is chosen, from 0
 * @param pouringDegrees where the crew sees the pouring spot: 0 = right, 90 = top
 * @param clockwise which way the wheel turns, from above
 */
public record BoardChoice(
    @Nullable String wheel,
    @Nullable String ring,
    int signal,
    double pouringDegrees,
    boolean clockwise) {

  /** Nothing was chosen yet. */
  public static final BoardChoice NONE = new BoardChoice(null, null, 0, 0, true);

  private static final double STEP_DEGREES = 45;

  /** Another wheel. */
  public BoardChoice withWheel(@Nullable String other) {
    return new BoardChoice(other, ring, 0, pouringDegrees, clockwise);
  }

  /** Another characteristic about the wheel. */
  public BoardChoice withRing(String other) {
    return new BoardChoice(wheel, other, signal, pouringDegrees, clockwise);
  }

  /** Another signal. */
  public BoardChoice withSignal(int other) {
    return new BoardChoice(wheel, ring, other, pouringDegrees, clockwise);
  }

  /** The pouring spot an eighth of a turn further. */
  public BoardChoice turned() {
    return new BoardChoice(wheel, ring, signal, (pouringDegrees + STEP_DEGREES) % 360, clockwise);
  }

  /** The wheel turning the other way. */
  public BoardChoice reversed() {
    return new BoardChoice(wheel, ring, signal, pouringDegrees, !clockwise);
  }
}
