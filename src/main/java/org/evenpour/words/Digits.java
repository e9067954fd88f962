package org.evenpour.words;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * How a column's figures are written, on a screen and in a spreadsheet.
 *
 * @param kind what kind of number
 * @param decimals behind the point; of a share, those of its percentage
 * @param thousands stands between a count's thousands
 */
public record Digits(Kind kind, int decimals, String thousands) {

  /** As many digits as the number has: nothing is added to what was recorded, and nothing lost. */
  public static final Digits WRITTEN = new Digits(Kind.WRITTEN, 0, "");

  /** What kind of number. */
  public enum Kind {
    /** A measure. */
    PLAIN,
    /** A departure, with its sign. */
    SIGNED,
    /** A share, read in percent. */
    SHARE,
    /** A count. */
    COUNT,
    /** A number as it was recorded. */
    WRITTEN
  }

  /** Of a measure. */
  public static Digits plain(int decimals) {
    return new Digits(Kind.PLAIN, decimals, "");
  }

  /** Of a departure. */
  public static Digits signed(int decimals) {
    return new Digits(Kind.SIGNED, decimals, "");
  }

  /** Of a share. */
  public static Digits share(int decimals) {
    return new Digits(Kind.SHARE, decimals, "");
  }

  /** Of a count, its thousands set apart by this. */
  public static Digits count(String thousands) {
    return new Digits(Kind.COUNT, 0, thousands);
  }

  /**
   * A number as people read it: a true minus sign, never a negative zero, and a share, in percent,
   * that never rounds something to nothing.
   */
  public String text(double value) {
    return switch (kind) {
      case PLAIN -> number(value, decimals);
      case SIGNED -> signed(value, decimals);
      case SHARE -> percent(value, decimals) + " %";
      case COUNT -> grouped((long) value, thousands);
      case WRITTEN -> written(value);
    };
  }

  /** The same for a spreadsheet's cell (ECMA-376, 18.8.31). */
  public String format() {
    String digits = decimals == 0 ? "0" : "0." + "0".repeat(decimals);
    return switch (kind) {
      case PLAIN -> digits;
      case SIGNED -> "+" + digits + ";-" + digits + ";" + digits;
      case SHARE -> digits + "%";
      case COUNT -> "#,##0";
      case WRITTEN -> "General";
    };
  }

  /** A number with so many decimals, a true minus sign and never a negative zero. */
  public static String number(double value, int decimals) {
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return rounded.toPlainString().replace('-', '−');
  }

  /** The same with a plus before what is not nothing. */
  public static String signed(double value, int decimals) {
    String number = number(value, decimals);
    boolean zero = number.chars().allMatch(c -> c == '0' || c == '.');
    return zero || number.startsWith("−") ? number : "+" + number;
  }

  /** A share in percent that never rounds something to nothing: {@code 0.3}, {@code <0.1}. */
  public static String percent(double share) {
    return percent(share, share >= 0.1 ? 0 : 1);
  }

  private static String percent(double share, int decimals) {
    double least = Math.pow(10, -decimals);
    double percent = share * 100;
    return percent > 0 && percent < least
        ? "<" + number(least, decimals)
        : number(percent, decimals);
  }

  /** A count with its thousands set apart. */
  public static String grouped(long count, String thousands) {
    String digits = Long.toString(count);
    StringBuilder grouped = new StringBuilder(digits);
    for (int i = digits.length() - 3; i > (count < 0 ? 1 : 0); i -= 3) {
      grouped.insert(i, thousands);
    }
    return grouped.toString().replace('-', '−');
  }

  private static String written(double value) {
    return new BigDecimal(Double.toString(value))
        .stripTrailingZeros()
        .toPlainString()
        .replace('-', '−');
  }

  /** As many decimals as show two digits of a number, and never more than six. */
  public static int two(double value) {
    return showing(value, 9.5);
  }

  /** As many decimals as show about three digits of a number, and never more than six. */
  public static int three(double value) {
    return showing(value, 99.5);
  }

  private static int showing(double value, double least) {
    int decimals = 0;
    while (decimals < 6 && value != 0 && Math.abs(value) * Math.pow(10, decimals) < least) {
      decimals++;
    }
    return decimals;
  }
}
