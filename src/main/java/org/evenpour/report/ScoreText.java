package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.score.Score;
import org.evenpour.score.Score.Effects;
import org.evenpour.score.Score.FalseLinks;
import org.evenpour.score.Score.Faults;
import org.evenpour.score.Score.Quantiles;
import org.evenpour.score.Score.Share;
import org.jspecify.annotations.Nullable;

/** A score as tables for a terminal, at most 100 columns wide. */
public final class ScoreText {
  private static final int NAME = 30;
  private static final String NOTHING = "–";

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
    lines.add(what);
    line(
        "logs: %d, planted faults: %d, signals: %d, of a planted fault: %s",
        score.logs(), score.all().found().of(), score.signals(), share(score.signalsOfFaults()));
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
    line(
        "%-30s %-26s %-12s %s",
        "intervals of effects", "hold the truth", "no interval", "width over effect, median");
    effects("settings that act", score.acting());
    effects("idle settings", score.idle());
  }

  private void found(List<Faults> kinds, @Nullable Faults all, String head) {
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
      if (one.topRight().of() > 0) {
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
      if (one.noStrong().of() > 0) {
        line("%-30s %-26s %s", name(one), share(one.noStrong()), share(one.noLink()));
      }
    }
  }

  private void links(Score score) {
    line("%-30s %s", "strong links that are right", share(score.links().right()));
    line("%-30s %s", "or truly made the signal", share(score.links().real()));
    line(
        "%-30s %6s %14s %10s %8s %12s",
        "strong links not planted", "all", "made it", "act", "idle", "not known");
    falseLinks("beside a planted fault", score.links().besideFault());
    falseLinks("beside no planted fault", score.links().besideNothing());
  }

  private void falseLinks(String name, FalseLinks links) {
    line(
        "%-30s %6d %14d %10d %8d %12d",
        name, links.count(), links.carrying(), links.acting(), links.idle(), links.unknown());
  }

  private void effects(String name, Effects effects) {
    Double width = effects.relativeWidth();
    line(
        "%-30s %-26s %-12d %s",
        name,
        share(effects.covered()),
        effects.without(),
        width == null ? "" : String.format(Locale.ROOT, "%.2f", width));
  }

  private static String name(Faults faults) {
    String name = faults.name();
    return name.length() <= NAME ? name : name.substring(0, NAME - 1) + "…";
  }

  /** {@code 97 % (89–99) of 120}. */
  private static String share(Share share) {
    Double low = share.low();
    Double high = share.high();
    return low == null || high == null
        ? NOTHING
        : String.format(
            Locale.ROOT, "%s (%.0f–%.0f) of %d", percent(share), 100 * low, 100 * high, share.of());
  }

  private static String percent(Share share) {
    Double value = share.value();
    return value == null ? NOTHING : String.format(Locale.ROOT, "%.0f %%", 100 * value);
  }

  private static String turns(Quantiles quantiles) {
    Double median = quantiles.median();
    Double ninetieth = quantiles.ninetieth();
    return median == null || ninetieth == null
        ? NOTHING
        : String.format(Locale.ROOT, "%.1f / %.1f", median, ninetieth);
  }

  private void line(String format, Object... values) {
    lines.add(String.format(Locale.ROOT, format, values).stripTrailing());
  }
}
