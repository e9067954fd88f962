package org.evenpour.findings;

import java.time.Instant;
import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What differs between two stretches of a wheel's record that share no anode.
 *
 * @param first the stretch that the second is held against
 * @param second later or earlier
 * @param mold that was asked about before anything was seen; null where none was
 * @param all what was compared: what was asked of the mold first, then the wheel, then the molds
 * @param molds how many molds cast in both
 */
public record ComparisonReport(
    String wheel, Span first, Span second, @Nullable String mold, List<Compared> all, int molds) {

  /** The chance that anything is called real where nothing differs. A choice. */
  public static final double LEVEL = 0.05;

  /** Copies the list. */
  public ComparisonReport {
    all = List.copyOf(all);
  }

  /** What was asked of the mold, or everything else. */
  public List<Compared> asked(boolean isOfMold) {
    return all.stream().filter(one -> one.isAsked() == isOfMold).toList();
  }

  /**
   * A stretch.
   *
   * @param lastTurn the last one in it
   */
  public record Span(int firstTurn, int lastTurn, Instant from, Instant to, long anodes) {}

  /** What is compared. */
  public enum What {
    /** Where the whole wheel stands, turn effects with their memory allowed for. */
    LEVEL,
    /** How far a mold stands from the others. */
    OFFSET,
    /** Scatter from pour to pour, molds and turns taken out; the difference is a ratio. */
    SPREAD,
    /** Ppk of the whole wheel. */
    CAPABILITY,
    /** Share rejected, of the wheel or of a mold. */
    REJECTED
  }

  /**
   * One figure in both stretches.
   *
   * @param characteristic null for rejects
   * @param mold null where it is of the whole wheel
   * @param before in the first stretch
   * @param after in the second
   * @param difference the second less the first, or over the first for a spread, with its 95 %
   *     interval
   * @param p the chance of as much where nothing differs
   * @param corrected the same for all that were asked together (Holm 1979)
   * @param isAsked whether it was asked about before anything was seen
   */
  public record Compared(
      What what,
      @Nullable String characteristic,
      @Nullable String mold,
      double before,
      double after,
      Estimate difference,
      double p,
      double corrected,
      boolean isAsked) {

    /** Whether it is more than chance would make, all that was asked considered. */
    public boolean isReal() {
      return corrected < LEVEL;
    }

    /** Whether the second is the larger. */
    public boolean isUp() {
      return after > before;
    }
  }
}
