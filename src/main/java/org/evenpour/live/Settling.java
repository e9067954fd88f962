package org.evenpour.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Audited;
import org.evenpour.audit.PlantRecords;
import org.evenpour.audit.Replayed;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.WheelRecord;
import org.jspecify.annotations.Nullable;

/**
 * What takes longer than an anode may wait: to audit a record, and to propose limits or judge all
 * of it where that is asked for. It works on the record as it stood at one moment, which no longer
 * changes, so that any thread may do it while more is cast; when it is done makes no difference to
 * what it finds.
 *
 * @param record as it stood
 * @param by the limits to judge by; null where they are to be proposed anew
 * @param judged what the watches that there are made of their wheels, by wheel and characteristic;
 *     empty where all that was cast is to be judged from the start
 * @param plant what is kept beside the record
 */
record Settling(
    CastingRecord record,
    @Nullable Audited by,
    Map<String, Map<String, Replayed>> judged,
    PlantRecords plant) {

  /**
   * What came of it.
   *
   * @param audited by the same limits as before, or by new ones
   * @param watches that have judged all that was cast until then, by wheel; empty where those that
   *     there are go on
   */
  record Settled(Audited audited, Map<String, WheelWatch> watches) {}

  /** Does it. */
  Settled run() {
    Map<String, WheelWatch> fresh = new LinkedHashMap<>();
    Audit.Judge judge =
        (wheel, terms) -> {
          Map<String, Replayed> its = judged.get(wheel.wheel());
          if (its != null) {
            return its;
          }
          WheelWatch watch =
              new WheelWatch(wheel, terms, Audit.moldChanges(record.events(), wheel), plant.book());
          watch.catchUp(wheel);
          watch.begin();
          fresh.put(wheel.wheel(), watch);
          return watch.replayed();
        };
    Audited audited = Audit.inFull(judgeable(), plant, by, judge);
    return new Settled(audited, fresh);
  }

  /** Without wheels that came since they were judged: these ask for limits of their own. */
  private CastingRecord judgeable() {
    if (judged.isEmpty()) {
      return record;
    }
    List<WheelRecord> some = new ArrayList<>();
    for (WheelRecord wheel : record.wheels()) {
      if (judged.containsKey(wheel.wheel())) {
        some.add(wheel);
      }
    }
    return record.with(some);
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
