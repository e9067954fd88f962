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

  /** The table of a report, where no anodes stand beside it. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    return of(report, sentences, AnodeCells.NONE);
  }

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences, AnodeCells anodes) {
    Following following = new Following(report, sentences, anodes);
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      of.molds().forEach(mold -> rows.add(new Row(of, mold)));
    }
    return new Table<>(
        "molds",
        sentences.words().say("sheet.molds"),
        columns(Columns.of(sentences), report, sentences, following)
            .figure("lower", row -> following.limit(row.of(), "lower"))
            .figure("target", row -> following.limit(row.of(), "target"))
            .figure("upper", row -> following.limit(row.of(), "upper"))
            .list(),
        rows);
  }

  /** Its columns. */
  public static Columns<Row> columns(
      Columns<Row> columns, AuditReport report, Sentences sentences) {
    return columns(columns, report, sentences, null);
  }

  /**
   * @param following what follows a change of a limit; null where nobody can change one
   */
  private static Columns<Row> columns(
      Columns<Row> columns,
      AuditReport report,
      Sentences sentences,
      @Nullable Following following) {
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
        .figure("cpk", row -> cpk(row, following))
        .figure("outside", row -> outside(row, sentences, following))
        .figure("share_outside", row -> share(row, sentences, following));
  }

  private static Cell cpk(Row row, @Nullable Following following) {
    Cell.Figure found = new Cell.Figure(cpk(row.mold()), Digits.plain(2));
    return following == null
        ? found
        : following.nearest(
            row.of(), row.mold().mean(), "mean", row.mold().sigmaWithin(), "sigma", found);
  }

  private static Cell outside(Row row, Sentences sentences, @Nullable Following following) {
    Long count = row.mold().outside();
    Cell.Figure found =
        new Cell.Figure(
            count == null ? null : (Double) count.doubleValue(),
            Digits.count(sentences.words().say("thousands")));
    return following == null
        ? found
        : following.outside(row.of(), "mold", row.mold().mold(), "{mold}", found);
  }

  private static Cell share(Row row, Sentences sentences, @Nullable Following following) {
    Cell share = CapabilityTable.share(row.mold(), row.mold().capability());
    return following != null
            && outside(row, sentences, following) instanceof Cell.AsAudited
            && share instanceof Cell.Computed computed
        ? Following.audited(computed.figure())
        : share;
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
