package org.evenpour.audit;

import java.util.List;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.jspecify.annotations.Nullable;

/**
 * An audit and the limits that it judged by.
 *
 * @param report what was found
 * @param limits one for each wheel and characteristic that had any
 */
public record Audited(AuditReport report, List<InForce> limits) {

  /** Copies the list. */
  public Audited {
    limits = List.copyOf(limits);
  }

  /**
   * The limits of one characteristic of one wheel.
   *
   * @param limits of the newest turns that were judged; null where none were
   * @param terms from when on what is in force, those of later included
   */
  public record InForce(
      String wheel, String characteristic, @Nullable LimitsInForce limits, List<Term> terms) {}

  /** From when on what is in force; empty where a characteristic is unknown. */
  public List<Term> terms(String wheel, String characteristic) {
    return limits.stream()
        .filter(one -> one.wheel().equals(wheel) && one.characteristic().equals(characteristic))
        .findFirst()
        .map(InForce::terms)
        .orElse(List.of());
  }

  /** The limits of a characteristic's newest turns; null where it had none. */
  public @Nullable LimitsInForce limits(String wheel, String characteristic) {
    return limits.stream()
        .filter(one -> one.wheel().equals(wheel) && one.characteristic().equals(characteristic))
        .findFirst()
        .map(InForce::limits)
        .orElse(null);
  }
}
