package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.MoldChange;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.link.Linker;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** One complete audit of a record: the same record gives the same report, to the last digit. */
public final class Audit {
  private Audit() {}

  /** Who judged the anodes of a wheel. */
  @FunctionalInterface
  public interface Judge {
    /**
     * What came of it, by characteristic.
     *
     * @param wheel with all of its characteristics
     * @param terms by characteristic, what is in force; empty where a characteristic has no value
     */
    Map<String, Replayed> judge(WheelRecord wheel, Function<String, List<Term>> terms);
  }

  /**
   * Audits a record of which nothing is kept beside it.
   *
   * @param record with at least one usable row
   */
  public static AuditReport run(CastingRecord record) {
    return run(record, PlantRecords.NONE);
  }

  /**
   * Audits a record by the limits that were approved for its time: each turn by the version that
   * was in force when it began, and where none was by limits that are proposed from these turns
   * themselves.
   *
   * @param record with at least one usable row
   * @param plant what is kept beside it
   */
  public static AuditReport run(CastingRecord record, PlantRecords plant) {
    return inFull(record, plant).report();
  }

  /**
   * As {@link #run}, with the limits that it was judged by, for whoever goes on judging by them.
   *
   * @param record with at least one usable row
   * @param plant what is kept beside it
   */
  public static Audited inFull(CastingRecord record, PlantRecords plant) {
    return audit(record, plant, null, null);
  }

  /**
   * Audits a record that went on, by the same limits.
   *
   * @param record with at least one usable row
   * @param plant what is kept beside it
   * @param by whose limits stay in force
   */
  public static Audited again(CastingRecord record, PlantRecords plant, Audited by) {
    return audit(record, plant, by, null);
  }

  /**
   * Audits a record whose anodes somebody else judges.
   *
   * @param record with at least one usable row
   * @param plant what is kept beside it
   * @param by whose limits stay in force; null = they are proposed where none are approved
   * @param judge of each wheel, one after another
   */
  public static Audited inFull(
      CastingRecord record, PlantRecords plant, @Nullable Audited by, Judge judge) {
    return audit(record, plant, by, judge);
  }

  /**
   * A wheel whose characteristics have the specification that its newest anode is judged by.
   *
   * @param book what was specified
   */
  private static WheelRecord specified(WheelRecord wheel, LimitsBook book) {
    if (book.revisions().isEmpty()) {
      return wheel;
    }
    long last = Long.MIN_VALUE;
    for (int i = 0; i < wheel.rows(); i++) {
      // Times may run back by a little: the last row need not be the newest.
      last = Math.max(last, wheel.castAtMillis().get(i));
    }
    List<Characteristic> all = new ArrayList<>();
    for (Characteristic one : wheel.characteristics()) {
      all.add(
          new Characteristic(
              one.name(),
              one.unit(),
              one.displayUnit(),
              book.specification(
                  wheel.wheel(), one.name(), one.specification(), Instant.ofEpochMilli(last)),
              one.values()));
    }
    return wheel.withCharacteristics(all);
  }

  private static Audited audit(
      CastingRecord record, PlantRecords plant, @Nullable Audited by, @Nullable Judge judge) {
    LimitsBook book = plant.book();
    List<Audited.InForce> limits = new ArrayList<>();
    List<CharacteristicReport> characteristics = new ArrayList<>();
    List<Looks.Wheel> wheels = new ArrayList<>();
    Advice advice = new Advice(plant.advice(), wetsMold(record));
    SignalFindings findings = new SignalFindings(advice, "S");
    List<Remark> notes = Notes.ofRecord(record);
    Set<String> molds = new LinkedHashSet<>();
    int turns = 0;
    List<TurnIndex> indices = new ArrayList<>();
    for (WheelRecord recorded : record.wheels()) {
      WheelRecord wheel = judgeable(recorded, by);
      TurnIndex index = TurnIndex.of(wheel);
      indices.add(index);
      turns += index.turns();
      for (String mold : wheel.molds().names()) {
        // The same label on two wheels is two molds.
        molds.add(wheel.wheel() + "\n" + mold);
      }
      List<CastingEvent> events = eventsAt(record.events(), wheel);
      List<MoldChange> changes = changes(events, wheel);
      AlarmBudget budget =
          AlarmBudget.of(
              wheel.profile(),
              wheel.molds().size(),
              wheel.sides().size(),
              wheel.characteristics().size(),
              SettingWatch.takesShare(wheel),
              index.turnMinutes());
      List<CharacteristicAudit> audits =
          wheel.characteristics().stream()
              .map(each -> CharacteristicAudit.of(wheel, each, index, book))
              .toList();
      Function<CharacteristicAudit, List<Term>> terms =
          each -> by == null ? each.terms(budget, book) : by.terms(wheel.wheel(), each.name());
      // In the list's order, whichever thread ends first: the same record, the same report.
      List<CharacteristicAudit.Result> results =
          judge == null
              ? audits.parallelStream()
                  .map(
                      each -> {
                        List<Term> its = terms.apply(each);
                        return each.result(its, each.replay(its, changes), book);
                      })
                  .toList()
              : judged(recorded, audits, terms, judge, book);
      for (CharacteristicAudit.Result result : results) {
        characteristics.add(result.report());
        limits.add(
            new Audited.InForce(
                wheel.wheel(), result.report().name(), result.limits(), result.terms()));
      }
      Linker linker =
          findings.link(
              wheel,
              index,
              events,
              results.stream().map(CharacteristicAudit.Result::episodes).toList());
      List<CharacteristicReport> told =
          results.stream().map(CharacteristicAudit.Result::report).toList();
      wheels.add(new Looks.Wheel(wheel, linker, told));
      Notes.ofWheel(wheel, results, notes);
    }
    // Only now, for signals are graded over all wheels, and all below asks what they say.
    List<Signal> signals = findings.signals();
    List<MoldVerdict> verdicts = new ArrayList<>();
    List<SetPointReport> setPoints = new ArrayList<>();
    RejectAudit rejected = new RejectAudit(book, advice);
    for (int i = 0; i < indices.size(); i++) {
      WheelRecord wheel = judgeable(record.wheels().get(i), by);
      rejected.add(wheel, indices.get(i), eventsAt(record.events(), wheel));
    }
    List<RejectReport> rejects = rejected.reports();
    List<SettingReport> settings = SettingAudit.of(wheels);
    List<SettingWatch.Result> watched = new ArrayList<>();
    List<Audited.OfView> views = new ArrayList<>();
    for (int i = 0; i < indices.size(); i++) {
      WheelRecord specified = specified(record.wheels().get(i), book);
      WheelRecord wheel = judgeable(specified, by);
      TurnIndex index = indices.get(i);
      verdicts.addAll(
          MoldVerdicts.of(
              wheel,
              index,
              eventsAt(record.events(), wheel),
              signals,
              RejectReport.ofWheel(rejects, wheel.wheel())));
      setPoints.addAll(
          SetPointAudit.of(specified, index, signals, eventsAt(record.events(), wheel)));
      List<Audited.OfView> its =
          by == null
              ? new BeyondWatch(wheel, index)
                  .of(
                      wheels.get(i).found(),
                      settings.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList(),
                      signals.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList(),
                      limits)
              : new BeyondWatch(wheel, index).again(by.views(), wheels.get(i).found());
      views.addAll(its);
      watched.add(
          watched(
              wheel,
              index,
              record.events(),
              signals,
              by,
              its.stream().map(Audited.OfView::view).toList(),
              advice));
    }
    SettingsWatched now =
        SettingsWatched.all(watched.stream().map(SettingWatch.Result::watched).toList());
    AuditReport report =
        new AuditReport(
            log(record, molds.size(), turns),
            characteristics,
            signals,
            verdicts,
            settings,
            record.events(),
            record.setAside(),
            notes,
            setPoints,
            List.of(),
            CausesReport.NONE,
            by == null
                ? now
                : new SettingsWatched(by.report().watched().settings(), now.moves(), now.beyond()),
            rejects,
            advice);
    return new Audited(
        Causes.joined(GaugeAudit.added(report, record, plant.gauges()), plant.marks()),
        limits,
        by == null
            ? watched.stream().flatMap(one -> one.limits().stream()).toList()
            : by.settings(),
        views);
  }

  /** What profiles say of settings; where two wheels' say different things, yes. */
  private static Map<String, Boolean> wetsMold(CastingRecord record) {
    Map<String, Boolean> said = new HashMap<>();
    for (WheelRecord wheel : record.wheels()) {
      for (Setting setting : wheel.settings()) {
        Boolean its = setting.profile().wetsMold();
        if (its != null) {
          said.merge(setting.name(), its, Boolean::logicalOr);
        }
      }
    }
    return said;
  }

  private static List<CharacteristicAudit.Result> judged(
      WheelRecord recorded,
      List<CharacteristicAudit> audits,
      Function<CharacteristicAudit, List<Term>> termsOf,
      Judge judge,
      LimitsBook book) {
    // A judge takes whole anodes, so that the terms of all characteristics must be there first.
    Map<String, List<Term>> terms = new ConcurrentHashMap<>();
    audits.parallelStream().forEach(each -> terms.put(each.name(), termsOf.apply(each)));
    Map<String, Replayed> judged =
        judge.judge(recorded, name -> terms.getOrDefault(name, List.of()));
    return audits.parallelStream()
        .map(
            each ->
                each.result(
                    terms.getOrDefault(each.name(), List.of()),
                    Objects.requireNonNull(judged.get(each.name()), each.name()),
                    book))
        .toList();
  }

  private static SettingWatch.Result watched(
      WheelRecord wheel,
      TurnIndex index,
      List<CastingEvent> events,
      List<Signal> signals,
      @Nullable Audited by,
      List<BeyondSettings.View> views,
      Advice advice) {
    List<Signal> its = signals.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList();
    return SettingWatch.of(wheel, index, moldChanges(events, wheel), by, !views.isEmpty())
        .toldBy(wheel, signals, new BeyondSettings(BeyondTold.told(views, its)), advice);
  }

  /**
   * The wheel with what can be judged of it: by limits that stay in force no characteristic whose
   * first value came after they were set.
   */
  private static WheelRecord judgeable(WheelRecord wheel, @Nullable Audited by) {
    WheelRecord measured = measured(wheel);
    return by == null
        ? measured
        : measured.withCharacteristics(
            measured.characteristics().stream()
                .filter(each -> !by.terms(wheel.wheel(), each.name()).isEmpty())
                .toList());
  }

  /**
   * The wheel without characteristics that its rows never have: a column may be another wheel's.
   */
  static WheelRecord measured(WheelRecord wheel) {
    List<Characteristic> some =
        wheel.characteristics().stream().filter(c -> hasValue(c.values())).toList();
    return some.size() == wheel.characteristics().size() ? wheel : wheel.withCharacteristics(some);
  }

  private static boolean hasValue(DoubleColumn column) {
    for (int i = 0; i < column.size(); i++) {
      if (!Double.isNaN(column.get(i))) {
        return true;
      }
    }
    return false;
  }

  private static AuditReport.Log log(CastingRecord record, int molds, int turns) {
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    List<String> wheels = new ArrayList<>();
    for (WheelRecord wheel : record.wheels()) {
      wheels.add(wheel.wheel());
      for (int i = 0; i < wheel.rows(); i++) {
        first = Math.min(first, wheel.castAtMillis().get(i));
        last = Math.max(last, wheel.castAtMillis().get(i));
      }
    }
    return new AuditReport.Log(
        record.logs(),
        record.rowsRead(),
        record.rowsKept(),
        record.rowsSetAside(),
        Instant.ofEpochMilli(first),
        Instant.ofEpochMilli(last),
        wheels,
        molds,
        turns);
  }

  private static List<CastingEvent> eventsAt(List<CastingEvent> events, WheelRecord wheel) {
    return events.stream()
        .filter(event -> event.wheel().isEmpty() || event.wheel().equals(wheel.wheel()))
        .sorted(Comparator.comparing(CastingEvent::at))
        .toList();
  }

  /** When molds of a wheel were changed or dressed, in the order of time. */
  public static List<MoldChange> moldChanges(List<CastingEvent> events, WheelRecord wheel) {
    return changes(eventsAt(events, wheel), wheel);
  }

  private static List<MoldChange> changes(List<CastingEvent> events, WheelRecord wheel) {
    List<MoldChange> changes = new ArrayList<>();
    for (CastingEvent event : events) {
      String mold = event.mold();
      boolean isChange =
          event.kind().equals(EventKind.MOLD_CHANGED)
              || event.kind().equals(EventKind.MOLD_DRESSED);
      if (isChange && mold != null && wheel.molds().find(mold) >= 0) {
        changes.add(new MoldChange(event.at().toEpochMilli(), wheel.molds().find(mold)));
      }
    }
    return changes;
  }
}
