package org.evenpour.report.table;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.WheelRecord;
import org.jspecify.annotations.Nullable;

/**
 * Where a spreadsheet's formulas find the anodes of each wheel, so that it can count anew how many
 * lie outside a limit.
 *
 * @param rows how many anodes stand in the table of a wheel; empty where they are not to be counted
 * @param keys of those tables
 */
public record AnodeCells(Map<String, Integer> rows, Map<String, String> keys) {
  /** Nothing is counted anew. */
  public static final AnodeCells NONE = new AnodeCells(Map.of(), Map.of());

  /**
   * More are not counted by formulas: a choice. Counting 100,000 anodes for each mold and group
   * takes a spreadsheet some seconds whenever a limit changes.
   */
  public static final int MOST = 100_000;

  /** Labels that a criterion takes for what they are; others may be wildcards or comparisons. */
  private static final Pattern PLAIN = Pattern.compile("0|[1-9][0-9]{0,8}|[A-Za-z][A-Za-z0-9]*");

  /** Columns that a formula can name; a plant's own may hold anything. */
  private static final Pattern COLUMN = Pattern.compile("[a-z][a-z_]*");

  /** Copies the maps. */
  public AnodeCells {
    rows = Map.copyOf(rows);
    keys = Map.copyOf(keys);
  }

  /** Of a record, whose anodes are printed too. */
  public static AnodeCells of(@Nullable CastingRecord record) {
    if (record == null) {
      return NONE;
    }
    Map<String, Integer> rows = new LinkedHashMap<>();
    Map<String, String> keys = new LinkedHashMap<>();
    for (int i = 0; i < record.wheels().size(); i++) {
      WheelRecord wheel = record.wheels().get(i);
      if (wheel.rows() > 0 && wheel.rows() <= MOST) {
        rows.put(wheel.wheel(), wheel.rows());
        keys.put(wheel.wheel(), key(i));
      }
    }
    return new AnodeCells(rows, keys);
  }

  /** The key of the table of anodes of a wheel. */
  public static String key(int wheel) {
    return wheel == 0 ? "anodes" : "anodes_" + (wheel + 1);
  }

  /**
   * A formula that counts the anodes of one label beyond limits; null where it cannot be counted
   * so.
   *
   * @param characteristic key of the column of values
   * @param by key of the column of labels
   * @param label one of them
   * @param cell of this row that holds it
   * @param lower name of the lower limit; null without
   * @param upper name of the upper limit; null without
   */
  @Nullable String outside(
      String wheel,
      String characteristic,
      String by,
      String label,
      String cell,
      @Nullable String lower,
      @Nullable String upper) {
    Integer all = rows.get(wheel);
    if (all == null
        || !COLUMN.matcher(characteristic).matches()
        || !PLAIN.matcher(label).matches()
        || (lower == null && upper == null)) {
      return null;
    }
    String head = "COUNTIFS(" + range(wheel, by, all) + "," + cell + ",";
    String values = range(wheel, characteristic, all);
    String below = lower == null ? "" : head + values + ",\"<\"&" + lower + ")";
    String above = upper == null ? "" : head + values + ",\">\"&" + upper + ")";
    return below.isEmpty() ? above : above.isEmpty() ? below : below + "+" + above;
  }

  private String range(String wheel, String key, int all) {
    return "{" + keys.get(wheel) + "/" + key + ":0-" + (all - 1) + "}";
  }
}
