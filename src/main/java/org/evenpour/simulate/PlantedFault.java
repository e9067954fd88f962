package org.evenpour.simulate;

import org.evenpour.casting.EventKind;

/**
 * One fault with its place.
 *
 * @param fault which
 * @param firstTurn its first turn
 * @param lastTurn its last turn
 * @param firstMold index of the first mold; −1 where it is no mold's
 * @param molds how many adjacent molds
 * @param side index of the ladle side; −1 where it is no side's
 * @param sign +1 or −1 where both ways are possible
 * @param sizeSigmas in standard deviations of a pour
 */
record PlantedFault(
    Fault fault,
    int firstTurn,
    int lastTurn,
    int firstMold,
    int molds,
    int side,
    int sign,
    double sizeSigmas) {

  boolean acts(int turn, int mold, int ladleSide) {
    return turn >= firstTurn
        && turn <= lastTurn
        && (firstMold < 0 || (mold >= firstMold && mold < firstMold + molds))
        && (side < 0 || side == ladleSide);
  }

  /** How far it has come: just above 0 in its first turn, 1 in its last. */
  double progress(int turn) {
    return (turn - firstTurn + 1.0) / (lastTurn - firstTurn + 1.0);
  }

  /** The event by which people end it; empty where nobody does. */
  String endedBy() {
    return switch (fault) {
      case STARVED_SPRAY, WET_WASH, THIN_WASH -> EventKind.NOZZLE_CLEANED;
      case LADLE_SCALE_BIAS -> EventKind.SCALE_CHECKED;
      default -> "";
    };
  }

  /** How much of it there is: all to its middle, then evenly less, and hardly any in its last. */
  double fading(int turn) {
    return Math.min(1, 2 * (lastTurn - turn + 1.0) / (lastTurn - firstTurn + 1.0));
  }

  double massKg() {
    return sizeSigmas * Plant.POUR_SIGMA_MASS_KG;
  }

  double thicknessMm() {
    return sizeSigmas * Plant.POUR_SIGMA_THICKNESS_MM;
  }
}
