package org.evenpour.report.table;

import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
            one ->
                Stream.of("lower", "target", "upper")
                    .map(which -> following.name(one, which))
                    .filter(Objects::nonNull)
                    .collect(Collectors.joining(", ")))
        .time("spec_since", one -> newest(one, SpecificationUsed::from))
        .text("spec_who", one -> newest(one, SpecificationUsed::who))
        .prose("spec_why", 40, one -> newest(one, SpecificationUsed::why));
    return new Table<>(
        "specification",
        sentences.words().say("sheet.specification"),
        columns.list(),
        report.characteristics().stream().filter(one -> one.specification().hasLimits()).toList());
  }

  private static <T> @Nullable T newest(
      CharacteristicReport of, Function<SpecificationUsed, @Nullable T> part) {
    List<SpecificationUsed> all = of.specifications();
    return all.isEmpty() ? null : part.apply(all.get(all.size() - 1));
  }
}
