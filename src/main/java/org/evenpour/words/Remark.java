package org.evenpour.words;

import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * What a reader is told of a file, a row or a record, to be said in the reader's language: which
 * wording, and what stands in its blanks. The wordings are in {@code remarks.properties} beside
 * this class, one file for each language.
 *
 * @param key of the wording
 * @param values stand where {@code {0}}, {@code {1}}, … stand; a remark among them is said in the
 *     same language, all else stands as it is
 */
public record Remark(String key, List<Object> values) {
  private static final ResourceBundle ENGLISH =
      Words.wordings("org.evenpour.words.remarks", Locale.ROOT);

  /** Copies the values. */
  public Remark {
    values = List.copyOf(values);
  }

  /** A wording with its values. */
  public static Remark of(String key, Object... values) {
    return new Remark(key, List.of(values));
  }

  /** A text that is the same in every language, such as a name or what a system says. */
  public static Remark verbatim(String text) {
    return of("verbatim", text);
  }

  /**
   * This remark in a language; in English where the language is not known.
   *
   * @throws MissingResourceException if there is no such wording
   */
  public String in(Locale language) {
    return in(Words.wordings("org.evenpour.words.remarks", language));
  }

  private String in(ResourceBundle wordings) {
    return filled(
        wordings.getString(key),
        values.stream()
            .map(value -> value instanceof Remark remark ? remark.in(wordings) : value)
            .toArray());
  }

  /** This remark in English, as logs, reports and the command line have it. */
  @Override
  public String toString() {
    return in(ENGLISH);
  }

  /**
   * A wording with its blanks, {@code {0}} to {@code {10}} and further, filled in; braces within
   * the values are kept, and so is a brace that is no blank.
   */
  public static String filled(String wording, Object... values) {
    StringBuilder filled = new StringBuilder(wording.length() + 32);
    int at = 0;
    while (at < wording.length()) {
      char c = wording.charAt(at);
      int end = at + 1;
      int number = 0;
      while (c == '{' && end < wording.length() && isDigit(wording.charAt(end))) {
        number = 10 * number + wording.charAt(end) - '0';
        end++;
      }
      if (end > at + 1 && end < wording.length() && wording.charAt(end) == '}') {
        filled.append(values[number]);
        at = end + 1;
      } else {
        filled.append(c);
        at++;
      }
    }
    return filled.toString();
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
