package org.evenpour.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.audit.Audit;
import org.evenpour.audit.AuditReport.Signal;
import org.evenpour.audit.Audited;
import org.evenpour.audit.SetPointReport;
import org.evenpour.audit.SettingsWatched;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitsBook;
import org.jspecify.annotations.Nullable;

/**
 * What takes longer than an anode may wait: to audit a record, to judge all of it by limits, and to
 * link what was found. It works on the record as it stood at one moment, which no longer changes,
 * so that any thread may do it while more is cast; when it is done makes no difference to what it
 * finds.
 *
 * @param record as it stood
 * @param by the limits to judge by; null where they are to be proposed anew
 * @param watched the episodes of each wheel that is watched already; empty where all that was cast
 *     is to be judged from the start
 * @param book what was approved and specified
 */
record Settling(
    CastingRecord record, @Nullable Audited by, List<Watched> watched, LimitsBook book) {

  /** A wheel as it stood, and the episodes of each of its characteristics. */
  record Watched(WheelRecord wheel, List<List<Episode>> episodes) {}

  /**
   * What came of it.
   *
   * @param audited a new audit; null where the limits stay
   * @param watches that have judged all that was cast until then, by wheel; empty where those that
   *     there are go on
   * @param signals with all that goes with them
   * @param setPoints whether to adjust, with these signals under way
   * @param settings where the recorded settings themselves moved
   */
  record Settled(
      @Nullable Audited audited,
      Map<String, WheelWatch> watches,
      List<Signal> signals,
      List<SetPointReport> setPoints,
      SettingsWatched settings) {}

  /** Does it. */
  Settled run() {
    Audited limits = by == null ? Audit.inFull(record, book) : by;
    Map<String, WheelWatch> fresh = new LinkedHashMap<>();
    List<Watched> all = watched;
    if (all.isEmpty()) {
      all = new ArrayList<>();
      for (WheelRecord wheel : record.wheels()) {
        WheelWatch watch = watch(wheel, limits);
        fresh.put(wheel.wheel(), watch);
        all.add(new Watched(wheel, watch.episodes()));
      }
    }
    List<Signal> signals =
        Audit.signals(
            all.stream().map(Watched::wheel).toList(),
            record.events(),
            all.stream().map(Watched::episodes).toList());
    List<WheelRecord> wheels = all.stream().map(one -> Audit.specified(one.wheel(), book)).toList();
    return new Settled(
        by == null ? limits : null,
        fresh,
        signals,
        Audit.setPoints(wheels, signals),
        Audit.settings(
            all.stream().map(Watched::wheel).toList(), record.events(), signals, limits));
  }

  private WheelWatch watch(WheelRecord wheel, Audited limits) {
    WheelWatch watch =
        new WheelWatch(wheel, limits, Audit.moldChanges(record.events(), wheel), book);
    watch.catchUp(wheel);
    watch.begin();
    return watch;
  }

  /** Whether limits will come of it for a wheel, with all that is judged of it now. */
  boolean proposes(WheelRecord wheel) {
    return by == null
        && record.wheels().stream()
            .anyMatch(
                one ->
                    one.wheel().equals(wheel.wheel())
                        && one.characteristics().size() == wheel.characteristics().size());
  }
}
