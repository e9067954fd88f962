package org.evenpour.findings;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was rejected of a wheel's anodes, and where. Counts alone: it says nothing of who rejects,
 * nor of whether what is rejected changed.
 *
 * @param all anodes whose disposition was recorded
 * @param tonnes rejected, to be cast anew; null where no mass is known
 * @param classes by the defect that was written down, the most frequent first
 * @param molds by their share, the largest first
 * @param groups by ladle side and crew
 */
public record RejectReport(
    String wheel,
    Share all,
    @Nullable Double tonnes,
    List<OfClass> classes,
    List<OfMold> molds,
    List<OfGroup> groups) {

  /** Copies the lists. */
  public RejectReport {
    classes = List.copyOf(classes);
    molds = List.copyOf(molds);
    groups = List.copyOf(groups);
  }

  /**
   * A share of anodes, with its 95 % interval by the score method.
   *
   * @param rejected how many
   * @param of how many
   */
  public record Share(long rejected, long of, double value, double low, double high) {}

  /**
   * A defect.
   *
   * @param name as it was written down; empty where a rejected anode has none
   * @param rejected how many
   * @param share of all that was rejected
   * @param together its share with those before it
   * @param tonnes of it; null where no mass is known
   * @param mostIn the mold that has it more often than the others beyond chance, all molds and
   *     classes considered; null where none does
   */
  public record OfClass(
      String name,
      long rejected,
      double share,
      double together,
      @Nullable Double tonnes,
      @Nullable String mostIn) {}

  /**
   * A mold.
   *
   * @param shrunk its share drawn in by as much as chance may have moved it
   * @param standsOut whether it is rejected more often than the others beyond chance, all molds
   *     considered
   * @param most its most frequent defect; empty where none was written down
   */
  public record OfMold(String mold, Share share, double shrunk, boolean standsOut, String most) {}

  /**
   * A ladle side or a crew.
   *
   * @param by {@code ladle} or {@code crew}
   */
  public record OfGroup(String by, String name, Share share) {}
}
