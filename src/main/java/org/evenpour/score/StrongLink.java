package org.evenpour.score;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;

/**
 * One strong link beside one signal.
 *
 * @param right whether the signal is of a fault that this link names
 * @param beside whether the signal is of any planted fault
 * @param truly what the linked setting does to the characteristic by nature
 */
record StrongLink(boolean right, boolean beside, Truly truly) {

  /** What the linked setting truly does to the characteristic. */
  enum Truly {
    /** It acts, and its recorded move truly makes a good part of the signal. */
    CARRIES,
    /** It acts, but did not make this signal. */
    ACTS,
    /** It does nothing. */
    IDLE,
    /** It is an event, or no effects file tells. */
    UNKNOWN
  }

  static List<StrongLink> of(AuditReport report, List<Planted> faults, TrueEffects effects) {
    List<StrongLink> all = new ArrayList<>();
    for (Signal signal : report.signals()) {
      List<Planted> own = faults.stream().filter(fault -> fault.isShownBy(signal)).toList();
      for (Link link : signal.links()) {
        if (link.evidence() == Evidence.STRONG) {
          all.add(
              new StrongLink(
                  own.stream().anyMatch(fault -> fault.isNamedBy(link)),
                  !own.isEmpty(),
                  effects.truly(signal, link)));
        }
      }
    }
    return all;
  }
}
