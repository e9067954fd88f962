package org.evenpour.report.workbook;

import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.evenpour.audit.AuditReport.CapabilityReport;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.audit.CapabilityInFull;
import org.evenpour.audit.CapabilityInFull.ByPercentiles;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Capability of every characteristic and mold, as formulas over the cells beside them where those
 * cells say it all, so that a meeting can try another limit.
 */
final class CapabilitySheet {
  private static final double SAME = 1e-9;

  private CapabilitySheet() {}

  static void write(Paper paper) {
    String from = paper.say("head.from");
    String to = paper.say("head.to");
    String cpk = paper.say("head.cpk");
    String ppk = paper.say("head.ppk");
    String percentile = paper.say("head.percentile");
    Table table =
        new Table(
            paper,
            paper.say("sheet.capability"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.unit")),
                Column.words(paper.say("head.mold")),
                Column.figures(paper.say("head.anodes")),
                Column.figures(paper.say("head.mean")),
                Column.figures(paper.say("head.sd")),
                Column.figures(paper.say("head.sigma")),
                Column.figures(paper.say("head.lower")),
                Column.figures(paper.say("head.target")),
                Column.figures(paper.say("head.upper")),
                Column.figures(paper.say("head.cp")),
                Column.figures(cpk),
                Column.figures(paper.say("head.interval", cpk, from)),
                Column.figures(paper.say("head.interval", cpk, to)),
                Column.figures(paper.say("head.pp")),
                Column.figures(ppk),
                Column.figures(paper.say("head.interval", ppk, from)),
                Column.figures(paper.say("head.interval", ppk, to)),
                Column.figures(paper.say("head.cpl")),
                Column.figures(paper.say("head.cpu")),
                Column.figures(paper.say("head.cpm")),
                Column.figures(paper.say("head.expected_outside")),
                Column.figures(paper.say("head.outside")),
                Column.figures(paper.say("head.observed_outside")),
                Column.words(paper.say("head.stable")),
                Column.words(paper.say("head.normal")),
                Column.figures(percentile),
                Column.figures(paper.say("head.interval", percentile, from)),
                Column.figures(paper.say("head.interval", percentile, to))));
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      if (characteristic.overall().capability() != null) {
        new Row(paper, table, characteristic, null).write();
      }
      for (MoldReport mold : characteristic.molds()) {
        if (mold.capability() != null) {
          new Row(paper, table, characteristic, mold).write();
        }
      }
    }
    table.finish();
  }

  /** The observed share outside, as a division where the counts are known. */
  static void share(
      Table table,
      Paper paper,
      @Nullable MoldReport mold,
      CapabilityReport capability,
      char outsideColumn,
      char countColumn) {
    double observed = capability.fractionOutsideObserved();
    CellStyle style = paper.styles().share();
    if (mold != null
        && mold.outside() != null
        && isSame((double) mold.outside() / mold.count(), observed)) {
      int row = table.rowIndex() + 1;
      table.formula("" + outsideColumn + row + "/" + countColumn + row, observed, style);
    } else {
      table.number(observed, style);
    }
  }

  private static boolean isSame(double one, double other) {
    return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(other));
  }

  /**
   * One row; the mold is null for all molds together.
   *
   * <p>Owned by the thread that writes the workbook.
   */
  private record Row(
      Paper paper, Table table, CharacteristicReport characteristic, @Nullable MoldReport mold) {

    void write() {
      CapabilityReport capability =
          mold == null ? characteristic.overall().capability() : mold.capability();
      if (capability == null) {
        return;
      }
      Styles styles = paper.styles();
      Unit unit = paper.unit(characteristic);
      CellStyle digits = styles.number(paper.decimals(characteristic) + 1);
      Specification specification = characteristic.specification();
      Double lower = Paper.value(unit, specification.lower());
      Double upper = Paper.value(unit, specification.upper());
      Double mean =
          unit.fromCanonical(mold == null ? characteristic.overall().mean() : mold.mean());
      Double overall =
          Paper.difference(unit, mold == null ? characteristic.overall().sd() : mold.sd());
      Double within = mold == null ? null : Paper.difference(unit, mold.sigmaWithin());
      table
          .next()
          .text(characteristic.wheel())
          .text(paper.words().characteristic(characteristic.name()))
          .text(unit.symbol());
      if (mold == null) {
        table.text(paper.say("mold.all")).count(characteristic.overall().count());
      } else {
        table.label(mold.mold()).count(mold.count());
      }
      table
          .number(mean, digits)
          .number(overall, digits)
          .number(within, digits)
          .number(lower, digits)
          .number(Paper.value(unit, specification.target()), digits)
          .number(upper, digits);
      spread(capability.cp(), lower, upper, within, 'H');
      nearer(capability.cpk(), mean, lower, upper, within, 'H');
      interval(capability.cpk());
      spread(capability.pp(), lower, upper, overall, 'G');
      nearer(capability.ppk(), mean, lower, upper, overall, 'G');
      interval(capability.ppk());
      side(capability.cpl(), mean, lower, within, "F", "I");
      side(capability.cpu(), upper, mean, within, "K", "F");
      value(capability.cpm());
      table.number(capability.fractionOutsideExpected(), styles.share());
      table.count(mold == null ? null : mold.outside());
      share(table, paper, mold, capability, 'X', 'E');
      table.text(paper.say(Beside.stable(characteristic)));
      if (mold == null) {
        percentiles(characteristic.inFull());
      }
    }

    /** Indices without a normal distribution, where it is refused. */
    private void percentiles(CapabilityInFull full) {
      Boolean normal = full.isNormal();
      ByPercentiles by = full.percentiles();
      if (normal == null) {
        table.blank();
      } else {
        table.text(paper.say(normal ? "normal.yes" : by == null ? "normal.few" : "normal.no"));
      }
      if (by != null) {
        value(by.ppk());
        interval(by.ppk());
      }
    }

    private void value(@Nullable Estimate estimate) {
      table.number(estimate == null ? null : (Double) estimate.value(), paper.styles().number(2));
    }

    private void interval(@Nullable Estimate estimate) {
      CellStyle style = paper.styles().number(2);
      table
          .number(estimate == null ? null : estimate.low(), style)
          .number(estimate == null ? null : estimate.high(), style);
    }

    private void spread(
        @Nullable Estimate estimate,
        @Nullable Double lower,
        @Nullable Double upper,
        @Nullable Double sigma,
        char sigmaColumn) {
      if (lower == null || upper == null || sigma == null) {
        value(estimate);
        return;
      }
      int row = table.rowIndex() + 1;
      formula(
          estimate,
          "(K" + row + "-I" + row + ")/(6*" + sigmaColumn + row + ")",
          (upper - lower) / (6 * sigma));
    }

    private void nearer(
        @Nullable Estimate estimate,
        Double mean,
        @Nullable Double lower,
        @Nullable Double upper,
        @Nullable Double sigma,
        char sigmaColumn) {
      if (sigma == null || (lower == null && upper == null)) {
        value(estimate);
        return;
      }
      int row = table.rowIndex() + 1;
      String above = "K" + row + "-F" + row;
      String below = "F" + row + "-I" + row;
      double room =
          Math.min(
              upper == null ? Double.POSITIVE_INFINITY : upper - mean,
              lower == null ? Double.POSITIVE_INFINITY : mean - lower);
      String nearest =
          upper == null
              ? "(" + below + ")"
              : lower == null ? "(" + above + ")" : "MIN(" + above + "," + below + ")";
      formula(estimate, nearest + "/(3*" + sigmaColumn + row + ")", room / (3 * sigma));
    }

    private void side(
        @Nullable Estimate estimate,
        @Nullable Double high,
        @Nullable Double low,
        @Nullable Double sigma,
        String highColumn,
        String lowColumn) {
      if (high == null || low == null || sigma == null) {
        value(estimate);
        return;
      }
      int row = table.rowIndex() + 1;
      formula(
          estimate,
          "(" + highColumn + row + "-" + lowColumn + row + ")/(3*H" + row + ")",
          (high - low) / (3 * sigma));
    }

    /** A formula only where it gives what the audit found, which stands in the cell either way. */
    private void formula(@Nullable Estimate estimate, String formula, double gives) {
      if (estimate != null && isSame(gives, estimate.value())) {
        table.formula(formula, estimate.value(), paper.styles().number(2));
      } else {
        value(estimate);
      }
    }
  }
}
