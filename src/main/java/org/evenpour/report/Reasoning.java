package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.evenpour.casting.CauseMark;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says why a link was graded as it was: how it moved, how likely that is by chance, when, what such
 * a move does, and what a person said of it. Words for the figures that stand beside them.
 *
 * @param sentences the language and the units
 */
public record Reasoning(Sentences sentences) {
  /** A link of a signal, in a few sentences; what keeps people safe comes first. */
  public String of(Signal signal, Link link) {
    return sentences.cautioned(reasons(signal, link), link.name(), link.group());
  }

  private String reasons(Signal signal, Link link) {
    Words words = sentences.words();
    List<String> said = new ArrayList<>();
    boolean isNothing = link.evidence() == Evidence.NONE;
    if (isNothing && link.isUsualMove()) {
      return words.say("reason.still", sentences.named(link));
    }
    if (isNothing && link.event()) {
      said.add(words.say("reason.far", sentences.plainly(link)));
    } else if (link.isUsualMove()) {
      said.add(words.say("reason.usual", sentences.plainly(link)));
    } else {
      said.add(
          words.say(
              link.event() ? "reason.chance.event" : "reason.chance",
              sentences.plainly(link),
              chance(link, words)));
    }
    Integer since = link.sinceTurn();
    if (since != null) {
      said.add(
          words.say(
              link.event() ? "reason.began.event" : "reason.began",
              since,
              beside(since - signal.sinceTurn(), words)));
    }
    if (!link.event()) {
      said.add(effect(signal, link, words));
    }
    if (!link.togetherWith().isEmpty()) {
      said.add(
          words.say(
              "reason.together",
              Words.capital(
                  link.togetherWith().stream()
                      .map(sentences::setting)
                      .collect(Collectors.joining(", ")))));
    }
    return String.join(" ", said);
  }

  private static String chance(Link link, Words words) {
    Double q = link.qValue();
    return q == null ? words.say("missing") : Sentences.percent(q, words);
  }

  private static String beside(int turns, Words words) {
    String way = turns < 0 ? "reason.before" : "reason.after";
    int count = Math.abs(turns);
    return count == 0
        ? words.say("reason.same")
        : count == 1 ? words.say(way + ".one") : words.say(way, count);
  }

  private String effect(Signal signal, Link link, Words words) {
    Double effect = link.expectedEffect();
    Double share = link.explainedShare();
    if (effect == null || share == null) {
      return words.say("reason.effect.unknown");
    }
    Figures figures = sentences.figures(signal.wheel(), signal.characteristic());
    int decimals = figures.decimalsOf(effect);
    String does = figures.signed(effect, decimals) + " " + figures.unit().symbol();
    if (share <= 0) {
      return words.say("reason.effect.against", does);
    }
    Double low = link.explainedLow();
    Double high = link.explainedHigh();
    return low == null || high == null
        ? words.say("reason.effect.plain", does, percent(share))
        : words.say("reason.effect", does, percent(share), percent(low), percent(high));
  }

  private static String percent(double share) {
    return Digits.number(share * 100, 0);
  }

  /** Who said what of a cause; empty where nobody did. */
  public String mark(@Nullable CauseMark mark) {
    return mark == null || mark.verdict() == CauseMark.Verdict.OPEN
        ? ""
        : sentences
            .words()
            .say(
                "mark." + mark.verdict().name().toLowerCase(Locale.ROOT),
                mark.who(),
                sentences.date(mark.at()),
                mark.why());
  }
}
