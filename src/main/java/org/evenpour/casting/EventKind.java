package org.evenpour.casting;

import java.util.Set;

/**
 * The kinds of events that the program knows itself; a plant writes down whatever others it has.
 */
public final class EventKind {
  /** Another mold lies in a position. */
  public static final String MOLD_CHANGED = "mold_changed";

  /** A mold was smoothed where it lies. */
  public static final String MOLD_DRESSED = "mold_dressed";

  public static final String NOZZLE_CLEANED = "nozzle_cleaned";
  public static final String SCALE_CHECKED = "scale_checked";
  public static final String LADLE_RELINED = "ladle_relined";
  public static final String WHEEL_STOPPED = "wheel_stopped";

  /** What is done to a ladle or its scale, which pour every mold. */
  public static final Set<String> OF_LADLE = Set.of(SCALE_CHECKED, LADLE_RELINED);

  private EventKind() {}
}
