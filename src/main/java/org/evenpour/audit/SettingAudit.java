package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.stats.Moments;

/** What is to be told of one recorded setting over the whole log. */
final class SettingAudit {
  /** Values that are taken out of a column at a time. */
  private static final int BLOCK = 8192;

  private SettingAudit() {}

  /** All settings of all wheels. */
  static List<SettingReport> of(List<Looks.Wheel> wheels) {
    return Looks.of(wheels).stream()
        .flatMap(
            looks ->
                looks.asked().record().settings().parallelStream()
                    .map(setting -> of(looks, setting))
                    .toList()
                    .stream())
        .toList();
  }

  private static SettingReport of(Looks looks, Setting setting) {
    WheelRecord wheel = looks.asked().record();
    List<CharacteristicReport> characteristics = looks.asked().found();
    Moments moments = new Moments();
    long missing = 0;
    DoubleColumn numbers = setting.numbers();
    IntColumn categories = setting.categories();
    int rows = wheel.rows();
    if (numbers != null) {
      double[] some = new double[BLOCK];
      for (int from = 0; from < rows; from += BLOCK) {
        int n = Math.min(BLOCK, rows - from);
        numbers.copy(from, n, some);
        for (int i = 0; i < n; i++) {
          if (Double.isNaN(some[i])) {
            missing++;
          } else {
            moments.add(some[i]);
          }
        }
      }
    } else if (categories != null) {
      for (int i = 0; i < rows; i++) {
        missing += categories.get(i) < 0 ? 1 : 0;
      }
    }
    List<Effect> effects = new ArrayList<>();
    if (numbers != null) {
      EffectAudit audit = new EffectAudit(looks, setting, numbers);
      for (int i = 0; i < characteristics.size(); i++) {
        effects.add(audit.of(i, moments));
      }
    } else if (categories != null) {
      for (int i = 0; i < characteristics.size(); i++) {
        effects.add(LevelsAudit.of(looks, setting, categories, i));
      }
    }
    return new SettingReport(
        wheel.wheel(),
        setting.name(),
        setting.unit().symbol(),
        setting.profile().group(),
        setting.profile().lagTurns(),
        numbers == null,
        rows - missing,
        missing,
        CharacteristicAudit.known(moments.mean()),
        CharacteristicAudit.known(moments.sd()),
        moments.count() == 0 ? null : CharacteristicAudit.known(moments.minimum()),
        moments.count() == 0 ? null : CharacteristicAudit.known(moments.maximum()),
        setting.labels().size(),
        effects);
  }
}
