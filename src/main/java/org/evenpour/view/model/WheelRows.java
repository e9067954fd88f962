package org.evenpour.view.model;

import java.time.Instant;
import java.util.Arrays;
import org.evenpour.audit.AuditReport;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.Points;
import org.jspecify.annotations.Nullable;

/**
 * The rows of one wheel as they lie along its turns: turn 12 goes from 12 to 13, and its anodes lie
 * between in their order.
 *
 * @param record the rows
 * @param at where each row lies; ascending
 * @param rowsOfMold the rows of each mold, ascending
 * @param numbered whether {@code at} counts turns as the log numbers them; if the log starts anew,
 *     turns are numbered through
 * @param since what was cast after these rows
 */
@SuppressWarnings("ArrayRecordComponent") // as long as the record, never changed, never compared
public record WheelRows(
    WheelRecord record, double[] at, int[][] rowsOfMold, boolean numbered, Since since) {

  private static final int[] NO_ROWS = new int[0];

  /** Arranges the rows. */
  public static WheelRows of(WheelRecord record, AuditReport report) {
    int[] turn = record.turn().toArray();
    boolean numbered = true;
    for (int i = 1; i < turn.length && numbered; i++) {
      numbered = turn[i] >= turn[i - 1];
    }
    double[] at = new double[turn.length];
    int number = turn.length == 0 ? 0 : turn[0];
    int from = 0;
    for (int i = 1; i <= turn.length; i++) {
      if (i == turn.length || turn[i] != turn[i - 1]) {
        // The last turn may be under way: its anodes lie where they will lie when it is whole.
        int ofTurn = i == turn.length ? Math.max(i - from, record.molds().size()) : i - from;
        for (int k = from; k < i; k++) {
          at[k] = number + (k - from) / (double) ofTurn;
        }
        from = i;
        if (i < turn.length) {
          number = numbered ? turn[i] : number + 1;
        }
      }
    }
    return new WheelRows(record, at, byMold(record), numbered, Since.NOTHING);
  }

  private static int[][] byMold(WheelRecord record) {
    int[] mold = record.mold().toArray();
    int[] counts = new int[record.molds().size()];
    for (int one : mold) {
      counts[one]++;
    }
    int[][] rows = new int[counts.length][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new int[counts[i]];
      counts[i] = 0;
    }
    for (int i = 0; i < mold.length; i++) {
      rows[mold[i]][counts[mold[i]]++] = i;
    }
    return rows;
  }

  /** The rows of a mold. */
  public int[] rows(String mold) {
    int index = record.molds().find(mold);
    return index < 0 ? NO_ROWS : rowsOfMold[index];
  }

  /** Where the record begins. */
  public double first() {
    return at.length == 0 ? 0 : Math.floor(at[0]);
  }

  /** Where what is known ends: the record, or what was cast since. */
  public double last() {
    return since.anodes().isEmpty() ? lastTurnRead() + 1 : Math.floor(since.last().at()) + 1;
  }

  /** The last turn of which rows were read. */
  public double lastTurnRead() {
    return at.length == 0 ? 0 : Math.floor(at[at.length - 1]);
  }

  /** How many rows the last turn that was read has. */
  int ofLastTurn() {
    return at.length - rowAt(lastTurnRead());
  }

  /** The same with what an engine has heard since; the very same where that is nothing. */
  WheelRows grown(WheelNow now) {
    Since grown = at.length == 0 ? since : since.with(now, this);
    return grown == since ? this : new WheelRows(record, at, rowsOfMold, numbered, grown);
  }

  /** Where a turn of a report lies. */
  public double place(int turn, Instant when) {
    return numbered ? turn : place(when);
  }

  /** Where a time lies. */
  public double place(Instant when) {
    long millis = when.toEpochMilli();
    int low = 0;
    int high = at.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (record.castAtMillis().get(middle) < millis) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low == at.length ? lastTurnRead() + 1 : at[low];
  }

  /** The first row at or after a place. */
  public int rowAt(double place) {
    return Points.firstAtLeast(at, place);
  }

  /** The characteristic with this name; null where the record has none. */
  public @Nullable Characteristic characteristic(String name) {
    return record.characteristics().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElse(null);
  }

  /**
   * A column along the turns.
   *
   * @param column one value per row
   * @param unit to show it in; values are taken to be in the unit that figures are computed in
   * @param rows ascending; null = all
   * @param specification values outside it are flagged
   */
  public Points points(
      DoubleColumn column, Unit unit, int @Nullable [] rows, Specification specification) {
    int size = rows == null ? at.length : rows.length;
    double[] x = rows == null ? at : new double[size];
    double[] y = new double[size];
    int[] flagged = new int[16];
    int flags = 0;
    for (int i = 0; i < size; i++) {
      int row = rows == null ? i : rows[i];
      if (rows != null) {
        x[i] = at[row];
      }
      double value = column.get(row);
      if (specification.excludes(value)) {
        if (flags == flagged.length) {
          flagged = Arrays.copyOf(flagged, flags * 2);
        }
        flagged[flags++] = i;
      }
      y[i] = unit.fromCanonical(value);
    }
    return new Points(x, y, Arrays.copyOf(flagged, flags));
  }
}
