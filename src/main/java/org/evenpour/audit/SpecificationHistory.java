package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.Rests;
import org.evenpour.findings.AuditReport.SpecificationUsed;
import org.evenpour.stats.Capability;
import org.evenpour.stats.ChartConstants;
import org.evenpour.stats.Moments;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.Resemblance;
import org.evenpour.stats.Resemblance.Worth;
import org.jspecify.annotations.Nullable;

/**
 * The specifications of one characteristic over its record: each anode is judged by the one in
 * force when it was cast, and capability is of the anodes of the last one. Owned by one thread.
 */
final class SpecificationHistory {
  private final List<Long> fromMillis = new ArrayList<>();
  private final List<SpecificationUsed> steps = new ArrayList<>();
  private final long[] anodes;

  private final Moments all = new Moments();
  private final MovingRange[] ranges;
  private final long[] outside;

  SpecificationHistory(WheelRecord record, Characteristic characteristic, LimitsBook book) {
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    for (int i = 0; i < record.rows(); i++) {
      first = Math.min(first, record.castAtMillis().get(i));
      last = Math.max(last, record.castAtMillis().get(i));
    }
    fromMillis.add(Long.MIN_VALUE);
    steps.add(new SpecificationUsed(null, characteristic.specification(), "", "", 0));
    for (SpecificationRevision one : book.revisions(record.wheel(), characteristic.name())) {
      long from = one.from().toEpochMilli();
      if (from > last) {
        continue;
      }
      if (from <= first || from == fromMillis.get(steps.size() - 1)) {
        // Nothing was cast while the one before was in force.
        fromMillis.remove(steps.size() - 1);
        steps.remove(steps.size() - 1);
      }
      fromMillis.add(from);
      steps.add(new SpecificationUsed(one.from(), one.specification(), one.who(), one.why(), 0));
    }
    anodes = new long[steps.size()];
    int molds = record.molds().size();
    ranges = new MovingRange[molds];
    Arrays.setAll(ranges, i -> new MovingRange());
    outside = new long[molds];
  }

  /** Takes in the next anode and tells whether it lies outside the specification of its time. */
  boolean accept(long castAtMillis, int mold, double value) {
    int step = steps.size() - 1;
    while (step > 0 && fromMillis.get(step) > castAtMillis) {
      step--;
    }
    anodes[step]++;
    boolean isOutside = steps.get(step).specification().excludes(value);
    if (step == steps.size() - 1) {
      all.add(value);
      ranges[mold].add(value);
      outside[mold] += isOutside ? 1 : 0;
    }
    return isOutside;
  }

  /** The last one. */
  Specification newest() {
    return steps.get(steps.size() - 1).specification();
  }

  /** Whether there was but one: what is of its anodes is of all. */
  boolean isOne() {
    return steps.size() == 1;
  }

  /** By mold, the anodes of the last one. */
  MovingRange[] ranges() {
    return ranges;
  }

  /** By mold, how many anodes of the last one lie outside. */
  long[] outside() {
    return outside;
  }

  /** The anodes of the last one. */
  Moments all() {
    return all;
  }

  /** The values of the anodes of the last one, NaN in place of the others. */
  double[] values(WheelRecord record, double[] value) {
    if (isOne()) {
      return value;
    }
    double[] its = value.clone();
    for (int i = 0; i < its.length; i++) {
      if (record.castAtMillis().get(i) < fromMillis.get(steps.size() - 1)) {
        its[i] = Double.NaN;
      }
    }
    return its;
  }

  /** Whether any of them has a limit. */
  boolean hasLimits() {
    return steps.stream().anyMatch(one -> one.specification().hasLimits());
  }

  /** All of them in the order of time; empty where there was only the profile's. */
  List<SpecificationUsed> used() {
    List<SpecificationUsed> used = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      SpecificationUsed one = steps.get(i);
      used.add(
          new SpecificationUsed(one.from(), one.specification(), one.who(), one.why(), anodes[i]));
    }
    return used.size() == 1 && used.get(0).from() == null ? List.of() : used;
  }

  /**
   * Of all molds; null where there is nothing to be capable of.
   *
   * @param resemblance of turns and casts
   * @param turns with anodes of the last specification
   */
  @Nullable CapabilityReport capability(Resemblance resemblance, int turns) {
    long count = 0;
    double sum = 0;
    double freedom = 0;
    for (MovingRange each : ranges) {
      // Ranges of single molds: from mold to mold they would hold the offsets.
      if (each.count() > 0 && each.meanRange() > 0) {
        count += each.count();
        sum += each.meanRange() * each.count();
        // Ranges of different molds share no cast: their degrees of freedom add up.
        freedom += each.degreesOfFreedom();
      }
    }
    double sigmaWithin = count == 0 ? Double.NaN : sum / count / ChartConstants.d2(2);
    Worth worth = resemblance.of(all.count(), turns, all.sd());
    return capability(all, sigmaWithin, freedom, Arrays.stream(outside).sum(), worth);
  }

  /** Of one mold; null where there is nothing to be capable of. */
  @Nullable CapabilityReport capability(int mold, Resemblance resemblance) {
    return capability(
        ranges[mold].values(),
        ranges[mold].limits().sigma(),
        ranges[mold].degreesOfFreedom(),
        outside[mold],
        resemblance.ofColumn(mold, ranges[mold].values().count(), ranges[mold].values().sd()));
  }

  private @Nullable CapabilityReport capability(
      Moments of, double sigmaWithin, double freedom, long out, Worth worth) {
    Specification specification = newest();
    if (!specification.hasLimits() || of.count() == 0) {
      return null;
    }
    Capability c =
        Capability.of(
            of.count(),
            of.mean(),
            sigmaWithin,
            freedom,
            of.sd(),
            specification.lower(),
            specification.target(),
            specification.upper(),
            worth);
    return new CapabilityReport(
        CharacteristicAudit.estimate(c.cp()),
        CharacteristicAudit.estimate(c.cpk()),
        CharacteristicAudit.estimate(c.cpl()),
        CharacteristicAudit.estimate(c.cpu()),
        CharacteristicAudit.estimate(c.pp()),
        CharacteristicAudit.estimate(c.ppk()),
        CharacteristicAudit.estimate(c.cpm()),
        CharacteristicAudit.known(c.fractionOutsideExpected()),
        (double) out / of.count(),
        new Rests(
            of.count() * worth.levelWithin(),
            freedom * worth.spreadWithin(),
            of.count() * worth.level(),
            (of.count() - 1.0) * worth.spread(),
            Math.sqrt(1 - worth.pulledIn())));
  }
}
