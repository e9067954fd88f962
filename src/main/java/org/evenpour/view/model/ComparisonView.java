package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.findings.ComparisonReport.What;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldIntervals;
import org.evenpour.report.ComparisonText;
import org.evenpour.report.Figures;
import org.evenpour.report.table.Columns;
import org.evenpour.table.Column;
import org.jspecify.annotations.Nullable;

/** Shows what differs between two stretches: every figure in a table, the molds as intervals. */
public final class ComparisonView {
  private ComparisonView() {}

  /** Every figure that was compared. */
  public static List<Column<Compared>> columns(Desk desk, ComparisonReport report) {
    ComparisonText text = new ComparisonText(desk.sentences());
    Look look = desk.look();
    return Columns.<Compared>of(desk.sentences())
        .text("compared", text::what)
        .named(look.say("compare.what"))
        .wide(29)
        .text("first", one -> text.value(report, one, one.before()))
        .named(look.say("compare.first"))
        .wide(9)
        .text("second", one -> text.value(report, one, one.after()))
        .named(look.say("compare.second"))
        .wide(9)
        .text("difference", one -> text.difference(report, one))
        .named(look.say("compare.difference"))
        .wide(26)
        .text("real", one -> look.say(one.isReal() ? "compare.yes" : "compare.no"))
        .named(look.say("compare.real"))
        .wide(12)
        .list();
  }

  /** What is real first, then as it was asked. */
  public static List<Compared> rows(ComparisonReport report) {
    return report.all().stream()
        .sorted(
            Comparator.comparing((Compared one) -> !one.isAsked())
                .thenComparing(one -> !one.isReal()))
        .toList();
  }

  /** By how much each mold moved against the others; null where no mold cast in both. */
  public static @Nullable MoldIntervals molds(Desk desk, ComparisonReport report) {
    String name = desk.selection().characteristic();
    Figures figures = desk.sentences().figures(report.wheel(), name);
    ComparisonText text = new ComparisonText(desk.sentences());
    List<MoldIntervals.Row> rows = new ArrayList<>();
    double most = 0;
    for (Compared one : report.all()) {
      if (one.what() != What.OFFSET || !name.equals(one.characteristic())) {
        continue;
      }
      Estimate its = one.difference();
      double middle = figures.unit().differenceFromCanonical(its.value());
      double low = figures.unit().differenceFromCanonical(orValue(its.low(), its));
      double high = figures.unit().differenceFromCanonical(orValue(its.high(), its));
      most = Math.max(most, Math.max(Math.abs(low), Math.abs(high)));
      Mark mark = one.isReal() ? one.isUp() ? Mark.HIGH : Mark.LOW : Mark.NONE;
      rows.add(
          new MoldIntervals.Row(
              String.valueOf(one.mold()),
              low,
              middle,
              high,
              mark,
              figures.signed(its.value(), figures.decimals() + 1),
              text.sentence(report, one)));
    }
    rows.sort(Comparator.comparingDouble(row -> -row.middle()));
    String symbol = figures.unit().symbol();
    String title =
        desk.look().say("compare.axis", desk.name(name)) + (symbol.isEmpty() ? "" : ", " + symbol);
    return rows.isEmpty()
        ? null
        : new MoldIntervals(rows, title, MoldIntervals.roundSpan(most), report.mold());
  }

  private static double orValue(@Nullable Double end, Estimate its) {
    return end == null ? its.value() : end;
  }
}
