package org.evenpour.stats;

/**
 * A seven-point Gauss–Hermite rule for averages over a standard normal value.
 *
 * <p>A table, where Hipparchus has the rule too: its last digits are other ones, no better
 * (compared with the roots of the polynomial), and limits that people approved would move by 1e-15
 * of themselves with them. {@code QuadratureRulesTest} holds both to each other and to what such a
 * rule must do.
 */
final class Hermite {
  static final int NODES = 7;

  private static final double[] NODE = {
    -3.750_439_717_725_742,
    -2.366_759_410_734_541,
    -1.154_405_394_739_968,
    0,
    1.154_405_394_739_968,
    2.366_759_410_734_541,
    3.750_439_717_725_742
  };

  private static final double[] WEIGHT = {
    5.482_688_559_722_18e-4,
    3.075_712_396_758_65e-2,
    2.401_231_786_050_13e-1,
    4.571_428_571_428_57e-1,
    2.401_231_786_050_13e-1,
    3.075_712_396_758_65e-2,
    5.482_688_559_722_18e-4
  };

  private Hermite() {}

  static double node(int i) {
    return NODE[i];
  }

  static double weight(int i) {
    return WEIGHT[i];
  }
}
