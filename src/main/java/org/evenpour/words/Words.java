package org.evenpour.words;

import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * A wording in one language.
 *
 * @param bundle the wording
 */
public record Words(ResourceBundle bundle) {

  /** English, the wording that every other language is translated from. */
  public static Words english() {
    return of("org.evenpour.report.words", "en");
  }

  /**
   * The wording of a bundle.
   *
   * @param tag of a language, such as {@code en}
   */
  public static Words of(String bundle, String tag) {
    return new Words(wordings(bundle, Locale.forLanguageTag(tag)));
  }

  /** A bundle in a language; English, which lies at its root, where it has no other. */
  static ResourceBundle wordings(String bundle, Locale language) {
    return ResourceBundle.getBundle(
        bundle,
        language.getLanguage().equals("en") ? Locale.ROOT : language,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
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
    return Digits.grouped(count, say("thousands"));
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
    return named("name.", name);
  }

  /** The same within a sentence, with the article that its language wants. */
  public String theCharacteristic(String name) {
    String key = "the." + name;
    return has(key) ? say(key) : say("the.other", characteristic(name));
  }

  /**
   * A profile's own name for a part of the work: in this language if it is known, else as it is.
   */
  public String group(String name) {
    return named("of_group.", name);
  }

  /** What people call a place where thickness is measured. */
  public String point(String name) {
    return named("point.", name);
  }

  private String named(String kind, String name) {
    return has(kind + name) ? say(kind + name) : name.replace('_', ' ');
  }

  /** The first letter large. */
  public static String capital(String text) {
    if (text.isEmpty()) {
      return text;
    }
    int end = text.offsetByCodePoints(0, 1);
    return text.substring(0, end).toUpperCase(Locale.ROOT) + text.substring(end);
  }
}
