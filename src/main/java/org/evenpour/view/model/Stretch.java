package org.evenpour.view.model;

/**
 * A stretch of turns, from the beginning of one to the end of another.
 *
 * @param from where it begins
 * @param to where it ends
 */
public record Stretch(double from, double to) {

  /** Whether a place lies within. */
  public boolean holds(double place) {
    return place >= from && place < to;
  }

  /** Whether something that lasts touches it. */
  public boolean touches(double first, double last) {
    return last >= from && first < to;
  }

  /** Whole turns that hold both places, at least one turn, within the bounds. */
  public static Stretch between(double one, double other, double least, double most) {
    double from = Math.max(least, Math.floor(Math.min(one, other)));
    double to = Math.min(most, Math.ceil(Math.max(one, other)));
    if (to <= from) {
      to = Math.min(most, from + 1);
      from = to - 1;
    }
    return new Stretch(from, to);
  }
}
