package org.evenpour.intake;

import org.evenpour.casting.Unit;

/**
 * One column of a log and what it means.
 *
 * @param index from 0
 * @param heading as it stands in the log
 * @param name as the program knows it, after the profile's headings
 * @param role what it is for
 * @param unit in which its numbers are recorded
 * @param point which point of the anode's thickness; empty for all other roles
 */
record LogColumn(int index, String heading, String name, Role role, Unit unit, String point) {

  /** What a column is for. */
  enum Role {
    CAST_AT,
    MOLD,
    WHEEL,
    TURN,
    LADLE,
    MOLD_SERIAL,
    MASS,
    THICKNESS,
    THICKNESS_POINT,
    TARGET_MASS,
    DISPOSITION,
    DEFECT,
    /** Charge, crew, wash batch: never numbers, and as many different ones as there are. */
    NAMED,
    SETTING,
    /** It has no heading, or another column says the same better. */
    UNUSED
  }

  /** How a cell is read before its row is judged. */
  Cell cell() {
    return switch (role) {
      case CAST_AT -> Cell.TIME;
      case TURN, MASS, THICKNESS, THICKNESS_POINT, TARGET_MASS, SETTING -> Cell.NUMBER;
      default -> Cell.TEXT;
    };
  }

  /** How a cell is read. */
  enum Cell {
    TIME,
    NUMBER,
    TEXT
  }
}
