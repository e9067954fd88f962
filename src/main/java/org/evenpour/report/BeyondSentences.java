package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.words.Words;

/** Says where the whole wheel stands off beyond what its settings explain. */
public final class BeyondSentences {
  private final AuditReport report;
  private final Sentences sentences;
  private final Words words;
  private final BeyondSettings beyond;

  public BeyondSentences(AuditReport report, Sentences sentences) {
    this.report = report;
    this.sentences = sentences;
    this.words = sentences.words();
    this.beyond = report.watched().beyond();
  }

  /** Those that nothing else tells of and that still hold, the newest first. */
  public List<Departure> holding() {
    return newestFirst(true);
  }

  /** All that nothing else tells of: those that still hold, then those that have passed. */
  public List<Departure> all() {
    List<Departure> all = new ArrayList<>(newestFirst(true));
    all.addAll(newestFirst(false));
    return all;
  }

  private List<Departure> newestFirst(boolean open) {
    return beyond.alone().stream()
        .filter(one -> one.open() == open)
        .sorted(Comparator.comparing(Departure::sinceAt).reversed())
        .toList();
  }

  /** What stands off, since when, by how much, and beyond which settings. */
  public String sentence(Departure one) {
    return said(one, states(one), beyond.with(one).isEmpty() ? sizeWithInterval(one) : sizes(one));
  }

  /** By how much, with what is told with it, for a screen that is short of room. */
  public String sizes(Departure one) {
    return words.list(together(one, beyond.with(one)).stream().map(this::size).toList());
  }

  /** Beyond which settings, as a sentence of its own. */
  public String beyond(Departure one) {
    return cautioned(one, words.say("beyond.brief", explained(one)));
  }

  /** The same of one that others tell of: with whom. */
  public String told(Departure one) {
    String said = said(one, List.of(state(one)), sizeWithInterval(one));
    List<String> by = new ArrayList<>(one.signals());
    if (one.toldWith() != null) {
      by.add(words.characteristic(Objects.requireNonNull(one.toldWith())));
    }
    return by.isEmpty() ? said : said + " " + words.say("beyond.told", words.list(by));
  }

  private String said(Departure one, List<String> states, String size) {
    return cautioned(
        one,
        words.say(
            one.open() ? "beyond.pours" : "beyond.poured",
            who(one),
            words.list(states),
            one.sinceTurn(),
            sentences.time(one.sinceAt()),
            one.lastTurn(),
            size,
            explained(one)));
  }

  /** What keeps people safe near the settings that are named, before the sentence. */
  private String cautioned(Departure one, String sentence) {
    List<String> cautions =
        one.settings().stream()
            .flatMap(name -> sentences.cautions().of(report, one.wheel(), name).stream())
            .distinct()
            .toList();
    return Advice.before(cautions, sentence);
  }

  private String explained(Departure one) {
    List<String> settings = one.settings().stream().map(sentences::setting).toList();
    return words.say(
        settings.size() == 1 ? "beyond.explains" : "beyond.explain", words.list(settings));
  }

  /** The whole wheel. */
  public String who(Departure one) {
    return sentences.nameWheels()
        ? words.say("who.whole.wheel", sentences.label(one.wheel()), "")
        : words.say("who.whole", "");
  }

  /** Heavy and thick: its ways and those of what is told with it. */
  public List<String> states(Departure one) {
    return together(one, beyond.with(one)).stream().map(this::state).distinct().toList();
  }

  private static List<Departure> together(Departure one, List<Departure> with) {
    List<Departure> all = new ArrayList<>(List.of(one));
    all.addAll(with);
    return all;
  }

  private String state(Departure one) {
    return sentences.state(one.characteristic(), one.direction());
  }

  private String size(Departure one) {
    Figures figures = sentences.figures(one.wheel(), one.characteristic());
    return figures.departure(one.size(), figures.decimalsOf(one.size()));
  }

  private String sizeWithInterval(Departure one) {
    Figures figures = sentences.figures(one.wheel(), one.characteristic());
    int decimals = figures.decimalsOf(one.size());
    return words.say(
        "size.interval",
        size(one),
        figures.signed(one.sizeLow(), decimals),
        figures.signed(one.sizeHigh(), decimals));
  }
}
