package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Quantity;

/**
 * A plant that is made up from a seed: its wheel, its spreads and its settings, none of them like
 * another's. All figures are choices and no industry figures.
 *
 * @param wheel its name
 * @param molds on the wheel
 * @param turns in the log
 * @param firstTurn number of the first
 * @param sides how the ladle pours
 * @param start when the first anode is cast
 * @param intervalSeconds from pour to pour
 * @param chargeStarts indices of the turns before which the wheel stood
 * @param massTargetKg about which mass varies
 * @param thicknessTargetMm about which thickness varies
 * @param passesOn whether mass passes into thickness, as it must where the cavity stays the same
 * @param points at which thickness is measured
 * @param mass how far mass wanders
 * @param thickness how far thickness wanders, mass aside
 * @param hasSerials whether the log tells mold serials
 * @param hasBatches whether the log tells a batch
 * @param falseAlarms per shift, as the profile asks; 0 where it does not say
 * @param settings in the order of the log
 */
record MadePlant(
    String wheel,
    int molds,
    int turns,
    int firstTurn,
    Sides sides,
    OffsetDateTime start,
    double intervalSeconds,
    List<Integer> chargeStarts,
    double massTargetKg,
    double thicknessTargetMm,
    boolean passesOn,
    List<String> points,
    Wander mass,
    Wander thickness,
    boolean hasSerials,
    boolean hasBatches,
    double falseAlarms,
    List<MadeSetting> settings) {

  /** How the ladle pours. */
  enum Sides {
    /** From one ladle. */
    ONE,
    /** Odd molds from A, even ones from B. */
    BY_MOLD,
    /** One turn from A, the next from B. */
    BY_TURN
  }

  /**
   * How far a characteristic wanders when nothing is wrong and no setting moves.
   *
   * @param pour s.d. of a pour
   * @param turn s.d. of what all molds of a turn share
   * @param phi correlation of one turn with the next
   * @param side s.d. by which the two sides drift apart
   * @param mold s.d. of the molds' offsets
   */
  record Wander(double pour, double turn, double phi, double side, double mold) {}

  private static final List<String> POINTS =
      List.of("top_left", "top_right", "bottom_left", "bottom_right", "center");

  static MadePlant draw(Noise noise) {
    int molds = noise.whole(16, 40);
    int turns = noise.whole(120, 400);
    Sides sides =
        noise.happens(0.45) ? Sides.ONE : noise.happens(0.75) ? Sides.BY_MOLD : Sides.BY_TURN;
    double kg = noise.between(300, 430);
    double mm = noise.between(35, 50);
    Wander mass = wander(noise, noise.between(0.6, 2));
    Wander thickness = wander(noise, noise.between(0.12, 0.35));
    int points = noise.happens(0.5) ? 0 : noise.whole(2, POINTS.size());
    return new MadePlant(
        "W" + noise.whole(1, 9),
        molds,
        turns,
        noise.happens(0.5) ? 1 : noise.whole(2, 3000),
        sides,
        OffsetDateTime.of(
            2026,
            noise.whole(1, 12),
            noise.whole(1, 28),
            noise.whole(0, 23),
            noise.whole(0, 59),
            0,
            0,
            ZoneOffset.ofHours(noise.whole(-8, 10))),
        noise.between(24, 40),
        charges(noise, turns),
        kg,
        mm,
        noise.happens(0.5),
        POINTS.subList(0, points),
        mass,
        thickness,
        noise.happens(0.5),
        noise.happens(0.5),
        List.of(0.0, 0.2, 0.5).get(noise.whole(0, 2)),
        new MadeSettings(noise, sides, mass, thickness).draw());
  }

  private static Wander wander(Noise noise, double pour) {
    double turn = pour * noise.between(0.3, 0.9);
    return new Wander(
        pour,
        turn,
        noise.between(0, 0.8),
        turn * noise.between(0.1, 0.4),
        pour * noise.between(0.3, 2.5));
  }

  private static List<Integer> charges(Noise noise, int turns) {
    List<Integer> starts = new ArrayList<>();
    for (int turn = noise.whole(10, 25); turn < turns - 3; turn += noise.whole(10, 25)) {
      starts.add(turn);
    }
    return List.copyOf(starts);
  }

  /** Index of the ladle side that pours; 0 where there is one. */
  int side(int turn, int mold) {
    return switch (sides) {
      case ONE -> 0;
      case BY_MOLD -> mold % 2;
      case BY_TURN -> turn % 2;
    };
  }

  int sideCount() {
    return sides == Sides.ONE ? 1 : 2;
  }

  /** Kilograms for a millimeter of thickness over the plan area. */
  double kgPerMm() {
    return massTargetKg / thicknessTargetMm;
  }

  /** What one unit of a setting does to thickness in the end, what passes through mass included. */
  double mmPerUnit(MadeSetting setting) {
    return setting.mmPerUnit() + (passesOn ? setting.kgPerUnit() / kgPerMm() : 0);
  }

  /** What the effects file says of this plant. */
  List<LastingEffect> effects() {
    List<LastingEffect> all = new ArrayList<>();
    for (MadeSetting setting : settings) {
      all.add(new LastingEffect(wheel, setting.name(), Quantity.MASS, setting.kgPerUnit()));
      all.add(new LastingEffect(wheel, setting.name(), Quantity.THICKNESS, mmPerUnit(setting)));
    }
    return List.copyOf(all);
  }

  /**
   * The whole s.d. of a characteristic in one scope, settings included: a mold's by its pours, the
   * wheel's by its turn means, a side's by how far its means stand from the other side's.
   *
   * @param isMass else thickness
   */
  double sigma(MadeFault.Place place, boolean isMass) {
    double pour = square(mass.pour());
    double turn = square(mass.turn());
    double side = square(mass.side());
    if (!isMass) {
      double share = passesOn ? square(1 / kgPerMm()) : 0;
      pour = square(thickness.pour()) + share * pour;
      turn = square(thickness.turn()) + share * turn;
      side = square(thickness.side()) + share * side;
    }
    for (MadeSetting setting : settings) {
      double effect = isMass ? setting.kgPerUnit() : mmPerUnit(setting);
      double moves = square(effect * setting.sd());
      double shared = sharedPart(setting);
      turn += moves * shared;
      switch (setting.rhythm()) {
        case POUR, MOLD -> pour += moves * (1 - shared);
        case SIDE -> side += 2 * moves;
        default -> {}
      }
    }
    turn += pour / molds;
    if (!place.isShared()) {
      return Math.sqrt(pour);
    }
    boolean isSide = place.side() >= 0 && sides == Sides.BY_MOLD;
    return Math.sqrt(isSide ? side + 4 * pour / molds : turn);
  }

  /** How much of a setting's variance the mean of a turn has. */
  private double sharedPart(MadeSetting setting) {
    return switch (setting.rhythm()) {
      case TURN, SHIFT -> 1;
      case SIDE -> sides == Sides.BY_MOLD ? 0.5 : 1;
      case MOLD -> 0;
      case POUR -> {
        double sum = molds;
        double power = 1;
        for (int k = 1; k < molds; k++) {
          power *= setting.phi();
          sum += 2 * (molds - k) * power;
        }
        // What is left over white noise counts with the pours.
        yield Math.max(0, sum / square(molds) - 1.0 / molds);
      }
    };
  }

  /** Whether the wheel stood before this turn. */
  boolean isStart(int turn) {
    return turn == 0 || chargeStarts.contains(turn);
  }

  private static double square(double x) {
    return x * x;
  }
}
