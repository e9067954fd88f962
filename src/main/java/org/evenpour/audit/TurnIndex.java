package org.evenpour.audit;

import java.util.Arrays;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.LongColumn;
import org.evenpour.control.StartUp;

/**
 * The turns of a wheel's record numbered through from 0, and which anodes were start-up.
 *
 * @param ofRow turn index of each row
 * @param mold index of each row's mold
 * @param startUp whether each row was cast just after a stop
 * @param turns how many turns
 * @param turnMinutes the usual time from one turn's first anode to the next one's; 1 where there is
 *     only one turn
 */
@SuppressWarnings("ArrayRecordComponent") // one per audit, shared by its parts, never changed
record TurnIndex(int[] ofRow, int[] mold, boolean[] startUp, int turns, double turnMinutes) {

  static TurnIndex of(WheelRecord record) {
    int rows = record.rows();
    int[] turn = record.turn().toArray();
    LongColumn at = record.castAtMillis();
    StartUp start = new StartUp(record.profile(), record.molds().size());
    boolean[] startUp = new boolean[rows];
    double[] minutes = new double[1024];
    int measured = 0;
    int index = -1;
    long began = 0;
    int previous = 0;
    for (int i = 0; i < rows; i++) {
      startUp[i] = start.isStartUp(at.get(i));
      if (i == 0 || turn[i] != previous) {
        if (i > 0 && measured < minutes.length) {
          minutes[measured++] = (at.get(i) - began) / 60_000.0;
        }
        previous = turn[i];
        began = at.get(i);
        index++;
      }
      turn[i] = index;
    }
    double[] known = Arrays.copyOf(minutes, measured);
    Arrays.sort(known);
    // The median, for a stop makes one turn as long as a night.
    double usual = measured == 0 ? 1 : known[measured / 2];
    return new TurnIndex(turn, record.mold().toArray(), startUp, index + 1, usual > 0 ? usual : 1);
  }
}
