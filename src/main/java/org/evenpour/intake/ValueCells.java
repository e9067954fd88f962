package org.evenpour.intake;

import static org.evenpour.intake.LogColumn.Role;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Unit;
import org.evenpour.column.DoubleColumn;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Reads what is judged of a row: mass, its deviation from the target, thickness, wedge. Remembers
 * the row it read last, and those that are kept; owned by the thread that reads the log.
 */
final class ValueCells {
  private final @Nullable LogColumn mass;
  private final @Nullable LogColumn thickness;
  private final @Nullable LogColumn target;
  private final LogColumn[] points;
  private final double[] pointsMm;
  private final @Nullable Unit thicknessUnit;
  private double massKg;
  private double thicknessMm;
  private double wedgeMm;
  private double targetKg;
  private double[] keptMass = new double[16];
  private double[] keptThickness = new double[16];
  private double[] keptWedge = new double[16];
  private double[] keptDeviation = new double[16];
  private double[] keptTarget = new double[16];
  private final double[][] keptPoints;
  private final List<@Nullable Growing> growing = new ArrayList<>();

  ValueCells(LogHeader header) {
    mass = header.find(Role.MASS);
    thickness = header.find(Role.THICKNESS);
    target = mass == null ? null : header.find(Role.TARGET_MASS);
    List<LogColumn> all = header.all(Role.THICKNESS_POINT);
    points = all.toArray(LogColumn[]::new);
    pointsMm = new double[points.length];
    keptPoints = new double[points.length][16];
    thicknessUnit =
        thickness != null ? thickness.unit() : points.length > 0 ? points[0].unit() : null;
  }

  /** Reads a row; says why it is set aside if it is. */
  @Nullable Remark read(WheelIntake wheel, Block block, int row, long line, IntakeNotes notes) {
    massKg = Double.NaN;
    thicknessMm = Double.NaN;
    wedgeMm = Double.NaN;
    targetKg = Double.NaN;
    if (mass != null) {
      massKg = mass.unit().toCanonical(block.number(row, mass.index()));
      if (Double.isInfinite(massKg)) {
        return Reasons.noNumber(block, row, mass);
      }
      Remark reason = implausible(wheel, Quantity.MASS, massKg, block, row, mass);
      if (reason != null) {
        return reason;
      }
    }
    Remark reason = readThickness(wheel, block, row, line, notes);
    if (reason != null) {
      return reason;
    }
    if (Double.isNaN(massKg) && Double.isNaN(thicknessMm)) {
      return Reasons.nothingToJudge(mass, thickness, points);
    }
    if (target != null) {
      targetKg = target.unit().toCanonical(block.number(row, target.index()));
      if (Double.isInfinite(targetKg)) {
        notes.unreadable(target, block.cell(row, target.index()), line);
        targetKg = Double.NaN;
      }
      return implausible(wheel, Quantity.MASS_DEVIATION, massKg - targetKg, block, row, mass);
    }
    return null;
  }

  private @Nullable Remark readThickness(
      WheelIntake wheel, Block block, int row, long line, IntakeNotes notes) {
    if (thickness != null) {
      thicknessMm = thickness.unit().toCanonical(block.number(row, thickness.index()));
      return Double.isInfinite(thicknessMm)
          ? Reasons.noNumber(block, row, thickness)
          : implausible(wheel, Quantity.THICKNESS, thicknessMm, block, row, thickness);
    }
    double sum = 0;
    double smallest = Double.POSITIVE_INFINITY;
    double largest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.length; i++) {
      LogColumn point = points[i];
      double mm = point.unit().toCanonical(block.number(row, point.index()));
      if (Double.isInfinite(mm)) {
        notes.unreadable(point, block.cell(row, point.index()), line);
        mm = Double.NaN;
      }
      Remark reason = implausible(wheel, Quantity.THICKNESS, mm, block, row, point);
      if (reason != null) {
        return reason;
      }
      pointsMm[i] = mm;
      sum += mm; // a missing point makes the sum missing
      smallest = Math.min(smallest, mm);
      largest = Math.max(largest, mm);
    }
    if (points.length > 0) {
      thicknessMm = sum / points.length;
      wedgeMm = largest - smallest;
      return points.length < 2
          ? null
          : implausible(wheel, Quantity.WEDGE, wedgeMm, block, row, null);
    }
    return null;
  }

  private static @Nullable Remark implausible(
      WheelIntake wheel,
      String characteristic,
      double value,
      Block block,
      int row,
      @Nullable LogColumn column) {
    CharacteristicProfile profile = wheel.profile.characteristics().get(characteristic);
    if (profile == null
        || profile.plausibleLow() == null
        || profile.plausibleHigh() == null
        || !(value < profile.plausibleLow() || value > profile.plausibleHigh())) {
      return null;
    }
    return Reasons.implausible(characteristic, value, profile, block, row, column);
  }

  /**
   * Keeps the row that was read.
   *
   * @param at how many rows were kept before
   */
  void keep(int at) {
    if (at == keptMass.length) {
      int capacity = 2 * at;
      keptMass = Arrays.copyOf(keptMass, capacity);
      keptThickness = Arrays.copyOf(keptThickness, capacity);
      keptWedge = Arrays.copyOf(keptWedge, capacity);
      keptDeviation = Arrays.copyOf(keptDeviation, capacity);
      keptTarget = Arrays.copyOf(keptTarget, capacity);
      Arrays.setAll(keptPoints, i -> Arrays.copyOf(keptPoints[i], capacity));
    }
    keptMass[at] = massKg;
    keptThickness[at] = thicknessMm;
    keptWedge[at] = wedgeMm;
    keptDeviation[at] = massKg - targetKg;
    keptTarget[at] = targetKg;
    for (int i = 0; i < pointsMm.length; i++) {
      keptPoints[i][at] = pointsMm[i];
    }
  }

  /** Adds the rows that were kept to their wheels' columns. */
  void addTo(KeptRows kept) {
    kept.runs(this::addTo);
  }

  private void addTo(WheelIntake wheel, int row, int from, int to) {
    while (growing.size() <= wheel.index) {
      growing.add(null);
    }
    Growing its = growing.get(wheel.index);
    if (its == null) {
      its = open(wheel);
      growing.set(wheel.index, its);
    }
    put(its.mass, row, keptMass, from, to);
    put(its.thickness, row, keptThickness, from, to);
    put(its.wedge, row, keptWedge, from, to);
    put(its.deviation, row, keptDeviation, from, to);
    put(its.setPoint, row, keptTarget, from, to);
    for (int i = 0; i < keptPoints.length; i++) {
      put(its.points.get(i), row, keptPoints[i], from, to);
    }
    for (int i = from; i < to && target != null; i++) {
      if (!Double.isNaN(keptTarget[i])) {
        wheel.target(keptTarget[i]);
      }
    }
  }

  /** The columns of one wheel that this log's rows grow. */
  private record Growing(
      @Nullable DoubleColumn mass,
      @Nullable DoubleColumn thickness,
      @Nullable DoubleColumn wedge,
      @Nullable DoubleColumn deviation,
      @Nullable DoubleColumn setPoint,
      List<DoubleColumn> points) {}

  private Growing open(WheelIntake wheel) {
    return new Growing(
        mass == null ? null : wheel.open(Quantity.MASS, mass.unit()),
        thicknessUnit == null ? null : wheel.open(Quantity.THICKNESS, thicknessUnit),
        thicknessUnit == null || points.length < 2
            ? null
            : wheel.open(Quantity.WEDGE, thicknessUnit),
        mass == null || target == null ? null : wheel.open(Quantity.MASS_DEVIATION, mass.unit()),
        mass == null || target == null ? null : wheel.openSetPoint(),
        Arrays.stream(points).map(point -> wheel.point(point.point())).toList());
  }

  private static void put(
      @Nullable DoubleColumn column, int row, double[] values, int from, int to) {
    if (column != null) {
      SettingIntake.pad(column, row);
      column.addAll(values, from, to);
    }
  }
}
