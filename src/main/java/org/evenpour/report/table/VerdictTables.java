package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.MoldVerdict.Trend;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.VerdictSentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** What to do with each mold and why; and the figures that the verdicts went by. */
public final class VerdictTables {
  private static final Figures AREA = new Figures(new Unit("m2", "m²", "m2", 1, 0));

  private VerdictTables() {}

  /** What to do with each mold and why. */
  public static Table<MoldVerdict> verdicts(AuditReport report, Sentences sentences) {
    VerdictSentences said = new VerdictSentences(report, sentences);
    return new Table<>(
        "verdicts",
        sentences.words().say("sheet.verdicts"),
        Columns.<MoldVerdict>of(sentences)
            .wheel(MoldVerdict::wheel)
            .label("mold", MoldVerdict::mold)
            .text("serial", MoldVerdict::serial)
            .prose("caution", 40, said::caution)
            .asAudited()
            .text("verdict", said::verdict)
            .asAudited()
            .prose("why", 60, said::reason)
            .asAudited()
            .text("thick_side", one -> said.thickSide(one.thickSide()))
            .count("casts", MoldVerdict::casts)
            .count("casts_on_mold", MoldVerdict::castsOnMold)
            .figure("tonnes", Digits.plain(1), MoldVerdict::tonnes)
            .list(),
        report.verdicts());
  }

  /** Where a mold stands in one characteristic. */
  public record Row(MoldVerdict of, Standing standing) {}

  /** The figures that the verdicts went by. */
  public static Table<Row> standings(AuditReport report, Sentences sentences) {
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport one : report.characteristics()) {
      add(rows, report, one.wheel(), one.name());
    }
    for (String wheel : report.log().wheels()) {
      add(rows, report, wheel, "plan_area");
    }
    Words words = sentences.words();
    VerdictSentences said = new VerdictSentences(report, sentences);
    Following following = new Following(report, sentences, AnodeCells.NONE);
    Function<Row, Figures> figures =
        row ->
            isArea(row)
                ? AREA
                : sentences.figures(row.of().wheel(), row.standing().characteristic());
    List<Column<Row>> columns =
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.standing().characteristic())
            .unit(figures)
            .label("mold", row -> row.of().mold())
            .count("casts", row -> row.standing().casts())
            .figure("effective", Digits.plain(0), row -> row.standing().effectiveCasts())
            .value("level", figures, row -> row.standing().level())
            .departure("offset_mean", figures, row -> row.standing().offset())
            .departure("low", figures, row -> row.standing().offsetLow())
            .departure("high", figures, row -> row.standing().offsetHigh())
            .departure("shrunk", figures, row -> row.standing().shrunk())
            .departure("shrunk_low", figures, row -> row.standing().shrunkLow())
            .like("low")
            .departure("shrunk_high", figures, row -> row.standing().shrunkHigh())
            .like("high")
            .spread("decision", figures, row -> row.standing().decisionLimit())
            .text("stands", row -> said.stands(row.standing()))
            .figure("ppk", row -> room(following, row))
            .interval(
                "ppk", row -> roomEnd(following, row, true), row -> roomEnd(following, row, false))
            .departure("step", figures, row -> step(row.standing()))
            .departure("trend", figures, row -> of(row, Trend::per100))
            .departure("trend_low", figures, row -> of(row, Trend::low))
            .like("low")
            .departure("trend_high", figures, row -> of(row, Trend::high))
            .like("high")
            .said("trend_clear", row -> clear(row.standing().trend()))
            .figure("casts_left", Digits.plain(0), row -> of(row, Trend::castsLeft))
            .asAudited()
            .figure("casts_left_low", Digits.plain(0), row -> of(row, Trend::castsLeftLow))
            .like("low")
            .asAudited()
            .figure("casts_left_high", Digits.plain(0), row -> of(row, Trend::castsLeftHigh))
            .like("high")
            .asAudited()
            .spread("sd", figures, row -> row.standing().sd())
            .list();
    return new Table<>("standings", words.say("sheet.standings"), columns, rows);
  }

  private static void add(List<Row> rows, AuditReport report, String wheel, String characteristic) {
    for (MoldVerdict one : report.verdicts()) {
      Standing standing = one.standing(characteristic);
      if (one.wheel().equals(wheel) && standing != null) {
        rows.add(new Row(one, standing));
      }
    }
  }

  /** What is said of it; null for the plan area, which has no limits. */
  private static @Nullable CharacteristicReport characteristic(Following following, Row row) {
    return following.report().characteristics().stream()
        .filter(one -> one.wheel().equals(row.of().wheel()))
        .filter(one -> one.name().equals(row.standing().characteristic()))
        .findFirst()
        .orElse(null);
  }

  /** Its own Ppk, from its level and its s.d. */
  private static Cell room(Following following, Row row) {
    Cell.Figure found = CapabilityTable.end(row.standing().room(), Estimate::value);
    CharacteristicReport of = characteristic(following, row);
    return of == null
        ? Following.audited(found)
        : following.nearest(of, row.standing().level(), "level", row.standing().sd(), "sd", found);
  }

  /** An end of Bissell's interval, its casts counted as what they are worth and two at least. */
  private static Cell roomEnd(Following following, Row row, boolean isLow) {
    Estimate room = row.standing().room();
    Cell.Figure found = CapabilityTable.end(room, isLow ? Estimate::low : Estimate::high);
    if (room == null) {
      return found;
    }
    double count = Math.max(2, Math.round(row.standing().effectiveCasts()));
    return following.bissell(
        "{ppk}",
        "MAX(2,ROUND({effective},0))",
        "(MAX(2,ROUND({effective},0))-1)",
        isLow,
        Following.bissell(room.value(), count, count - 1, isLow),
        found);
  }

  private static boolean isArea(Row row) {
    return row.standing().characteristic().equals("plan_area");
  }

  private static @Nullable Double of(Row row, Function<Trend, @Nullable Double> part) {
    Trend trend = row.standing().trend();
    return trend == null ? null : part.apply(trend);
  }

  private static @Nullable Double step(Standing standing) {
    return standing.step() == null ? null : (Double) standing.step().value();
  }

  private static String clear(@Nullable Trend trend) {
    return trend == null ? "trend.few" : trend.isClear() ? "trend.clear" : "trend.none";
  }
}
