package org.evenpour.intake;

import java.nio.charset.StandardCharsets;

/** Decimal numbers out of a cell's bytes. */
final class DecimalReader {

  /** The cell was empty. */
  static final double MISSING = Double.NaN;

  /** The cell holds something that is no finite decimal number. */
  static final double UNREADABLE = Double.POSITIVE_INFINITY;

  /**
   * No reading is larger, in whatever unit: a choice. Beyond it a double hardly tells whole numbers
   * apart, and the squares of sums of squares would in the end be infinite.
   */
  static final double LARGEST = 1e15;

  /** None but 0 is smaller: its fourth power, which a test of a straight line needs, would be 0. */
  static final double SMALLEST = 1e-75;

  private static final double[] POWERS_OF_TEN = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  private static final long EXACT_LIMIT = 1L << 53;
  private static final long DIGITS_LIMIT = Long.MAX_VALUE / 10 - 1;
  private static final int EXPONENT_LIMIT = 100_000;

  private DecimalReader() {}

  /** Whether a gauge may have read it. */
  static boolean isReading(double number) {
    double size = Math.abs(number);
    return size <= LARGEST && (size >= SMALLEST || size == 0);
  }

  /**
   * Reads {@code [+-]digits[.digits][e[+-]digits]}, correctly rounded.
   *
   * <p>A number whose digits make an integer of at most 2⁵³ and whose power of ten is at most 10²²
   * is one exact double times or divided by another, and so is rounded once (Clinger 1990, <i>How
   * to read floating point numbers accurately</i>, its fast case); any other goes through {@link
   * Double#parseDouble}.
   *
   * @param bytes ASCII
   * @param from index of the cell's first byte, blanks taken off
   * @param to index after its last
   * @param decimalComma whether a comma may stand for the decimal point
   * @return {@link #MISSING} for an empty cell, {@link #UNREADABLE} for anything that is no number
   *     and for numbers too large for a double
   */
  static double read(byte[] bytes, int from, int to, boolean decimalComma) {
    if (from == to) {
      return MISSING;
    }
    int at = from;
    boolean negative = bytes[at] == '-';
    if (negative || bytes[at] == '+') {
      at++;
    }
    long digits = 0;
    int digitCount = 0;
    int fraction = 0;
    boolean point = false;
    boolean large = false;
    for (; at < to; at++) {
      int b = bytes[at];
      int digit = b - '0';
      if (digit >= 0 && digit <= 9) {
        digitCount++;
        if (digits > DIGITS_LIMIT) {
          large = true;
        } else {
          digits = digits * 10 + digit;
        }
        if (point) {
          fraction++;
        }
      } else if (!point && (b == '.' || (decimalComma && b == ','))) {
        point = true;
      } else {
        break;
      }
    }
    if (digitCount == 0) {
      return UNREADABLE;
    }
    int exponent = 0;
    if (at < to) {
      if ((bytes[at] | 0x20) != 'e') {
        return UNREADABLE;
      }
      at++;
      boolean down = at < to && bytes[at] == '-';
      if (at < to && (down || bytes[at] == '+')) {
        at++;
      }
      if (at == to) {
        return UNREADABLE;
      }
      for (; at < to; at++) {
        int digit = bytes[at] - '0';
        if (digit < 0 || digit > 9) {
          return UNREADABLE;
        }
        exponent = Math.min(EXPONENT_LIMIT, exponent * 10 + digit);
      }
      if (down) {
        exponent = -exponent;
      }
    }
    int power = exponent - fraction;
    if (large || digits > EXACT_LIMIT || power < -22 || power > 22) {
      return general(bytes, from, to);
    }
    double value = power < 0 ? digits / POWERS_OF_TEN[-power] : digits * POWERS_OF_TEN[power];
    return negative ? -value : value;
  }

  private static double general(byte[] bytes, int from, int to) {
    String text = new String(bytes, from, to - from, StandardCharsets.US_ASCII).replace(',', '.');
    double value = Double.parseDouble(text);
    return Double.isInfinite(value) ? UNREADABLE : value;
  }
}
