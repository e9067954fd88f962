package org.evenpour.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/**
 * Signals that are said in one sentence: one signal, or neighboring molds that do the same with the
 * same setting beside it, what one mold does in several characteristics, what one side or the wheel
 * did to several at once, or single anodes that departed to the same side.
 *
 * @param signals neighboring molds as they stand on the wheel; single anodes farthest off first
 */
public record Topic(List<Signal> signals) {

  /** Signals of a report that are looked at; nobody reads more, and joining them takes its time. */
  static final int MOST = 500;

  /** Molds whose onsets lie farther apart are not one matter. */
  static final int TURNS_APART = 12;

  /** Copies the list. */
  public Topic {
    signals = List.copyOf(signals);
  }

  /** The first of its signals. */
  public Signal first() {
    return signals.get(0);
  }

  /** The signal that departs most, in sigma. */
  public Signal largest() {
    return signals.stream().max(Comparator.comparingDouble(Topic::sigmas)).orElseThrow();
  }

  /** The setting or event that goes best with a signal; null where none does. */
  public static @Nullable Link best(Signal signal) {
    return signal.links().stream()
        .filter(link -> link.evidence() != Evidence.NONE)
        .findFirst()
        .orElse(null);
  }

  /** What goes best with it: the clearest evidence, of the signal that departs most. */
  public @Nullable Link best() {
    Signal its = explained();
    return its == null ? null : best(its);
  }

  /** The signal that {@link #best()} goes with; null where nothing does. */
  @Nullable Signal explained() {
    return signals.stream()
        .filter(signal -> best(signal) != null)
        .min(
            Comparator.comparing((Signal signal) -> !isKnown(signal))
                .thenComparing(Comparator.comparingDouble(Topic::sigmas).reversed()))
        .orElse(null);
  }

  /** Whether a recorded setting or event strongly goes with a signal. */
  static boolean isKnown(Signal signal) {
    Link best = best(signal);
    return best != null && best.evidence() == Evidence.STRONG;
  }

  /** Whether it asks why, and no record answers: a single anode does not ask. */
  public boolean isUnexplained() {
    return first().scope() != Scope.POUR && best() == null;
  }

  /**
   * Its signals as they are said one after another: neighbors, and what began together, at once.
   */
  public List<Topic> onsets() {
    if (first().scope() == Scope.POUR
        || signals.stream().map(Signal::mold).distinct().count() > 1) {
      return List.of(this);
    }
    List<List<Signal>> groups = new ArrayList<>();
    for (Signal signal : signals) {
      groups.stream()
          .filter(group -> group.stream().allMatch(other -> isSaidWith(other, signal)))
          .findFirst()
          .ifPresentOrElse(
              group -> group.add(signal), () -> groups.add(new ArrayList<>(List.of(signal))));
    }
    return groups.stream().map(Topic::new).toList();
  }

  private static boolean isSaidWith(Signal one, Signal other) {
    return beganTogether(one, other)
        && one.direction() != Direction.SPREAD
        && other.direction() != Direction.SPREAD
        && !one.characteristic().equals(other.characteristic());
  }

  /**
   * The signals of a report, up to {@link #MOST}, what can be done something about first ({@link
   * TopicOrder}).
   */
  public static List<Topic> of(AuditReport report) {
    Map<List<Object>, List<Signal>> alike = new LinkedHashMap<>();
    for (Signal signal : mostImportant(distinct(report.signals()))) {
      alike.computeIfAbsent(likeness(signal), key -> new ArrayList<>()).add(signal);
    }
    List<Topic> topics = new ArrayList<>();
    for (List<Signal> signals : alike.values()) {
      Signal any = signals.get(0);
      if (any.scope() == Scope.POUR) {
        signals.sort(Comparator.comparingDouble(Topic::sigmas).reversed());
        topics.add(new Topic(signals));
      } else if (any.scope() == Scope.MOLD) {
        topics.addAll(neighbors(signals, order(report, any)));
      } else {
        signals.forEach(signal -> topics.add(new Topic(List.of(signal))));
      }
    }
    List<Topic> joined = joined(topics);
    return TopicOrder.sorted(joined, report);
  }

  /**
   * How far its clearest signal stands from chance: size over standard error, doubled where a
   * strong link tells what to do.
   */
  double clarity() {
    return signals.stream().mapToDouble(Topic::clarity).max().orElseThrow();
  }

  private static double clarity(Signal signal) {
    Double low = signal.sizeLow();
    Double high = signal.sizeHigh();
    double error = low == null || high == null ? 0 : (high - low) / (2 * 1.96);
    double clear = error > 0 ? Math.abs(signal.size()) / error : sigmas(signal);
    boolean strong = signal.links().stream().anyMatch(l -> l.evidence() == Evidence.STRONG);
    return strong ? 2 * clear : clear;
  }

  /**
   * All signals of an ordinary record; of a very long one those that stand farthest from chance.
   */
  /**
   * Signals without those that mass against the set-point repeats of mass itself: where set-points
   * seldom move, both show every disturbance.
   */
  static List<Signal> distinct(List<Signal> signals) {
    Map<List<@Nullable Object>, List<Signal>> masses = new HashMap<>();
    for (Signal signal : signals) {
      if (signal.characteristic().equals(Quantity.MASS)) {
        masses.computeIfAbsent(place(signal), key -> new ArrayList<>()).add(signal);
      }
    }
    return signals.stream()
        .filter(
            signal ->
                !signal.characteristic().equals(Quantity.MASS_DEVIATION)
                    || masses.getOrDefault(place(signal), List.of()).stream()
                        .noneMatch(mass -> overlap(mass, signal)))
        .toList();
  }

  private static List<@Nullable Object> place(Signal signal) {
    return Arrays.asList(
        signal.wheel(), signal.scope(), signal.mold(), signal.side(), signal.direction());
  }

  private static List<Signal> mostImportant(List<Signal> signals) {
    if (signals.size() <= MOST) {
      return signals;
    }
    return signals.stream()
        .sorted(
            Comparator.comparing((Signal signal) -> !signal.open())
                .thenComparing(signal -> -clarity(signal)))
        .limit(MOST)
        .toList();
  }

  static double sigmas(Signal signal) {
    return Math.abs(signal.sizeSigma());
  }

  private static List<Object> likeness(Signal signal) {
    List<Object> key = new ArrayList<>();
    key.add(signal.wheel());
    key.add(signal.characteristic());
    key.add(signal.scope());
    key.add(signal.direction());
    if (signal.scope() != Scope.POUR) {
      key.add(signal.open());
    }
    return key;
  }

  private static List<String> order(AuditReport report, Signal signal) {
    for (CharacteristicReport characteristic : report.characteristics()) {
      if (characteristic.wheel().equals(signal.wheel())
          && characteristic.name().equals(signal.characteristic())) {
        return characteristic.molds().stream().map(MoldReport::mold).toList();
      }
    }
    return List.of();
  }

  /** Splits signals of alike molds into runs of neighbors; the wheel is round. */
  private static List<Topic> neighbors(List<Signal> signals, List<String> order) {
    signals.sort(
        Comparator.comparingInt((Signal signal) -> order.indexOf(signal.mold()))
            .thenComparingInt(Signal::sinceTurn));
    List<List<Signal>> runs = new ArrayList<>();
    for (Signal signal : signals) {
      // Any run may go on, not just the last: a mold may have departed twice.
      Optional<List<Signal>> goesOn =
          runs.stream()
              .filter(run -> adjoins(run.get(run.size() - 1), signal, order) && fits(run, signal))
              .findFirst();
      if (goesOn.isPresent()) {
        goesOn.get().add(signal);
      } else {
        runs.add(new ArrayList<>(List.of(signal)));
      }
    }
    for (List<Signal> head : List.copyOf(runs)) {
      runs.stream()
          .filter(
              tail ->
                  tail != head
                      && adjoins(tail.get(tail.size() - 1), head.get(0), order)
                      && head.stream().allMatch(signal -> fits(tail, signal)))
          .findFirst()
          .ifPresent(
              tail -> {
                tail.addAll(head);
                runs.removeIf(run -> run == head);
              });
    }
    return runs.stream().map(Topic::new).toList();
  }

  private static boolean adjoins(Signal one, Signal next, List<String> order) {
    int at = order.indexOf(one.mold());
    int then = order.indexOf(next.mold());
    return at >= 0 && then >= 0 && at != then && then == (at + 1) % order.size();
  }

  private static boolean fits(List<Signal> run, Signal signal) {
    return run.stream().allMatch(other -> beganTogether(other, signal) && goAlike(other, signal));
  }

  private static boolean beganTogether(Signal one, Signal other) {
    return Math.abs(one.sinceTurn() - other.sinceTurn()) <= TURNS_APART;
  }

  /** Whether the best setting or event of either also moved with the other, or neither has any. */
  private static boolean goAlike(Signal one, Signal other) {
    Link best = best(one);
    Link others = best(other);
    if (best == null || others == null) {
      return best == null && others == null;
    }
    return moves(other, best) || moves(one, others);
  }

  private static boolean moves(Signal signal, Link as) {
    return signal.links().stream()
        .anyMatch(
            link ->
                link.evidence() != Evidence.NONE
                    && link.name().equals(as.name())
                    && link.event() == as.event()
                    && sign(link) == sign(as));
  }

  private static int sign(Link link) {
    return link.movedBy() == null ? 0 : (int) Math.signum(link.movedBy());
  }

  /**
   * Says together what one mold does in several characteristics, and what one side or the wheel did
   * to several at once with the same setting beside it.
   */
  private static List<Topic> joined(List<Topic> topics) {
    List<Topic> joined = new ArrayList<>();
    for (Topic topic : topics) {
      int with = -1;
      for (int i = 0; i < joined.size() && with < 0; i++) {
        with = joined.get(i).joins(topic) ? i : -1;
      }
      if (with < 0) {
        joined.add(topic);
      } else {
        List<Signal> both = new ArrayList<>(joined.get(with).signals());
        both.addAll(topic.signals());
        joined.set(with, new Topic(both));
      }
    }
    return joined;
  }

  private boolean joins(Topic other) {
    Signal next = other.first();
    if (other.signals().size() == 1 && next.scope() == Scope.MOLD) {
      return signals.stream()
          .allMatch(
              signal ->
                  signal.wheel().equals(next.wheel())
                      && signal.scope() == Scope.MOLD
                      && signal.open() == next.open()
                      && Objects.equals(signal.mold(), next.mold())
                      && overlap(signal, next));
    }
    return other.signals().size() == 1
        && next.scope() != Scope.POUR
        && next.direction() != Direction.SPREAD
        && signals.stream()
            .allMatch(
                signal ->
                    signal.wheel().equals(next.wheel())
                        && signal.scope() == next.scope()
                        && signal.direction() != Direction.SPREAD
                        && signal.open() == next.open()
                        && Objects.equals(signal.side(), next.side())
                        && !signal.characteristic().equals(next.characteristic())
                        && beganTogether(signal, next)
                        && goAlike(signal, next));
  }

  /** Whether there was a turn in which both held. */
  static boolean overlap(Signal one, Signal other) {
    return one.sinceTurn() <= other.lastTurn() && other.sinceTurn() <= one.lastTurn();
  }
}
