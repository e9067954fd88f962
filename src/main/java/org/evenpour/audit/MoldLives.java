package org.evenpour.audit;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.MoldChange;

/**
 * The latest turns of a record, each anode under the mold as it was: a position that got a new
 * mold, or whose mold was dressed, begins a new life.
 *
 * @param from index of the first row
 * @param turn turn of each row, from 0
 * @param life of each row, from 0; lives are numbered in the order in which they began
 * @param latest the last life of each mold; −1 where it did not cast
 * @param before the life before the last one; −1 where there is none
 * @param casts on each mold since its last life began, the whole record counted
 * @param onMold casts on each mold since it was new; −1 where it was not changed in this record
 */
@SuppressWarnings("ArrayRecordComponent") // one per audit, shared by its parts, never changed
record MoldLives(
    int from,
    int[] turn,
    int[] life,
    int lives,
    int[] latest,
    int[] before,
    long[] casts,
    long[] onMold) {

  /**
   * As far back as molds are judged by: longer than a mold lives, so that older turns tell of other
   * molds. A choice.
   */
  static final int LATEST_TURNS = 2000;

  /**
   * @param changes when molds were changed or dressed, in the order of time
   * @param dressings those of them that left the mold in its place
   */
  static MoldLives of(
      WheelRecord record, TurnIndex turns, List<MoldChange> changes, Set<MoldChange> dressings) {
    int rows = record.rows();
    int molds = record.molds().size();
    int first = 0;
    while (first < rows && turns.ofRow()[first] < turns.turns() - LATEST_TURNS) {
      first++;
    }
    int[] turn = new int[rows - first];
    int[] life = new int[rows - first];
    int[] latest = filled(molds);
    int[] before = filled(molds);
    int[] serial = filled(molds);
    boolean[] began = new boolean[molds];
    long[] casts = new long[molds];
    long[] onMold = new long[molds];
    Arrays.fill(onMold, -1);
    int lives = 0;
    int next = 0;
    for (int i = 0; i < rows; i++) {
      long at = record.castAtMillis().get(i);
      for (; next < changes.size() && changes.get(next).atMillis() <= at; next++) {
        MoldChange change = changes.get(next);
        began[change.mold()] = true;
        if (!dressings.contains(change)) {
          onMold[change.mold()] = 0;
        }
      }
      int m = record.mold().get(i);
      int its = record.serial().size() == rows ? record.serial().get(i) : -1;
      boolean other = its >= 0 && serial[m] >= 0 && its != serial[m];
      if (other) {
        onMold[m] = 0;
      }
      if (began[m] || other) {
        // A life begins with its first cast and not with the event: both may tell of one change.
        began[m] = false;
        casts[m] = 0;
        if (latest[m] >= 0) {
          before[m] = latest[m];
          latest[m] = -1;
        }
      }
      // A serial that is not written down now and then is no change.
      serial[m] = its >= 0 ? its : serial[m];
      casts[m]++;
      onMold[m] += onMold[m] >= 0 ? 1 : 0;
      if (i >= first) {
        if (latest[m] < 0) {
          latest[m] = lives++;
        }
        turn[i - first] = turns.ofRow()[i];
        life[i - first] = latest[m];
      }
    }
    int start = turn.length == 0 ? 0 : turn[0];
    for (int i = 0; i < turn.length; i++) {
      turn[i] -= start;
    }
    return new MoldLives(first, turn, life, lives, latest, before, casts, onMold);
  }

  private static int[] filled(int n) {
    int[] none = new int[n];
    Arrays.fill(none, -1);
    return none;
  }
}
