package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.words.Words;

/**
 * What keeps people safe, in the reader's language. It stands before the deed: before what to look
 * at, a window, a trial, the work on a mold.
 *
 * @param words the language
 * @param advice which settings and events may leave a mold wet or lead to work on it, and what the
 *     plant adds
 */
public record Cautions(Words words, Advice advice) {
  /** All that is to be minded of a setting or an event; empty where nothing is. */
  public List<String> of(String name, String group) {
    List<String> all = new ArrayList<>();
    if (advice.wetsMold(name, group)) {
      all.add(words.say("dry"));
    }
    if (advice.isMoldWork(name, group)) {
      all.add(words.say("mold_work"));
    }
    all.addAll(advice.cautions(name, group, words.locale().getLanguage()));
    return all;
  }

  /** The same of a setting whose group the report knows. */
  public List<String> of(AuditReport report, String wheel, String setting) {
    String group =
        report.settings().stream()
            .filter(one -> one.wheel().equals(wheel) && one.name().equals(setting))
            .map(AuditReport.SettingReport::group)
            .findFirst()
            .orElse("");
    return of(setting, group);
  }

  /** What is to be minded before a mold is replaced, leveled or dressed, or looked at closely. */
  public List<String> ofMoldWork() {
    return List.of(words.say("dry"), words.say("mold_work"));
  }
}
