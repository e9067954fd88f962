package org.evenpour.simulate;

import org.evenpour.casting.Scope;

/**
 * One thing that happens on a made wheel, and where.
 *
 * @param name as the truth names it
 * @param cause the setting or event that it comes from; empty where no record shows it
 * @param place where
 * @param firstTurn index of its first turn
 * @param lastTurn index of its last turn
 * @param rampTurns over how many turns it grows to its full size; 0 = at once
 * @param setting index of the setting that moves; −1 where none does
 * @param by how far it moves
 * @param kg how far mass shifts without it
 * @param mm how far thickness shifts without it
 */
record MadeFault(
    String name,
    String cause,
    Place place,
    int firstTurn,
    int lastTurn,
    int rampTurns,
    int setting,
    double by,
    double kg,
    double mm) {

  /**
   * Where something happens.
   *
   * @param firstMold index of the first mold; −1 where it is no mold's
   * @param molds how many adjacent molds
   * @param side index of the ladle side; −1 where it is no side's
   */
  record Place(int firstMold, int molds, int side) {
    static final Place WHEEL = new Place(-1, 0, -1);

    boolean holds(int mold, int ladleSide) {
      return (firstMold < 0 || (mold >= firstMold && mold < firstMold + molds))
          && (side < 0 || side == ladleSide);
    }

    boolean isShared() {
      return firstMold < 0;
    }

    Scope scope() {
      return firstMold >= 0 ? Scope.MOLD : side >= 0 ? Scope.SIDE : Scope.WHEEL;
    }

    /** As the fault's name tells it. */
    String word() {
      return molds > 1 ? "molds" : scope().id();
    }
  }

  /** How much of its full size it has in a turn. */
  double part(int turn) {
    if (turn < firstTurn || turn > lastTurn) {
      return 0;
    }
    return Math.min(1, (turn - firstTurn + 1.0) / (rampTurns + 1.0));
  }
}
