package org.evenpour.intake;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.Unit;
import org.jspecify.annotations.Nullable;

/** Why a row is set aside, in one sentence, with what would mend it. */
final class Reasons {
  private Reasons() {}

  static String fault(Block block, int row) {
    return switch (block.fault(row)) {
      case NONE -> throw new IllegalArgumentException("no fault");
      case CELLS ->
          "there are "
              + block.cellCount[row]
              + " cells where the headings are "
              + block.columns
              + "; check the separators, and quote a cell that holds one";
      case QUOTE ->
          "a quote opens a cell and does not close it before a separator; close it or take it out";
      case NUL -> "it holds NUL bytes, as after a loss of power while it was written";
      case TOO_LONG -> "it is longer than 1 MiB";
    };
  }

  static String missing(LogColumn column) {
    return column.heading() + " is missing";
  }

  static String time(Block block, int row, LogColumn column) {
    return block.isBlank(row, column.index())
        ? missing(column)
        : text(block, row, column) + " is no time; write it like 2026-03-04T05:06:07+01:00";
  }

  static String turn(Block block, int row, LogColumn column) {
    return block.isBlank(row, column.index())
        ? missing(column) + "; if there are no turns, leave the column out and they are counted"
        : text(block, row, column) + " is no whole number";
  }

  static String noNumber(Block block, int row, LogColumn column) {
    return text(block, row, column) + " is no number that can be used";
  }

  static String unknownMold(String label, int molds) {
    return "mold "
        + CellText.shown(label)
        + " is none of the wheel's molds 1 to "
        + molds
        + "; correct it, or molds in the profile";
  }

  static String tooMany(String what, int limit, String column) {
    return "there are more than "
        + limit
        + " "
        + what
        + "; check what the column "
        + column
        + " holds";
  }

  static String nothingToJudge(
      @Nullable LogColumn mass, @Nullable LogColumn thickness, LogColumn[] points) {
    List<String> headings = new ArrayList<>();
    if (mass != null) {
      headings.add(mass.heading());
    }
    if (thickness != null) {
      headings.add(thickness.heading());
    }
    if (points.length > 0) {
      headings.add(points.length == 1 ? points[0].heading() : "one of the thickness points");
    }
    return String.join(" and ", headings) + (headings.size() == 1 ? " is" : " are") + " missing";
  }

  static String tooLarge(LogColumn[] points) {
    return points[0].heading() + " and the other points are no numbers that can be used";
  }

  static String implausible(
      String characteristic,
      double value,
      CharacteristicProfile profile,
      Block block,
      int row,
      @Nullable LogColumn column) {
    Unit unit = profile.unit();
    String subject =
        column == null || characteristic.equals(RowIntake.MASS_DEVIATION)
            ? characteristic + " " + number(value, unit)
            : text(block, row, column);
    return subject
        + " lies outside the plausible "
        + number(bound(profile.plausibleLow()), unit)
        + " to "
        + number(bound(profile.plausibleHigh()), unit)
        + " "
        + unit.symbol()
        + " of the profile";
  }

  static String backwards(WheelIntake wheel, long millis, int file) {
    boolean sameFile = wheel.latestLine >>> RowIntake.LINE_BITS == file;
    return "its time is "
        + number((wheel.latestMillis - millis) / 1000.0, Unit.NONE)
        + " s before the one "
        + (sameFile
            ? "in line " + (wheel.latestLine & ((1L << RowIntake.LINE_BITS) - 1))
            : "in the log before")
        + " ("
        + Instant.ofEpochMilli(wheel.latestMillis)
        + "); the profile's backwards_seconds allows "
        + number(wheel.profile.backwardsSeconds(), Unit.NONE);
  }

  static String twice(int turn, String mold) {
    return "turn "
        + turn
        + " and mold "
        + CellText.shown(mold)
        + " came before; if the counter restarts with each charge, leave the column out and turns"
        + " are counted";
  }

  private static String text(Block block, int row, LogColumn column) {
    return column.heading() + " " + CellText.shown(block.cell(row, column.index()));
  }

  private static double bound(@Nullable Double bound) {
    return bound == null ? Double.NaN : bound;
  }

  private static String number(double value, Unit unit) {
    return new BigDecimal(unit.fromCanonical(value))
        .round(new MathContext(9))
        .stripTrailingZeros()
        .toPlainString();
  }
}
