package org.evenpour.view.model;

import java.time.Instant;
import java.util.Arrays;
import java.util.function.LongFunction;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
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
 */
@SuppressWarnings("ArrayRecordComponent") // as long as the record, never changed, never compared
public record WheelRows(WheelRecord record, double[] at, int[][] rowsOfMold, boolean numbered) {

  private static final int[] NO_ROWS = new int[0];

  /** Arranges the rows. */
  public static WheelRows of(WheelRecord record) {
    int[] turn = record.turn().toArray();
    boolean numbered = true;
    for (int i = 1; i < turn.length && numbered; i++) {
      numbered = turn[i] >= turn[i - 1];
    }
    double[] at = new double[turn.length];
    arrange(record, numbered, at, 0);
    return new WheelRows(record, at, byMold(record, new int[0][], 0), numbered);
  }

  /**
   * The same record after more was cast: the rows that were there are not arranged again.
   *
   * @param later begins with these rows
   */
  WheelRows grown(WheelRecord later) {
    int known = at.length;
    if (known == later.rows()) {
      return new WheelRows(later, at, rowsOfMold, numbered);
    }
    boolean goesOn = numbered && known > 0;
    for (int i = known; i < later.rows() && goesOn; i++) {
      goesOn = later.turn().get(i) >= later.turn().get(i - 1);
    }
    if (!goesOn) {
      return of(later);
    }
    double[] longer = Arrays.copyOf(at, later.rows());
    // The last turn may have been under way.
    arrange(later, true, longer, rowAt(lastTurn()));
    return new WheelRows(later, longer, byMold(later, rowsOfMold, known), true);
  }

  /** Fills in where rows lie, from the first row of a turn on. */
  private static void arrange(WheelRecord record, boolean numbered, double[] at, int fromRow) {
    int number = fromRow == at.length ? 0 : record.turn().get(fromRow);
    int from = fromRow;
    for (int i = fromRow + 1; i <= at.length; i++) {
      if (i == at.length || record.turn().get(i) != record.turn().get(i - 1)) {
        // The last turn may be under way: its anodes lie where they will lie when it is whole.
        int ofTurn = i == at.length ? Math.max(i - from, record.molds().size()) : i - from;
        for (int k = from; k < i; k++) {
          at[k] = number + (k - from) / (double) ofTurn;
        }
        from = i;
        if (i < at.length) {
          number = numbered ? record.turn().get(i) : number + 1;
        }
      }
    }
  }

  /** The rows of each mold: those that are known, and behind them the later ones. */
  private static int[][] byMold(WheelRecord record, int[][] known, int fromRow) {
    int[] counts = new int[record.molds().size()];
    for (int i = fromRow; i < record.rows(); i++) {
      counts[record.mold().get(i)]++;
    }
    int[][] rows = new int[counts.length][];
    for (int mold = 0; mold < rows.length; mold++) {
      int[] before = mold < known.length ? known[mold] : NO_ROWS;
      rows[mold] = counts[mold] == 0 ? before : Arrays.copyOf(before, before.length + counts[mold]);
      counts[mold] = before.length;
    }
    for (int i = fromRow; i < record.rows(); i++) {
      int mold = record.mold().get(i);
      rows[mold][counts[mold]++] = i;
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

  /** Where the record ends. */
  public double last() {
    return lastTurn() + 1;
  }

  /** The last turn. */
  double lastTurn() {
    return at.length == 0 ? 0 : Math.floor(at[at.length - 1]);
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
    return low == at.length ? lastTurn() + 1 : at[low];
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
   * @param specification by the time of casting; values outside it are flagged
   */
  public Points points(
      DoubleColumn column,
      Unit unit,
      int @Nullable [] rows,
      LongFunction<Specification> specification) {
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
      if (specification.apply(record.castAtMillis().get(row)).excludes(value)) {
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
