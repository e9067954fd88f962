package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.SettingReport;
import org.evenpour.audit.AuditReport.Signal;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.Remark;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.MoldChange;
import org.evenpour.link.Advice;
import org.evenpour.link.Linker;
import org.jspecify.annotations.Nullable;

/** One complete audit of a record: the same record gives the same report, to the last digit. */
public final class Audit {
  private Audit() {}

  /**
   * Audits a record.
   *
   * @param record with at least one usable row
   */
  public static AuditReport run(CastingRecord record) {
    return inFull(record).report();
  }

  /**
   * Audits a record, and the gauges that it was measured with.
   *
   * @param record with at least one usable row
   * @param gauges studies and check measurements
   */
  public static AuditReport run(CastingRecord record, List<GaugeFile> gauges) {
    return run(record, LimitsBook.NONE, gauges);
  }

  /**
   * Audits a record by the limits that were approved for its time, and the gauges that it was
   * measured with.
   *
   * @param record with at least one usable row
   * @param book what was approved and specified
   * @param gauges studies and check measurements
   */
  public static AuditReport run(CastingRecord record, LimitsBook book, List<GaugeFile> gauges) {
    return GaugeAudit.added(run(record, book), record, gauges);
  }

  /**
   * A wheel whose characteristics have the specification that its newest anode is judged by.
   *
   * @param book what was specified
   */
  public static WheelRecord specified(WheelRecord wheel, LimitsBook book) {
    if (book.revisions().isEmpty()) {
      return wheel;
    }
    long last = Long.MIN_VALUE;
    for (int i = 0; i < wheel.rows(); i++) {
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

  /**
   * Whether to adjust each ladle side or to leave it alone, with these signals under way.
   *
   * @param wheels the records of all wheels
   */
  public static List<SetPointReport> setPoints(List<WheelRecord> wheels, List<Signal> signals) {
    return wheels.stream()
        .flatMap(wheel -> SetPointAudit.of(wheel, TurnIndex.of(wheel), signals).stream())
        .toList();
  }

  /**
   * Audits a record by the limits that were approved for its time.
   *
   * @param record with at least one usable row
   * @param book what was approved and specified
   */
  public static AuditReport run(CastingRecord record, LimitsBook book) {
    return inFull(record, book).report();
  }

  /**
   * Audits a record and gives the limits that it was judged by as well, for whoever goes on judging
   * by them.
   *
   * @param record with at least one usable row
   */
  public static Audited inFull(CastingRecord record) {
    return inFull(record, LimitsBook.NONE);
  }

  /**
   * Audits a record by the limits that were approved for its time: each turn by the version that
   * was in force when it began, and where none was by limits that are proposed from these turns
   * themselves.
   *
   * @param record with at least one usable row
   * @param book what was approved and specified
   */
  public static Audited inFull(CastingRecord record, LimitsBook book) {
    List<Audited.InForce> limits = new ArrayList<>();
    List<CharacteristicReport> characteristics = new ArrayList<>();
    List<Looks.Wheel> wheels = new ArrayList<>();
    SignalFindings findings = new SignalFindings(Advice.standard());
    List<Remark> notes = Notes.ofRecord(record);
    Set<String> molds = new LinkedHashSet<>();
    int turns = 0;
    List<TurnIndex> indices = new ArrayList<>();
    for (WheelRecord recorded : record.wheels()) {
      WheelRecord wheel = measured(recorded);
      TurnIndex index = TurnIndex.of(wheel);
      indices.add(index);
      turns += index.turns();
      for (String mold : wheel.molds().names()) {
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
      List<CharacteristicAudit.Result> results =
          IntStream.range(0, wheel.characteristics().size())
              .parallel()
              .mapToObj(
                  i ->
                      CharacteristicAudit.of(
                          wheel, wheel.characteristics().get(i), index, budget, changes, book))
              .toList();
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
    List<Signal> signals = findings.signals();
    List<MoldVerdict> verdicts = new ArrayList<>();
    List<SetPointReport> setPoints = new ArrayList<>();
    List<SettingReport> settings = SettingAudit.of(wheels);
    List<SettingWatch.Result> watched = new ArrayList<>();
    List<Audited.OfView> views = new ArrayList<>();
    for (int i = 0; i < indices.size(); i++) {
      WheelRecord specified = specified(record.wheels().get(i), book);
      WheelRecord wheel = measured(specified);
      TurnIndex index = indices.get(i);
      verdicts.addAll(MoldVerdicts.of(wheel, index, eventsAt(record.events(), wheel), signals));
      setPoints.addAll(SetPointAudit.of(specified, index, signals));
      List<Audited.OfView> its =
          new BeyondWatch(wheel, index)
              .of(
                  wheels.get(i).found(),
                  settings.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList(),
                  signals.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList(),
                  limits);
      views.addAll(its);
      watched.add(
          watched(
              wheel,
              index,
              record.events(),
              signals,
              null,
              its.stream().map(Audited.OfView::view).toList()));
    }
    return new Audited(
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
            SettingsWatched.all(watched.stream().map(SettingWatch.Result::watched).toList())),
        limits,
        watched.stream().flatMap(one -> one.limits().stream()).toList(),
        views);
  }

  /**
   * Episodes of a record that is still growing, with what goes with each of them now: the same
   * findings that an audit of the record would make of them.
   *
   * @param wheels the records of all wheels
   * @param events written down at them
   * @param episodes of each wheel, in the order of {@code wheels}, one list for each of its
   *     characteristics
   */
  public static List<Signal> signals(
      List<WheelRecord> wheels, List<CastingEvent> events, List<List<List<Episode>>> episodes) {
    SignalFindings findings = new SignalFindings(Advice.standard());
    for (int i = 0; i < wheels.size(); i++) {
      WheelRecord wheel = wheels.get(i);
      findings.link(wheel, TurnIndex.of(wheel), eventsAt(events, wheel), episodes.get(i));
    }
    return findings.signals();
  }

  /**
   * Where the recorded settings themselves moved by the limits of an audit, what departs beyond
   * their effects, and which of the signals tell of that.
   *
   * @param wheels the records of all wheels
   * @param events written down at them
   * @param audited whose limits are in force
   */
  public static SettingsWatched settings(
      List<WheelRecord> wheels, List<CastingEvent> events, List<Signal> signals, Audited audited) {
    List<SettingsWatched> all = new ArrayList<>();
    for (WheelRecord wheel : wheels) {
      TurnIndex index = TurnIndex.of(wheel);
      List<BeyondSettings.View> views =
          new BeyondWatch(wheel, index).again(audited, moldChanges(events, wheel));
      all.add(watched(wheel, index, events, signals, audited, views).watched());
    }
    SettingsWatched now = SettingsWatched.all(all);
    return new SettingsWatched(audited.report().watched().settings(), now.moves(), now.beyond());
  }

  private static SettingWatch.Result watched(
      WheelRecord wheel,
      TurnIndex index,
      List<CastingEvent> events,
      List<Signal> signals,
      @Nullable Audited by,
      List<BeyondSettings.View> views) {
    List<Signal> its = signals.stream().filter(one -> one.wheel().equals(wheel.wheel())).toList();
    return SettingWatch.of(wheel, index, moldChanges(events, wheel), by, !views.isEmpty())
        .toldBy(wheel, signals, new BeyondSettings(BeyondTold.told(views, its)));
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
      boolean isChange = event.kind().equals("mold_changed") || event.kind().equals("mold_dressed");
      if (isChange && mold != null && wheel.molds().find(mold) >= 0) {
        changes.add(new MoldChange(event.at().toEpochMilli(), wheel.molds().find(mold)));
      }
    }
    return changes;
  }
}
