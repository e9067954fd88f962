package org.evenpour.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Marked causes in words, for a terminal. */
public final class CausesText {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** So many causes are named in one sentence. */
  private static final int NAMED = 3;

  private final Words words = Words.english();
  private final ZoneId zone;

  /**
   * @param zone in which times are told
   */
  public CausesText(ZoneId zone) {
    this.zone = zone;
  }

  private String time(Instant at) {
    return TIME.format(at.atZone(zone));
  }

  /** How many signals have a cause, and which causes come most often; empty where none has. */
  static String overview(AuditReport report, Sentences sentences) {
    CausesReport causes = report.causes();
    if (causes.marks().isEmpty()) {
      return "";
    }
    Words words = sentences.words();
    List<String> most =
        causes.causes().stream()
            .filter(one -> one.right() > 0)
            .limit(NAMED)
            .map(one -> sentences.cause(one.cause()) + " (" + one.right() + ")")
            .toList();
    return words.say(
        most.isEmpty() ? "summary.causes" : "summary.causes.most",
        words.count(causes.confirmed()),
        words.count(report.signals().size()),
        words.count(causes.refuted()),
        words.count(causes.unmarked()),
        String.join(", ", most));
  }

  /** Everything that stands in a file, in the order in which it was said. */
  public String list(List<CauseMark> marks) {
    if (marks.isEmpty()) {
      return "No cause has been marked yet; evenpour causes signals LOG shows what can be marked.\n";
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < marks.size(); i++) {
      CauseMark one = marks.get(i);
      boolean isReplaced =
          marks.subList(i + 1, marks.size()).stream().anyMatch(later -> later.replaces(one));
      line(text, time(one.at()) + "  " + said(one) + (isReplaced ? " (replaced later)" : ""));
      line(
          text,
          "    "
              + where(one.place())
              + ", "
              + time(one.from())
              + " to "
              + time(one.to())
              + ": "
              + one.why());
    }
    return text.toString();
  }

  /** Who marked what how. */
  private static String said(CauseMark mark) {
    String cause = typed(mark.cause());
    return switch (mark.verdict()) {
      case RIGHT -> mark.who() + " marked right: " + cause;
      case WRONG -> mark.who() + " marked wrong: " + cause;
      case OPEN -> mark.who() + " took back the mark on: " + cause;
    };
  }

  /** A cause as it is typed, and what it is. */
  private static String typed(Cause cause) {
    return cause.kind() == Kind.OTHER
        ? "\"" + cause.name() + "\""
        : cause.name() + (cause.kind() == Kind.EVENT ? " (event)" : " (setting)");
  }

  private String where(Place place) {
    List<String> parts = new ArrayList<>();
    if (!place.wheel().isEmpty()) {
      parts.add("wheel " + place.wheel());
    }
    if (place.mold() != null) {
      parts.add((place.scope() == Scope.POUR ? "an anode of mold " : "mold ") + place.mold());
    } else if (place.side() != null) {
      parts.add("ladle side " + place.side());
    } else {
      parts.add("whole wheel");
    }
    parts.add(words.characteristic(place.characteristic()) + " " + place.direction().id());
    return String.join(", ", parts);
  }

  /** The signals of an audit with their ids, what goes with each, and how it was marked. */
  public String signals(AuditReport report) {
    if (report.signals().isEmpty()) {
      Sentences sentences = Sentences.of(report, words, zone);
      List<String> lines = new ArrayList<>();
      BeyondSentences beyond = new BeyondSentences(report, sentences);
      beyond.all().stream().map(beyond::sentence).forEach(lines::add);
      lines.addAll(Quiet.of(report, sentences).lines(words));
      return String.join("\n", lines) + "\n";
    }
    StringBuilder text = new StringBuilder();
    for (Signal signal : report.signals()) {
      signal(text, report, signal);
    }
    CausesReport causes = report.causes();
    String overview = overview(report, Sentences.of(report, words, zone));
    if (!overview.isEmpty()) {
      line(text, overview);
    }
    for (Counted one : causes.causes()) {
      line(
          text,
          String.format(
              Locale.ROOT,
              "  %3d right, %d wrong, %d turns, %.0f %%, together %.0f %%: %s",
              one.right(),
              one.wrong(),
              one.turns(),
              100 * one.share(),
              100 * one.cumulative(),
              typed(one.cause())));
    }
    return text.toString();
  }

  /** One signal of them. */
  public String signal(AuditReport report, Signal signal) {
    StringBuilder text = new StringBuilder();
    signal(text, report, signal);
    return text.toString();
  }

  private void signal(StringBuilder text, AuditReport report, Signal signal) {
    Sentences sentences = Sentences.of(report, words, zone);
    line(text, signal.id() + "  " + sentences.lead(new Topic(List.of(signal))));
    int silent = 0;
    for (Link link : signal.links()) {
      CauseMark mark = report.causes().of(signal, link);
      if (link.evidence() == Evidence.NONE && mark == null) {
        silent++;
      } else {
        String evidence =
            words.say("evidence.mark." + link.evidence().name().toLowerCase(Locale.ROOT));
        line(text, "      " + typed(link.cause()) + "  " + evidence + marked(mark));
      }
    }
    for (CauseMark mark : report.causes().besideLinks(signal)) {
      line(text, "      " + typed(mark.cause()) + marked(mark));
    }
    if (silent > 0) {
      line(
          text,
          "      nothing speaks for: "
              + signal.links().stream()
                  .filter(
                      link ->
                          link.evidence() == Evidence.NONE
                              && report.causes().of(signal, link) == null)
                  .map(link -> link.name() + (link.event() ? " (event)" : ""))
                  .collect(Collectors.joining(", ")));
    }
  }

  private static String marked(@Nullable CauseMark mark) {
    return mark == null
        ? ""
        : "  marked "
            + mark.verdict().name().toLowerCase(Locale.ROOT)
            + " by "
            + mark.who()
            + ": "
            + mark.why();
  }

  /** A terminal obeys control characters, and text of a file must not command it. */
  private static void line(StringBuilder text, String line) {
    text.append(WellFormed.text(line).replaceAll("\\p{Cntrl}|\\p{Zl}|\\p{Zp}", " ")).append('\n');
  }
}
