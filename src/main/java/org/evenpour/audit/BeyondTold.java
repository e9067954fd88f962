package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.View;
import org.jspecify.annotations.Nullable;

/** Sees to it that one disturbance of the wheel stays one signal. */
final class BeyondTold {
  private BeyondTold() {}

  /**
   * The same views of one wheel, with what tells of each departure already.
   *
   * <p>A signal of the wheel or a ladle side does that goes the same way and has turns in common
   * with the departure, or ended just before it began; and one of another characteristic that began
   * at about the same turn. What the settings do the other way is another matter. Where a departure
   * still holds and its signals ended long before, it is told for itself again. Where several
   * characteristics depart at about the same turn, the clearest tells of the others.
   *
   * @param signals of the wheel
   */
  static List<View> told(List<View> views, List<Signal> signals) {
    List<Departure> alone = new ArrayList<>();
    for (View view : views) {
      view.departures().stream()
          .filter(one -> isAlone(one, telling(one, signals)))
          .forEach(alone::add);
    }
    // Clearest first: what leads is never told by what it leads.
    alone.sort(Comparator.comparingDouble((Departure one) -> -Math.abs(one.sizeSigma())));
    List<View> told = new ArrayList<>();
    for (View view : views) {
      List<Departure> its = new ArrayList<>();
      for (Departure one : view.departures()) {
        List<Signal> telling = telling(one, signals);
        its.add(
            one.toldBy(
                telling.stream().map(Signal::id).toList(),
                isAlone(one, telling),
                leader(one, alone)));
      }
      told.add(view.with(its));
    }
    return told;
  }

  /** Whether a signal is of the level of the whole wheel or of a ladle side. */
  static boolean isOfWheel(Signal signal) {
    return (signal.scope() == Scope.WHEEL || signal.scope() == Scope.SIDE)
        && signal.direction() != Direction.SPREAD;
  }

  private static List<Signal> telling(Departure one, List<Signal> signals) {
    return signals.stream().filter(BeyondTold::isOfWheel).filter(s -> tells(s, one)).toList();
  }

  private static boolean tells(Signal signal, Departure one) {
    boolean meets =
        signal.sinceTurn() <= one.lastTurn()
            && one.sinceTurn() <= signal.lastTurn() + Departure.TURNS_APART;
    return meets
        && (signal.characteristic().equals(one.characteristic())
            ? signal.direction() == one.direction()
            : one.isNear(signal.sinceTurn()));
  }

  private static boolean isAlone(Departure one, List<Signal> telling) {
    return one.open()
        ? telling.stream()
            .noneMatch(
                signal ->
                    signal.open() || one.lastTurn() <= signal.lastTurn() + Departure.TURNS_APART)
        : telling.isEmpty();
  }

  /** The characteristic that a departure is told with; null where it is the clearest itself. */
  private static @Nullable String leader(Departure one, List<Departure> clearestFirst) {
    for (Departure other : clearestFirst) {
      if (other.equals(one)) {
        return null;
      }
      if (!other.characteristic().equals(one.characteristic()) && one.isNear(other.sinceTurn())) {
        return other.characteristic();
      }
    }
    return null;
  }
}
