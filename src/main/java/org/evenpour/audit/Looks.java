package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.link.EffectSize;
import org.evenpour.link.Linker;
import org.evenpour.stats.FalseDiscovery;

/**
 * What can be said of the effects of one wheel, corrected for how many the whole audit asks of:
 * every setting and every characteristic, of every wheel.
 *
 * @param asked the wheel and what was found on it
 * @param corrected by setting, then characteristic: the chance of such an effect, in the whole
 *     audit; NaN = not known
 * @param count how many effects are asked of; infinite where the record is too short to prove any
 */
@SuppressWarnings("ArrayRecordComponent") // lives within one audit
record Looks(Wheel asked, double[] corrected, double count) {
  /** A record of fewer turns proves no effect; a choice. */
  private static final int FEWEST_TURNS = 24;

  /**
   * So often, of audits of records in which nothing acts, one may say that something does: half of
   * one in twenty, for what wanders as slowly as its errors do has errors that are known less well
   * than is allowed for.
   */
  private static final double BEYOND_CHANCE = 0.025;

  /** Of categories: one of them are people; a choice. */
  private static final double LEVELS_BEYOND_CHANCE = 0.01;

  /**
   * A wheel and what was found on it.
   *
   * @param linker that knows the wheel's signals
   * @param found of the characteristics, in the wheel's order
   */
  record Wheel(WheelRecord record, Linker linker, List<CharacteristicReport> found) {
    private double[] chances() {
      int each = found.size();
      return IntStream.range(0, record.settings().size() * each)
          .parallel()
          .mapToDouble(
              i -> chance(record.settings().get(i / each), record.characteristics().get(i % each)))
          .toArray();
    }

    private double chance(Setting setting, Characteristic characteristic) {
      IntColumn categories = setting.categories();
      if (isShort()) {
        return 1;
      }
      return setting.numbers() != null
          ? linker.effect(characteristic, setting).alone().p()
          : categories != null
              ? linker.levels(characteristic, setting, categories).p()
              : Double.NaN;
    }

    private boolean isShort() {
      return linker.turns() < FEWEST_TURNS;
    }
  }

  /** For each wheel of an audit. */
  static List<Looks> of(List<Wheel> wheels) {
    double[] corrected =
        // All wheels together: the promise is of the whole audit, not of each table in it.
        FalseDiscovery.familyWise(
            wheels.stream().flatMapToDouble(one -> Arrays.stream(one.chances())).toArray());
    long asked = Arrays.stream(corrected).filter(one -> !Double.isNaN(one)).count();
    List<Looks> looks = new ArrayList<>();
    int from = 0;
    for (Wheel wheel : wheels) {
      int to = from + wheel.record().settings().size() * wheel.found().size();
      double count = wheel.isShort() ? Double.POSITIVE_INFINITY : asked;
      looks.add(new Looks(wheel, Arrays.copyOfRange(corrected, from, to), count));
      from = to;
    }
    return looks;
  }

  Linker linker() {
    return asked.linker();
  }

  /** Whether the effect on one of the wheel's characteristics is there beyond chance. */
  boolean isProven(Setting setting, int characteristic) {
    int at = asked.record().settings().indexOf(setting);
    double chance = corrected[at * asked.found().size() + characteristic];
    return chance < (setting.numbers() == null ? LEVELS_BEYOND_CHANCE : BEYOND_CHANCE);
  }

  /**
   * With which settings one moves together so that one of them acts, and the record cannot tell
   * which; empty where it can, or where they move each by itself.
   */
  List<String> together(Setting setting, int characteristic) {
    EffectSize pair = pair(setting, characteristic);
    List<Setting> both =
        asked.record().settings().stream()
            .filter(one -> one == setting || pair.togetherWith().contains(one.name()))
            .toList();
    boolean isTold = both.stream().anyMatch(one -> isProven(one, characteristic));
    // The pair acts where either of them does, standing alone: both are then named.
    double p =
        both.stream()
            .map(one -> one == setting ? pair : pair(one, characteristic))
            .filter(one -> one == pair || one.togetherWith().contains(setting.name()))
            .mapToDouble(EffectSize::p)
            .min()
            .orElse(1);
    // By Bonferroni: pairs were no part of what Holm's steps went down.
    return !isTold && p * count < BEYOND_CHANCE ? pair.togetherWith() : List.of();
  }

  private EffectSize pair(Setting setting, int characteristic) {
    return linker().effect(asked.record().characteristics().get(characteristic), setting).pair();
  }
}
