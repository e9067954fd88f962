package org.evenpour.audit;

import java.util.List;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.column.IntColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.evenpour.link.LevelEffects;
import org.evenpour.link.Linker;

/** What the levels of a category go with in the characteristics of a wheel. */
final class LevelsAudit {
  private LevelsAudit() {}

  /**
   * The effect on one characteristic.
   *
   * @param categories of the setting
   * @param index of the characteristic
   */
  static Effect of(Looks looks, Setting setting, IntColumn categories, int index) {
    Characteristic characteristic = looks.asked().record().characteristics().get(index);
    CharacteristicReport found = looks.asked().found().get(index);
    Linker linker = looks.linker();
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
    boolean isProven = looks.isProven(setting, index);
    boolean isSmall = effects.widest() < EffectAudit.WORTH_KNOWING * sd;
    // What chance alone would give is out, and may have been more than all of it.
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
            new Levels(effects.p(), each),
            List.of()));
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
