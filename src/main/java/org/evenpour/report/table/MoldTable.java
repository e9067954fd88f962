package org.evenpour.report.table;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.VerdictSentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/** Every mold of every characteristic: its level, its limits and how far it stands off. */
public final class MoldTable {
  private MoldTable() {}

  /** A mold in one characteristic. */
  public record Row(CharacteristicReport of, MoldReport mold) {}

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      of.molds().forEach(mold -> rows.add(new Row(of, mold)));
    }
    Function<Row, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    return new Table<>(
        "molds",
        sentences.words().say("sheet.molds"),
        columns(Columns.of(sentences), report, sentences)
            .value("lower", figures, row -> row.of().specification().lower())
            .value("target", figures, row -> row.of().specification().target())
            .value("upper", figures, row -> row.of().specification().upper())
            .list(),
        rows);
  }

  /** Its columns. */
  public static Columns<Row> columns(
      Columns<Row> columns, AuditReport report, Sentences sentences) {
    VerdictSentences said = new VerdictSentences(report, sentences);
    Function<Row, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    return columns
        .wheel(row -> row.of().wheel())
        .characteristic(row -> row.of().name())
        .unit(figures)
        .label("mold", row -> row.mold().mold())
        .count("anodes", row -> row.mold().count())
        .value("mean", figures, row -> row.mold().mean())
        .spread("sd", figures, row -> row.mold().sd())
        .spread("sigma", figures, row -> row.mold().sigmaWithin())
        .value("center", figures, row -> row.mold().center())
        .value("lower_limit", figures, row -> row.mold().lowerLimit())
        .value("upper_limit", figures, row -> row.mold().upperLimit())
        .departure("offset", figures, row -> row.mold().offset())
        .departure("low", figures, row -> row.mold().offsetLow())
        .departure("high", figures, row -> row.mold().offsetHigh())
        .text(
            "stands",
            row -> {
              Standing standing = standing(report, row);
              return standing == null ? "" : said.stands(standing);
            })
        .figure("cpk", Digits.plain(2), row -> cpk(row.mold()))
        .count("outside", row -> row.mold().outside())
        .figure("share_outside", row -> CapabilityTable.share(row.mold(), row.mold().capability()));
  }

  /** The estimate of its Cpk alone; null where there is no tolerance. */
  static @Nullable Double cpk(MoldReport mold) {
    CapabilityReport capability = mold.capability();
    Estimate cpk = capability == null ? null : capability.cpk();
    return cpk == null ? null : (Double) cpk.value();
  }

  /** How a mold stands by the figures that its verdict went by; null where there are none. */
  public static @Nullable Standing standing(AuditReport report, Row row) {
    return report.verdicts().stream()
        .filter(one -> one.wheel().equals(row.of().wheel()))
        .filter(one -> one.mold().equals(row.mold().mold()))
        .findFirst()
        .map(one -> one.standing(row.of().name()))
        .orElse(null);
  }

  /**
   * How far each mold of a characteristic stands from the wheel's center, the lowest first, as a
   * picture needs it.
   */
  public static Table<Row> offsets(AuditReport report, Sentences sentences) {
    Function<Row, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      of.molds().stream()
          .filter(mold -> mold.offset() != null)
          .sorted(Comparator.comparingDouble(mold -> requireNonNull(mold.offset())))
          .forEach(mold -> rows.add(new Row(of, mold)));
    }
    return new Table<>(
        "offsets",
        sentences.words().say("sheet.ranking"),
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .label("mold", row -> row.mold().mold())
            .departure("offset", figures, row -> row.mold().offset())
            .departure("low", figures, row -> row.mold().offsetLow())
            .departure("high", figures, row -> row.mold().offsetHigh())
            .cell(
                "minus",
                Kind.FIGURES,
                row ->
                    arm(
                        figures.apply(row),
                        row.mold().offset(),
                        row.mold().offsetLow(),
                        "{offset}-{low}"))
            .cell(
                "plus",
                Kind.FIGURES,
                row ->
                    arm(
                        figures.apply(row),
                        row.mold().offsetHigh(),
                        row.mold().offset(),
                        "{high}-{offset}"))
            .list(),
        rows);
  }

  private static Cell arm(
      Figures figures, @Nullable Double larger, @Nullable Double smaller, String formula) {
    Digits digits = Digits.plain(figures.decimals() + 1);
    Unit unit = figures.unit();
    Double high = Columns.difference(unit, larger);
    Double low = Columns.difference(unit, smaller);
    return high == null || low == null
        ? new Cell.Figure(null, digits)
        : new Cell.Computed(formula, new Cell.Figure(high - low, digits));
  }
}
