package org.evenpour.casting;

/** Text that no spreadsheet takes for a formula (OWASP, <i>CSV Injection</i>). */
public final class Formulas {
  private static final String BEGINNINGS = "=+-@\t\r";

  private Formulas() {}

  /** The text, with an apostrophe before it where it begins like a formula. */
  public static String defused(String text) {
    return beginsOne(text, 0) ? "'" + text : text;
  }

  /** What {@link #defused} was given. */
  public static String asTyped(String text) {
    return text.startsWith("'") && beginsOne(text, 1) ? text.substring(1) : text;
  }

  private static boolean beginsOne(String text, int at) {
    return at < text.length() && BEGINNINGS.indexOf(text.charAt(at)) >= 0;
  }
}
