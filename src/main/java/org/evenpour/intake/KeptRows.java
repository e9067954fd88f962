package org.evenpour.intake;

import java.util.Arrays;
import java.util.List;

/**
 * The rows of a block that are kept, while its further rows are judged; then they are taken into
 * their wheels' records column by column. Owned by the thread that reads the log.
 */
final class KeptRows {
  private final List<WheelIntake> wheels;

  /** How many there are. */
  int size;

  /** The wheel's index of each. */
  int[] wheel = new int[16];

  /** The row's index in the record of its wheel. */
  int[] recordRow = new int[16];

  /** The row's index in the block. */
  int[] blockRow = new int[16];

  long[] line = new long[16];
  private long[] millis = new long[16];
  private int[] turn = new int[16];
  private int[] mold = new int[16];
  private long[] place = new long[16];

  /**
   * @param wheels by their indices; more may come
   */
  KeptRows(List<WheelIntake> wheels) {
    this.wheels = wheels;
  }

  /** Keeps one more. */
  void add(
      WheelIntake of, int row, long rowLine, long rowMillis, int rowTurn, int rowMold, long at) {
    if (size == wheel.length) {
      grow();
    }
    wheel[size] = of.index;
    recordRow[size] = of.rowsKept++;
    blockRow[size] = row;
    line[size] = rowLine;
    millis[size] = rowMillis;
    turn[size] = rowTurn;
    mold[size] = rowMold;
    place[size] = at;
    size++;
  }

  private void grow() {
    int capacity = 2 * size;
    wheel = Arrays.copyOf(wheel, capacity);
    recordRow = Arrays.copyOf(recordRow, capacity);
    blockRow = Arrays.copyOf(blockRow, capacity);
    line = Arrays.copyOf(line, capacity);
    millis = Arrays.copyOf(millis, capacity);
    turn = Arrays.copyOf(turn, capacity);
    mold = Arrays.copyOf(mold, capacity);
    place = Arrays.copyOf(place, capacity);
  }

  /** Rows one after another of one wheel. */
  interface Run {
    /**
     * @param recordRow the first one's index in the wheel's record
     * @param from the first one
     * @param to the one after the last
     */
    void take(WheelIntake of, int recordRow, int from, int to);
  }

  /** All rows, wheel by wheel where these take turns. */
  void runs(Run each) {
    for (int from = 0; from < size; ) {
      int to = from + 1;
      while (to < size && wheel[to] == wheel[from]) {
        to++;
      }
      each.take(wheels.get(wheel[from]), recordRow[from], from, to);
      from = to;
    }
  }

  /** Takes where and when they were cast into the records. */
  void addTo() {
    runs((of, row, from, to) -> of.add(millis, turn, mold, place, from, to));
  }
}
