package org.evenpour.view.model;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.live.Snapshot;
import org.evenpour.picture.Mark;
import org.evenpour.plant.Seen;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.Figures;
import org.evenpour.report.NextSteps;
import org.evenpour.report.Sentences;
import org.evenpour.report.SetPointText;
import org.evenpour.report.SettingSentences;
import org.evenpour.report.Topic;
import org.jspecify.annotations.Nullable;

/**
 * Says the signals of one wheel as the board says them: shorter than a report does, for they are
 * read from far away.
 */
final class BoardSignals {
  private static final int MOST_SIDES = 2;

  private final Snapshot snapshot;
  private final BoardWords words;
  private final Sentences sentences;
  private final List<Topic> topics;
  private final NextSteps steps;
  private final ZoneId zone;
  private final List<String> setPoints;
  private final List<BoardModel.Matter> moves;
  private final BeyondSentences beyond;
  private final List<Departure> departures;

  BoardSignals(
      Snapshot snapshot,
      AuditReport report,
      String wheel,
      BoardWords words,
      DisplayUnits units,
      ZoneId zone) {
    this.snapshot = snapshot;
    this.words = words;
    this.zone = zone;
    List<Signal> here =
        snapshot.now().stream().filter(signal -> signal.wheel().equals(wheel)).toList();
    Map<List<String>, Unit> shown = new LinkedHashMap<>();
    for (CharacteristicReport one : report.characteristics()) {
      shown.put(List.of(one.wheel(), one.name()), units.shown(one.unit()));
    }
    sentences = new Sentences(words.report(), zone, false, false, shown, report.advice());
    List<Topic> all = new ArrayList<>(Topic.of(report.withSignals(here)));
    steps = new NextSteps(report.withSignals(here), sentences);
    // What nobody has seen yet comes first; the sort is stable.
    all.sort(Comparator.comparing(topic -> seen(topic) != null));
    topics = all;
    SetPointText text = SetPointText.of(sentences, report);
    setPoints =
        report.setPoints().stream()
            .filter(side -> side.wheel().equals(wheel) && side.moveBy() != null)
            .limit(MOST_SIDES)
            .map(text::line)
            .toList();
    SettingSentences settings = new SettingSentences(sentences);
    beyond = new BeyondSentences(report, sentences);
    departures = beyond.holding().stream().filter(one -> one.wheel().equals(wheel)).toList();
    moves = new ArrayList<>();
    for (Departure one : departures) {
      moves.add(
          new BoardModel.Matter(
              mark(one),
              words.say(
                  "brief.one",
                  beyond.who(one),
                  words.report().list(beyond.states(one)),
                  one.sinceTurn(),
                  beyond.sizes(one)),
              beyond.beyond(one),
              "",
              false));
    }
    SettingSentences.holding(report).stream()
        .filter(move -> move.wheel().equals(wheel))
        .map(
            move ->
                new BoardModel.Matter(
                    move.movedBy() > 0 ? Mark.HIGH : Mark.LOW,
                    settings.lead(move),
                    settings.advice(move),
                    "",
                    false))
        .forEach(moves::add);
  }

  private static Mark mark(Departure one) {
    return one.size() > 0 ? Mark.HIGH : Mark.LOW;
  }

  /**
   * Where the wheel stands off beyond what its settings explain, then settings that moved though no
   * anode shows it yet, the newest first.
   */
  List<BoardModel.Matter> moves() {
    return moves;
  }

  /** Ladle sides that are worth a move; none where all are to be left alone. */
  List<String> setPoints() {
    return setPoints;
  }

  List<Topic> topics() {
    return topics;
  }

  /** The last that was said of all signals of a topic; null where one of them was not seen. */
  private @Nullable Seen seen(Topic topic) {
    Seen last = null;
    for (Signal signal : topic.signals()) {
      Seen one = snapshot.seen(signal);
      if (one == null) {
        return null;
      }
      last = one;
    }
    return last;
  }

  List<BoardModel.Matter> matters(int chosen) {
    List<BoardModel.Matter> all = new ArrayList<>();
    int told = firstUnexplained(chosen);
    for (int i = 0; i < topics.size(); i++) {
      Topic topic = topics.get(i);
      Link best = topic.best();
      Seen seen = seen(topic);
      // From the chosen one on they are painted: the first of them says that no setting explains
      // it.
      String left = i == told ? steps.of(topic) : steps.step(topic);
      all.add(
          new BoardModel.Matter(
              mark(topic.first()),
              lead(topic),
              best != null ? sentences.link(best) : left,
              seen == null ? "" : said(seen),
              i == chosen));
    }
    return all;
  }

  private int firstUnexplained(int from) {
    for (int i = 0; i < topics.size(); i++) {
      int at = (from + i) % topics.size();
      if (topics.get(at).isUnexplained()) {
        return at;
      }
    }
    return -1;
  }

  private String said(Seen seen) {
    String time = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(seen.at().atZone(zone));
    return seen.who().isEmpty()
        ? words.say("seen", time, seen.note())
        : words.say("seen.who", time, seen.note(), seen.who());
  }

  private String lead(Topic topic) {
    Signal first = topic.first();
    String state = sentences.state(first);
    String size = size(topic);
    if (first.scope() == Scope.POUR) {
      return topic.signals().size() == 1
          ? words.say("brief.anode", label(first.mold()), state, first.sinceTurn(), size)
          : words.say(
              "brief.anodes",
              topic.signals().size(),
              state,
              label(first.mold()),
              first.sinceTurn(),
              size);
    }
    // Several signals of one mold, side or wheel are still one that pours.
    boolean many = molds(topic).size() > 1;
    List<Topic> onsets = topic.onsets();
    StringBuilder said = new StringBuilder(lead(many ? "brief.many" : "brief.one", onsets.get(0)));
    for (Topic more : onsets.subList(1, onsets.size())) {
      said.append("; ").append(lead("brief.also", more));
    }
    return said.toString();
  }

  private String lead(String form, Topic topic) {
    int since = topic.signals().stream().mapToInt(Signal::sinceTurn).min().orElseThrow();
    return words.say(form, who(topic), states(topic), since, size(topic));
  }

  private String who(Topic topic) {
    Signal first = topic.first();
    List<String> molds = molds(topic);
    return switch (first.scope()) {
      case WHEEL -> words.report().say("who.whole");
      case SIDE -> words.report().say("who.side", label(first.side()));
      default ->
          words
              .report()
              .say(molds.size() > 1 ? "who.molds" : "who.mold", words.report().list(molds));
    };
  }

  private static List<String> molds(Topic topic) {
    return topic.signals().stream().map(signal -> label(signal.mold())).distinct().toList();
  }

  private String states(Topic topic) {
    return words.report().list(topic.signals().stream().map(sentences::state).distinct().toList());
  }

  private static String label(@Nullable String label) {
    return label == null ? "—" : label;
  }

  private String size(Topic topic) {
    if (topic.signals().stream().map(Signal::characteristic).distinct().count() > 1) {
      return words.report().list(topic.signals().stream().map(this::size).toList());
    }
    String size = size(topic.largest());
    return topic.signals().size() > 1 ? words.say("brief.upto", size) : size;
  }

  private String size(Signal largest) {
    Figures figures = sentences.figures(largest.wheel(), largest.characteristic());
    int decimals = figures.decimalsOf(largest.size());
    if (largest.direction() == Direction.SPREAD) {
      return words.report().say("size.spread", figures.size(largest.size(), decimals));
    }
    return figures.departure(largest.size(), decimals);
  }

  /** {@code Mold 17 thin}, with its shape, for each topic. */
  List<BoardModel.Part> parts() {
    List<BoardModel.Part> parts = new ArrayList<>();
    for (Topic topic : topics) {
      parts.add(new BoardModel.Part(mark(topic.first()), part(topic)));
    }
    for (Departure one : departures) {
      parts.add(
          new BoardModel.Part(
              mark(one),
              words.say("verdict.part", beyond.who(one), words.report().list(beyond.states(one)))));
    }
    return parts;
  }

  /** One anode that came out so is said as one anode: its mold may pour the other way. */
  private String part(Topic topic) {
    Signal first = topic.first();
    String state = sentences.state(first);
    int count = topic.signals().size();
    return first.scope() != Scope.POUR
        ? words.say("verdict.part", who(topic), state)
        : count > 1
            ? words.say("verdict.anodes", count, state)
            : words.say("verdict.anode", label(first.mold()), state);
  }

  /**
   * The signals of a mold, what matters most first: lasting ones before single anodes, and only one
   * for each way in which it departs.
   */
  List<Signal> of(String mold) {
    Map<String, Signal> ways = new LinkedHashMap<>();
    topics.stream()
        .flatMap(topic -> topic.signals().stream())
        .filter(signal -> mold.equals(signal.mold()))
        .sorted(
            Comparator.comparing((Signal signal) -> signal.scope() != Scope.MOLD)
                .thenComparingDouble(signal -> -Math.abs(signal.sizeSigma())))
        .forEach(signal -> ways.putIfAbsent(sentences.state(signal), signal));
    return List.copyOf(ways.values());
  }

  String state(Signal signal) {
    return sentences.state(signal);
  }

  static Mark mark(Signal signal) {
    return switch (signal.direction()) {
      case HIGH -> Mark.HIGH;
      case LOW -> Mark.LOW;
      case SPREAD -> Mark.SPREAD;
    };
  }
}
