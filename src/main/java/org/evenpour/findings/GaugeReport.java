package org.evenpour.findings;

import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What one file says of the gauge of one characteristic, and what that means for the audited
 * wheels. All spreads are standard deviations with 95 % intervals, in the unit that figures are
 * computed in.
 *
 * @param file its name
 * @param unit in which the figures here are
 * @param displayUnit suffix of the unit in which people read them
 * @param parts how many, of a study; 0 for check measurements
 * @param operators how many, of a study; 0 for check measurements
 * @param readings how many
 * @param sigma of one measurement: repeatability and reproducibility together
 * @param repeatability of one operator, or of check measurements
 * @param reproducibility between operators, with the interaction; no interval is known
 * @param betweenOperators without the interaction
 * @param interaction of operators and parts; 0 where it was no more than chance and pooled
 * @param partToPart the parts themselves
 * @param interactionP probability of an interaction as large by chance
 * @param shareOfStudy σ of the gauge over σ of all that was measured in the study, 0 to 1
 * @param bias mean reading less the known value; of check measurements
 * @param biasP probability of a bias as large by chance
 * @param driftPerDay how the bias changes
 * @param driftP probability of a drift as large by chance
 * @param wheels one for each wheel that has the characteristic
 */
public record GaugeReport(
    String file,
    String characteristic,
    String unit,
    String displayUnit,
    int parts,
    int operators,
    long readings,
    Estimate sigma,
    Estimate repeatability,
    @Nullable Double reproducibility,
    @Nullable Estimate betweenOperators,
    @Nullable Estimate interaction,
    @Nullable Estimate partToPart,
    @Nullable Double interactionP,
    @Nullable Double shareOfStudy,
    @Nullable Estimate bias,
    @Nullable Double biasP,
    @Nullable Estimate driftPerDay,
    @Nullable Double driftP,
    List<OnWheel> wheels) {

  /** Copies the list. */
  public GaugeReport {
    wheels = List.copyOf(wheels);
  }

  /**
   * What the gauge does to one wheel's figures.
   *
   * @param shareOfSpread σ of the gauge over σ of the wheel's anodes; 1 where it is larger
   * @param shareOfPour σ of the gauge over σ from pour to pour; null where that is not known
   * @param shareOfTolerance 6σ of the gauge over the width of the tolerance; null where it is
   *     one-sided or missing
   * @param acceptLow from here on an anode is within for certain (one-sided 95 %)
   * @param acceptHigh up to here
   * @param rejectBelow below here it is outside for certain
   * @param rejectAbove above here
   * @param inDoubt anodes of this record between acceptance and rejection; null without limits
   * @param leavesRoom whether the guard bands leave any value to accept
   * @param tooCoarseFor verdicts that this gauge cannot carry
   */
  public record OnWheel(
      String wheel,
      @Nullable Double shareOfSpread,
      @Nullable Double shareOfPour,
      @Nullable Double shareOfTolerance,
      @Nullable Double acceptLow,
      @Nullable Double acceptHigh,
      @Nullable Double rejectBelow,
      @Nullable Double rejectAbove,
      @Nullable Long inDoubt,
      boolean leavesRoom,
      List<Verdict> tooCoarseFor) {
    /** Copies the list. */
    public OnWheel {
      tooCoarseFor = List.copyOf(tooCoarseFor);
    }
  }

  /** What an audit says of anodes and molds. */
  public enum Verdict {
    /** Whether one anode is within the tolerance, and capability. */
    ACCEPTANCE,
    /** Signals of single anodes and of molds. */
    SIGNALS
  }
}
