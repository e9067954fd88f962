package org.evenpour.audit;

import java.util.List;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Effect;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.EffectInFull.Known;
import org.evenpour.audit.EffectInFull.Level;
import org.evenpour.audit.EffectInFull.Levels;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.IntColumn;
import org.evenpour.casting.Setting;
import org.evenpour.link.LevelEffects;
import org.evenpour.link.Linker;

/** What the levels of a category go with in the characteristics of a wheel. */
final class LevelsAudit {
  /** Several categories are asked in every audit, and one of them are people: a choice. */
  private static final double BEYOND_CHANCE = 0.01;

  private LevelsAudit() {}

  /**
   * The effect on one characteristic.
   *
   * @param categories of the setting
   * @param found what the characteristic's audit found
   * @param corrected the chance of such levels, in the whole audit
   */
  static Effect of(
      Linker linker,
      Setting setting,
      IntColumn categories,
      Characteristic characteristic,
      CharacteristicReport found,
      double corrected) {
    LevelEffects effects = linker.levels(characteristic, setting, categories);
    Double sd = found.overall().sd();
    if (!effects.isKnown() || sd == null || !(sd > 0)) {
      return new Effect(
          characteristic.name(),
          null,
          null,
          null,
          effects.levels().size() < 2 ? EffectInFull.NOTHING : EffectInFull.CAME_ONCE);
    }
    boolean isProven = corrected < BEYOND_CHANCE;
    boolean isSmall = effects.widest() < EffectAudit.WORTH_KNOWING * sd;
    double share = Math.max(0, Math.min(1, effects.variance() / (sd * sd)));
    List<Level> each =
        effects.levels().stream().map(level -> level(setting, effects, level)).toList();
    return new Effect(
        characteristic.name(),
        null,
        null,
        null,
        new EffectInFull(
            isProven ? Known.PROVEN : isSmall ? Known.SMALL : Known.OPEN,
            isProven ? new Estimate(share, null, null) : null,
            null,
            null,
            null,
            new Levels(effects.p(), each)));
  }

  private static Level level(Setting setting, LevelEffects effects, LevelEffects.Level level) {
    double half = effects.half(level);
    return new Level(
        setting.labels().name(level.label()),
        level.effect(),
        level.effect() - half,
        level.effect() + half,
        level.visits(),
        level.turns(),
        level.cameAgain());
  }
}
