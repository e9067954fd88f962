package org.evenpour.view.screen;

import org.evenpour.report.Sentences;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;

/** One line on what is open. */
final class WindowText {
  private WindowText() {}

  static String of(OpenedLog log, Look look) {
    var its = log.report().log();
    var words = look.language().screen();
    Sentences sentences = Sentences.of(log.report(), look.language().report(), log.zone());
    return look.say(
        "window.open",
        String.join(", ", its.files()),
        String.join(", ", its.wheels()),
        words.count(its.rowsKept()),
        its.turns(),
        sentences.time(its.firstCastAt()),
        sentences.time(its.lastCastAt()));
  }
}
