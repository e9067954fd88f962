package org.evenpour.audit;

import java.util.List;
import java.util.Set;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.column.DoubleColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.findings.EffectInFull.Line;
import org.evenpour.findings.EffectInFull.Trial;
import org.evenpour.findings.EffectInFull.Window;
import org.evenpour.link.EffectSize;
import org.evenpour.link.LineCheck;
import org.evenpour.link.Linker;
import org.evenpour.link.TurnNoise;
import org.evenpour.stats.Moments;
import org.evenpour.stats.Normal;
import org.evenpour.stats.PairedTrial;
import org.evenpour.stats.Percentiles;
import org.jspecify.annotations.Nullable;

/** What one setting does to the characteristics of a wheel, with all that stands beside it. */
final class EffectAudit {
  /** A charge's oxygen and temperature and the hall's weather are nobody's to set turn by turn. */
  private static final Set<String> NOT_UP_FOR_TRIAL = Set.of("melt", "hall");

  private static final double Z = Normal.quantile(0.975);

  /** A difference of the mean below this part of the characteristic's s.d. is next to nothing. */
  static final double WORTH_KNOWING = 1.0 / 3;

  /** So many s.d. of everything else are kept clear of a limit. */
  private static final double CLEAR = 2;

  private static final double BENT = 0.01;

  /** What is left over may be as correlated as this without doing harm; chance allows for more. */
  private static final double HARMLESS = 0.1;

  private static final double POWER = 0.9;
  private static final int MOST_TURNS = 300;
  private static final double INNER_FROM = 0.1;
  private static final double INNER_TO = 0.9;
  private static final int FEWEST_DIFFERENCES = 12;

  private final Looks looks;
  private final Linker linker;
  private final Setting setting;
  private final DoubleColumn numbers;
  private final double[] recent;
  private final double innerLow;
  private final double innerHigh;

  /**
   * @param numbers of the setting
   */
  EffectAudit(Looks looks, Setting setting, DoubleColumn numbers) {
    this.looks = looks;
    this.linker = looks.linker();
    this.setting = setting;
    this.numbers = numbers;
    recent = linker.recent(numbers);
    innerLow = recent.length == 0 ? Double.NaN : Percentiles.at(INNER_FROM, recent);
    innerHigh = recent.length == 0 ? Double.NaN : Percentiles.at(INNER_TO, recent);
  }

  /**
   * The effect on one characteristic.
   *
   * @param index of the characteristic
   * @param moved the setting's own moments
   */
  Effect of(int index, Moments moved) {
    Characteristic characteristic = looks.asked().record().characteristics().get(index);
    CharacteristicReport found = looks.asked().found().get(index);
    EffectSize effect = linker.effect(characteristic, setting).alone();
    Double sd = found.overall().sd();
    if (!effect.isKnown() || recent.length == 0 || sd == null || !(sd > 0) || !(moved.sd() > 0)) {
      return new Effect(characteristic.name(), null, null, null);
    }
    double half = Z * effect.error();
    double low = effect.perUnit() - half;
    double high = effect.perUnit() + half;
    double worth = WORTH_KNOWING * sd;
    double inner = innerHigh - innerLow;
    boolean isProven = looks.isProven(setting, index);
    // The far end of the interval: what cannot be ruled out is not next to nothing.
    boolean isSmall = Math.max(-low, high) * inner < worth;
    Known known = isProven ? Known.PROVEN : isSmall ? Known.SMALL : Known.OPEN;
    Estimate share = share(effect, low, high, moved.sd() / sd);
    return new Effect(
        characteristic.name(),
        effect.perUnit(),
        low,
        high,
        new EffectInFull(
            known,
            share,
            isProven
                ? window(
                    found,
                    characteristic.values(),
                    low,
                    high,
                    moved.mean(),
                    CLEAR * sd * Math.sqrt(1 - share.value()))
                : null,
            line(linker.line(characteristic, setting)),
            known == Known.OPEN && !NOT_UP_FOR_TRIAL.contains(setting.profile().group())
                ? trial(characteristic, worth, inner)
                : null,
            null,
            known == Known.OPEN ? looks.together(setting, index) : List.of()));
  }

  /** (effect · s.d. of the setting / s.d. of the characteristic)², less what chance adds to it. */
  private static Estimate share(EffectSize effect, double low, double high, double ratio) {
    // The square of an estimate is too large by its variance, on average.
    double square = effect.perUnit() * effect.perUnit() - effect.error() * effect.error();
    double nearer = low > 0 || high < 0 ? Math.min(Math.abs(low), Math.abs(high)) : 0;
    double farther = Math.max(Math.abs(low), Math.abs(high));
    return new Estimate(
        part(Math.max(0, square) * ratio * ratio),
        part(nearer * nearer * ratio * ratio),
        part(farther * farther * ratio * ratio));
  }

  private static double part(double share) {
    return Math.min(1, share);
  }

  /**
   * Whatever the effect is within its interval, the mean stays {@link #CLEAR} s.d. of everything
   * else within the limits.
   */
  private @Nullable Window window(
      CharacteristicReport found,
      DoubleColumn values,
      double low,
      double high,
      double settingMean,
      double rest) {
    Double lower = found.specification().lower();
    Double upper = found.specification().upper();
    if (lower == null && upper == null) {
      return null;
    }
    double mean = found.overall().mean();
    double least = lower == null ? Double.NEGATIVE_INFINITY : lower + rest - mean;
    double most = upper == null ? Double.POSITIVE_INFINITY : upper - rest - mean;
    if (least > most) {
      return new Window(null, null, null);
    }
    // Never beyond what was recorded: how the line goes on there nobody knows.
    double from = recent[0];
    double to = recent[recent.length - 1];
    // The two ends are enough: of one sign, 1/effect runs one way between them.
    for (double perUnit : new double[] {low, high}) {
      double one = settingMean + least / perUnit;
      double other = settingMean + most / perUnit;
      from = Math.max(from, Math.min(one, other));
      to = Math.min(to, Math.max(one, other));
    }
    return from <= to
        ? WindowHeld.of(
            looks.asked().record(),
            values,
            found.specification(),
            numbers,
            from,
            to,
            setting.profile().lagTurns(),
            recent,
            looks.count())
        : new Window(null, null, null);
  }

  private static @Nullable Line line(@Nullable LineCheck check) {
    if (check == null) {
      return null;
    }
    // The lag-1 correlation of n independent values errs by 1/√n.
    double chance = Z / Math.sqrt(check.rows());
    return new Line(
        check.curvature(),
        check.lagOne(),
        check.curvature() < BENT,
        Math.abs(check.lagOne()) > Math.max(HARMLESS, chance));
  }

  /**
   * Two levels in turn, for as many pairs as find a difference worth knowing. Neither the levels
   * nor the change from one to the other, as quick as it is, lie outside what was recorded.
   */
  private @Nullable Trial trial(Characteristic characteristic, double worth, double inner) {
    int quickest = inner > 0 ? linker.quickest(setting, numbers, inner, MOST_TURNS / 4) : 0;
    // Long enough to get there and to act, for the last turn of each level is what counts.
    int hold = quickest + setting.profile().lagTurns();
    // Of turns as far apart as the levels will be: what wanders meanwhile is in it.
    TurnNoise noise = linker.noise(characteristic, Math.max(1, hold));
    if (quickest == 0 || noise.pairs() < FEWEST_DIFFERENCES || !(noise.sd() > 0)) {
      return null;
    }
    int pairs = PairedTrial.fewest(worth / noise.sd(), POWER, MOST_TURNS / (2 * hold));
    if (pairs == 0) {
      return null;
    }
    return new Trial(
        innerLow,
        innerHigh,
        hold,
        2 * pairs * hold,
        worth,
        PairedTrial.power(pairs, worth / noise.sd()));
  }
}
