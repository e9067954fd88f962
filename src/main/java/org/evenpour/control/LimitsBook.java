package org.evenpour.control;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.evenpour.casting.Specification;
import org.jspecify.annotations.Nullable;

/**
 * All that was approved, retired and specified, in the order in which it was written down.
 *
 * <p>In force at a time is the version with the highest number among those that are valid from then
 * or earlier and not retired by then. So what was decided later prevails, and where a version is
 * retired the one before it is in force again, unless that is retired too.
 */
public record LimitsBook(
    List<LimitsVersion> versions,
    List<Retirement> retirements,
    List<SpecificationRevision> revisions) {

  /** Nothing is approved. */
  public static final LimitsBook NONE = new LimitsBook(List.of(), List.of(), List.of());

  /** Copies the lists. */
  public LimitsBook {
    versions = List.copyOf(versions);
    retirements = List.copyOf(retirements);
    revisions = List.copyOf(revisions);
  }

  /**
   * A version is no longer used.
   *
   * @param from turns that begin then or later are not judged by it
   * @param at when it was written down
   */
  public record Retirement(
      String wheel,
      String characteristic,
      int version,
      Instant from,
      Instant at,
      String who,
      String why) {

    boolean isOf(LimitsVersion one) {
      return one.isOf(wheel, characteristic) && one.version() == version;
    }
  }

  /**
   * The refinery accepts something else from a time on.
   *
   * @param wheel null = every wheel
   * @param specification in the unit that figures are computed in
   * @param unit suffix of that unit
   * @param from anodes that were cast then or later are judged by it
   * @param at when it was written down
   */
  public record SpecificationRevision(
      @Nullable String wheel,
      String characteristic,
      Specification specification,
      String unit,
      Instant from,
      Instant at,
      String who,
      String why) {

    boolean isOf(String itsWheel, String itsCharacteristic) {
      return (wheel == null || wheel.equals(itsWheel)) && characteristic.equals(itsCharacteristic);
    }
  }

  /**
   * From a time on, this is in force.
   *
   * @param version null = nothing is approved
   */
  public record Change(long fromMillis, @Nullable LimitsVersion version) {}

  /** The versions of one characteristic of one wheel, the first first. */
  public List<LimitsVersion> versions(String wheel, String characteristic) {
    return versions.stream().filter(one -> one.isOf(wheel, characteristic)).toList();
  }

  /** How a version was retired; null where it was not. The earliest time counts. */
  public @Nullable Retirement retirement(LimitsVersion version) {
    return retirements.stream()
        .filter(one -> one.isOf(version))
        .min(Comparator.comparing(Retirement::from))
        .orElse(null);
  }

  /** What is in force at a time; null where nothing is. */
  public @Nullable LimitsVersion inForce(String wheel, String characteristic, Instant at) {
    LimitsVersion best = null;
    for (LimitsVersion one : versions) {
      Retirement end = retirement(one);
      boolean isValid =
          one.isOf(wheel, characteristic)
              && !one.validFrom().isAfter(at)
              && (end == null || end.from().isAfter(at));
      if (isValid && (best == null || one.version() > best.version())) {
        best = one;
      }
    }
    return best;
  }

  /** What is in force from when on, beginning before all time. */
  public List<Change> changes(String wheel, String characteristic) {
    TreeSet<Instant> times = new TreeSet<>();
    for (LimitsVersion one : versions(wheel, characteristic)) {
      times.add(one.validFrom());
      Retirement end = retirement(one);
      if (end != null) {
        times.add(end.from());
      }
    }
    List<Change> changes = new ArrayList<>();
    changes.add(new Change(Long.MIN_VALUE, null));
    for (Instant time : times) {
      LimitsVersion version = inForce(wheel, characteristic, time);
      if (version != changes.get(changes.size() - 1).version()) {
        changes.add(new Change(time.toEpochMilli(), version));
      }
    }
    return changes;
  }

  /**
   * The specification's revisions of one characteristic, in the order of the times from which they
   * hold; of two from the same time the one that was written down later is last.
   */
  public List<SpecificationRevision> revisions(String wheel, String characteristic) {
    return revisions.stream()
        .filter(one -> one.isOf(wheel, characteristic))
        // A stable sort, so that of two from the same time the later one stays behind.
        .sorted(Comparator.comparing(SpecificationRevision::from))
        .toList();
  }

  /**
   * The specification in force at a time.
   *
   * @param before what the profile says: in force until the first revision
   */
  public Specification specification(
      String wheel, String characteristic, Specification before, Instant at) {
    Specification now = before;
    for (SpecificationRevision one : revisions(wheel, characteristic)) {
      now = one.from().isAfter(at) ? now : one.specification();
    }
    return now;
  }
}
