package org.evenpour.report.workbook;

import java.util.List;
import org.evenpour.audit.SettingsWatched.Move;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.report.Sentences;
import org.evenpour.report.SettingSentences;

/** Where recorded settings moved by themselves, and which signals tell of it. */
final class SettingMovesSheet {
  private SettingMovesSheet() {}

  /** Nothing where none moved. */
  static void write(Paper paper) {
    List<Move> moves = paper.report().watched().moves();
    if (moves.isEmpty()) {
      return;
    }
    Table table =
        new Table(
            paper,
            paper.say("sheet.moves"),
            List.of(
                Column.words(paper.say("head.setting")),
                Column.words(paper.say("head.state")),
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.where")),
                Column.words(paper.say("head.mold")),
                Column.words(paper.say("head.side")),
                Column.figures(paper.say("head.since_turn")),
                Column.figures(paper.zoned("head.since")),
                Column.figures(paper.say("head.last_turn")),
                Column.figures(paper.say("head.moved_by")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.size_sigma")),
                Column.words(paper.say("head.told_with")),
                Column.words(paper.say("head.words"))));
    SettingSentences sentences = new SettingSentences(paper.sentences());
    for (Move move : moves) {
      Unit unit = Sentences.unit(move.unit());
      table
          .next()
          .text(paper.sentences().setting(move.setting()))
          .text(paper.say(move.open() ? "state.open" : "state.closed"))
          .text(move.wheel())
          .text(paper.say("scope." + move.scope().id()))
          .label(move.scope() == Scope.MOLD ? String.join(", ", move.molds()) : null)
          .label(move.side())
          .turn(move.sinceTurn())
          .date(move.sinceAt())
          .turn(move.lastTurn())
          .number(move.movedBy(), paper.styles().departure(SignalsSheet.places(move.movedBy())))
          .text(unit.symbol())
          .number(move.sizeSigma(), paper.styles().departure(1))
          .text(String.join(", ", move.signals()))
          .prose(move.signals().isEmpty() ? sentences.sentence(move) : sentences.told(move));
    }
    table.finish();
  }
}
