package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.audit.AuditReport;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Evidence;
import org.evenpour.audit.AuditReport.Link;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.audit.AuditReport.Scope;
import org.evenpour.audit.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/**
 * Signals that are said in one sentence: one signal, or neighboring molds that do the same with the
 * same setting beside it, or single anodes that departed to the same side.
 *
 * @param signals neighboring molds as they stand on the wheel; single anodes farthest off first
 */
public record Topic(List<Signal> signals) {

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

  /**
   * All signals of a report, the most important first: those that still hold before those that have
   * passed, lasting ones before single anodes, large before small.
   */
  public static List<Topic> of(AuditReport report) {
    Map<List<Object>, List<Signal>> alike = new LinkedHashMap<>();
    for (Signal signal : report.signals()) {
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
    topics.sort(
        Comparator.comparing((Topic topic) -> !topic.first().open())
            .thenComparing(topic -> topic.first().scope() == Scope.POUR)
            .thenComparing(topic -> -sigmas(topic.largest())));
    return topics;
  }

  private static double sigmas(Signal signal) {
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
      Link best = best(signal);
      key.add(best == null ? "" : best.name());
      key.add(best == null ? Evidence.NONE : best.evidence());
      key.add(best == null || best.movedBy() == null ? 0 : (int) Math.signum(best.movedBy()));
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
      List<Signal> run = runs.isEmpty() ? List.of() : runs.get(runs.size() - 1);
      if (!run.isEmpty() && adjoins(run.get(run.size() - 1), signal, order) && fits(run, signal)) {
        run.add(signal);
      } else {
        runs.add(new ArrayList<>(List.of(signal)));
      }
    }
    if (runs.size() > 1) {
      List<Signal> head = runs.get(0);
      List<Signal> tail = runs.get(runs.size() - 1);
      if (adjoins(tail.get(tail.size() - 1), head.get(0), order)
          && head.stream().allMatch(signal -> fits(tail, signal))) {
        tail.addAll(head);
        runs.remove(0);
      }
    }
    return runs.stream().map(Topic::new).toList();
  }

  private static boolean adjoins(Signal one, Signal next, List<String> order) {
    int at = order.indexOf(one.mold());
    int then = order.indexOf(next.mold());
    return at >= 0 && then >= 0 && at != then && then == (at + 1) % order.size();
  }

  private static boolean fits(List<Signal> run, Signal signal) {
    return run.stream()
        .allMatch(other -> Math.abs(other.sinceTurn() - signal.sinceTurn()) <= TURNS_APART);
  }
}
