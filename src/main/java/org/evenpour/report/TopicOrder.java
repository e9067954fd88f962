package org.evenpour.report;

import java.util.Comparator;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Specification;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/**
 * What people look at first: what can be done something about now. What holds before what has
 * passed; single anodes after what lasts; an old drift that changes nothing after what matters; the
 * wheel and its sides, which every anode suffers from, before molds; a known cause before an
 * unknown one; near its limit before far from it; clear before doubtful.
 */
final class TopicOrder {
  /** A choice: what has held for so many turns, a day and more of casting, is old. */
  static final int OLD_TURNS = 100;

  /** A choice, that of the molds' verdicts: less of the room to its limit matters little. */
  static final double SMALL_PART = 0.25;

  private final AuditReport report;

  private TopicOrder(AuditReport report) {
    this.report = report;
  }

  static List<Topic> sorted(List<Topic> topics, AuditReport report) {
    TopicOrder order = new TopicOrder(report);
    record Placed(Topic topic, boolean isIdle, double room) {}
    return topics.stream()
        .map(topic -> new Placed(topic, order.isIdle(topic), order.room(topic)))
        .sorted(
            Comparator.comparing((Placed one) -> !one.topic().first().open())
                .thenComparing(one -> one.topic().first().scope() == Scope.POUR)
                .thenComparing(Placed::isIdle)
                .thenComparing(one -> one.topic().first().scope() == Scope.MOLD)
                .thenComparing(one -> one.topic().signals().stream().noneMatch(Topic::isKnown))
                .thenComparing(Placed::room)
                .thenComparing(one -> -one.topic().clarity()))
        .map(Placed::topic)
        .toList();
  }

  /** Whether all of it has long been so, and leaves the tolerance its room. */
  private boolean isIdle(Topic topic) {
    return topic.signals().stream()
        .allMatch(
            signal ->
                signal.open()
                    && signal.lastTurn() - signal.sinceTurn() >= OLD_TURNS
                    && leavesRoom(signal));
  }

  private boolean leavesRoom(Signal signal) {
    Level level = level(signal);
    Double room = level == null ? null : level.room();
    if (level == null || room == null) {
      return Topic.sigmas(signal) < 1;
    }
    double before = room * level.sd() + Math.abs(signal.size());
    return before > 0 && Math.abs(signal.size()) < SMALL_PART * before;
  }

  private double room(Topic topic) {
    double least = Double.POSITIVE_INFINITY;
    for (Signal signal : topic.signals()) {
      Level level = level(signal);
      Double room = level == null ? null : level.room();
      least = room == null ? least : Math.min(least, room);
    }
    return least;
  }

  /**
   * Where those that depart stand.
   *
   * @param sd of what they cast
   * @param room from their level to the limit that they go to, in these s.d.; below 0 beyond it;
   *     null where there is no such limit
   */
  private record Level(double sd, @Nullable Double room) {}

  /**
   * The level is the mean of the record, of which the signal is a part, and the rest of its size.
   * Of scatter: how far the nearer limit lies, in the s.d. that it has become. Null where nothing
   * is known of the place.
   */
  private @Nullable Level level(Signal signal) {
    CharacteristicReport its =
        report.characteristics().stream()
            .filter(one -> one.wheel().equals(signal.wheel()))
            .filter(one -> one.name().equals(signal.characteristic()))
            .findFirst()
            .orElse(null);
    if (its == null) {
      return null;
    }
    MoldReport mold =
        its.molds().stream()
            .filter(one -> one.mold().equals(signal.mold()))
            .findFirst()
            .orElse(null);
    double mean = mold == null ? its.overall().mean() : mold.mean();
    Double sd =
        mold == null || mold.sigmaWithin() == null ? its.overall().sd() : mold.sigmaWithin();
    double casts =
        mold == null
            ? (double) its.overall().count() / Math.max(1, its.molds().size())
            : mold.count();
    if (sd == null || !(sd > 0)) {
      return null;
    }
    Specification limits = its.specification();
    if (signal.direction() == Direction.SPREAD) {
      double wider = sd + signal.size();
      Double up = limits.upper() == null ? null : (Double) ((limits.upper() - mean) / wider);
      Double down = limits.lower() == null ? null : (Double) ((mean - limits.lower()) / wider);
      return new Level(wider, up == null ? down : down == null ? up : (Double) Math.min(up, down));
    }
    double part = Math.min(1, (signal.lastTurn() - signal.sinceTurn() + 1) / Math.max(1, casts));
    double level = mean + signal.size() * (1 - part);
    Double limit = signal.direction() == Direction.HIGH ? limits.upper() : limits.lower();
    return new Level(sd, limit == null ? null : (Double) (way(signal) * (limit - level) / sd));
  }

  private static int way(Signal signal) {
    return signal.direction() == Direction.HIGH ? 1 : -1;
  }
}
