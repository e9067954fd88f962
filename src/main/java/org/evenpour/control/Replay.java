package org.evenpour.control;

import java.util.List;
import org.evenpour.casting.WheelRecord;

/** Runs a whole record through the engine, one anode at a time, as a live feed would. */
public final class Replay {
  private Replay() {}

  /**
   * Feeds every anode and every mold change to the monitor, and closes the last turn.
   *
   * @param record the wheel's rows
   * @param values of the monitored characteristic, one per row
   * @param changes in the order of time
   * @param monitor takes them in
   */
  public static void run(
      WheelRecord record, double[] values, List<MoldChange> changes, SuccessiveMonitor monitor) {
    int next = 0;
    for (int i = 0; i < values.length; i++) {
      long at = record.castAtMillis().get(i);
      // Changes first: an anode of that very time is the new mold's.
      while (next < changes.size() && changes.get(next).atMillis() <= at) {
        monitor.moldChanged(changes.get(next++));
      }
      monitor.accept(
          at,
          record.turn().get(i),
          record.mold().get(i),
          record.side().get(i),
          record.serial().get(i),
          values[i]);
    }
    monitor.finish();
  }
}
