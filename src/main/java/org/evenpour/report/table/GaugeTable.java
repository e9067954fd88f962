package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.GaugeReport.OnWheel;
import org.evenpour.report.Figures;
import org.evenpour.report.GaugeText;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/**
 * What each gauge is worth, figure by figure.
 *
 * <p>Owned by the thread that declares the table.
 */
public final class GaugeTable {

  /**
   * A figure of a gauge.
   *
   * @param wheel empty where it is of the gauge itself
   * @param figure key of its name
   */
  public record Row(
      GaugeReport of, String wheel, String figure, Cell value, Cell low, Cell high, String unit) {}

  /** Figures that hang on the tolerance and do not follow it in a spreadsheet. */
  private static final Set<String> OF_LIMITS =
      Set.of(
          "gauge.row.tolerance",
          "gauge.row.accept_low",
          "gauge.row.accept_high",
          "gauge.row.reject_below",
          "gauge.row.reject_above",
          "gauge.row.doubt",
          "head.coarse");

  private final Sentences sentences;
  private final List<Row> rows = new ArrayList<>();

  private GaugeTable(Sentences sentences) {
    this.sentences = sentences;
  }

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    GaugeTable made = new GaugeTable(sentences);
    report.gauges().forEach(made::gauge);
    return new Table<>(
        "gauge",
        sentences.words().say("sheet.gauge"),
        Columns.<Row>of(sentences)
            .text("file", row -> row.of().file())
            .characteristic(row -> row.of().characteristic())
            .wheel(Row::wheel)
            .text("figure", row -> sentences.words().say(row.figure()))
            .cell(
                "value_plain",
                Kind.FIGURES,
                row ->
                    OF_LIMITS.contains(row.figure()) && row.value() instanceof Cell.Figure figure
                        ? Following.audited(figure)
                        : row.value())
            .cell("low", Kind.FIGURES, Row::low)
            .cell("high", Kind.FIGURES, Row::high)
            .cell(
                "unit",
                Kind.WORDS,
                row ->
                    OF_LIMITS.contains(row.figure()) && !row.unit().isEmpty()
                        ? new Cell.AsAudited(Cell.words(row.unit()))
                        : Cell.words(row.unit()))
            .list(),
        made.rows);
  }

  private void gauge(GaugeReport of) {
    count(of, "", "head.parts", of.parts() > 0 ? (Long) (long) of.parts() : null);
    count(of, "", "head.operators", of.operators() > 0 ? (Long) (long) of.operators() : null);
    count(of, "", "head.readings", of.readings() > 0 ? (Long) (long) of.readings() : null);
    Figures figures = new GaugeText(sentences).figures(of);
    Digits spread = Digits.plain(figures.decimals() + 2);
    Digits departure = Digits.signed(figures.decimals() + 2);
    estimate(of, "gauge.row.sigma", of.sigma(), spread);
    estimate(of, "gauge.row.repeatability", of.repeatability(), spread);
    Double reproducibility = of.reproducibility();
    estimate(
        of,
        "gauge.row.reproducibility",
        reproducibility == null ? null : new Estimate(reproducibility, null, null),
        spread);
    estimate(of, "gauge.row.operators", of.betweenOperators(), spread);
    estimate(of, "gauge.row.interaction", of.interaction(), spread);
    estimate(of, "gauge.row.parts", of.partToPart(), spread);
    estimate(of, "gauge.row.bias", of.bias(), departure);
    estimate(of, "gauge.row.drift", of.driftPerDay(), departure);
    share(of, "", "gauge.row.study", of.shareOfStudy());
    for (OnWheel wheel : of.wheels()) {
      share(of, wheel.wheel(), "gauge.row.spread", wheel.shareOfSpread());
      share(of, wheel.wheel(), "gauge.row.pour", wheel.shareOfPour());
      share(of, wheel.wheel(), "gauge.row.tolerance", wheel.shareOfTolerance());
      value(of, wheel.wheel(), "gauge.row.accept_low", wheel.acceptLow());
      value(of, wheel.wheel(), "gauge.row.accept_high", wheel.acceptHigh());
      value(of, wheel.wheel(), "gauge.row.reject_below", wheel.rejectBelow());
      value(of, wheel.wheel(), "gauge.row.reject_above", wheel.rejectAbove());
      count(of, wheel.wheel(), "gauge.row.doubt", wheel.inDoubt());
      rows.add(
          new Row(
              of,
              wheel.wheel(),
              "head.coarse",
              Cell.BLANK,
              Cell.BLANK,
              Cell.BLANK,
              new GaugeText(sentences).verdicts(wheel)));
    }
  }

  private void add(GaugeReport of, String wheel, String key, Cell value) {
    rows.add(new Row(of, wheel, key, value, Cell.BLANK, Cell.BLANK, ""));
  }

  private void count(GaugeReport of, String wheel, String key, @Nullable Long count) {
    if (count != null) {
      Digits digits = Digits.count(sentences.words().say("thousands"));
      add(of, wheel, key, new Cell.Figure((double) count, digits));
    }
  }

  private void share(GaugeReport of, String wheel, String key, @Nullable Double share) {
    if (share != null) {
      add(of, wheel, key, new Cell.Figure(share, Digits.share(1)));
    }
  }

  private void estimate(GaugeReport of, String key, @Nullable Estimate estimate, Digits digits) {
    if (estimate != null) {
      Unit unit = new GaugeText(sentences).figures(of).unit();
      rows.add(
          new Row(
              of,
              "",
              key,
              new Cell.Figure(Columns.difference(unit, estimate.value()), digits),
              new Cell.Figure(Columns.difference(unit, estimate.low()), digits),
              new Cell.Figure(Columns.difference(unit, estimate.high()), digits),
              unit.symbol()));
    }
  }

  private void value(GaugeReport of, String wheel, String key, @Nullable Double value) {
    if (value != null) {
      Figures figures = new GaugeText(sentences).figures(of);
      Cell shown =
          new Cell.Figure(
              Columns.value(figures.unit(), value), Digits.plain(figures.decimals() + 1));
      rows.add(new Row(of, wheel, key, shown, Cell.BLANK, Cell.BLANK, figures.unit().symbol()));
    }
  }
}
