package org.evenpour.casting;

/** Where the crew sees the ladle pour when it looks at the wheel from above. */
public enum PouringPlace {
  /** At the right. */
  RIGHT,
  /** At the top. */
  TOP,
  /** At the left. */
  LEFT,
  /** At the bottom. */
  BOTTOM
}
