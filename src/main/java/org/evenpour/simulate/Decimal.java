package org.evenpour.simulate;

/** Numbers as text with a fixed number of decimals, the same under every locale. */
final class Decimal {
  private static final long[] POWERS = {1, 10, 100, 1000};

  private Decimal() {}

  /** The value to so many decimals, 0 to 3, half up. */
  static double rounded(double value, int decimals) {
    return (double) Math.round(value * POWERS[decimals]) / POWERS[decimals];
  }

  /**
   * The value with so many decimals, 0 to 3, half up: {@code 389.70} for 389.7 and 2; empty for
   * NaN.
   */
  static String text(double value, int decimals) {
    if (Double.isNaN(value)) {
      return "";
    }
    long scaled = Math.round(value * POWERS[decimals]);
    if (decimals == 0) {
      return Long.toString(scaled);
    }
    long whole = Math.abs(scaled) / POWERS[decimals];
    long part = Math.abs(scaled) % POWERS[decimals];
    String digits = Long.toString(POWERS[decimals] + part).substring(1);
    return (scaled < 0 ? "-" : "") + whole + "." + digits;
  }
}
