package org.evenpour.audit;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.AuditReport.Finds;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.findings.AuditReport.Monitoring;
import org.evenpour.findings.NotLookedFor;
import org.jspecify.annotations.Nullable;

/** What the anodes of one characteristic were judged by, or why they were not. */
final class Judgement {
  private Judgement() {}

  /** The newest term that had limits; null where none had. */
  static @Nullable Term newest(List<SuccessiveMonitor.Judged> judged) {
    Term newest = null;
    for (SuccessiveMonitor.Judged each : judged) {
      newest = each.term().limits() == null ? newest : each.term();
    }
    return newest;
  }

  /**
   * @param terms in the order of their times
   * @param why nothing was looked for, for each of the terms; null where something was
   * @param judged which turns by which of the terms
   * @param budget false alarms a shift
   */
  static Monitoring monitoring(
      List<Term> terms,
      List<@Nullable NotLookedFor> why,
      List<SuccessiveMonitor.Judged> judged,
      double budget) {
    List<LimitsUsed> used = new ArrayList<>();
    NotLookedFor last = why.get(why.size() - 1);
    for (SuccessiveMonitor.Judged each : judged) {
      last = why.get(terms.indexOf(each.term()));
      used.add(used(each, last));
    }
    Term newest = newest(judged);
    LimitsInForce limits = newest == null ? null : newest.limits();
    return limits == null
        ? new Monitoring(
            last == null ? "none" : "none: " + last.why(),
            0,
            null,
            null,
            null,
            null,
            budget,
            null,
            used,
            last)
        : new Monitoring(
            source(newest, limits),
            limits.baseTurns(),
            CharacteristicAudit.known(limits.pour().sigma()),
            CharacteristicAudit.known(limits.wheel().sigma()),
            CharacteristicAudit.known(limits.pour().decision().h()),
            CharacteristicAudit.known(limits.pourLimit()),
            budget,
            finds(limits),
            used,
            null);
  }

  private static String source(@Nullable Term newest, LimitsInForce limits) {
    LimitsVersion version = newest == null ? null : newest.version();
    return version == null
        ? limits.source()
        : "approved: version "
            + version.version()
            + ", by "
            + version.who()
            + " at "
            + version.approvedAt();
  }

  private static LimitsUsed used(
      SuccessiveMonitor.Judged judged, @Nullable NotLookedFor notLookedFor) {
    LimitsVersion version = judged.term().version();
    LimitsInForce limits = judged.term().limits();
    boolean isApproved = version != null;
    return new LimitsUsed(
        isApproved ? "approved" : limits == null ? "none" : "proposed",
        version == null ? null : (Integer) version.version(),
        version == null ? null : version.approvedAt(),
        version == null ? null : version.who(),
        version == null ? null : version.why(),
        version == null ? null : version.validFrom(),
        judged.firstTurn(),
        judged.lastTurn(),
        judged.turns(),
        Instant.ofEpochMilli(judged.firstAtMillis()),
        Instant.ofEpochMilli(judged.lastAtMillis()),
        limits == null ? 0 : limits.baseTurns(),
        limits == null ? null : CharacteristicAudit.known(limits.center()),
        limits == null ? null : CharacteristicAudit.known(limits.pour().sigma()),
        limits == null ? null : CharacteristicAudit.known(limits.wheel().sigma()),
        notLookedFor);
  }

  private static @Nullable Finds finds(LimitsInForce limits) {
    if (limits.ownPast()) {
      return null; // the whole wheel has no chart
    }
    double shift = round(1.5 * limits.pour().sigma());
    double moldTurns = limits.pour().turnsToFind(shift);
    double wheelTurns = limits.wheel().turnsToFind(shift);
    // Where no limits of one of them could be set, there is nothing to tell.
    return Double.isNaN(moldTurns + wheelTurns) ? null : new Finds(shift, moldTurns, wheelTurns);
  }

  /** The nearest of 1, 1.5, 2, 3, 5, 7 times a power of ten. */
  private static double round(double x) {
    int exponent = (int) Math.floor(Math.log10(x));
    BigDecimal best = BigDecimal.ONE.scaleByPowerOfTen(exponent);
    for (String digits : new String[] {"1.5", "2", "3", "5", "7", "10"}) {
      BigDecimal each = new BigDecimal(digits).scaleByPowerOfTen(exponent);
      // Nearest by ratio: 1.5 is as far from 1 as 3 is from 2.
      if (Math.abs(Math.log(each.doubleValue() / x)) < Math.abs(Math.log(best.doubleValue() / x))) {
        best = each;
      }
    }
    return best.doubleValue();
  }
}
