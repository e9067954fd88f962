package org.evenpour.report.workbook;

import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.GaugeReport;
import org.evenpour.audit.GaugeReport.OnWheel;
import org.evenpour.casting.Unit;
import org.evenpour.report.GaugeText;
import org.jspecify.annotations.Nullable;

/**
 * What each gauge is worth, figure by figure.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class GaugeSheet {
  private final Paper paper;
  private final Table table;

  private GaugeSheet(Paper paper) {
    this.paper = paper;
    table =
        new Table(
            paper,
            paper.say("sheet.gauge"),
            List.of(
                Column.words(paper.say("head.file")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.figure")),
                Column.figures(paper.say("head.value_plain")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.words(paper.say("head.unit"))));
  }

  static void write(Paper paper) {
    if (paper.report().gauges().isEmpty()) {
      return;
    }
    GaugeSheet sheet = new GaugeSheet(paper);
    paper.report().gauges().forEach(sheet::gauge);
    sheet.table.finish();
  }

  private void gauge(GaugeReport its) {
    count(its, "head.parts", its.parts());
    count(its, "head.operators", its.operators());
    count(its, "head.readings", its.readings());
    spread(its, "gauge.row.sigma", its.sigma());
    spread(its, "gauge.row.repeatability", its.repeatability());
    Double reproducibility = its.reproducibility();
    spread(
        its,
        "gauge.row.reproducibility",
        reproducibility == null ? null : new Estimate(reproducibility, null, null));
    spread(its, "gauge.row.operators", its.betweenOperators());
    spread(its, "gauge.row.interaction", its.interaction());
    spread(its, "gauge.row.parts", its.partToPart());
    departure(its, "gauge.row.bias", its.bias());
    departure(its, "gauge.row.drift", its.driftPerDay());
    share(its, "", "gauge.row.study", its.shareOfStudy());
    for (OnWheel wheel : its.wheels()) {
      share(its, wheel.wheel(), "gauge.row.spread", wheel.shareOfSpread());
      share(its, wheel.wheel(), "gauge.row.pour", wheel.shareOfPour());
      share(its, wheel.wheel(), "gauge.row.tolerance", wheel.shareOfTolerance());
      value(its, wheel.wheel(), "gauge.row.accept_low", wheel.acceptLow());
      value(its, wheel.wheel(), "gauge.row.accept_high", wheel.acceptHigh());
      value(its, wheel.wheel(), "gauge.row.reject_below", wheel.rejectBelow());
      value(its, wheel.wheel(), "gauge.row.reject_above", wheel.rejectAbove());
      Long inDoubt = wheel.inDoubt();
      if (inDoubt != null) {
        row(its, wheel.wheel(), "gauge.row.doubt").count(inDoubt);
      }
      row(its, wheel.wheel(), "head.coarse")
          .blank()
          .blank()
          .blank()
          .text(new GaugeText(paper.sentences()).verdicts(wheel));
    }
  }

  private Table row(GaugeReport its, String wheel, String key) {
    return table
        .next()
        .text(its.file())
        .text(paper.words().characteristic(its.characteristic()))
        .text(wheel)
        .text(paper.say(key));
  }

  private Unit unit(GaugeReport its) {
    return new GaugeText(paper.sentences()).figures(its).unit();
  }

  private int decimals(GaugeReport its) {
    return new GaugeText(paper.sentences()).figures(its).decimals();
  }

  private void count(GaugeReport its, String key, long count) {
    if (count > 0) {
      row(its, "", key).count(count);
    }
  }

  private void spread(GaugeReport its, String key, @Nullable Estimate estimate) {
    estimate(its, key, estimate, paper.styles().number(decimals(its) + 2));
  }

  private void departure(GaugeReport its, String key, @Nullable Estimate estimate) {
    estimate(its, key, estimate, paper.styles().departure(decimals(its) + 2));
  }

  private void estimate(GaugeReport its, String key, @Nullable Estimate estimate, CellStyle style) {
    if (estimate != null) {
      Unit unit = unit(its);
      row(its, "", key)
          .number(Paper.difference(unit, (Double) estimate.value()), style)
          .number(Paper.difference(unit, estimate.low()), style)
          .number(Paper.difference(unit, estimate.high()), style)
          .text(unit.symbol());
    }
  }

  private void share(GaugeReport its, String wheel, String key, @Nullable Double share) {
    if (share != null) {
      row(its, wheel, key).number(share, paper.styles().share());
    }
  }

  private void value(GaugeReport its, String wheel, String key, @Nullable Double value) {
    if (value != null) {
      row(its, wheel, key)
          .number(Paper.value(unit(its), value), paper.styles().number(decimals(its) + 1))
          .blank()
          .blank()
          .text(unit(its).symbol());
    }
  }
}
