package org.evenpour.audit;

import java.util.List;
import org.evenpour.control.LimitsInForce;
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

  /** The limits of one characteristic of one wheel. */
  public record InForce(String wheel, String characteristic, LimitsInForce limits) {}

  /** The limits of a characteristic; null where it had none. */
  public @Nullable LimitsInForce limits(String wheel, String characteristic) {
    return limits.stream()
        .filter(one -> one.wheel().equals(wheel) && one.characteristic().equals(characteristic))
        .map(InForce::limits)
        .findFirst()
        .orElse(null);
  }
}
