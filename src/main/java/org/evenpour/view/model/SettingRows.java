package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.EffectInFull;
import org.evenpour.picture.IntervalBar;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldIntervals;
import org.evenpour.report.EffectSentences;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.Columns;
import org.evenpour.report.table.SettingTables;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Column.Kind;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** The table of settings: what each does to the chosen characteristic. */
public final class SettingRows {
  private SettingRows() {}

  /** A setting with its effect on the chosen characteristic. */
  public record Row(SettingReport report, @Nullable Effect effect) {}

  /** Settings, those with the largest effect of an ordinary move first, categories last. */
  public static List<Row> of(Desk desk, CharacteristicReport report) {
    List<Row> rows = new ArrayList<>();
    for (SettingReport setting : desk.figured().settings()) {
      if (setting.wheel().equals(report.wheel())) {
        Effect effect =
            setting.effects().stream()
                .filter(one -> one.characteristic().equals(report.name()))
                .findFirst()
                .orElse(null);
        rows.add(new Row(setting, effect));
      }
    }
    rows.sort(
        Comparator.comparing((Row row) -> row.report().category())
            .thenComparing(row -> -Math.abs(Tables.orZero(ofOneSd(row, Effect::perUnit)))));
    return rows;
  }

  /** An effect for a move of one standard deviation, so that settings can be compared. */
  private static @Nullable Double ofOneSd(Row row, Function<Effect, @Nullable Double> part) {
    Effect effect = row.effect();
    Double sd = row.report().sd();
    if (effect == null || sd == null) {
      return null;
    }
    Double value = part.apply(effect);
    return value == null ? null : (Double) (value * sd);
  }

  /** What is shown of a setting. */
  public static List<Column<Row>> columns(Desk desk, CharacteristicReport report) {
    Figures figures = desk.figures(report);
    String unit = figures.unit().symbol();
    Sentences sentences = desk.sentences();
    double most = 0;
    for (Row row : of(desk, report)) {
      most = Math.max(most, Math.abs(Tables.orZero(ofOneSd(row, Effect::low))));
      most = Math.max(most, Math.abs(Tables.orZero(ofOneSd(row, Effect::high))));
    }
    double span = MoldIntervals.roundSpan(figures.unit().differenceFromCanonical(most));
    Columns<SettingReport> recorded = SettingTables.recorded(Columns.narrow(sentences), sentences);
    return Columns.<Row>narrow(sentences)
        .text("setting", row -> Words.capital(sentences.setting(row.report().name())))
        .wide(25)
        .from(recorded, Row::report, "unit")
        .cell("effect", Kind.FIGURES, row -> perUnit(figures, row.effect()))
        .in(unit)
        .wide(12)
        .cell("effect_bar", Kind.PICTURES, row -> effectBar(desk, figures, span, row))
        .in(unit)
        .wide(22)
        .cell("variance_share", Kind.FIGURES, SettingRows::share)
        .wide(13)
        .text("window", row -> window(sentences, row))
        .wide(17)
        .from(recorded, Row::report, "mean", "sd", "group", "lag", "missing")
        .list();
  }

  /**
   * What is known of the effect, in whole sentences; that it holds words where nothing is asked.
   */
  public static String said(Desk desk, Row row) {
    Effect effect = row.effect();
    return effect == null
        ? desk.look()
            .say("settings.category", Words.capital(desk.sentences().setting(row.report().name())))
        : String.join(" ", new EffectSentences(desk.sentences()).of(row.report(), effect));
  }

  private static String window(Sentences sentences, Row row) {
    Effect effect = row.effect();
    return effect == null ? "—" : new EffectSentences(sentences).window(row.report(), effect);
  }

  private static Cell share(Row row) {
    Effect effect = row.effect();
    Estimate share = effect == null ? null : effect.inFull().share();
    if (share == null || effect == null) {
      return new Cell.Marked(Cell.MISSING, null);
    }
    boolean isProven = effect.inFull().known() == EffectInFull.Known.PROVEN;
    Double high = share.high();
    double shown = 100 * (isProven || high == null ? share.value() : high);
    String number = Digits.number(shown, shown < 9.5 ? 1 : 0);
    return new Cell.Marked(isProven ? number : "≤ " + number, shown);
  }

  private static Cell perUnit(Figures figures, @Nullable Effect effect) {
    Double perUnit = effect == null ? null : Tables.difference(figures, effect.perUnit());
    if (perUnit == null) {
      return new Cell.Marked(Cell.MISSING, null);
    }
    String number = Digits.number(perUnit, Digits.two(perUnit));
    return new Cell.Marked(perUnit > 0 ? "+" + number : number, perUnit);
  }

  private static Cell effectBar(Desk desk, Figures figures, double span, Row row) {
    Double low = Tables.difference(figures, ofOneSd(row, Effect::low));
    Double middle = Tables.difference(figures, ofOneSd(row, Effect::perUnit));
    Double high = Tables.difference(figures, ofOneSd(row, Effect::high));
    int decimals = figures.decimals() + 2;
    String text =
        low == null || high == null
            ? "—"
            : desk.look()
                .say("cell.range", Digits.number(low, decimals), Digits.number(high, decimals));
    return new Cell.Drawn(
        new IntervalBar(-span, span, 0, low, middle, high, Mark.NONE),
        text,
        middle == null ? null : (Double) Math.abs(middle));
  }
}
