package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.evenpour.audit.RejectRows.Stretch;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.Pages;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitsBook;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.Spell;
import org.evenpour.stats.Shares;
import org.jspecify.annotations.Nullable;

/**
 * What was rejected at all wheels: counts, spells in which it was more than usual, and what goes
 * with these, asked as of any signal. An anode is 1 where it was rejected and 0 where not, so that
 * what a setting does to it is a change of the share: the slope of a straight line, asked with the
 * same care for many looks, and from it the logistic curve through the usual share.
 */
final class RejectAudit {
  /** The specification that anodes are judged by became another one. */
  static final String SPECIFICATION_CHANGED = "specification_changed";

  private final LimitsBook book;
  private final SignalFindings findings;
  private final List<OfWheel> wheels = new ArrayList<>();

  /**
   * @param book with its dated specifications
   * @param advice for the links
   */
  RejectAudit(LimitsBook book, Advice advice) {
    this.book = book;
    findings = new SignalFindings(advice, "R");
  }

  private record OfWheel(
      RejectCounts counts, RejectRows rows, Map<String, List<Stretch>> stretches) {}

  /**
   * Takes in a wheel; nothing where no disposition is recorded.
   *
   * @param turns of its rows
   * @param events at this wheel
   */
  void add(WheelRecord wheel, TurnIndex turns, List<CastingEvent> events) {
    RejectCounts counts = RejectCounts.of(wheel, turns);
    if (counts == null) {
      return;
    }
    RejectRows rows = counts.rows();
    double alarms = AlarmBudget.rejects(wheel.profile(), turns.turnMinutes());
    Map<String, List<Stretch>> stretches = new LinkedHashMap<>();
    for (Stretch one : new RejectWatch(rows, counts.defects().size(), alarms).stretches()) {
      String name =
          one.defect() == RejectRows.ANY
              ? RejectReport.REJECTED
              : RejectReport.REJECTED + ":" + counts.defects().get(one.defect());
      stretches.computeIfAbsent(name, key -> new ArrayList<>()).add(one);
    }
    wheels.add(new OfWheel(counts, rows, stretches));
    if (!stretches.isEmpty()) {
      List<Characteristic> asked = new ArrayList<>();
      stretches.forEach((name, its) -> asked.add(share(name, rows, its.get(0).defect())));
      findings.link(
          wheel.withCharacteristics(asked),
          turns,
          withSpecifications(wheel, events),
          stretches.values().stream()
              .map(its -> its.stream().map(Stretch::episode).toList())
              .toList());
    }
  }

  private static Characteristic share(String name, RejectRows rows, int defect) {
    DoubleColumn values = new DoubleColumn(Pages.ofMemory());
    for (int row = 0; row < rows.why().length; row++) {
      values.add(rows.isJudged(row) ? rows.isHit(row, defect) ? 1 : 0 : Double.NaN);
    }
    return new Characteristic(name, Unit.NONE, Unit.NONE, Specification.NONE, values);
  }

  /** Events, and with them each time when another specification came into force. */
  private List<CastingEvent> withSpecifications(WheelRecord wheel, List<CastingEvent> events) {
    List<CastingEvent> all = new ArrayList<>(events);
    for (Characteristic one : wheel.characteristics()) {
      for (LimitsBook.SpecificationRevision its : book.revisions(wheel.wheel(), one.name())) {
        all.add(
            new CastingEvent(
                its.from(), wheel.wheel(), null, SPECIFICATION_CHANGED, one.name(), ""));
      }
    }
    all.sort(Comparator.comparing(CastingEvent::at));
    return all;
  }

  /** One for each wheel that has dispositions. Signals are graded over all of them. */
  List<RejectReport> reports() {
    List<Signal> signals = findings.signals();
    List<RejectReport> reports = new ArrayList<>();
    for (OfWheel one : wheels) {
      List<Spell> spells = new ArrayList<>();
      for (Signal signal : signals) {
        if (signal.wheel().equals(one.rows().wheel().wheel())) {
          spells.add(spell(one, signal));
        }
      }
      reports.add(one.counts().report(one.rows(), spells));
    }
    return reports;
  }

  private static Spell spell(OfWheel one, Signal signal) {
    List<Stretch> its = one.stretches().getOrDefault(signal.characteristic(), List.of());
    Stretch stretch =
        its.stream().filter(each -> isOf(one, each.episode(), signal)).findFirst().orElseThrow();
    int[] all = {one.rows().begin(), one.rows().end()};
    // What a setting does was learned from all molds outside of the spell.
    double share =
        signal.scope() == Scope.MOLD
            ? one.rows().counted(all, stretch.defect()).shares().share()
            : stretch.usual();
    return new Spell(
        signal.withLinks(
            signal.links().stream().map(link -> bent(link, share, signal.size())).toList()),
        stretch.defect() == RejectRows.ANY ? null : one.counts().defects().get(stretch.defect()),
        stretch.rejected(),
        stretch.of(),
        stretch.usual());
  }

  /**
   * What a setting's move does to the share of rejects, by the logistic curve whose slope at the
   * usual share is the straight line's: a share grows the faster the larger it is.
   */
  private static Link bent(Link link, double share, double size) {
    Double by = link.movedBy();
    Double effect = link.expectedEffect();
    return by == null || effect == null
        ? link
        : link.withEffect(
            Shares.alongLogistic(share, effect),
            bent(link.explainedShare(), share, size),
            bent(link.explainedLow(), share, size),
            bent(link.explainedHigh(), share, size));
  }

  private static @Nullable Double bent(@Nullable Double explained, double share, double size) {
    return explained == null ? null : Shares.alongLogistic(share, explained * size) / size;
  }

  private static boolean isOf(OfWheel one, Episode episode, Signal signal) {
    String mold = episode.index() < 0 ? null : one.rows().wheel().molds().name(episode.index());
    return episode.sinceAtMillis() == signal.sinceAt().toEpochMilli()
        && episode.chart().scope() == signal.scope()
        && Objects.equals(mold, signal.mold());
  }
}
