package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.Topic;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Every signal, the most important first, and what was found beside each. */
public final class SignalTables {
  /** A choice: so many letters to a line of what is said beside other columns. */
  private static final int ASIDE = 44;

  private static final int SENTENCE = 60;

  private SignalTables() {}

  private static List<Signal> ranked(AuditReport report) {
    Map<String, Signal> byId = new LinkedHashMap<>();
    Topic.of(report).stream()
        .flatMap(topic -> topic.signals().stream())
        .forEach(signal -> byId.put(signal.id(), signal));
    // A very long record has more signals than are joined into topics: these follow.
    report.signals().forEach(signal -> byId.putIfAbsent(signal.id(), signal));
    return List.copyOf(byId.values());
  }

  private static boolean isMarked(AuditReport report) {
    return !report.causes().marks().isEmpty();
  }

  /** Every signal. */
  public static Table<Signal> signals(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    Columns<Signal> columns =
        Columns.<Signal>of(sentences)
            .text("signal", Signal::id)
            .state(Signal::open)
            .prose("words", SENTENCE, sentences::signal)
            .wheel(Signal::wheel)
            .characteristic(Signal::characteristic)
            .said("where", signal -> "scope." + signal.scope().id())
            .label("mold", Signal::mold)
            .label("side", Signal::side)
            .text("way", signal -> way(sentences, signal))
            .turn("since_turn", Signal::sinceTurn)
            .time("since", Signal::sinceAt)
            .turn("last_turn", Signal::lastTurn)
            .figure("size", signal -> size(sentences, signal, signal.size()))
            .figure("low", signal -> size(sentences, signal, signal.sizeLow()))
            .figure("high", signal -> size(sentences, signal, signal.sizeHigh()))
            .unit(signal -> sentences.figures(signal.wheel(), signal.characteristic()))
            .figure("size_sigma", Digits.signed(1), Signal::sizeSigma)
            .text(
                "tests",
                signal ->
                    signal.tests().stream()
                        .map(id -> words.has("test." + id) ? words.say("test." + id) : id)
                        .collect(Collectors.joining(", ")));
    if (isMarked(report)) {
      columns.prose("confirmed_cause", ASIDE, signal -> confirmed(report, sentences, signal));
    }
    return new Table<>("signals", words.say("sheet.signals"), columns.list(), ranked(report));
  }

  /** Shape and word; the shape alone tells heavy from light without any colour. */
  private static String way(Sentences sentences, Signal signal) {
    return sentences.words().say("mark." + signal.direction().id())
        + " "
        + sentences.state(signal.characteristic(), signal.direction());
  }

  private static Cell size(Sentences sentences, Signal signal, @Nullable Double computed) {
    Figures figures = sentences.figures(signal.wheel(), signal.characteristic());
    int decimals = figures.decimalsOf(signal.size());
    return new Cell.Figure(
        Columns.difference(figures.unit(), computed),
        signal.direction() == Direction.SPREAD ? Digits.plain(decimals) : Digits.signed(decimals));
  }

  /** The causes of a signal that were marked right. */
  private static String confirmed(AuditReport report, Sentences sentences, Signal signal) {
    return report.causes().of(signal).stream()
        .filter(one -> one.verdict() == Verdict.RIGHT)
        .map(one -> CauseTable.name(sentences, one.cause()))
        .collect(Collectors.joining(", "));
  }

  /**
   * A signal with what was found beside it, or with a cause that no record shows.
   *
   * @param link null where only a person named it
   * @param mark what a person said of it; null where nothing was said
   */
  public record Row(Signal signal, @Nullable Link link, @Nullable CauseMark mark) {

    private <T> @Nullable T of(Function<Link, @Nullable T> part) {
      return link == null ? null : part.apply(link);
    }

    private <T> @Nullable T said(Function<CauseMark, @Nullable T> part) {
      return mark == null ? null : part.apply(mark);
    }
  }

  /** What was found beside every signal. */
  public static Table<Row> links(AuditReport report, Sentences sentences) {
    CausesReport causes = report.causes();
    List<Row> rows = new ArrayList<>();
    for (Signal signal : ranked(report)) {
      signal.links().forEach(link -> rows.add(new Row(signal, link, causes.of(signal, link))));
      causes.besideLinks(signal).forEach(mark -> rows.add(new Row(signal, null, mark)));
    }
    Words words = sentences.words();
    Columns<Row> columns =
        Columns.<Row>of(sentences)
            .text("signal", row -> row.signal().id())
            .prose("words", ASIDE, row -> sentences.lead(new Topic(List.of(row.signal()))))
            .prose("name", ASIDE, row -> name(sentences, row))
            .text(
                "evidence",
                row -> row.of(link -> words.say("evidence.mark." + lower(link.evidence()))))
            .prose("look_first", ASIDE, row -> row.of(sentences::advice))
            .turn("since_turn", row -> row.of(Link::sinceTurn))
            .figure("moved_by", row -> three(row.of(Link::movedBy)))
            .text(
                "unit",
                row ->
                    row.of(
                        link -> link.movedBy() == null ? "" : Sentences.unit(link.unit()).symbol()))
            .figure("expected", row -> three(effect(sentences, row)))
            .text(
                "expected_unit",
                row ->
                    effect(sentences, row) == null ? "" : figures(sentences, row).unit().symbol())
            .like("unit")
            .figure("share", Digits.share(0), row -> row.of(Link::explainedShare))
            .figure("low", Digits.share(0), row -> row.of(Link::explainedLow))
            .figure("high", Digits.share(0), row -> row.of(Link::explainedHigh))
            .figure("q", Digits.plain(4), row -> row.of(Link::qValue))
            .text("kind", row -> kind(words, row))
            .text("group", row -> row.of(link -> words.group(link.group())));
    if (isMarked(report)) {
      columns
          .text(
              "marked", row -> row.said(mark -> words.say("mark.verdict." + lower(mark.verdict()))))
          .text("marked_by", row -> row.said(CauseMark::who))
          .prose("marked_why", ASIDE, row -> row.said(CauseMark::why))
          .time("marked_at", row -> row.said(CauseMark::at));
    }
    return new Table<>("links", words.say("sheet.links"), columns.list(), rows);
  }

  private static String lower(Enum<?> one) {
    return one.name().toLowerCase(Locale.ROOT);
  }

  private static String name(Sentences sentences, Row row) {
    Link link = row.link();
    if (link != null) {
      return link.event() ? sentences.event(link.name()) : sentences.setting(link.name());
    }
    return row.mark() == null ? "" : CauseTable.name(sentences, row.mark().cause());
  }

  private static String kind(Words words, Row row) {
    Link link = row.link();
    if (link != null) {
      return words.say(link.event() ? "kind.event" : "kind.setting");
    }
    return row.mark() == null ? "" : CauseTable.kind(words, row.mark().cause());
  }

  private static Figures figures(Sentences sentences, Row row) {
    return sentences.figures(row.signal().wheel(), row.signal().characteristic());
  }

  private static @Nullable Double effect(Sentences sentences, Row row) {
    return Columns.difference(figures(sentences, row).unit(), row.of(Link::expectedEffect));
  }

  /** A departure with about three digits. */
  static Cell three(@Nullable Double value) {
    return new Cell.Figure(value, Digits.signed(value == null ? 0 : Digits.three(value)));
  }
}
