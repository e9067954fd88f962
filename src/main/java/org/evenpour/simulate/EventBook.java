package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.EventKind;

/**
 * What people wrote down at the wheel so far.
 *
 * <p>Owned by the wheel that it belongs to.
 */
final class EventBook {

  /** One entry, a cell for each of {@link #COLUMNS}; an empty mold is the whole wheel. */
  record Entry(OffsetDateTime at, String mold, String event, String note) {
    List<String> cells() {
      return List.of(
          at.format(DateTimeFormatter.ISO_OFFSET_DATE_TIME), Plant.WHEEL, mold, event, note);
    }
  }

  /** Waits for its turn to come; −1 is any mold or side. */
  private record Due(int turn, int mold, int side, String event, String note) {
    boolean isAt(int nowTurn, int nowMold, int nowSide) {
      return nowTurn >= turn && (mold < 0 || mold == nowMold) && (side < 0 || side == nowSide);
    }
  }

  static final List<String> COLUMNS = List.of("at", "wheel", "mold", "event", "note");

  private static final Map<String, String> NOTES =
      Map.of(EventKind.NOZZLE_CLEANED, "wash and spray nozzles blown through");

  private final List<Entry> entries = new ArrayList<>();
  private final List<Due> due = new ArrayList<>();

  EventBook(List<PlantedFault> faults, int turns) {
    for (PlantedFault fault : faults) {
      switch (fault.fault()) {
        case MOLD_CHANGE ->
            due.add(
                new Due(
                    fault.firstTurn(),
                    fault.firstMold(),
                    -1,
                    EventKind.MOLD_CHANGED,
                    "K%d out, K%d in".formatted(301 + fault.firstMold(), 401 + fault.firstMold())));
        case IDLE_EVENT ->
            due.add(
                new Due(
                    fault.firstTurn(),
                    fault.firstMold(),
                    -1,
                    EventKind.NOZZLE_CLEANED,
                    NOTES.getOrDefault(EventKind.NOZZLE_CLEANED, "")));
        default -> {
          if (fault.lastTurn() < turns && !fault.endedBy().isEmpty()) {
            addEnd(fault);
          }
        }
      }
    }
  }

  private void addEnd(PlantedFault fault) {
    int turn = fault.lastTurn() + 1;
    String note = NOTES.getOrDefault(fault.endedBy(), "");
    if (fault.side() >= 0) {
      String side = fault.side() == 0 ? "A" : "B";
      due.add(new Due(turn, -1, fault.side(), fault.endedBy(), "ladle side " + side));
    } else {
      for (int i = 0; i < fault.molds(); i++) {
        due.add(new Due(turn, fault.firstMold() + i, -1, fault.endedBy(), note));
      }
    }
  }

  /** A mold comes under the ladle. */
  void pourDue(OffsetDateTime castAt, boolean isFirstTurn, int turn, int mold, int side) {
    if (due.isEmpty()) {
      return;
    }
    due.removeIf(
        entry -> {
          boolean isNow = entry.isAt(turn, mold, side);
          if (isNow) {
            boolean isBetweenCharges = isFirstTurn && entry.event().equals(EventKind.MOLD_CHANGED);
            entries.add(
                new Entry(
                    isBetweenCharges ? castAt.minusMinutes(50) : castAt.minusSeconds(15),
                    entry.mold() < 0 ? "" : Integer.toString(entry.mold() + 1),
                    entry.event(),
                    entry.note()));
          }
          return isNow;
        });
  }

  void chargeDue(OffsetDateTime at, String washBatch) {
    entries.add(new Entry(at, "", "wash_batch", washBatch));
  }

  void stopped(OffsetDateTime at, double stopSeconds) {
    entries.add(
        new Entry(at, "", EventKind.WHEEL_STOPPED, Decimal.text(stopSeconds / 60, 0) + " min"));
  }

  /** So far, by time. */
  List<Entry> entries() {
    return entries.stream().sorted(Comparator.comparing(Entry::at)).toList();
  }
}
