package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Effect;
import org.evenpour.audit.AuditReport.SettingReport;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.IntColumn;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.link.Linker;
import org.evenpour.stats.FalseDiscovery;
import org.evenpour.stats.Moments;

/** What is to be told of one recorded setting over the whole log. */
final class SettingAudit {
  /** Values that are taken out of a column at a time. */
  private static final int BLOCK = 8192;

  /** A record of fewer turns proves no effect; a choice. */
  private static final int FEWEST_TURNS = 24;

  private SettingAudit() {}

  /**
   * A wheel and what was found on it.
   *
   * @param linker that knows the wheel's signals
   * @param found of the characteristics, in the wheel's order
   */
  record Wheel(WheelRecord record, Linker linker, List<CharacteristicReport> found) {
    /** Every effect that is asked of this wheel, setting by setting. */
    private IntStream asked() {
      return IntStream.range(0, record.settings().size() * found.size());
    }

    private double chance(int asked) {
      if (linker.turns() < FEWEST_TURNS) {
        return 1;
      }
      Setting setting = record.settings().get(asked / found.size());
      Characteristic characteristic = record.characteristics().get(asked % found.size());
      IntColumn categories = setting.categories();
      return setting.numbers() != null
          ? linker.effect(characteristic, setting).alone().p()
          : categories != null
              ? linker.levels(characteristic, setting, categories).p()
              : Double.NaN;
    }
  }

  /**
   * All settings of all wheels. Whether an effect is proven is asked of each of them and of each
   * characteristic: the chance of any that is none is that of the whole audit.
   */
  static List<SettingReport> of(List<Wheel> wheels) {
    double[] corrected =
        FalseDiscovery.familyWise(
            wheels.stream()
                .flatMapToDouble(
                    wheel -> wheel.asked().parallel().mapToDouble(wheel::chance))
                .toArray());
    List<SettingReport> reports = new ArrayList<>();
    int from = 0;
    for (Wheel wheel : wheels) {
      int begin = from;
      int each = wheel.found().size();
      int settings = wheel.record().settings().size();
      IntStream.range(0, settings)
          .parallel()
          .mapToObj(
              i ->
                  of(
                      wheel,
                      wheel.record().settings().get(i),
                      Arrays.copyOfRange(
                          corrected, begin + i * each, begin + (i + 1) * each)))
          .toList()
          .forEach(reports::add);
      from += settings * each;
    }
    return reports;
  }

  /**
   * @param corrected for each characteristic the chance of such an effect, in the whole audit
   */
  private static SettingReport of(Wheel audited, Setting setting, double[] corrected) {
    WheelRecord wheel = audited.record();
    Linker linker = audited.linker();
    List<CharacteristicReport> characteristics = audited.found();
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
      EffectAudit audit = new EffectAudit(linker, setting, numbers);
      for (int i = 0; i < characteristics.size(); i++) {
        effects.add(audit.of(wheel.characteristics().get(i), characteristics.get(i), moments, corrected[i]));
      }
    } else if (categories != null) {
      for (int i = 0; i < characteristics.size(); i++) {
        effects.add(
            LevelsAudit.of(
                linker,
                setting,
                categories,
                wheel.characteristics().get(i),
                characteristics.get(i),
                corrected[i]));
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
