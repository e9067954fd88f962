package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.LimitsUsed;
import org.evenpour.audit.AuditReport.Monitoring;
import org.evenpour.audit.AuditReport.SpecificationUsed;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsInForce;

/** What a reader must know before using an audit's figures. */
final class Notes {
  /** Below this, autocorrelation hardly matters for an individuals chart: a choice. */
  private static final double NOTABLE_CORRELATION = 0.2;

  private Notes() {}

  private static boolean hasApproved(Monitoring monitoring) {
    return monitoring.used().stream().anyMatch(one -> one.version() != null);
  }

  /** Which turns were judged by what. */
  private static String used(CharacteristicReport report) {
    List<String> parts = new ArrayList<>();
    for (LimitsUsed one : report.monitoring().used()) {
      String turns = " (turns " + one.firstTurn() + " to " + one.lastTurn() + ")";
      parts.add(
          switch (one.source()) {
            case "approved" ->
                "version "
                    + one.version()
                    + ", approved by "
                    + one.who()
                    + " at "
                    + one.approvedAt()
                    + turns;
            case "proposed" -> "limits proposed by this audit from these turns" + turns;
            default -> "no limits, and so no signals, for too few turns" + turns;
          });
    }
    return "Judged by " + String.join("; then by ", parts) + ".";
  }

  private static void specifications(String at, CharacteristicReport report, List<String> notes) {
    List<SpecificationUsed> all = report.specifications();
    if (!all.isEmpty()) {
      SpecificationUsed last = all.get(all.size() - 1);
      notes.add(
          at
              + report.name()
              + ": the specification of "
              + last.from()
              + " ("
              + last.who()
              + ") holds for "
              + last.anodes()
              + " of the anodes; capability is of these alone, and those before were judged by"
              + " what was in force then.");
    }
  }

  static void ofWheel(
      WheelRecord wheel, List<CharacteristicAudit.Result> results, List<String> notes) {
    String at = wheel.wheel().isEmpty() ? "" : "Wheel " + wheel.wheel() + ": ";
    boolean proposed = false;
    for (CharacteristicAudit.Result result : results) {
      LimitsInForce limits = result.limits();
      String name = result.report().name();
      if (limits == null) {
        notes.add(
            at
                + name
                + ": molds and turns cannot be told apart in this record (at least "
                + LimitProposal.LEAST_TURNS
                + " turns of four molds are needed); no signals were looked for.");
        continue;
      }
      proposed = true;
      if (limits.wheel().correlation() > NOTABLE_CORRELATION) {
        notes.add(
            String.format(
                Locale.ROOT,
                "%s%s: successive turns resemble each other (autocorrelation %.2f); the signals"
                    + " allow for it, the classic limits do not.",
                at,
                name,
                limits.wheel().correlation()));
      }
    }
    List<String> used = results.stream().map(result -> used(result.report())).distinct().toList();
    boolean anyApproved =
        results.stream().anyMatch(result -> hasApproved(result.report().monitoring()));
    if (anyApproved) {
      for (CharacteristicAudit.Result result : results) {
        String names = used.size() == 1 ? "" : result.report().name() + ": ";
        notes.add(at + names + used(result.report()));
        if (used.size() == 1) {
          break;
        }
      }
    } else if (proposed) {
      notes.add(
          at + "Limits were proposed by this audit from its own record; none is approved yet.");
    }
    for (CharacteristicAudit.Result result : results) {
      specifications(at, result.report(), notes);
    }
    boolean specified =
        results.stream().anyMatch(result -> result.report().specification().hasLimits());
    if (!specified) {
      notes.add(at + "No specification was given, so capability is left out; a profile gives one.");
    }
  }
}
