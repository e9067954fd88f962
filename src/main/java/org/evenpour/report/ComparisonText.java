package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.findings.ComparisonReport.Span;
import org.evenpour.findings.ComparisonReport.What;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;

/**
 * Says what differs between two stretches, and whether it is real.
 *
 * @param sentences the language and the units
 */
public record ComparisonText(Sentences sentences) {
  /** So many real differences are said beside those that were asked about; a table has all. */
  private static final int SAID = 4;

  /** Which turns, when, and how many anodes. */
  public String span(Span its) {
    return words()
        .say(
            "compare.span",
            its.firstTurn(),
            its.lastTurn(),
            sentences.time(its.from()),
            sentences.time(its.to()),
            words().count(its.anodes()));
  }

  /**
   * The answer: what was asked of a mold, then all that is real, then of how many others nothing
   * is; the last says what was allowed for.
   */
  public List<String> lines(ComparisonReport report) {
    List<String> lines = new ArrayList<>();
    report.asked(true).stream()
        .sorted(Comparator.comparing(one -> !one.isReal()))
        .forEach(one -> lines.add(sentence(report, one)));
    List<Compared> others = report.asked(false);
    List<Compared> real = others.stream().filter(Compared::isReal).toList();
    real.stream().limit(SAID).forEach(one -> lines.add(sentence(report, one)));
    if (real.size() > SAID) {
      lines.add(words().say("compare.more", words().count(real.size() - SAID)));
    }
    long left = others.stream().filter(one -> !one.isReal()).count();
    if (others.isEmpty() && lines.isEmpty()) {
      lines.add(words().say("compare.short"));
    } else if (left > 0) {
      boolean isAll = left == others.size();
      lines.add(words().say(isAll ? "compare.none" : "compare.rest", words().count(left)));
    }
    return lines;
  }

  /** What was asked together, and what was allowed for. */
  public String allowance(ComparisonReport report) {
    String said =
        words()
            .say(
                "compare.allowance",
                words().count(report.asked(false).size()),
                words().count(report.molds()));
    return report.asked(true).isEmpty()
        ? said
        : said + " " + words().say("compare.allowance.mold", sentences.label(report.mold()));
  }

  /** What is compared, where, by how much it differs, and whether that is real. */
  public String sentence(ComparisonReport report, Compared one) {
    return words()
        .say(
            one.isReal() ? "compare.real" : "compare.chance",
            what(one),
            value(report, one, one.before()),
            value(report, one, one.after()),
            difference(report, one));
  }

  /** {@code Thickness of mold 4}. */
  public String what(Compared one) {
    String name = one.characteristic() == null ? "" : words().characteristic(one.characteristic());
    String key = "compare." + one.what().name().toLowerCase(java.util.Locale.ROOT);
    return Words.capital(
        words()
            .say(
                one.what() == What.REJECTED && one.mold() != null ? key + ".mold" : key,
                name,
                sentences.label(one.mold())));
  }

  /** A figure of one stretch. */
  public String value(ComparisonReport report, Compared one, double value) {
    Figures figures = figures(report, one);
    return switch (one.what()) {
      case LEVEL -> figures.mean(value);
      case OFFSET -> figures.departure(value, decimals(report, one));
      case SPREAD -> figures.spread(value) + unit(figures);
      case CAPABILITY -> Digits.number(value, 2);
      case REJECTED -> Digits.percent(value) + " %";
    };
  }

  /** {@code −0.57 mm (95 %: −0.71 to −0.44)}. */
  public String difference(ComparisonReport report, Compared one) {
    Estimate its = one.difference();
    double low = its.low() == null ? its.value() : its.low();
    double high = its.high() == null ? its.value() : its.high();
    Figures figures = figures(report, one);
    int decimals = decimals(report, one);
    return switch (one.what()) {
      case LEVEL, OFFSET ->
          interval(
              figures.departure(its.value(), decimals),
              figures.signed(low, decimals),
              figures.signed(high, decimals));
      case SPREAD ->
          interval(
              words().say("compare.times", Digits.number(its.value(), 2)),
              Digits.number(low, 2),
              Digits.number(high, 2));
      case CAPABILITY ->
          interval(Digits.signed(its.value(), 2), Digits.signed(low, 2), Digits.signed(high, 2));
      case REJECTED ->
          interval(
              words().say("compare.points", Digits.signed(100 * its.value(), 1)),
              Digits.signed(100 * low, 1),
              Digits.signed(100 * high, 1));
    };
  }

  private String interval(String value, String low, String high) {
    return words().say("size.interval", value, low, high);
  }

  /** As many as the interval supports: one digit of its half-width. */
  private int decimals(ComparisonReport report, Compared one) {
    Estimate its = one.difference();
    double low = its.low() == null ? its.value() : its.low();
    double high = its.high() == null ? its.value() : its.high();
    return figures(report, one).decimalsOf((high - low) / 2 * 10);
  }

  private Figures figures(ComparisonReport report, Compared one) {
    return sentences.figures(
        report.wheel(), one.characteristic() == null ? "" : one.characteristic());
  }

  private static String unit(Figures figures) {
    String symbol = figures.unit().symbol();
    return symbol.isEmpty() ? "" : " " + symbol;
  }

  private Words words() {
    return sentences.words();
  }
}
