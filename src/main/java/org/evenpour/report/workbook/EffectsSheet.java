package org.evenpour.report.workbook;

import java.util.List;
import java.util.Locale;
import org.evenpour.audit.AuditReport.Effect;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.AuditReport.SettingReport;
import org.evenpour.audit.EffectInFull.Known;
import org.evenpour.audit.EffectInFull.Level;
import org.evenpour.audit.EffectInFull.Levels;
import org.evenpour.audit.EffectInFull.Window;
import org.evenpour.casting.Unit;
import org.evenpour.report.EffectSentences;
import org.evenpour.report.Sentences;
import org.jspecify.annotations.Nullable;

/** What every setting does to every characteristic, and what the record cannot tell. */
final class EffectsSheet {
  private static final int WIDEST = 90;

  /** Columns that say nothing of a single level, between the setting's name and the level's. */
  private static final int BETWEEN = 9;

  private EffectsSheet() {}

  static void write(Paper paper) {
    if (paper.report().settings().stream().allMatch(one -> one.effects().isEmpty())) {
      return;
    }
    String share = paper.say("head.variance");
    String level = paper.say("head.level_effect");
    Table table =
        new Table(
            paper,
            paper.say("sheet.effects"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.setting")),
                Column.words(paper.say("head.known")),
                Column.figures(share),
                Column.figures(paper.say("head.interval", share, paper.say("head.from"))),
                Column.figures(paper.say("head.interval", share, paper.say("head.to"))),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.window.low")),
                Column.figures(paper.say("head.window.high")),
                Column.words(paper.say("head.reading")),
                Column.figures(paper.say("head.p_value")),
                Column.words(paper.say("head.level_name")),
                Column.figures(level),
                Column.figures(paper.say("head.interval", level, paper.say("head.from"))),
                Column.figures(paper.say("head.interval", level, paper.say("head.to"))),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.visits")),
                Column.figures(paper.say("head.visit_turns"))));
    EffectSentences said = new EffectSentences(paper.sentences());
    for (var characteristic : paper.report().characteristics()) {
      for (SettingReport setting : paper.report().settings()) {
        if (setting.wheel().equals(characteristic.wheel())) {
          setting.effects().stream()
              .filter(effect -> effect.characteristic().equals(characteristic.name()))
              .forEach(effect -> rows(paper, table, said, setting, effect));
        }
      }
    }
    table.finish();
  }

  /** A row for the setting, and one for each level of a category below it. */
  private static void rows(
      Paper paper, Table table, EffectSentences said, SettingReport setting, Effect effect) {
    row(paper, table.next(), said, setting, effect);
    Levels levels = effect.inFull().levels();
    if (levels != null) {
      table.number(levels.p(), paper.styles().significant());
      levels.each().forEach(level -> level(paper, table.next(), setting, effect, level));
    }
  }

  private static void level(
      Paper paper, Table table, SettingReport setting, Effect effect, Level level) {
    Unit unit = paper.sentences().figures(setting.wheel(), effect.characteristic()).unit();
    double shown = unit.differenceFromCanonical(level.effect());
    var style = paper.styles().departure(SignalsSheet.places(shown));
    table
        .text(setting.wheel())
        .text(paper.words().characteristic(effect.characteristic()))
        .text(paper.sentences().setting(setting.name()));
    for (int i = 0; i < BETWEEN; i++) {
      table.blank();
    }
    table
        .label(level.name())
        .number(shown, style)
        .number(unit.differenceFromCanonical(level.low()), style)
        .number(unit.differenceFromCanonical(level.high()), style)
        .text(unit.symbol())
        .count(level.visits())
        .count(level.turns());
  }

  private static void row(
      Paper paper, Table table, EffectSentences said, SettingReport setting, Effect effect) {
    Styles styles = paper.styles();
    Estimate share = effect.inFull().share();
    Window window = effect.inFull().window();
    Unit unit = Sentences.unit(setting.unit());
    var level = styles.number(SignalsSheet.places(setting.sd()));
    table
        .text(setting.wheel())
        .text(paper.words().characteristic(effect.characteristic()))
        .text(paper.sentences().setting(setting.name()))
        .text(paper.say("known." + key(effect.inFull().known())))
        .number(share == null ? null : (Double) share.value(), styles.share())
        .number(share == null ? null : share.low(), styles.share())
        .number(share == null ? null : share.high(), styles.share())
        .text(unit.symbol())
        .number(end(window, true), level)
        .number(end(window, false), level)
        .prose(String.join(" ", said.of(setting, effect)), WIDEST);
  }

  private static @Nullable Double end(@Nullable Window window, boolean isLow) {
    return window == null ? null : isLow ? window.low() : window.high();
  }

  private static String key(Known known) {
    return known.name().toLowerCase(Locale.ROOT);
  }
}
