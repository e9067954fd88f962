package org.evenpour.link;

import java.util.Arrays;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;

/**
 * A wheel's record as a table of turns by molds, so that a setting can be looked up some turns
 * before a pour in the same mold.
 */
public final class TurnGrid {
  private final WheelRecord record;
  private final int turns;
  private final int molds;
  private final int[] rowAt;
  private final int[] firstRow;
  private final boolean[] startUp;

  /**
   * @param record the wheel's rows
   * @param turnOfRow turn index of each row, from 0, never falling
   * @param turns how many turns
   * @param startUp whether each row was cast just after a stop
   */
  public TurnGrid(WheelRecord record, int[] turnOfRow, int turns, boolean[] startUp) {
    this.startUp = startUp;
    this.record = record;
    this.turns = turns;
    molds = record.molds().size();
    rowAt = new int[Math.multiplyExact(turns, molds)];
    firstRow = new int[turns];
    Arrays.fill(rowAt, -1);
    // Backward, so that a turn's first row is what stays.
    for (int i = turnOfRow.length - 1; i >= 0; i--) {
      rowAt[turnOfRow[i] * molds + record.mold().get(i)] = i;
      firstRow[turnOfRow[i]] = i;
    }
  }

  /** How many turns. */
  public int turns() {
    return turns;
  }

  /** How many molds. */
  public int molds() {
    return molds;
  }

  /** The row of a mold's pour in a turn; −1 where there is none. */
  public int row(int turn, int mold) {
    return turn < 0 || turn >= turns ? -1 : rowAt[turn * molds + mold];
  }

  /** The turn that a time falls in: the last one that began at or before it; 0 before the first. */
  public int turnAt(long atMillis) {
    int low = 0;
    int high = turns - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (record.castAtMillis().get(firstRow[middle]) <= atMillis) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** The wheel's own number of a turn. */
  public int turnNumber(int turn) {
    return record.turn().get(firstRow[turn]);
  }

  /** The ladle side of a mold's pour in a turn; 0 where none is recorded. */
  int side(int turn, int mold) {
    int row = row(turn, mold);
    return row < 0 ? 0 : Math.max(0, record.side().get(row));
  }

  /** Whether a mold's pour in a turn was start-up. */
  boolean isStartUp(int turn, int mold) {
    int row = row(turn, mold);
    return row >= 0 && startUp[row];
  }

  /** Whether a turn began after a stop. */
  boolean isStartUp(int turn) {
    return startUp[firstRow[turn]];
  }

  /** A column's value for a mold's pour; NaN where it is missing or there was no pour. */
  double value(DoubleColumn column, int turn, int mold) {
    int row = row(turn, mold);
    return row < 0 ? Double.NaN : column.get(row);
  }

  /** The wheel's rows. */
  WheelRecord record() {
    return record;
  }
}
