package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.evenpour.findings.EffectInFull.Window;
import org.evenpour.report.EffectSentences;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** What was recorded of every setting, what it does, and what the record cannot tell. */
public final class SettingTables {
  private static final int READING = 90;
  private static final Digits SHARE = Digits.share(1);

  private SettingTables() {}

  /** Every setting, with its effect on every characteristic. */
  public static Table<SettingReport> settings(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    Map<String, Unit> judged = new TreeMap<>();
    for (CharacteristicReport one : report.characteristics()) {
      judged.putIfAbsent(one.name(), sentences.figures(one.wheel(), one.name()).unit());
    }
    Columns<SettingReport> columns =
        Columns.<SettingReport>of(sentences)
            .wheel(SettingReport::wheel)
            .setting(SettingReport::name)
            .text("column", SettingReport::name);
    recorded(columns, sentences)
        .figure("minimum", one -> level(one, one.minimum()))
        .figure("maximum", one -> level(one, one.maximum()))
        .count("levels", one -> one.category() ? (Integer) one.levels() : null);
    judged.forEach(
        (name, unit) ->
            columns
                .figure(name, one -> effect(one, name, unit, Effect::perUnit))
                .named(
                    unit.symbol().isEmpty()
                        ? words.say("head.effect.plain", words.characteristic(name))
                        : words.say("head.effect", words.characteristic(name), unit.symbol()))
                .figure(name + "_low", one -> effect(one, name, unit, Effect::low))
                .like("low")
                .figure(name + "_high", one -> effect(one, name, unit, Effect::high))
                .like("high"));
    return new Table<>("settings", words.say("sheet.settings"), columns.list(), report.settings());
  }

  /** The columns that say what was recorded. */
  public static Columns<SettingReport> recorded(
      Columns<SettingReport> columns, Sentences sentences) {
    return columns
        .text("unit", one -> Sentences.unit(one.unit()).symbol())
        .wide(7)
        .text("group", one -> sentences.words().group(one.group()))
        .count("lag", SettingReport::lagTurns)
        .count("anodes", SettingReport::count)
        .count("missing", SettingReport::missing)
        .figure("mean", one -> level(one, one.mean()))
        .figure("sd", one -> level(one, one.sd()));
  }

  /** With the digits that its spread supports. */
  private static Cell level(SettingReport of, @Nullable Double value) {
    Double size = of.sd() == null ? of.mean() : of.sd();
    return new Cell.Figure(value, Digits.plain(size == null ? 0 : Digits.three(size)));
  }

  private static Cell effect(
      SettingReport of, String name, Unit unit, Function<Effect, @Nullable Double> part) {
    Effect found =
        of.effects().stream()
            .filter(effect -> effect.characteristic().equals(name))
            .findFirst()
            .orElse(new Effect(name, null, null, null));
    Double perUnit = found.perUnit();
    return new Cell.Figure(
        Columns.difference(unit, part.apply(found)),
        Digits.signed(perUnit == null ? 0 : Digits.three(perUnit)));
  }

  /**
   * What a setting does to a characteristic, or what one of its levels does.
   *
   * @param level null for the setting as a whole
   */
  public record Row(SettingReport of, Effect effect, @Nullable Level level) {

    private <T> @Nullable T whole(Function<Effect, @Nullable T> part) {
      return level == null ? part.apply(effect) : null;
    }

    private <T> @Nullable T level(Function<Level, @Nullable T> part) {
      return level == null ? null : part.apply(level);
    }
  }

  /** What every setting does to every characteristic; each level of a category in its own row. */
  public static Table<Row> effects(AuditReport report, Sentences sentences) {
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport characteristic : report.characteristics()) {
      for (SettingReport setting : report.settings()) {
        if (setting.wheel().equals(characteristic.wheel())) {
          setting.effects().stream()
              .filter(effect -> effect.characteristic().equals(characteristic.name()))
              .forEach(effect -> add(rows, setting, effect));
        }
      }
    }
    Words words = sentences.words();
    EffectSentences said = new EffectSentences(sentences);
    return new Table<>(
        "effects",
        words.say("sheet.effects"),
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.effect().characteristic())
            .setting(row -> row.of().name())
            .text(
                "known",
                row ->
                    row.whole(
                        effect ->
                            words.say(
                                "known."
                                    + effect.inFull().known().name().toLowerCase(Locale.ROOT))))
            .prose(
                "reading",
                READING,
                row -> row.whole(effect -> String.join(" ", said.of(row.of(), effect))))
            .asAudited()
            .estimate(
                "variance", row -> SHARE, Unit.NONE, row -> row.whole(one -> one.inFull().share()))
            .text("unit", row -> row.whole(effect -> Sentences.unit(row.of().unit()).symbol()))
            .figure("window.low", row -> window(row, Window::low))
            .asAudited()
            .figure("window.high", row -> window(row, Window::high))
            .asAudited()
            .figure("p_value", Digits.plain(4), SettingTables::chance)
            .label("level_name", row -> row.level(Level::name))
            .figure("level_effect", row -> ofLevel(sentences, row, Level::effect))
            .interval(
                "level_effect",
                row -> ofLevel(sentences, row, Level::low),
                row -> ofLevel(sentences, row, Level::high))
            .text("level_unit", row -> row.level(level -> figures(sentences, row).unit().symbol()))
            .like("unit")
            .count("visits", row -> row.level(Level::visits))
            .count("visit_turns", row -> row.level(Level::turns))
            .list(),
        rows);
  }

  private static void add(List<Row> rows, SettingReport setting, Effect effect) {
    rows.add(new Row(setting, effect, null));
    Levels levels = effect.inFull().levels();
    if (levels != null) {
      levels.each().forEach(level -> rows.add(new Row(setting, effect, level)));
    }
  }

  private static Cell window(Row row, Function<Window, @Nullable Double> end) {
    Window window = row.whole(effect -> effect.inFull().window());
    return level(row.of(), window == null || !window.isBorneOut() ? null : end.apply(window));
  }

  private static @Nullable Double chance(Row row) {
    Levels levels = row.whole(effect -> effect.inFull().levels());
    return levels == null ? null : (Double) levels.p();
  }

  private static Figures figures(Sentences sentences, Row row) {
    return sentences.figures(row.of().wheel(), row.effect().characteristic());
  }

  private static Cell ofLevel(Sentences sentences, Row row, Function<Level, Double> part) {
    Level level = row.level();
    if (level == null) {
      return Cell.BLANK;
    }
    Unit unit = figures(sentences, row).unit();
    return new Cell.Figure(
        unit.differenceFromCanonical(part.apply(level)),
        Digits.signed(Digits.three(unit.differenceFromCanonical(level.effect()))));
  }
}
