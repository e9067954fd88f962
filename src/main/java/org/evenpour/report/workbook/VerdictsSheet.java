package org.evenpour.report.workbook;

import java.util.List;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.MoldVerdict;
import org.evenpour.audit.MoldVerdict.Standing;
import org.evenpour.audit.MoldVerdict.Trend;
import org.evenpour.casting.Unit;
import org.evenpour.report.Figures;
import org.evenpour.report.VerdictSentences;
import org.jspecify.annotations.Nullable;

/** What to do with each mold and why; then the figures that the verdicts went by. */
final class VerdictsSheet {
  /** A plan area is told to a square centimeter. */
  private static final int AREA_DECIMALS = 4;

  private VerdictsSheet() {}

  static void write(Paper paper) {
    if (paper.report().verdicts().isEmpty()) {
      return;
    }
    verdicts(paper);
    standings(paper);
  }

  private static void verdicts(Paper paper) {
    VerdictSentences said = new VerdictSentences(paper.report(), paper.sentences());
    Table table =
        new Table(
            paper,
            paper.say("sheet.verdicts"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.mold")),
                Column.words(paper.say("head.serial")),
                Column.words(paper.say("head.verdict")),
                Column.words(paper.say("head.why")),
                Column.words(paper.say("head.thick_side")),
                Column.figures(paper.say("head.casts")),
                Column.figures(paper.say("head.casts_on_mold")),
                Column.figures(paper.say("head.tonnes"))));
    for (MoldVerdict one : paper.report().verdicts()) {
      table
          .next()
          .text(one.wheel())
          .label(one.mold())
          .text(one.serial())
          .text(said.verdict(one))
          .prose(said.reason(one))
          .text(said.thickSide(one.thickSide()))
          .count(one.casts())
          .count(one.castsOnMold())
          .number(one.tonnes(), paper.styles().number(1));
    }
    table.finish();
  }

  private static void standings(Paper paper) {
    Table table =
        new Table(
            paper,
            paper.say("sheet.standings"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.unit")),
                Column.words(paper.say("head.mold")),
                Column.figures(paper.say("head.casts")),
                Column.figures(paper.say("head.effective")),
                Column.figures(paper.say("head.level")),
                Column.figures(paper.say("head.offset_mean")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.figures(paper.say("head.shrunk")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.figures(paper.say("head.decision")),
                Column.words(paper.say("head.stands")),
                Column.figures(paper.say("head.ppk")),
                Column.figures(
                    paper.say("head.interval", paper.say("head.ppk"), paper.say("head.from"))),
                Column.figures(
                    paper.say("head.interval", paper.say("head.ppk"), paper.say("head.to"))),
                Column.figures(paper.say("head.step")),
                Column.figures(paper.say("head.trend")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.words(paper.say("head.trend_clear")),
                Column.figures(paper.say("head.casts_left")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high"))));
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      rows(paper, table, characteristic.wheel(), characteristic.name());
    }
    for (String wheel : paper.report().log().wheels()) {
      rows(paper, table, wheel, "plan_area");
    }
    table.finish();
  }

  private static void rows(Paper paper, Table table, String wheel, String characteristic) {
    for (MoldVerdict one : paper.report().verdicts()) {
      Standing standing = one.standing(characteristic);
      if (one.wheel().equals(wheel) && standing != null) {
        row(paper, table.next(), one, standing);
      }
    }
  }

  private static void row(Paper paper, Table table, MoldVerdict verdict, Standing one) {
    boolean isArea = one.characteristic().equals("plan_area");
    Figures figures = paper.sentences().figures(verdict.wheel(), one.characteristic());
    Unit unit = figures.unit();
    Styles styles = paper.styles();
    int decimals = isArea ? AREA_DECIMALS : figures.decimals() + 1;
    var level = styles.number(decimals);
    var departure = styles.departure(decimals);
    Trend trend = one.trend();
    Estimate room = one.room();
    Estimate step = one.step();
    table
        .text(verdict.wheel())
        .text(paper.words().characteristic(one.characteristic()))
        .text(isArea ? "m²" : unit.symbol())
        .label(verdict.mold())
        .count(one.casts())
        .number(one.effectiveCasts(), styles.number(0))
        .number(unit.fromCanonical(one.level()), level)
        .number(unit.differenceFromCanonical(one.offset()), departure)
        .number(unit.differenceFromCanonical(one.offsetLow()), departure)
        .number(unit.differenceFromCanonical(one.offsetHigh()), departure)
        .number(Paper.difference(unit, one.shrunk()), departure)
        .number(Paper.difference(unit, one.shrunkLow()), departure)
        .number(Paper.difference(unit, one.shrunkHigh()), departure)
        .number(Paper.difference(unit, one.decisionLimit()), level)
        .text(new VerdictSentences(paper.report(), paper.sentences()).stands(one))
        .number(room == null ? null : (Double) room.value(), styles.number(2))
        .number(room == null ? null : room.low(), styles.number(2))
        .number(room == null ? null : room.high(), styles.number(2))
        .number(step == null ? null : Paper.difference(unit, step.value()), departure)
        .number(trend == null ? null : Paper.difference(unit, trend.per100()), departure)
        .number(trend == null ? null : Paper.difference(unit, trend.low()), departure)
        .number(trend == null ? null : Paper.difference(unit, trend.high()), departure)
        .text(clear(paper, trend))
        .number(trend == null ? null : trend.castsLeft(), styles.number(0))
        .number(trend == null ? null : trend.castsLeftLow(), styles.number(0))
        .number(trend == null ? null : trend.castsLeftHigh(), styles.number(0));
  }

  private static String clear(Paper paper, @Nullable Trend trend) {
    return trend == null
        ? paper.say("trend.few")
        : paper.say(trend.isClear() ? "trend.clear" : "trend.none");
  }
}
