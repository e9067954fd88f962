package org.evenpour.casting;

import java.time.Instant;
import java.util.List;

/**
 * What a gauge was tried with: parts measured again and again by several operators, or weighings of
 * a known mass. One of the two lists is empty.
 *
 * @param name of the file
 * @param studies one for each characteristic
 * @param checks one for each characteristic
 */
public record GaugeFile(String name, List<Study> studies, List<Checks> checks) {

  /** Copies the lists. */
  public GaugeFile {
    studies = List.copyOf(studies);
    checks = List.copyOf(checks);
  }

  /**
   * Every operator measured every part, each as often.
   *
   * @param characteristic {@code mass} or {@code thickness}
   * @param displayUnit in which it was recorded
   * @param parts names
   * @param operators names
   * @param measured by part, operator and repeat, in the unit that figures are computed in
   */
  @SuppressWarnings("ArrayRecordComponent") // built once, read by the audit, never compared
  public record Study(
      String characteristic,
      Unit displayUnit,
      List<String> parts,
      List<String> operators,
      double[][][] measured) {}

  /**
   * Readings of what is known, in the order of their times.
   *
   * @param characteristic {@code mass} or {@code thickness}
   * @param displayUnit in which it was recorded
   * @param readings in the unit that figures are computed in
   */
  public record Checks(String characteristic, Unit displayUnit, List<Reading> readings) {
    /** Copies the list. */
    public Checks {
      readings = List.copyOf(readings);
    }
  }

  /**
   * One reading.
   *
   * @param reference the true value
   */
  public record Reading(Instant at, double reference, double measured) {}
}
