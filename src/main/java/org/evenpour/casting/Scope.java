package org.evenpour.casting;

import java.util.Locale;

/** How far something reaches on the wheel. */
public enum Scope {
  /** One anode. */
  POUR,
  /** One mold. */
  MOLD,
  /** One ladle side. */
  SIDE,
  /** The whole wheel. */
  WHEEL;

  /** Its name in files and among the words of a report. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
