package org.evenpour.findings;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.Direction;
import org.jspecify.annotations.Nullable;

/**
 * The wheel's second view: its turns with the proven effects of settings taken off, so that a fault
 * behind a known wander is seen.
 *
 * @param views one for each wheel and characteristic that has one
 */
public record BeyondSettings(List<View> views) {
  /** Where no effect is proven, or taking it off makes nothing clearer. */
  public static final BeyondSettings NONE = new BeyondSettings(List.of());

  /** Copies the list. */
  public BeyondSettings {
    views = List.copyOf(views);
  }

  /** Departures that nothing else tells of, in the order of wheels and onsets. */
  public List<Departure> alone() {
    return views.stream()
        .flatMap(view -> view.departures().stream())
        .filter(one -> one.alone() && one.toldWith() == null)
        .toList();
  }

  /** The departures of other characteristics that are told with one. */
  public List<Departure> with(Departure one) {
    return views.stream()
        .flatMap(view -> view.departures().stream())
        .filter(other -> other.wheel().equals(one.wheel()) && other.alone())
        .filter(
            other -> one.characteristic().equals(other.toldWith()) && one.isNear(other.sinceTurn()))
        .toList();
  }

  /**
   * One characteristic of one wheel.
   *
   * @param settings what is taken off
   * @param fromTurn the first turn that was looked at
   * @param baseTurns how many turns effects and limits rest on
   * @param sigma s.d. of what is left, in the characteristic's unit
   * @param correlation of what is left, from turn to turn
   * @param clearer how many times as clear a lasting shift of one size stands here as on the
   *     wheel's plain chart
   * @param departures in the order of onsets
   */
  public record View(
      String wheel,
      String characteristic,
      List<Taken> settings,
      int fromTurn,
      int baseTurns,
      double sigma,
      double correlation,
      double clearer,
      List<Departure> departures) {

    /** Copies the lists. */
    public View {
      settings = List.copyOf(settings);
      departures = List.copyOf(departures);
    }

    public View with(List<Departure> others) {
      return new View(
          wheel,
          characteristic,
          settings,
          fromTurn,
          baseTurns,
          sigma,
          correlation,
          clearer,
          others);
    }
  }

  /**
   * A setting whose effect is taken off.
   *
   * @param perUnit effect of one unit on the wheel's turns, those of the others taken off too
   * @param error its standard error, widened so that 1.96 of it are a 95 % interval
   * @param mean over the base: how far the setting stands off counts from here
   */
  public record Taken(String setting, double perUnit, double error, double mean) {}

  /**
   * A lasting shift of what is left.
   *
   * @param settings whose effects are taken off
   * @param direction {@code HIGH} or {@code LOW}
   * @param firstTurn turn in which it was found
   * @param lastTurn last turn to which it holds
   * @param sinceTurn estimated onset
   * @param sinceAt when the onset turn began
   * @param lastCastAt when the last turn that it holds to began
   * @param open whether it still held when the log ended
   * @param size mean departure, in the characteristic's unit
   * @param sizeLow lower end of its 95 % interval, which allows for the effects' errors
   * @param sizeHigh upper end
   * @param sizeSigma in the chart's sigma
   * @param signals ids of the signals that it is part of; empty where only this view shows it
   * @param alone whether no signal tells of it now: there is none, or it still holds and they ended
   *     long before
   * @param toldWith the characteristic whose departure this one is told with; null where it stands
   *     for itself
   */
  public record Departure(
      String wheel,
      String characteristic,
      List<String> settings,
      Direction direction,
      int firstTurn,
      int lastTurn,
      int sinceTurn,
      Instant sinceAt,
      Instant lastCastAt,
      boolean open,
      double size,
      double sizeLow,
      double sizeHigh,
      double sizeSigma,
      List<String> signals,
      boolean alone,
      @Nullable String toldWith) {
    /** Onsets that lie farther apart are not one matter: a choice. */
    public static final int TURNS_APART = 12;

    /** Copies the lists. */
    public Departure {
      settings = List.copyOf(settings);
      signals = List.copyOf(signals);
    }

    public boolean isNear(int turn) {
      return Math.abs(sinceTurn - turn) <= TURNS_APART;
    }

    public Departure toldBy(List<String> ids, boolean isAlone, @Nullable String with) {
      return new Departure(
          wheel,
          characteristic,
          settings,
          direction,
          firstTurn,
          lastTurn,
          sinceTurn,
          sinceAt,
          lastCastAt,
          open,
          size,
          sizeLow,
          sizeHigh,
          sizeSigma,
          ids,
          isAlone,
          with);
    }
  }
}
