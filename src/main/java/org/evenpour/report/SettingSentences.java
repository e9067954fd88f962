package org.evenpour.report;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.words.Words;

/** Says where recorded settings moved, which the anodes do not show. */
public final class SettingSentences {
  /** So many molds or more, side by side, are told by the first and the last. */
  private static final int RUN = 3;

  private final Sentences sentences;
  private final Words words;

  public SettingSentences(Sentences sentences) {
    this.sentences = sentences;
    this.words = sentences.words();
  }

  /**
   * The moves that no signal tells of and that still hold, the newest first: what a crew can do
   * something about.
   */
  public static List<Move> holding(AuditReport report) {
    return newestFirst(report.watched().alone().stream().filter(Move::open).toList());
  }

  /** All moves that no signal tells of: those that still hold, then those that have passed. */
  public static List<Move> all(AuditReport report) {
    List<Move> passed = report.watched().alone().stream().filter(move -> !move.open()).toList();
    return Stream.concat(holding(report).stream(), newestFirst(passed).stream()).toList();
  }

  private static List<Move> newestFirst(List<Move> moves) {
    return moves.stream().sorted(Comparator.comparing(Move::sinceAt).reversed()).toList();
  }

  /** What moved, where, since when, and what to look at first. */
  public String sentence(Move move) {
    return (lead(move) + " " + advice(move)).strip();
  }

  /** The same of a move that signals tell of: that the anodes do not show it would not be true. */
  public String told(Move move) {
    String said =
        words.say(
            move.movedBy() > 0 ? "moved.rose.told" : "moved.fell.told",
            Words.capital(sentences.setting(move.setting())),
            where(move),
            Figures.move(move.movedBy(), Sentences.unit(move.unit())),
            move.sinceTurn(),
            sentences.time(move.sinceAt()),
            words.list(move.signals()));
    return cautioned(said, move);
  }

  /** What moved, where and since when, with the words that keep people safe. */
  public String brief(Move move) {
    return cautioned(lead(move), move);
  }

  /** What moved, where and since when. */
  public String lead(Move move) {
    String way = move.movedBy() > 0 ? "rose" : "fell";
    String whole = "moved." + way + (move.open() ? "" : ".past");
    return words.say(
        whole,
        Words.capital(sentences.setting(move.setting())),
        where(move),
        Figures.move(move.movedBy(), Sentences.unit(move.unit())),
        move.sinceTurn(),
        sentences.time(move.sinceAt()),
        move.lastTurn(),
        words.say(move.molds().size() > 1 ? "moved.their" : "moved.its"));
  }

  /** Of which molds, which side: {@code molds 13 to 16}. */
  public String where(Move move) {
    String place =
        switch (move.scope()) {
          case WHEEL -> words.say("moved.whole");
          case SIDE -> words.say("moved.side", sentences.label(move.side()));
          default -> molds(move.molds());
        };
    return sentences.nameWheels()
        ? words.say("moved.wheel", place, sentences.label(move.wheel()))
        : place;
  }

  private String molds(List<String> molds) {
    List<String> labels = molds.stream().map(sentences::label).toList();
    return labels.size() == 1
        ? words.say("moved.mold", labels.get(0))
        : labels.size() < RUN
            ? words.say("moved.molds", words.list(labels))
            : words.say("moved.run", labels.get(0), labels.get(labels.size() - 1));
  }

  /**
   * What to look at first; where water or wash is near, never without the words that keep people
   * safe; empty where there is nothing to say.
   */
  public String advice(Move move) {
    String advice = move.open() ? Words.capital(sentences.advice(link(move))) : "";
    return advice.isEmpty() ? cautioned("", move) : advice;
  }

  private String cautioned(String said, Move move) {
    return sentences.cautioned(said, move.setting(), move.group());
  }

  /** Whether something keeps people safe beside a move. */
  boolean isCautioned(Move move) {
    return !cautioned("", move).isEmpty();
  }

  private static Link link(Move move) {
    return new Link(
        move.setting(),
        false,
        move.group(),
        move.unit(),
        Evidence.MOVED,
        move.movedBy(),
        null,
        null,
        null,
        null,
        null,
        move.sinceTurn(),
        move.lookFirst(),
        List.of());
  }
}
