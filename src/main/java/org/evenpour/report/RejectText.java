package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.OfClass;
import org.evenpour.findings.RejectReport.OfMold;
import org.evenpour.findings.RejectReport.Share;
import org.evenpour.findings.RejectReport.Spell;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;

/**
 * What was rejected, in sentences: how much, why, and which molds more than the others.
 *
 * @param sentences the language
 */
public record RejectText(Sentences sentences) {
  /** So many classes are named; the workbook has all. A choice. */
  private static final int MOST_CLASSES = 5;

  /** A line for each wheel whose log says what was rejected. */
  public List<String> lines(AuditReport report) {
    return report.rejects().stream().map(this::line).toList();
  }

  /** What holds before what has passed, and what cost most first. */
  public static List<Spell> ranked(AuditReport report) {
    return report.rejects().stream()
        .flatMap(its -> its.spells().stream())
        .sorted(
            Comparator.comparing((Spell one) -> !one.signal().open())
                .thenComparing(one -> one.of() * one.usual() - one.rejected()))
        .toList();
  }

  /** Where and since when more was rejected, how much, and what goes with it. */
  public String spell(Spell its) {
    String lead = lead(its);
    Link best = Topic.best(its.signal());
    return best == null ? lead : lead + " " + sentences.link(best);
  }

  /** The same without what goes with it. */
  public String lead(Spell its) {
    Words words = sentences.words();
    Signal signal = its.signal();
    String defect = its.defect();
    return words.say(
        signal.sinceTurn() == signal.lastTurn()
            ? "rejects.turn"
            : signal.open() ? "rejects.since" : "rejects.until",
        sentences.who(signal),
        signal.sinceTurn(),
        sentences.time(signal.sinceAt()),
        words.count(its.rejected()),
        words.count(its.of()),
        defect == null ? "" : words.say("rejects.for", sentences.label(RejectReport.plain(defect))),
        Digits.percent(its.value()),
        Digits.percent(its.usual()),
        signal.lastTurn());
  }

  /** What was rejected of one wheel. */
  public String line(RejectReport its) {
    Words words = sentences.words();
    Share all = its.all();
    List<String> parts = new ArrayList<>();
    String counts =
        words.say(
            "rejects.count",
            words.count(all.rejected()),
            words.count(all.of()),
            Digits.percent(all.value()),
            Digits.percent(all.low()),
            Digits.percent(all.high()));
    Double tonnes = its.tonnes();
    parts.add(
        tonnes == null || all.rejected() == 0
            ? words.say("rejects.plain", counts)
            : words.say("rejects.tonnes", counts, tonnes(tonnes)));
    if (!its.classes().isEmpty()) {
      parts.add(
          words.say(
              "rejects.classes",
              its.classes().stream()
                  .limit(MOST_CLASSES)
                  .map(one -> name(one) + " " + words.count(one.rejected()))
                  .collect(Collectors.joining(", "))));
    }
    List<OfMold> standing = its.molds().stream().filter(OfMold::standsOut).toList();
    if (!standing.isEmpty()) {
      parts.add(
          words.say(
              standing.size() == 1 ? "rejects.mold" : "rejects.molds",
              words.list(
                  standing.stream()
                      .map(
                          one ->
                              sentences.label(one.mold())
                                  + " ("
                                  + Digits.percent(one.share().value())
                                  + " %)")
                      .toList())));
    }
    String said = String.join(" ", parts);
    return sentences.nameWheels()
        ? words.say("rejects.wheel", sentences.label(its.wheel()), said)
        : said;
  }

  /** A defect as people wrote it; where nobody wrote any, that. */
  public String name(OfClass one) {
    return one.name().isEmpty()
        ? sentences.words().say("rejects.unnamed")
        : sentences.label(RejectReport.plain(one.name()));
  }

  /** {@code 12.3 t}: a decimal below a hundred. */
  private static String tonnes(double tonnes) {
    return Digits.number(tonnes, tonnes < 100 ? 1 : 0) + " t";
  }
}
