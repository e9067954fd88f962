package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.ss.usermodel.CellStyle;
import org.evenpour.audit.AuditReport.Link;
import org.evenpour.audit.AuditReport.Signal;
import org.evenpour.audit.CausesReport;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Unit;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.Topic;
import org.jspecify.annotations.Nullable;

/** Every signal, the most important first, and what was found beside each. */
final class SignalsSheet {
  private SignalsSheet() {}

  static void write(Paper paper) {
    Map<String, Signal> byId = new LinkedHashMap<>();
    Topic.of(paper.report()).stream()
        .flatMap(topic -> topic.signals().stream())
        .forEach(signal -> byId.put(signal.id(), signal));
    // A very long record has more signals than are joined into topics: these follow.
    paper.report().signals().forEach(signal -> byId.putIfAbsent(signal.id(), signal));
    List<Signal> signals = List.copyOf(byId.values());
    signals(paper, signals);
    links(paper, signals);
  }

  private static void signals(Paper paper, List<Signal> signals) {
    boolean isMarked = CausesSheet.isMarked(paper);
    List<Column> columns =
        new ArrayList<>(
            List.of(
                Column.words(paper.say("head.signal")),
                Column.words(paper.say("head.state")),
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.where")),
                Column.words(paper.say("head.mold")),
                Column.words(paper.say("head.side")),
                Column.words(paper.say("head.way")),
                Column.figures(paper.say("head.since_turn")),
                Column.figures(paper.zoned("head.since")),
                Column.figures(paper.say("head.last_turn")),
                Column.figures(paper.say("head.size")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.size_sigma")),
                Column.words(paper.say("head.tests")),
                Column.words(paper.say("head.words"))));
    if (isMarked) {
      columns.add(Column.words(paper.say("head.confirmed_cause")));
    }
    Table table = new Table(paper, paper.say("sheet.signals"), columns);
    for (Signal signal : signals) {
      Figures figures = paper.sentences().figures(signal.wheel(), signal.characteristic());
      Unit unit = figures.unit();
      int decimals = figures.decimalsOf(signal.size());
      CellStyle digits =
          signal.direction() == Direction.SPREAD
              ? paper.styles().number(decimals)
              : paper.styles().departure(decimals);
      table
          .next()
          .text(signal.id())
          .text(paper.say(signal.open() ? "state.open" : "state.closed"))
          .text(signal.wheel())
          .text(paper.words().characteristic(signal.characteristic()))
          .text(paper.say("scope." + signal.scope().id()))
          .label(signal.mold())
          .label(signal.side())
          .text(way(paper, signal))
          .turn(signal.sinceTurn())
          .date(signal.sinceAt())
          .turn(signal.lastTurn())
          .number(unit.differenceFromCanonical(signal.size()), digits)
          .number(Paper.difference(unit, signal.sizeLow()), digits)
          .number(Paper.difference(unit, signal.sizeHigh()), digits)
          .text(unit.symbol())
          .number(signal.sizeSigma(), paper.styles().departure(1))
          .text(String.join(", ", tests(paper, signal)))
          .prose(paper.sentences().signal(signal));
      if (isMarked) {
        table.prose(CausesSheet.confirmed(paper, signal), 44);
      }
    }
    table.finish();
  }

  private static List<String> tests(Paper paper, Signal signal) {
    return signal.tests().stream()
        .map(id -> paper.words().has("test." + id) ? paper.say("test." + id) : id)
        .toList();
  }

  /** Shape and word; the shape alone tells heavy from light without any colour. */
  static String way(Paper paper, Signal signal) {
    return paper.say("mark." + signal.direction().id())
        + " "
        + paper.sentences().state(signal.characteristic(), signal.direction());
  }

  private static void links(Paper paper, List<Signal> signals) {
    List<Column> columns =
        new ArrayList<>(
            List.of(
                Column.words(paper.say("head.signal")),
                Column.words(paper.say("head.words")),
                Column.words(paper.say("head.name")),
                Column.words(paper.say("head.kind")),
                Column.words(paper.say("head.group")),
                Column.words(paper.say("head.evidence")),
                Column.figures(paper.say("head.since_turn")),
                Column.figures(paper.say("head.moved_by")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.expected")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.share")),
                Column.figures(paper.say("head.low")),
                Column.figures(paper.say("head.high")),
                Column.figures(paper.say("head.q")),
                Column.words(paper.say("head.look_first"))));
    if (CausesSheet.isMarked(paper)) {
      columns.addAll(CausesSheet.columns(paper));
    }
    CausesReport causes = paper.report().causes();
    Table table = new Table(paper, paper.say("sheet.links"), columns);
    for (Signal signal : signals) {
      for (Link link : signal.links()) {
        link(paper, table.next(), signal, link);
        CausesSheet.said(paper, table, causes.of(signal, link));
      }
      causes.besideLinks(signal).forEach(mark -> besideLinks(paper, table.next(), signal, mark));
    }
    table.finish();
  }

  /** A cause that no record shows. */
  private static void besideLinks(Paper paper, Table table, Signal signal, CauseMark mark) {
    table
        .text(signal.id())
        .prose(paper.sentences().lead(new Topic(List.of(signal))), 44)
        .prose(CausesSheet.name(paper, mark.cause()), 44)
        .text(CausesSheet.kind(paper, mark.cause()));
    for (int i = 0; i < 12; i++) {
      table.blank();
    }
    CausesSheet.said(paper, table, mark);
  }

  private static void link(Paper paper, Table table, Signal signal, Link link) {
    Sentences sentences = paper.sentences();
    Styles styles = paper.styles();
    Unit unit = sentences.figures(signal.wheel(), signal.characteristic()).unit();
    table
        .text(signal.id())
        .prose(sentences.lead(new Topic(List.of(signal))), 44)
        .text(link.event() ? sentences.event(link.name()) : sentences.setting(link.name()))
        .text(paper.say(link.event() ? "kind.event" : "kind.setting"))
        .text(link.group())
        .text(paper.say("evidence.mark." + link.evidence().name().toLowerCase(Locale.ROOT)))
        .turn(link.sinceTurn())
        .number(link.movedBy(), styles.departure(places(link.movedBy())))
        .text(link.movedBy() == null ? "" : Sentences.unit(link.unit()).symbol());
    Double effect = Paper.difference(unit, link.expectedEffect());
    table
        .number(effect, styles.departure(places(effect)))
        .text(effect == null ? "" : unit.symbol())
        .number(link.explainedShare(), styles.wholePercent())
        .number(link.explainedLow(), styles.wholePercent())
        .number(link.explainedHigh(), styles.wholePercent())
        .number(link.qValue(), styles.significant())
        .prose(sentences.advice(link), 44);
  }

  /** Decimals that leave about three digits. */
  static int places(@Nullable Double value) {
    double size = value == null ? 0 : Math.abs(value);
    int places = 0;
    while (places < 6 && size > 0 && size * Math.pow(10, places) < 99.5) {
      places++;
    }
    return places;
  }
}
