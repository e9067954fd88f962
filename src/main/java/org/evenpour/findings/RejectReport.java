package org.evenpour.findings;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.evenpour.findings.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/**
 * What was rejected of a wheel's anodes, where and when. A signal that more was rejected says
 * nothing of who rejects: that the crew changed with it, or the specification, is among its links.
 *
 * @param all anodes whose disposition was recorded
 * @param tonnes rejected, to be cast anew; null where no mass is known
 * @param classes by the defect that was written down, the most frequent first
 * @param molds by their share, the largest first
 * @param groups by ladle side and crew
 * @param charges in the order of time; empty where none is written down
 * @param dispersion sigma of the charges' standardized shares, or of the turns' where no charge is
 *     written down: above 1 they differ by more than chance (Laney 2002); null where that is not
 *     known
 * @param spells in which more than usual was rejected, in the order of their onsets
 */
public record RejectReport(
    String wheel,
    Share all,
    @Nullable Double tonnes,
    List<OfClass> classes,
    List<OfMold> molds,
    List<OfGroup> groups,
    List<OfCharge> charges,
    @Nullable Double dispersion,
    List<Spell> spells) {

  /** Whose signals these are, in place of a characteristic's name; with a defect after a colon. */
  public static final String REJECTED = "rejected";

  /** What a log calls an anode that goes back; whatever else it writes is not counted as one. */
  private static final Set<String> WORDS = Set.of("rejected", "reject", "remelt", "scrap");

  /** Whether a disposition says that an anode goes back. */
  public static boolean isRejected(String disposition) {
    return WORDS.contains(disposition.strip().toLowerCase(Locale.ROOT));
  }

  /** Copies the lists. */
  public RejectReport {
    classes = List.copyOf(classes);
    molds = List.copyOf(molds);
    groups = List.copyOf(groups);
    charges = List.copyOf(charges);
    spells = List.copyOf(spells);
  }

  /** The spell of a mold that still holds; null where none does. */
  public @Nullable Spell holding(String mold) {
    return spells.stream()
        .filter(one -> one.signal().open() && mold.equals(one.signal().mold()))
        .findFirst()
        .orElse(null);
  }

  /** A mold's own share; null where none of its anodes has a disposition. */
  public @Nullable OfMold of(String mold) {
    return molds.stream().filter(one -> one.mold().equals(mold)).findFirst().orElse(null);
  }

  /** That of a wheel; null where it has none. */
  public static @Nullable RejectReport ofWheel(List<RejectReport> all, String wheel) {
    return all.stream().filter(one -> one.wheel().equals(wheel)).findFirst().orElse(null);
  }

  /** A defect's name as people read it. */
  public static String plain(String defect) {
    return defect.replace('_', ' ');
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

  /**
   * A charge.
   *
   * @param name as it was written down
   * @param firstCastAt its first anode
   * @param upper limit of three sigma for a charge of so many, widened by how charges differ; null
   *     where that is not known
   */
  public record OfCharge(
      String name, Instant firstCastAt, long rejected, long of, @Nullable Double upper) {

    /** Whether more was rejected than the limit allows. */
    public boolean isAbove() {
      return upper != null && value() > upper;
    }

    /** Share rejected. */
    public double value() {
      return (double) rejected / of;
    }
  }

  /**
   * A time in which more than usual was rejected, at one mold or at the whole wheel.
   *
   * @param signal its place and time; its size is a share, that within less that outside
   * @param defect the one that it is about; null where it is about all of them
   * @param rejected in it
   * @param of anodes in it
   * @param usual share outside of it
   */
  public record Spell(
      Signal signal, @Nullable String defect, long rejected, long of, double usual) {

    /** Share rejected. */
    public double value() {
      return (double) rejected / of;
    }
  }
}
