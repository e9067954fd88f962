package org.evenpour.report.workbook;

import java.util.List;
import java.util.stream.Collectors;
import org.evenpour.audit.BeyondSettings.Departure;
import org.evenpour.audit.BeyondSettings.View;
import org.evenpour.casting.Unit;
import org.evenpour.report.BeyondSentences;

/** Where the wheel stood off beyond what its settings explain, and which signals tell of it. */
final class BeyondSheet {
  private BeyondSheet() {}

  /** Nothing where nothing did. */
  static void write(Paper paper) {
    List<View> views = paper.report().watched().beyond().views();
    if (views.stream().allMatch(view -> view.departures().isEmpty())) {
      return;
    }
    Table table =
        new Table(
            paper,
            paper.say("sheet.beyond"),
            List.of(
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.state")),
                Column.words(paper.say("head.wheel")),
                Column.figures(paper.say("head.since_turn")),
                Column.figures(paper.zoned("head.since")),
                Column.figures(paper.say("head.last_turn")),
                Column.figures(paper.say("head.size")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.size_sigma")),
                Column.words(paper.say("head.taken_off")),
                Column.figures(paper.say("head.clearer")),
                Column.words(paper.say("head.told_with")),
                Column.words(paper.say("head.words"))));
    BeyondSentences sentences = new BeyondSentences(paper.report(), paper.sentences());
    for (View view : views) {
      Unit unit = paper.sentences().figures(view.wheel(), view.characteristic()).unit();
      for (Departure one : view.departures()) {
        int places = SignalsSheet.places(unit.differenceFromCanonical(one.size()));
        table
            .next()
            .text(paper.words().characteristic(view.characteristic()))
            .text(paper.say(one.open() ? "state.open" : "state.closed"))
            .text(view.wheel())
            .turn(one.sinceTurn())
            .date(one.sinceAt())
            .turn(one.lastTurn())
            .number(unit.differenceFromCanonical(one.size()), paper.styles().departure(places))
            .number(unit.differenceFromCanonical(one.sizeLow()), paper.styles().departure(places))
            .number(unit.differenceFromCanonical(one.sizeHigh()), paper.styles().departure(places))
            .text(unit.symbol())
            .number(one.sizeSigma(), paper.styles().departure(1))
            .text(
                one.settings().stream()
                    .map(paper.sentences()::setting)
                    .collect(Collectors.joining(", ")))
            .number(view.clearer(), paper.styles().number(1))
            .text(String.join(", ", one.signals()))
            .prose(
                one.alone() && one.toldWith() == null
                    ? sentences.sentence(one)
                    : sentences.told(one));
      }
    }
    table.finish();
  }
}
