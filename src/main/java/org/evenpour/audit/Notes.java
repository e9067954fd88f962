package org.evenpour.audit;

import java.util.List;
import java.util.Locale;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsInForce;

/** What a reader must know before using an audit's figures. */
final class Notes {
  /** Below this, autocorrelation hardly matters for an individuals chart: a choice. */
  private static final double NOTABLE_CORRELATION = 0.2;

  private Notes() {}

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
    if (proposed) {
      notes.add(
          at + "Limits were proposed by this audit from its own record; none is approved yet.");
    }
    boolean specified =
        wheel.characteristics().stream().anyMatch(c -> c.specification().hasLimits());
    if (!specified) {
      notes.add(at + "No specification was given, so capability is left out; a profile gives one.");
    }
  }
}
