package org.evenpour.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.Quantity;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.simulate.PlantedShift;

/**
 * One fault at one place: the shifts of all characteristics that came with it.
 *
 * @param shifts at least one; of the same fault, wheel and place, and at the same time
 */
record Planted(List<PlantedShift> shifts) {

  /** So many turns after a fault's end a signal may still be of it: a choice. */
  static final int AFTERWARDS = 5;

  /** Puts together what belongs together, in the order of the file. */
  static List<Planted> of(List<PlantedShift> shifts) {
    List<List<PlantedShift>> groups = new ArrayList<>();
    for (PlantedShift shift : shifts) {
      groups.stream()
          .filter(group -> group.stream().anyMatch(other -> isOneFault(shift, other)))
          .findFirst()
          .orElseGet(
              () -> {
                List<PlantedShift> group = new ArrayList<>();
                groups.add(group);
                return group;
              })
          .add(shift);
    }
    return groups.stream().map(group -> new Planted(List.copyOf(group))).toList();
  }

  private static boolean isOneFault(PlantedShift one, PlantedShift other) {
    return one.fault().equals(other.fault())
        && one.scope() == other.scope()
        && one.wheel().equals(other.wheel())
        && one.mold().equals(other.mold())
        && one.side().equals(other.side())
        && one.firstTurn() <= other.lastTurn()
        && other.firstTurn() <= one.lastTurn();
  }

  String fault() {
    return shifts.get(0).fault();
  }

  /** Whether some record shows where it came from. */
  boolean hasCause() {
    return shifts.stream().anyMatch(shift -> !shift.cause().isEmpty());
  }

  int firstTurn() {
    return shifts.stream().mapToInt(PlantedShift::firstTurn).min().orElseThrow();
  }

  /** The largest of its shifts, in sigma of its scope; NaN where none is told. */
  double sizeSigma() {
    return shifts.stream()
        .map(PlantedShift::sizeSigma)
        .filter(Objects::nonNull)
        .mapToDouble(Double::doubleValue)
        .max()
        .orElse(Double.NaN);
  }

  /** Whether a signal is of this fault: place, characteristic, direction and time agree. */
  boolean isShownBy(Signal signal) {
    return shifts.stream().anyMatch(shift -> agrees(shift, signal));
  }

  private static boolean agrees(PlantedShift shift, Signal signal) {
    int from = Math.min(signal.sinceTurn(), signal.firstTurn());
    return (shift.wheel().isEmpty() || shift.wheel().equals(signal.wheel()))
        && isAt(shift, signal)
        && isOf(shift.characteristic(), signal)
        && shift.direction() == signal.direction()
        && from <= shift.lastTurn() + AFTERWARDS
        && signal.lastTurn() >= shift.firstTurn();
  }

  /**
   * A truth of mass is one of mass against its set-point too, which the audit judges beside it
   * where the set-point varies: faults move the one as they move the other.
   */
  static boolean isOf(String characteristic, Signal signal) {
    return characteristic.equals(signal.characteristic())
        || (characteristic.equals(Quantity.MASS)
            && signal.characteristic().equals(Quantity.MASS_DEVIATION));
  }

  private static boolean isAt(PlantedShift shift, Signal signal) {
    return shift.scope() == signal.scope()
        && switch (shift.scope()) {
          case POUR, MOLD -> shift.mold().equals(signal.mold());
          case SIDE -> shift.side().equals(signal.side());
          case WHEEL -> true;
        };
  }

  /** Whether a link names where it came from, or what passed it on. */
  boolean isNamedBy(Link link) {
    return shifts.stream()
        .anyMatch(
            shift ->
                isCause(shift, link.name())
                    || (!shift.carriedBy().isEmpty() && shift.carriedBy().equals(link.name()))
                    || link.togetherWith().stream().anyMatch(name -> isCause(shift, name)));
  }

  /** Whether a link has the very name of the cause. */
  boolean isNamedExactlyBy(Link link) {
    return shifts.stream().anyMatch(shift -> isCause(shift, link.name()));
  }

  private static boolean isCause(PlantedShift shift, String name) {
    return !shift.cause().isEmpty() && shift.cause().equals(name);
  }
}
