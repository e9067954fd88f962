package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.report.Reasoning;
import org.evenpour.report.table.CauseTable;
import org.jspecify.annotations.Nullable;

/**
 * A possible cause of a signal.
 *
 * @param cause what it is
 * @param link what the audit found of it; null where it is none of the links
 * @param mark what a person said of it; null where nobody did
 */
public record LinkRow(Cause cause, @Nullable Link link, @Nullable CauseMark mark) {

  /** Causes that people named beside a signal's links, then the links, best first. */
  public static List<LinkRow> of(Desk desk, Signal signal) {
    CausesReport causes = desk.report().causes();
    List<LinkRow> rows = new ArrayList<>();
    for (CauseMark mark : causes.besideLinks(signal)) {
      rows.add(new LinkRow(mark.cause(), null, mark));
    }
    for (Link link : signal.links()) {
      rows.add(new LinkRow(link.cause(), link, causes.of(signal, link)));
    }
    return rows;
  }

  /** By which it is the same one again. */
  public String key() {
    return cause.key();
  }

  /** What people call it, with a capital. */
  public String name(Desk desk) {
    return CauseTable.name(desk.sentences(), cause);
  }

  /** Right or wrong, as sign and word; empty where nobody said so. */
  String verdict(Desk desk) {
    return mark == null
        ? ""
        : desk.look()
            .language()
            .report()
            .say("mark.verdict." + mark.verdict().name().toLowerCase(Locale.ROOT));
  }

  /** Why it stands where it stands, and what was said of it. */
  public String reasoning(Desk desk, Signal signal) {
    Reasoning reasoning = new Reasoning(desk.sentences());
    String found = link == null ? "" : reasoning.of(signal, link);
    String said = reasoning.mark(mark);
    return found.isEmpty() ? said : said.isEmpty() ? found : found + " " + said;
  }
}
