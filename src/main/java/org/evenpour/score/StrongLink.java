package org.evenpour.score;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.AuditReport;
import org.evenpour.audit.AuditReport.Evidence;
import org.evenpour.audit.AuditReport.Link;
import org.evenpour.audit.AuditReport.Signal;

/**
 * One strong link beside one signal.
 *
 * @param right whether the signal is of a fault that this link names
 * @param beside whether the signal is of any planted fault
 * @param truly whether what is linked acts on the characteristic at all
 */
record StrongLink(boolean right, boolean beside, Truly truly) {

  /** What the linked setting truly does to the characteristic. */
  enum Truly {
    /** It acts. */
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
                  link.event()
                      ? Truly.UNKNOWN
                      : effects.truly(signal.wheel(), link.name(), signal.characteristic())));
        }
      }
    }
    return all;
  }
}
