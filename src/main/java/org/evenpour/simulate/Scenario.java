package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/**
 * What to simulate. The same scenario gives the same files, byte for byte.
 *
 * @param seed of everything random
 * @param start when the first charge is due; its offset is the plant's
 * @param days how many days of casting, 1 to 3660
 * @param molds on the wheel, 16 to 40
 * @param sides of the ladle, 1 or 2; with two, odd molds are poured by A and even ones by B
 * @param hoursBetweenCharges from one charge's start to the next, 12 or more
 * @param faults to plant; the same one may stand here more than once
 * @param sizeSigmas how large a fault is, in standard deviations of a pour
 * @param turnCorrelation of one turn's effect with the next within a charge, 0 up to 1
 * @param condition of pours, scale, gauge, records and molds
 */
public record Scenario(
    long seed,
    OffsetDateTime start,
    int days,
    int molds,
    int sides,
    double hoursBetweenCharges,
    List<Fault> faults,
    double sizeSigmas,
    double turnCorrelation,
    Condition condition) {

  /** Refuses what the wheel cannot run. */
  public Scenario {
    require(days >= 1 && days <= 3660, "days must be 1 to 3660, not " + days);
    require(molds >= 16 && molds <= 40, "molds must be 16 to 40, not " + molds);
    require(sides == 1 || sides == 2, "sides must be 1 or 2, not " + sides);
    require(
        hoursBetweenCharges >= 12 && hoursBetweenCharges <= 1000,
        "hours between charges must be 12 to 1000, not " + hoursBetweenCharges);
    require(
        sizeSigmas > 0 && sizeSigmas <= 10,
        "the size must be above 0 and up to 10 sigmas, not " + sizeSigmas);
    require(
        turnCorrelation >= 0 && turnCorrelation < 1,
        "the turn correlation must be 0 or more and below 1, not " + turnCorrelation);
    faults = List.copyOf(faults);
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new IllegalArgumentException(otherwise);
    }
  }

  /** A sound and ideal week of 26 molds and two ladle sides. */
  public static Scenario week(long seed) {
    return new Scenario(
        seed,
        OffsetDateTime.of(2026, 3, 2, 6, 0, 0, 0, ZoneOffset.ofHours(-3)),
        7,
        26,
        2,
        21,
        List.of(),
        2.5,
        0.5,
        Condition.IDEAL);
  }

  /** The same with these faults. */
  public Scenario withFaults(List<Fault> planted) {
    return new Scenario(
        seed,
        start,
        days,
        molds,
        sides,
        hoursBetweenCharges,
        planted,
        sizeSigmas,
        turnCorrelation,
        condition);
  }

  /** The same with one more fault. */
  public Scenario withFault(Fault fault) {
    List<Fault> more = new ArrayList<>(faults);
    more.add(fault);
    return withFaults(more);
  }

  /** The same over so many days. */
  public Scenario withDays(int number) {
    return new Scenario(
        seed,
        start,
        number,
        molds,
        sides,
        hoursBetweenCharges,
        faults,
        sizeSigmas,
        turnCorrelation,
        condition);
  }

  /** The same with so many molds. */
  public Scenario withMolds(int number) {
    return new Scenario(
        seed,
        start,
        days,
        number,
        sides,
        hoursBetweenCharges,
        faults,
        sizeSigmas,
        turnCorrelation,
        condition);
  }

  /** The same with so many ladle sides. */
  public Scenario withSides(int number) {
    return new Scenario(
        seed,
        start,
        days,
        molds,
        number,
        hoursBetweenCharges,
        faults,
        sizeSigmas,
        turnCorrelation,
        condition);
  }

  /** The same with faults of this size. */
  public Scenario withSizeSigmas(double size) {
    return new Scenario(
        seed,
        start,
        days,
        molds,
        sides,
        hoursBetweenCharges,
        faults,
        size,
        turnCorrelation,
        condition);
  }

  /** The same in this condition. */
  public Scenario withCondition(Condition as) {
    return new Scenario(
        seed,
        start,
        days,
        molds,
        sides,
        hoursBetweenCharges,
        faults,
        sizeSigmas,
        turnCorrelation,
        as);
  }
}
