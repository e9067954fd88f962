package org.evenpour.casting;

import java.util.List;

/** The names of the quantities that the program knows itself; a profile may tell more of each. */
public final class Quantity {
  public static final String MASS = "mass";
  public static final String THICKNESS = "thickness";

  /** The largest less the smallest thickness of one anode. */
  public static final String WEDGE = "wedge";

  /** Mass less the set-point that was written down with it. */
  public static final String MASS_DEVIATION = "mass_deviation";

  /** All of them. */
  public static final List<String> ALL = List.of(MASS, THICKNESS, WEDGE, MASS_DEVIATION);

  private Quantity() {}
}
