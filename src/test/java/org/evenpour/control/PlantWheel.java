package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A made-up wheel as real ones are: pours that are skewed, heavy-tailed, wild or correlated,
 * rounded weights, missing ones, two ladle sides, stops and molds that wear. Seeded; it goes on for
 * ever, and faults may be put on it.
 *
 * <p>{@code x = 390 + offset(mold) + wear(mold)·t + turn effect + side wander + pour + fault},
 * rounded. The figures of a plain wheel are those of {@link AlarmExperiment}; those of sides, stops
 * and wear are choices. Faults take no random numbers: wheels of one seed differ by their faults
 * alone. Owned by one thread.
 */
final class PlantWheel {
  static final double CENTER = 390;
  static final double SECONDS = 28.8;
  static final double POUR_SIGMA = 2;
  static final double TURN_SIGMA = 1.2;
  static final double OFFSET_SIGMA = 1.5;

  /** Each side's own wander: its s.d. in kg and its correlation from turn to turn. Choices. */
  static final double SIDE_SIGMA = 0.5;

  static final double SIDE_PHI = 0.5;

  /** The pours of a start-up turn scatter so much more: a choice. */
  private static final double START_UP_SCATTER = 1.5;

  /** Wear differs between molds by this part of itself. */
  private static final double WEAR_DIFFERS = 0.3;

  /** Wear is given in pour sigma over so many turns. */
  static final double WEAR_TURNS = 400;

  /**
   * What a plant is like.
   *
   * @param molds on the wheel
   * @param shape of the pours' distribution
   * @param turnPhi correlation of turn effects
   * @param pourPhi correlation of the normal scores of a mold's pours
   * @param roundedTo what weights are rounded to, kg; 0 = not at all
   * @param twoSides whether two ladle sides pour, by the molds' parity
   * @param missing share of weights that are missing
   * @param turnsToStop a stop comes about every so many turns; 0 = never
   * @param wear how far molds drift, in pour sigma over {@link #WEAR_TURNS} turns
   * @param levelKept whether the mean of all molds is held against the wear, as by the set-point
   */
  record Plant(
      int molds,
      PourShape shape,
      double turnPhi,
      double pourPhi,
      double roundedTo,
      boolean twoSides,
      double missing,
      int turnsToStop,
      double wear,
      boolean levelKept) {

    /** 26 molds, independent pours, turn effects of φ = 0.35, and nothing else. */
    static Plant plain(PourShape shape) {
      return new Plant(26, shape, 0.35, 0, 0, false, 0, 0, 0, false);
    }

    Plant withMolds(int n) {
      return new Plant(
          n, shape, turnPhi, pourPhi, roundedTo, twoSides, missing, turnsToStop, wear, levelKept);
    }

    Plant withTurnPhi(double phi) {
      return new Plant(
          molds, shape, phi, pourPhi, roundedTo, twoSides, missing, turnsToStop, wear, levelKept);
    }

    Plant withPourPhi(double phi) {
      return new Plant(
          molds, shape, turnPhi, phi, roundedTo, twoSides, missing, turnsToStop, wear, levelKept);
    }

    Plant withRounding(double kg) {
      return new Plant(
          molds, shape, turnPhi, pourPhi, kg, twoSides, missing, turnsToStop, wear, levelKept);
    }

    Plant withTwoSides() {
      return new Plant(
          molds, shape, turnPhi, pourPhi, roundedTo, true, missing, turnsToStop, wear, levelKept);
    }

    Plant withGaps(double missingShare, int turns) {
      return new Plant(
          molds,
          shape,
          turnPhi,
          pourPhi,
          roundedTo,
          twoSides,
          missingShare,
          turns,
          wear,
          levelKept);
    }

    Plant withWear(double sigma, boolean kept) {
      return new Plant(
          molds, shape, turnPhi, pourPhi, roundedTo, twoSides, missing, turnsToStop, sigma, kept);
    }

    double turnMinutes() {
      return molds * SECONDS / 60;
    }

    double turnsPerShift() {
      return 480 / turnMinutes();
    }

    int sides() {
      return twoSides ? 2 : 1;
    }
  }

  /**
   * One turn.
   *
   * @param index from 0
   * @param atMillis when its first anode was cast
   * @param startUp whether a stop came before it
   * @param value by mold; NaN = missing
   */
  @SuppressWarnings("ArrayRecordComponent") // read once and dropped
  record Turn(int index, long atMillis, boolean startUp, double[] value) {}

  /**
   * Something added to molds of which {@code mold % every == rest}, over turns from ≤ t &lt; to.
   */
  private record Shift(int every, int rest, int from, int to, double kg) {}

  private record Scatter(int from, int to, double factor) {}

  private final Plant plant;
  private final SplittableRandom random;
  private final double[] offset;
  private final double[] drift;
  private final double[] score;
  private final double[] side = new double[2];
  private final List<Shift> shifts = new ArrayList<>();
  private final List<Scatter> scatters = new ArrayList<>();
  private double effect;
  private int next;
  private long nextMillis;
  private int nextStop;

  PlantWheel(Plant plant, long seed) {
    this.plant = plant;
    random = new SplittableRandom(seed);
    int molds = plant.molds();
    offset = normal(molds, OFFSET_SIGMA);
    drift = normal(molds, WEAR_DIFFERS);
    score = normal(molds, 1);
    effect = random.nextGaussian();
    side[0] = random.nextGaussian();
    side[1] = random.nextGaussian();
    double mean = Arrays.stream(drift).average().orElseThrow();
    for (int m = 0; m < molds; m++) {
      double part = plant.levelKept() ? drift[m] - mean : 1 + drift[m];
      drift[m] = plant.wear() * POUR_SIGMA / WEAR_TURNS * part;
    }
    nextStop = untilStop();
  }

  private double[] normal(int n, double sigma) {
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      z[i] = sigma * random.nextGaussian();
    }
    return z;
  }

  /** Between half and one and a half times the usual number of turns. */
  private int untilStop() {
    int usual = plant.turnsToStop();
    return usual == 0 ? Integer.MAX_VALUE : next + usual / 2 + random.nextInt(usual + 1);
  }

  Plant plant() {
    return plant;
  }

  double offset(int mold) {
    return offset[mold];
  }

  /** The index that the next turn will have. */
  int next() {
    return next;
  }

  PlantWheel shiftMold(int mold, int from, int to, double kg) {
    shifts.add(new Shift(plant.molds(), mold, from, to, kg));
    return this;
  }

  PlantWheel shiftSide(int whichSide, int from, int to, double kg) {
    shifts.add(new Shift(2, whichSide, from, to, kg));
    return this;
  }

  PlantWheel shiftWheel(int from, int to, double kg) {
    shifts.add(new Shift(1, 0, from, to, kg));
    return this;
  }

  PlantWheel scatter(int from, int to, double factor) {
    scatters.add(new Scatter(from, to, factor));
    return this;
  }

  void withoutFaults() {
    shifts.clear();
    scatters.clear();
  }

  private double step(double before, double phi) {
    return phi * before + Math.sqrt(1 - phi * phi) * random.nextGaussian();
  }

  /** Casts the next turn. */
  Turn turn() {
    boolean startUp = next >= nextStop;
    double stopTurns = 0;
    if (startUp) {
      double hours = 2 + 4 * random.nextDouble();
      nextMillis += (long) (hours * 3_600_000);
      stopTurns = hours * 60 / plant.turnMinutes();
      nextStop = untilStop();
    }
    // Through a stop a wander goes on unseen.
    double gone = 1 + stopTurns;
    effect = step(effect, Math.pow(plant.turnPhi(), gone));
    side[0] = step(side[0], Math.pow(SIDE_PHI, gone));
    side[1] = step(side[1], Math.pow(SIDE_PHI, gone));
    double scatter = startUp ? START_UP_SCATTER : 1;
    for (Scatter s : scatters) {
      scatter *= s.from() <= next && next < s.to() ? s.factor() : 1;
    }
    double[] x = new double[plant.molds()];
    double phi = Math.pow(plant.pourPhi(), gone);
    for (int m = 0; m < x.length; m++) {
      score[m] = step(score[m], phi);
      double level = CENTER + offset[m] + drift[m] * next + TURN_SIGMA * effect;
      level += plant.twoSides() ? SIDE_SIGMA * side[m % 2] : 0;
      for (Shift s : shifts) {
        level += s.from() <= next && next < s.to() && m % s.every() == s.rest() ? s.kg() : 0;
      }
      double mass = level + POUR_SIGMA * scatter * plant.shape().of(score[m]);
      double to = plant.roundedTo();
      x[m] = to == 0 ? mass : Math.rint(mass / to) / (1 / to);
      if (random.nextDouble() < plant.missing()) {
        x[m] = Double.NaN;
      }
    }
    Turn turn = new Turn(next, nextMillis, startUp, x);
    next++;
    nextMillis += (long) (x.length * SECONDS * 1000);
    return turn;
  }

  List<Turn> turns(int count) {
    List<Turn> list = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      list.add(turn());
    }
    return list;
  }
}
