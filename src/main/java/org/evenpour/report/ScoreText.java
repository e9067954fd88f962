package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.score.Score;
import org.evenpour.score.Score.Effects;
import org.evenpour.score.Score.FalseLinks;
import org.evenpour.score.Score.Faults;
import org.evenpour.score.Score.Quantiles;
import org.evenpour.stats.Proportion;

/** A score as tables for a terminal, at most 100 columns wide. */
public final class ScoreText {
  private static final int NAME = 30;

  private final List<String> lines = new ArrayList<>();

  private ScoreText() {}

  /**
   * The tables, each line ended by a line feed.
   *
   * @param what was scored, in one line
   */
  public static String text(String what, Score score) {
    ScoreText text = new ScoreText();
    text.score(what, score);
    return String.join("\n", text.lines) + "\n";
  }

  private void score(String what, Score score) {
    line(
        "%s: %d logs, %d planted faults, %d signals",
        what, score.logs(), planted(score), score.signals());
    line("%-40s %s", "signals that are of a planted fault", share(score.signalsOfFaults()));
    lines.add("shares with their counts and 95 % intervals; turns as median / nine in ten at most");
    lines.add("");
    found(score.byFault(), score.all(), "fault");
    if (!score.bySize().isEmpty()) {
      lines.add("");
      found(score.bySize(), null, "size");
    }
    lines.add("");
    caused(score);
    lines.add("");
    unrecorded(score);
    lines.add("");
    links(score);
    lines.add("");
    effects("intervals of effects, settings that act", score.acting());
    effects("intervals of effects, idle settings", score.idle());
  }

  private static long planted(Score score) {
    return score.all().found().trials();
  }

  private void found(
      List<Faults> kinds, @org.jspecify.annotations.Nullable Faults all, String head) {
    line("%-30s %-26s %14s %14s", head, "found", "onset error", "delay");
    for (Faults one : kinds) {
      found(one);
    }
    if (all != null) {
      found(all);
    }
  }

  private void found(Faults one) {
    line(
        "%-30s %-26s %14s %14s",
        name(one), share(one.found()), turns(one.onsetError()), turns(one.delay()));
  }

  private void caused(Score score) {
    line(
        "%-30s %-26s %-12s %-12s",
        "found, and a record shows why", "first link right", "by name", "any signal");
    List<Faults> rows = new ArrayList<>(score.byFault());
    rows.addAll(score.bySize());
    rows.add(score.all());
    for (Faults one : rows) {
      if (one.topRight().trials() > 0) {
        line(
            "%-30s %-26s %-12s %-12s",
            name(one), share(one.topRight()), percent(one.topExact()), percent(one.anyTopRight()));
      }
    }
  }

  private void unrecorded(Score score) {
    line(
        "%-30s %-26s %s",
        "found, and no record shows why", "no strong link", "no link with evidence");
    List<Faults> rows = new ArrayList<>(score.byFault());
    rows.add(score.all());
    for (Faults one : rows) {
      if (one.noStrong().trials() > 0) {
        line("%-30s %-26s %s", name(one), share(one.noStrong()), share(one.noLink()));
      }
    }
  }

  private void links(Score score) {
    line("%-40s %s", "strong links that are right", share(score.links().right()));
    falseLinks("false, beside a planted fault", score.links().besideFault());
    falseLinks("false, beside no planted fault", score.links().besideNothing());
  }

  private void falseLinks(String name, FalseLinks links) {
    line(
        "%-40s %d: of settings that act %d, of idle ones %d, not known (events) %d",
        name, links.count(), links.acting(), links.idle(), links.unknown());
  }

  private void effects(String name, Effects effects) {
    Double width = effects.relativeWidth();
    line(
        "%-40s %s hold the truth; without: %d%s",
        name,
        share(effects.covered()),
        effects.without(),
        width == null
            ? ""
            : String.format(Locale.ROOT, "; width over effect, median: %.2f", width));
  }

  private static String name(Faults faults) {
    String name = faults.name();
    return name.length() <= NAME ? name : name.substring(0, NAME - 1) + "…";
  }

  /** {@code 97 % (89–99) of 120}. */
  private static String share(Proportion share) {
    return share.trials() == 0
        ? "–"
        : String.format(
            Locale.ROOT,
            "%s (%.0f–%.0f) of %d",
            percent(share),
            100 * share.low(),
            100 * share.high(),
            share.trials());
  }

  private static String percent(Proportion share) {
    return share.trials() == 0 ? "–" : String.format(Locale.ROOT, "%.0f %%", 100 * share.value());
  }

  private static String turns(Quantiles quantiles) {
    Double median = quantiles.median();
    Double ninetieth = quantiles.ninetieth();
    return median == null || ninetieth == null
        ? "–"
        : String.format(Locale.ROOT, "%.1f / %.1f", median, ninetieth);
  }

  private void line(String format, Object... values) {
    lines.add(String.format(Locale.ROOT, format, values).stripTrailing());
  }
}
