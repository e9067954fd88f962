package org.evenpour.casting;

import java.util.Locale;

/** Which way something departs. */
public enum Direction {
  /** Heavier or thicker. */
  HIGH,
  /** Lighter or thinner. */
  LOW,
  /** More scattered. */
  SPREAD;

  /** Its name in files and among the words of a report. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
