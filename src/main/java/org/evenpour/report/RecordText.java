package org.evenpour.report;

import java.util.List;
import org.evenpour.findings.AuditReport;
import org.evenpour.words.Words;

/**
 * Says of what record figures are.
 *
 * @param log what was read
 */
public record RecordText(Sentences sentences, AuditReport.Log log) {

  /** The wheels by name; <i>one wheel</i> where it has none. */
  public String wheels() {
    List<String> names = names();
    return switch (names.size()) {
      case 0 -> words().say("summary.one");
      case 1 -> words().say("summary.wheel", names.get(0));
      default -> words().say("summary.wheels", words().list(names));
    };
  }

  /** The names that wheels have. */
  public List<String> names() {
    return log.wheels().stream().filter(name -> !name.isEmpty()).toList();
  }

  /** From when to when, after what it is of. */
  public String period(String of) {
    return words()
        .say(
            "summary.period",
            of,
            sentences.date(log.firstCastAt()),
            sentences.date(log.lastCastAt()),
            sentences.zoneName());
  }

  /** How many anodes, molds and turns, and how many rows were read and set aside. */
  public String counts() {
    return words()
        .say(
            "summary.counts",
            words().count(log.rowsKept()),
            words().count(log.molds()),
            words().count(log.turns()),
            words().count(log.rowsRead()),
            words().count(log.rowsSetAside()));
  }

  private Words words() {
    return sentences.words();
  }
}
