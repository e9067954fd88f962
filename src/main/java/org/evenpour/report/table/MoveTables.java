package org.evenpour.report.table;

import java.util.List;
import java.util.stream.Collectors;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.View;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.Sentences;
import org.evenpour.report.SettingSentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;

/**
 * Where recorded settings moved by themselves, where the wheel stood off beyond what its settings
 * explain, and which signals tell of either.
 */
public final class MoveTables {
  private static final int SENTENCE = 60;

  private MoveTables() {}

  /** Settings that moved. */
  public static Table<Move> settings(AuditReport report, Sentences sentences) {
    SettingSentences said = new SettingSentences(sentences);
    return new Table<>(
        "moves",
        sentences.words().say("sheet.moves"),
        Columns.<Move>of(sentences)
            .setting(Move::setting)
            .state(Move::open)
            .prose(
                "words",
                SENTENCE,
                move -> move.signals().isEmpty() ? said.sentence(move) : said.told(move))
            .wheel(Move::wheel)
            .said("where", move -> "scope." + move.scope().id())
            .label(
                "mold", move -> move.scope() == Scope.MOLD ? String.join(", ", move.molds()) : null)
            .label("side", Move::side)
            .turn("since_turn", Move::sinceTurn)
            .time("since", Move::sinceAt)
            .turn("last_turn", Move::lastTurn)
            .figure("moved_by", move -> SignalTables.three(move.movedBy()))
            .text("unit", move -> Sentences.unit(move.unit()).symbol())
            .figure("size_sigma", Digits.signed(1), Move::sizeSigma)
            .text("told_with", move -> String.join(", ", move.signals()))
            .list(),
        report.watched().moves());
  }

  /** A departure of one view of the wheel. */
  public record Row(View of, Departure departure) {}

  /** Departures beyond what settings explain. */
  public static Table<Row> beyond(AuditReport report, Sentences sentences) {
    BeyondSentences said = new BeyondSentences(report, sentences);
    List<Row> rows =
        report.watched().beyond().views().stream()
            .flatMap(view -> view.departures().stream().map(one -> new Row(view, one)))
            .toList();
    return new Table<>(
        "beyond",
        sentences.words().say("sheet.beyond"),
        Columns.<Row>of(sentences)
            .characteristic(row -> row.of().characteristic())
            .state(row -> row.departure().open())
            .prose(
                "words",
                SENTENCE,
                row ->
                    row.departure().alone() && row.departure().toldWith() == null
                        ? said.sentence(row.departure())
                        : said.told(row.departure()))
            .wheel(row -> row.of().wheel())
            .turn("since_turn", row -> row.departure().sinceTurn())
            .time("since", row -> row.departure().sinceAt())
            .turn("last_turn", row -> row.departure().lastTurn())
            .figure("size", row -> size(sentences, row, row.departure().size()))
            .figure("low", row -> size(sentences, row, row.departure().sizeLow()))
            .figure("high", row -> size(sentences, row, row.departure().sizeHigh()))
            .unit(row -> sentences.figures(row.of().wheel(), row.of().characteristic()))
            .figure("size_sigma", Digits.signed(1), row -> row.departure().sizeSigma())
            .text(
                "taken_off",
                row ->
                    row.departure().settings().stream()
                        .map(sentences::setting)
                        .collect(Collectors.joining(", ")))
            .figure("clearer", Digits.plain(1), row -> row.of().clearer())
            .text("told_with", row -> String.join(", ", row.departure().signals()))
            .list(),
        rows);
  }

  private static Cell size(Sentences sentences, Row row, double computed) {
    Unit unit = sentences.figures(row.of().wheel(), row.of().characteristic()).unit();
    return new Cell.Figure(
        unit.differenceFromCanonical(computed),
        Digits.signed(Digits.three(unit.differenceFromCanonical(row.departure().size()))));
  }
}
