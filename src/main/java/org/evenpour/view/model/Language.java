package org.evenpour.view.model;

import java.util.List;
import org.evenpour.words.Remark;
import org.evenpour.words.Words;

/**
 * One language: the screens' wording and the wording of the sentences that reports use too.
 *
 * @param tag such as {@code en}
 * @param screen wording of the screens, from {@code org/evenpour/view/words.properties}
 * @param report wording of the sentences
 */
public record Language(String tag, Words screen, Words report) {

  /** The languages that there are, by tag. */
  public static final List<String> TAGS = List.of("en", "es");

  /** The language with this tag; English where there is none. */
  public static Language of(String tag) {
    String known = TAGS.contains(tag) ? tag : "en";
    return new Language(
        known,
        Words.of("org.evenpour.view.words", known),
        Words.of("org.evenpour.report.words", known));
  }

  /** A wording of the screens, filled in. */
  public String say(String key, Object... values) {
    return screen.say(key, values);
  }

  /** What is told of a file, a row or a record. */
  public String say(Remark remark) {
    return screen.say(remark);
  }
}
