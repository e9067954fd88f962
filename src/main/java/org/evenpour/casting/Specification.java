package org.evenpour.casting;

import org.jspecify.annotations.Nullable;

/**
 * What the refinery accepts of one characteristic, in the unit that figures are computed in. Any
 * part may be missing.
 *
 * @param lower smallest accepted value
 * @param target wanted value
 * @param upper largest accepted value
 */
public record Specification(
    @Nullable Double lower, @Nullable Double target, @Nullable Double upper) {

  /** No specification at all. */
  public static final Specification NONE = new Specification(null, null, null);

  /** Whether there is a limit on either side. */
  public boolean hasLimits() {
    return lower != null || upper != null;
  }

  /** Whether a value lies outside; a value on a limit is accepted. */
  public boolean excludes(double value) {
    return (lower != null && value < lower) || (upper != null && value > upper);
  }
}
