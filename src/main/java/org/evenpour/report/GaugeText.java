package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.GaugeReport.OnWheel;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says what a gauge is worth.
 *
 * @param sentences the language, and which wheels are named
 */
public record GaugeText(Sentences sentences) {

  /** A gauge in one line for each wheel. */
  public List<String> lines(GaugeReport gauge) {
    List<String> lines = new ArrayList<>();
    for (OnWheel wheel : gauge.wheels()) {
      lines.add(line(gauge, wheel));
    }
    if (lines.isEmpty()) {
      lines.add(words().say("gauge.none", name(gauge), spread(gauge, gauge.sigma().value())));
    }
    return lines;
  }

  /** What the gauge takes of one wheel's spread and tolerance. */
  public String line(GaugeReport gauge, OnWheel wheel) {
    List<String> parts = new ArrayList<>();
    parts.add(words().say("gauge.sd", spread(gauge, gauge.sigma().value())));
    Estimate bias = gauge.bias();
    if (bias != null) {
      Figures figures = figures(gauge);
      parts.add(words().say("gauge.bias", figures.departure(bias.value(), figures.decimals() + 1)));
    }
    add(parts, "gauge.spread", wheel.shareOfSpread());
    add(parts, "gauge.tolerance", wheel.shareOfTolerance());
    Long inDoubt = wheel.inDoubt();
    if (inDoubt != null) {
      parts.add(words().say("gauge.doubt", words().count(inDoubt)));
    }
    String name =
        sentences.nameWheels() ? sentences.label(wheel.wheel()) + ": " + name(gauge) : name(gauge);
    String line = words().say("gauge.line", name, String.join(", ", parts));
    return wheel.tooCoarseFor().isEmpty() ? line : line + " " + words().say("gauge.coarse");
  }

  /** What is too coarse, in words. */
  public String verdicts(OnWheel wheel) {
    return wheel.tooCoarseFor().stream()
        .map(one -> words().say("gauge.verdict." + one.name().toLowerCase(java.util.Locale.ROOT)))
        .reduce((a, b) -> a + ", " + b)
        .orElse(words().say("gauge.verdict.none"));
  }

  /** How the figures of a gauge are shown. */
  public Figures figures(GaugeReport gauge) {
    Unit unit = Sentences.unit(gauge.displayUnit());
    for (OnWheel wheel : gauge.wheels()) {
      Unit shown = sentences.figures(wheel.wheel(), gauge.characteristic()).unit();
      unit = shown.suffix().isEmpty() ? unit : shown;
    }
    return new Figures(unit);
  }

  private void add(List<String> parts, String key, @Nullable Double share) {
    if (share != null) {
      parts.add(words().say(key, Digits.number(100 * share, 0)));
    }
  }

  private String name(GaugeReport gauge) {
    return words().say("gauge.of", words().characteristic(gauge.characteristic()));
  }

  private String spread(GaugeReport gauge, double sigma) {
    Figures figures = figures(gauge);
    return figures.size(sigma, figures.decimals() + 1);
  }

  private Words words() {
    return sentences.words();
  }
}
