package org.evenpour.intake;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Unit;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Why a row is set aside, in one sentence, with what would mend it. */
final class Reasons {
  private Reasons() {}

  static Remark fault(Block block, int row) {
    return switch (block.fault(row)) {
      case NONE -> throw new IllegalArgumentException("no fault");
      case CELLS -> Remark.of("row.cells", block.cellCount[row], block.columns);
      case QUOTE -> Remark.of("row.quote");
      case NUL -> Remark.of("row.nul");
      case TOO_LONG -> Remark.of("row.long");
    };
  }

  static Remark missing(LogColumn column) {
    return Remark.of("row.missing", column.heading());
  }

  static Remark time(Block block, int row, LogColumn column) {
    return block.isBlank(row, column.index())
        ? missing(column)
        : Remark.of("row.time", text(block, row, column));
  }

  static Remark turn(Block block, int row, LogColumn column) {
    return block.isBlank(row, column.index())
        ? Remark.of("row.turn.missing", column.heading())
        : Remark.of("row.turn", text(block, row, column));
  }

  static Remark noNumber(Block block, int row, LogColumn column) {
    return Remark.of("row.number", text(block, row, column));
  }

  static Remark unknownMold(String label, int molds) {
    return Remark.of("row.mold", CellText.shown(label), molds);
  }

  static Remark tooManyWheels(int limit) {
    return Remark.of("row.wheels", limit);
  }

  static Remark tooManyMolds(int limit) {
    return Remark.of("row.molds", limit);
  }

  static Remark nothingToJudge(
      @Nullable LogColumn mass, @Nullable LogColumn thickness, LogColumn[] points) {
    List<Object> headings = new ArrayList<>();
    if (mass != null) {
      headings.add(mass.heading());
    }
    if (thickness != null) {
      headings.add(thickness.heading());
    }
    if (points.length > 0) {
      headings.add(points.length == 1 ? points[0].heading() : Remark.of("row.point"));
    }
    return headings.size() == 1
        ? Remark.of("row.missing", headings.get(0))
        : Remark.of(
            "row.nothing",
            headings.stream()
                .reduce((one, other) -> Remark.of("row.both", one, other))
                .orElseThrow());
  }

  static Remark implausible(
      String characteristic,
      double value,
      CharacteristicProfile profile,
      Block block,
      int row,
      @Nullable LogColumn column) {
    Unit unit = profile.unit();
    String subject =
        column == null || characteristic.equals(Quantity.MASS_DEVIATION)
            ? characteristic + " " + number(value, unit)
            : text(block, row, column);
    return Remark.of(
        "row.implausible",
        subject,
        number(bound(profile.plausibleLow()), unit),
        number(bound(profile.plausibleHigh()), unit),
        unit.symbol());
  }

  static Remark backwards(WheelIntake wheel, long millis, int file) {
    boolean sameFile = wheel.latestLine >>> RowIntake.LINE_BITS == file;
    String seconds = number((wheel.latestMillis - millis) / 1000.0, Unit.NONE);
    Instant latest = Instant.ofEpochMilli(wheel.latestMillis);
    String allowed = number(wheel.profile.backwardsSeconds(), Unit.NONE);
    return sameFile
        ? Remark.of(
            "row.backwards",
            seconds,
            wheel.latestLine & ((1L << RowIntake.LINE_BITS) - 1),
            latest,
            allowed)
        : Remark.of("row.backwards.log", seconds, latest, allowed);
  }

  static Remark leap(long millis) {
    return Remark.of("row.leap", Instant.ofEpochMilli(millis));
  }

  static Remark twice(int turn, String mold) {
    return Remark.of("row.twice", turn, CellText.shown(mold));
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
