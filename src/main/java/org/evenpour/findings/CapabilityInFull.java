package org.evenpour.findings;

import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What stands beside one characteristic's indices: whether they can be relied on, where the spread
 * comes from, what would follow if a part of it went, and the indices of groups.
 *
 * @param isStable whether no mold, side or wheel departed for longer than a pour
 * @param isNormal whether a normal distribution is not refused at 5 %; null where it was not asked
 * @param percentiles indices without a normal distribution; null where none is needed, there is no
 *     specification, or there are too few anodes
 * @param parts of the variance, the largest first; empty where turns cannot be told from molds
 * @param whatIfs empty where there is no specification, or no parts
 * @param groups ladle sides, charges and crews
 */
public record CapabilityInFull(
    boolean isStable,
    @Nullable Boolean isNormal,
    @Nullable ByPercentiles percentiles,
    List<Part> parts,
    List<WhatIf> whatIfs,
    List<Group> groups) {

  /** Copies the lists. */
  public CapabilityInFull {
    parts = List.copyOf(parts);
    whatIfs = List.copyOf(whatIfs);
    groups = List.copyOf(groups);
  }

  /**
   * Capability by the percentile method (ISO 22514-2).
   *
   * @param low 0.135 % percentile
   * @param high 99.865 % percentile
   * @param pp null for a one-sided specification
   */
  public record ByPercentiles(
      double low, double median, double high, @Nullable Estimate pp, @Nullable Estimate ppk) {}

  /** Where spread comes from. */
  public enum Source {
    MOLD,
    SIDE,
    TURN,
    POUR
  }

  /**
   * A part of the variance.
   *
   * @param share of the sum of all parts
   */
  public record Part(Source source, double variance, double sd, double share) {}

  /**
   * The indices if one source of spread were gone.
   *
   * @param without the source
   * @param mean then
   * @param sd then
   * @param ppk then; all spread counts in it, as in Ppk now
   * @param ppkNow as it is
   * @param fractionOutside expected then, for a normal distribution
   */
  public record WhatIf(
      Source without,
      double mean,
      double sd,
      double ppk,
      double ppkNow,
      @Nullable Double fractionOutside) {}

  /**
   * The anodes of one ladle side, charge or crew.
   *
   * @param by {@code ladle}, {@code charge} or {@code crew}
   * @param outside null without a specification
   * @param cpk null without a specification, as ppk
   * @param isFew so few anodes: the indices say little
   */
  public record Group(
      String by,
      String name,
      long count,
      double mean,
      @Nullable Double sd,
      @Nullable Estimate cpk,
      @Nullable Estimate ppk,
      @Nullable Long outside,
      boolean isFew) {}
}
