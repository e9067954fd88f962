package org.evenpour.report;

import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import org.evenpour.casting.Remark;

/**
 * The reports' wording in one language, from {@code words.properties}.
 *
 * @param bundle the wording
 */
public record Words(ResourceBundle bundle) {

  /** English, the wording that every other language is translated from. */
  public static Words english() {
    return new Words(
        ResourceBundle.getBundle(
            "org.evenpour.report.words",
            Locale.ROOT,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /** The language that names of days and months are in. */
  public Locale locale() {
    return Locale.forLanguageTag(say("language"));
  }

  /** Whether there is such a wording. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /**
   * A wording, filled in.
   *
   * @param values stand where {@code {0}}, {@code {1}}, … stand; braces within them are kept
   * @throws MissingResourceException if there is no such wording
   */
  public String say(String key, Object... values) {
    return Remark.filled(bundle.getString(key), values);
  }

  /** What is told of a file, a row or a record. */
  public String say(Remark remark) {
    return remark.in(locale());
  }

  /** A count with its thousands set apart. */
  public String count(long count) {
    String digits = Long.toString(count);
    StringBuilder grouped = new StringBuilder(digits);
    for (int i = digits.length() - 3; i > (count < 0 ? 1 : 0); i -= 3) {
      grouped.insert(i, say("thousands"));
    }
    return grouped.toString();
  }

  /** {@code 7}, {@code 7 and 8}, {@code 7, 8 and 9}. */
  public String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " " + say("and") + " " + items.get(last);
  }

  /** What people call a characteristic. */
  public String characteristic(String name) {
    String key = "name." + name;
    return has(key) ? say(key) : name.replace('_', ' ');
  }

  /** The same within a sentence, with the article that its language wants. */
  public String theCharacteristic(String name) {
    String key = "the." + name;
    return has(key) ? say(key) : say("the.other", characteristic(name));
  }
}
