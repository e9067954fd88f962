package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.Direction;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.SettingsWatched.Move;

/** Makes one entry of what moved together, and finds the signals that tell of it already. */
final class SettingMoves {
  /** Onsets that lie farther apart are not one matter: a choice. */
  private static final int TURNS_APART = 12;

  private SettingMoves() {}

  /**
   * The same moves, with what is advised and the signals that tell of each: those that have the
   * setting beside them and meet the move in place and time, and those that began at the very place
   * at about the turn when the setting moved. One disturbance is one signal.
   *
   * @param wheel whose moves and signals count
   */
  static List<Move> told(WheelRecord wheel, List<Move> moves, List<Signal> signals, Advice advice) {
    List<Move> told = new ArrayList<>();
    for (Move move : moves) {
      int lag = wheel.profile().setting(move.setting()).lagTurns();
      told.add(
          move.toldBy(
              signals.stream()
                  .filter(signal -> signal.wheel().equals(wheel.wheel()))
                  .filter(signal -> tells(signal, move, lag))
                  .map(Signal::id)
                  .toList(),
              advice.of(move.setting(), move.group())));
    }
    return told;
  }

  private static boolean tells(Signal signal, Move move, int lag) {
    boolean meets =
        signal.sinceTurn() <= move.lastTurn() + lag + TURNS_APART
            && signal.lastTurn() >= move.sinceTurn() - TURNS_APART;
    if (!meets) {
      return false;
    }
    boolean isLinked =
        signal.links().stream()
            .anyMatch(
                link ->
                    !link.event()
                        && link.evidence() != Evidence.NONE
                        && link.name().equals(move.setting()));
    if (isLinked) {
      return signal.mold() == null || move.molds().isEmpty() || isOf(signal, move);
    }
    // What stood off long before the setting moved, or departs long after, is something else.
    int after = signal.sinceTurn() - move.sinceTurn();
    return after >= -TURNS_APART
        && after <= lag + TURNS_APART
        && signal.scope() != Scope.POUR
        && isAtSamePlace(signal, move);
  }

  private static boolean isOf(Signal signal, Move move) {
    return move.molds().contains(Objects.requireNonNullElse(signal.mold(), ""));
  }

  private static boolean isAtSamePlace(Signal signal, Move move) {
    if (move.scope() == Scope.MOLD) {
      return signal.scope() == Scope.MOLD && isOf(signal, move);
    }
    boolean isOtherSide =
        signal.scope() == Scope.SIDE
            && move.scope() == Scope.SIDE
            && !Objects.equals(signal.side(), move.side());
    return signal.scope() != Scope.MOLD && !isOtherSide;
  }

  /**
   * Moves of one setting, those of molds side by side as one.
   *
   * @param scope of all of the episodes
   */
  static List<Move> of(WheelRecord wheel, Setting setting, Scope scope, List<Episode> episodes) {
    List<Move> moves = new ArrayList<>();
    for (List<Episode> run : scope == Scope.MOLD ? neighbors(wheel, episodes) : alone(episodes)) {
      moves.add(move(wheel, setting, scope, run));
    }
    return moves;
  }

  private static List<List<Episode>> alone(List<Episode> episodes) {
    return episodes.stream().map(List::of).toList();
  }

  /**
   * Runs of molds side by side that moved the same way at about the same turn; wheels are round.
   */
  private static List<List<Episode>> neighbors(WheelRecord wheel, List<Episode> episodes) {
    List<String> labels = wheel.molds().names();
    List<Integer> order = new ArrayList<>();
    for (int mold = 0; mold < labels.size(); mold++) {
      order.add(mold);
    }
    order.sort((a, b) -> MoldOrder.compare(labels.get(a), labels.get(b)));
    int[] place = new int[labels.size()];
    for (int i = 0; i < place.length; i++) {
      place[order.get(i)] = i;
    }
    List<Episode> sorted = new ArrayList<>(episodes);
    sorted.sort(
        Comparator.comparingInt((Episode one) -> place[one.index()])
            .thenComparingInt(Episode::sinceTurn));
    List<List<Episode>> runs = new ArrayList<>();
    for (Episode episode : sorted) {
      List<Episode> goesOn = null;
      for (List<Episode> run : runs) {
        boolean isNext = place[run.get(run.size() - 1).index()] + 1 == place[episode.index()];
        goesOn = goesOn == null && isNext && fits(run, episode) ? run : goesOn;
      }
      if (goesOn == null) {
        goesOn = new ArrayList<>();
        runs.add(goesOn);
      }
      goesOn.add(episode);
    }
    for (List<Episode> head : List.copyOf(runs)) {
      for (List<Episode> tail : List.copyOf(runs)) {
        boolean meet =
            tail != head
                && place[tail.get(tail.size() - 1).index()] == place.length - 1
                && place[head.get(0).index()] == 0;
        if (meet && head.stream().allMatch(one -> fits(tail, one))) {
          tail.addAll(head);
          runs.removeIf(run -> run == head);
          break;
        }
      }
    }
    return runs;
  }

  private static boolean fits(List<Episode> run, Episode next) {
    // With each of the run and not the last alone: a chain would tie what lies far apart.
    return run.stream()
        .allMatch(
            one ->
                one.direction() == next.direction()
                    && one.open() == next.open()
                    && Math.abs(one.sinceTurn() - next.sinceTurn()) <= TURNS_APART);
  }

  private static Move move(WheelRecord wheel, Setting setting, Scope scope, List<Episode> run) {
    Episode first =
        // The mold that moved first says when it began.
        run.stream().min(Comparator.comparingLong(Episode::sinceAtMillis)).orElseThrow();
    Comparator<Episode> bySize = Comparator.comparingDouble(one -> Math.abs(one.size()));
    boolean isSide = scope == Scope.SIDE && first.index() < wheel.sides().size();
    String group = setting.profile().group();
    return new Move(
        wheel.wheel(),
        setting.name(),
        setting.unit().symbol(),
        group,
        scope,
        scope == Scope.MOLD
            ? run.stream().map(one -> wheel.molds().name(one.index())).toList()
            : List.of(),
        isSide ? wheel.sides().name(first.index()) : null,
        first.direction() > 0 ? Direction.HIGH : Direction.LOW,
        run.stream().mapToInt(Episode::firstTurn).min().orElseThrow(),
        run.stream().mapToInt(Episode::lastTurn).max().orElseThrow(),
        first.sinceTurn(),
        Instant.ofEpochMilli(first.sinceAtMillis()),
        Instant.ofEpochMilli(run.stream().mapToLong(Episode::lastAtMillis).max().orElseThrow()),
        first.open(),
        run.stream().mapToDouble(Episode::size).average().orElseThrow(),
        run.stream().min(bySize).orElseThrow().size(),
        run.stream().max(bySize).orElseThrow().size(),
        run.stream()
            .max(Comparator.comparingDouble(one -> Math.abs(one.sizeSigma())))
            .orElseThrow()
            .sizeSigma(),
        List.of(),
        "");
  }
}
