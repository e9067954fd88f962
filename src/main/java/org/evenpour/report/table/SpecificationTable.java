package org.evenpour.report.table;

import java.util.function.Function;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.SpecificationUsed;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * The limits of each characteristic, which a meeting may change: all that follows hangs on these
 * cells.
 */
public final class SpecificationTable {
  private SpecificationTable() {}

  /** Those that have any. */
  public static Table<CharacteristicReport> of(AuditReport report, Sentences sentences) {
    Following following = new Following(report, sentences, AnodeCells.NONE);
    Function<CharacteristicReport, Figures> figures =
        one -> sentences.figures(one.wheel(), one.name());
    Columns<CharacteristicReport> columns =
        Columns.<CharacteristicReport>of(sentences)
            .wheel(CharacteristicReport::wheel)
            .characteristic(CharacteristicReport::name)
            .unit(figures);
    for (String which : new String[] {"lower", "target", "upper"}) {
      columns.cell(
          which,
          Kind.FIGURES,
          one -> {
            String name = following.name(one, which);
            Cell.Figure figure = following.figure(one, which);
            return name == null ? figure : new Cell.Named(name, figure);
          });
    }
    columns
        .text(
            "names",
            one -> following.name(one, one.specification().upper() == null ? "lower" : "upper"))
        .time("spec_since", one -> newest(one) == null ? null : newest(one).from())
        .text("spec_who", one -> newest(one) == null ? null : newest(one).who())
        .prose("spec_why", 40, one -> newest(one) == null ? null : newest(one).why());
    return new Table<>(
        "specification",
        sentences.words().say("sheet.specification"),
        columns.list(),
        report.characteristics().stream().filter(one -> one.specification().hasLimits()).toList());
  }

  private static @Nullable SpecificationUsed newest(CharacteristicReport of) {
    return of.specifications().isEmpty()
        ? null
        : of.specifications().get(of.specifications().size() - 1);
  }
}
