package org.evenpour.report.table;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.CapabilityInFull.Part;
import org.evenpour.findings.CapabilityInFull.Source;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.VerdictSentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Where the spread comes from, and what would be left without a part of it. */
public final class SpreadTables {
  private SpreadTables() {}

  /** Each characteristic's parts. */
  public static Table<CharacteristicReport> parts(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    Function<CharacteristicReport, Figures> figures =
        one -> sentences.figures(one.wheel(), one.name());
    Columns<CharacteristicReport> columns =
        Columns.<CharacteristicReport>of(sentences)
            .wheel(CharacteristicReport::wheel)
            .text("characteristic", one -> Words.capital(words.characteristic(one.name())))
            .unit(figures);
    for (Source source : Source.values()) {
      columns
          .figure(source.name(), Digits.share(1), one -> of(one, source, Part::share))
          .named(name(words, source));
    }
    for (Source source : Source.values()) {
      columns
          .spread("sd " + source.name(), figures, one -> of(one, source, Part::sd))
          .named(words.say("head.sd_of", name(words, source)));
    }
    return new Table<>(
        "spread",
        words.say("sheet.spread"),
        columns.list(),
        report.characteristics().stream().filter(one -> !one.inFull().parts().isEmpty()).toList());
  }

  private static @Nullable Double of(
      CharacteristicReport of, Source source, Function<Part, Double> figure) {
    return of.inFull().parts().stream()
        .filter(part -> part.source() == source)
        .findFirst()
        .map(figure)
        .orElse(null);
  }

  /** What people call a part, with a capital. */
  public static String name(Words words, Source source) {
    return Words.capital(words.say("source." + source.name().toLowerCase(Locale.ROOT)));
  }

  /** What would be left of a characteristic's spread. */
  public record Left(CharacteristicReport of, WhatIf without) {}

  /** What would be left without each part. */
  public static Table<Left> without(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    VerdictSentences said = new VerdictSentences(report, sentences);
    Following following = new Following(report, sentences, AnodeCells.NONE);
    Function<Left, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    List<Left> rows =
        report.characteristics().stream()
            .filter(one -> !one.inFull().parts().isEmpty())
            .flatMap(one -> one.inFull().whatIfs().stream().map(each -> new Left(one, each)))
            .toList();
    return new Table<>(
        "without",
        words.say("sheet.what_if"),
        Columns.<Left>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .text("without", row -> name(words, row.without().without()))
            .value("mean", figures, row -> row.without().mean())
            .spread("sd", figures, row -> row.without().sd())
            .figure(
                "ppk",
                row ->
                    following.nearest(
                        row.of(),
                        row.without().mean(),
                        "mean",
                        row.without().sd(),
                        "sd",
                        new Cell.Figure(row.without().ppk(), Digits.plain(2))))
            .figure(
                "ppk_now",
                row ->
                    following.nearest(
                        row.of(),
                        row.of().overall().mean(),
                        "mean_now",
                        row.of().overall().sd(),
                        "sd_now",
                        new Cell.Figure(row.without().ppkNow(), Digits.plain(2))))
            .figure(
                "expected_outside",
                row ->
                    following.expected(
                        row.of(),
                        "mean",
                        "sd",
                        new Cell.Figure(row.without().fractionOutside(), Digits.share(1))))
            .prose("words", 60, row -> said.whatIf(row.of(), row.without()))
            .asAudited()
            .value("mean_now", figures, row -> row.of().overall().mean())
            .spread("sd_now", figures, row -> row.of().overall().sd())
            .list(),
        rows);
  }
}
