package org.evenpour.report.workbook;

import java.util.regex.Pattern;
import org.evenpour.report.WellFormed;

/** Text as a cell can hold it. */
final class Texts {

  /** A cell holds no more; says ECMA-376 and every program that reads it. */
  static final int LONGEST = 32_767;

  private static final Pattern ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");
  private static final Pattern NUMBER = Pattern.compile("0|[1-9][0-9]{0,8}");

  private Texts() {}

  /**
   * The text without what XML cannot hold, cut where it is too long for a cell; what only looks
   * like an escape of ECMA-376 ({@code _x0041_}) is kept as it is written.
   */
  static String cell(String text) {
    String lines = WellFormed.text(text).replace("\r\n", "\n").replace('\r', '\n');
    StringBuilder kept = new StringBuilder(lines.length());
    for (int i = 0; i < lines.length(); i++) {
      char c = lines.charAt(i);
      boolean strange = (c < ' ' && c != '\n' && c != '\t') || c == '\uFFFE' || c == '\uFFFF';
      kept.append(strange ? '\uFFFD' : c);
    }
    return cut(ESCAPE.matcher(cut(kept.toString())).replaceAll("_x005F_"));
  }

  private static String cut(String text) {
    if (text.length() <= LONGEST) {
      return text;
    }
    int end = LONGEST - 1;
    return text.substring(0, Character.isHighSurrogate(text.charAt(end - 1)) ? end - 1 : end) + "…";
  }

  /** Whether a label is a plain number, so that it sorts as one; {@code 007} is not. */
  static boolean isNumber(String label) {
    return NUMBER.matcher(label).matches();
  }
}
