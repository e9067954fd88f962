package org.evenpour.control;

import java.util.SplittableRandom;

/**
 * A wheel of {@link AlarmExperiment} that goes on for ever, in the way its setup says. What is not
 * asked for draws no luck from what is: wheels of one seed that differ in one thing only have the
 * same offsets, turn effects and normal scores.
 *
 * <p>Owned by one thread.
 */
final class AlarmWheel {
  static final double SECONDS = 28.8;
  static final double CENTER = 390;
  static final double POUR_SIGMA = 2;
  static final double TURN_SIGMA = 1.2;
  static final double OFFSET_SIGMA = 1.5;

  /** Two ladle sides stand so far apart, and each wanders by itself: choices. */
  private static final double SIDES_APART = 0.6;

  private static final double SIDE_SIGMA = 0.3;
  private static final double SIDE_PHI = 0.5;

  /** Wear is given over so many turns, and differs between molds by this part of itself. */
  private static final double WEAR_TURNS = 400;

  private static final double WEAR_DIFFERS = 0.3;

  /**
   * How pours, weights, records and molds are, the wander of turns and pours aside.
   *
   * @param shape of a pour
   * @param roundedTo what weights are rounded to, kg; 0 = not at all
   * @param missing share of the weights
   * @param twoSides whether two ladle sides pour, by the molds' parity
   * @param wear how far molds drift in 400 turns, in sigma of a pour
   */
  record Casting(PourShape shape, double roundedTo, double missing, boolean twoSides, double wear) {
    static final Casting NORMAL = of(PourShape.NORMAL);

    static Casting of(PourShape shape) {
      return new Casting(shape, 0, 0, false, 0);
    }

    Casting shaped(PourShape pours) {
      return new Casting(pours, roundedTo, missing, twoSides, wear);
    }

    Casting roundedTo(double kg) {
      return new Casting(shape, kg, missing, twoSides, wear);
    }

    Casting missing(double share) {
      return new Casting(shape, roundedTo, share, twoSides, wear);
    }

    Casting withTwoSides() {
      return new Casting(shape, roundedTo, missing, true, wear);
    }

    Casting worn(double sigma) {
      return new Casting(shape, roundedTo, missing, twoSides, sigma);
    }

    int sides() {
      return twoSides ? 2 : 1;
    }
  }

  /** One line of a table. */
  record Setup(int molds, double turnPhi, double pourPhi, int baseTurns, Casting casting) {
    double turnMinutes() {
      return molds * SECONDS / 60;
    }

    double turnsPerShift() {
      return 480 / turnMinutes();
    }

    /** Index of the ladle side that pours into a mold. */
    int side(int mold) {
      return casting.twoSides() ? mold % 2 : 0;
    }
  }

  private final Setup setup;
  private final SplittableRandom random;
  private final SplittableRandom rest;
  private final double[] offset;
  private final double[] pour;
  private final double[] wear;
  private final double[] side = new double[2];
  private double effect;
  private int next;

  AlarmWheel(Setup setup, long seed) {
    this.setup = setup;
    random = new SplittableRandom(seed);
    rest = new SplittableRandom(~seed);
    offset = new double[setup.molds()];
    pour = new double[setup.molds()];
    wear = new double[setup.molds()];
    for (int m = 0; m < offset.length; m++) {
      offset[m] = OFFSET_SIGMA * random.nextGaussian();
      pour[m] = random.nextGaussian();
      wear[m] =
          setup.casting().wear()
              * POUR_SIGMA
              / WEAR_TURNS
              * (1 + WEAR_DIFFERS * rest.nextGaussian());
    }
    effect = random.nextGaussian();
    side[0] = rest.nextGaussian();
    side[1] = rest.nextGaussian();
  }

  double offset(int mold) {
    return offset[mold];
  }

  /** The index of the turn that comes next, from 0. */
  int next() {
    return next;
  }

  /**
   * The next turn's masses, NaN = missing; one mold may stand {@code shift} sigma of a pour off.
   */
  double[] turn(int mold, double shift) {
    Casting casting = setup.casting();
    double p = setup.turnPhi();
    effect = p * effect + Math.sqrt(1 - p * p) * random.nextGaussian();
    for (int s = 0; s < side.length; s++) {
      side[s] = SIDE_PHI * side[s] + Math.sqrt(1 - SIDE_PHI * SIDE_PHI) * rest.nextGaussian();
    }
    double[] x = new double[offset.length];
    double q = setup.pourPhi();
    for (int m = 0; m < x.length; m++) {
      pour[m] = q * pour[m] + Math.sqrt(1 - q * q) * random.nextGaussian();
      x[m] =
          CENTER
              + offset[m]
              + TURN_SIGMA * effect
              + POUR_SIGMA * (casting.shape().of(pour[m]) + (m == mold ? shift : 0))
              + wear[m] * next;
      if (casting.twoSides()) {
        x[m] += (m % 2 == 0 ? 0.5 : -0.5) * SIDES_APART + SIDE_SIGMA * side[m % 2];
      }
      double to = casting.roundedTo();
      if (to > 0) {
        x[m] = Math.rint(x[m] / to) * to;
      }
      if (rest.nextDouble() < casting.missing()) {
        x[m] = Double.NaN;
      }
    }
    next++;
    return x;
  }

  /** The turns that limits are proposed from: the wheel's first. */
  double[][] base() {
    double[][] x = new double[setup.baseTurns()][];
    for (int t = 0; t < x.length; t++) {
      x[t] = turn(-1, 0);
    }
    return x;
  }
}
