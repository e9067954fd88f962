package org.evenpour.report.json;

import java.io.IOException;
import org.evenpour.casting.CauseMark;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.CausesReport.Counted;

/**
 * What people said of causes, within the JSON report. Where nobody said anything, nothing is
 * written.
 */
final class JsonCauses {
  private final JsonFields out;
  private final CausesReport causes;

  JsonCauses(JsonFields out, CausesReport causes) {
    this.out = out;
    this.causes = causes;
  }

  /** Within a link. */
  void link(Signal signal, Link link) throws IOException {
    CauseMark mark = causes.of(signal, link);
    if (mark != null) {
      out.startLine("mark");
      said(mark);
      out.endLine();
    }
  }

  /** Within a signal: causes that are none of its links. */
  void besideLinks(Signal signal) throws IOException {
    var beside = causes.besideLinks(signal);
    if (!beside.isEmpty()) {
      out.objectLines(
          "other_causes",
          beside,
          mark -> {
            cause(mark.cause());
            said(mark);
          });
    }
  }

  private void cause(CauseMark.Cause cause) throws IOException {
    out.text("kind", JsonFields.name(cause.kind()));
    out.text("cause", cause.name());
  }

  private void said(CauseMark mark) throws IOException {
    out.text("verdict", JsonFields.name(mark.verdict()));
    out.text("who", mark.who());
    out.text("why", mark.why());
    out.instant("at", mark.at());
  }

  /** After everything else. */
  void all() throws IOException {
    if (causes.read() == 0) {
      return;
    }
    out.startObject("causes");
    out.number("signals_confirmed", causes.confirmed());
    out.number("signals_refuted", causes.refuted());
    out.number("signals_unmarked", causes.unmarked());
    out.objectLines("counted", causes.causes(), this::counted);
    out.objectLines("unmatched", causes.unmatched(), this::unmatched);
    out.number("marks_elsewhere", causes.elsewhere());
    out.endObject();
  }

  private void counted(Counted counted) throws IOException {
    cause(counted.cause());
    out.text("group", counted.group());
    out.number("right", counted.right());
    out.number("wrong", counted.wrong());
    out.number("turns", counted.turns());
    out.number("share", counted.share());
    out.number("cumulative_share", counted.cumulative());
  }

  private void unmatched(CauseMark mark) throws IOException {
    CauseMark.Place place = mark.place();
    out.text("wheel", place.wheel());
    out.text("characteristic", place.characteristic());
    out.text("scope", place.scope().id());
    out.text("mold", place.mold());
    out.text("side", place.side());
    out.text("direction", place.direction().id());
    out.instant("from", mark.from());
    out.instant("to", mark.to());
    cause(mark.cause());
    said(mark);
  }
}
