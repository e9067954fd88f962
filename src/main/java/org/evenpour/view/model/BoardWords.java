package org.evenpour.view.model;

import java.time.Duration;
import java.util.Locale;
import org.evenpour.words.Remark;
import org.evenpour.words.Words;

/**
 * What the board says, in one language.
 *
 * @param board wording of the board, from {@code org/evenpour/view/board.properties}
 * @param report wording of the sentences
 */
record BoardWords(Words board, Words report) {

  static BoardWords of(Language language) {
    return new BoardWords(Words.of("org.evenpour.view.board", language.tag()), language.report());
  }

  String say(String key, Object... values) {
    return board.say(key, values);
  }

  /** What is told of a file, a row or a record. */
  String say(Remark remark) {
    return report.say(remark);
  }

  /** How long something lasts, in the two largest units that matter. */
  String length(Duration length) {
    long seconds = Math.max(0, length.toSeconds());
    if (seconds < 60) {
      return say("length.seconds", seconds);
    }
    if (seconds < 3600) {
      return say("length.minutes", seconds / 60, two(seconds % 60));
    }
    if (seconds < 48 * 3600) {
      return say("length.hours", seconds / 3600, two(seconds / 60 % 60));
    }
    return say("length.days", seconds / 86_400, seconds / 3600 % 24);
  }

  private static String two(long number) {
    return number < 10 ? "0" + number : Long.toString(number);
  }

  static String capital(String text) {
    if (text.isEmpty()) {
      return text;
    }
    int end = text.offsetByCodePoints(0, 1);
    return text.substring(0, end).toUpperCase(Locale.ROOT) + text.substring(end);
  }
}
