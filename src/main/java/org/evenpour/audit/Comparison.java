package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.findings.ComparisonReport.Span;
import org.evenpour.findings.ComparisonReport.What;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.Share;
import org.evenpour.stats.Autocorrelation;
import org.evenpour.stats.Difference;
import org.evenpour.stats.FalseDiscovery;
import org.evenpour.stats.Moments;
import org.evenpour.stats.TwoWay;
import org.jspecify.annotations.Nullable;

/**
 * Holds one stretch of a wheel's record against another: by two audits, each of its stretch alone,
 * so that the figures are those that everything else shows of it.
 *
 * <p>Many differences are asked about at once, and some look large by chance. What was asked of one
 * mold beforehand ("did its leveling work?") is corrected for among itself; everything else among
 * itself: the chance that anything of a family is called real where nothing differs is 5 % at most
 * (Holm 1979).
 */
public final class Comparison {
  /** Fewer turns tell nothing of how turns hang together: a choice. */
  private static final int FEWEST_TURNS = 6;

  /** Fewer casts of a mold are not compared: a choice. */
  private static final int FEWEST_CASTS = 5;

  private final Part first;
  private final Part second;
  private final @Nullable String mold;
  private final List<Asked> asked = new ArrayList<>();

  /**
   * A stretch.
   *
   * @param record of one wheel, and of these turns alone
   * @param report its audit
   */
  public record Part(CastingRecord record, AuditReport report) {
    private WheelRecord wheel() {
      return record.wheels().get(0);
    }
  }

  /** What was compared, not yet corrected for all the others. */
  private record Asked(
      What what,
      @Nullable String characteristic,
      @Nullable String mold,
      double before,
      double after,
      Difference difference) {}

  private Comparison(Part first, Part second, @Nullable String mold) {
    this.first = first;
    this.second = second;
    this.mold = mold;
  }

  /**
   * Compares two stretches of the same wheel.
   *
   * @param mold that is asked about; null = none in particular
   */
  public static ComparisonReport of(Part first, Part second, @Nullable String mold) {
    return new Comparison(first, second, mold).report();
  }

  private ComparisonReport report() {
    List<CharacteristicReport> judged =
        first.report().characteristics().stream().filter(Comparison::isItsOwn).toList();
    for (CharacteristicReport one : judged) {
      CharacteristicReport other = like(one);
      if (other != null) {
        level(one, other);
        spread(one.name());
        capability(one, other);
      }
    }
    rejects();
    judged.forEach(one -> offsets(one.name()));
    List<Compared> all = new ArrayList<>(corrected(true));
    all.addAll(corrected(false));
    long molds =
        asked.stream().filter(one -> one.what() == What.OFFSET).map(Asked::mold).distinct().count();
    return new ComparisonReport(
        first.wheel().wheel(), span(first), span(second), mold, all, (int) molds);
  }

  /** Mass against its set-point tells nothing that mass does not, where nobody specified it. */
  private static boolean isItsOwn(CharacteristicReport one) {
    return !one.name().equals(Quantity.MASS_DEVIATION) || one.specification().hasLimits();
  }

  private static Span span(Part part) {
    WheelRecord wheel = part.wheel();
    AuditReport.Log log = part.report().log();
    int last = wheel.rows() - 1;
    return new Span(
        wheel.turn().get(0),
        wheel.turn().get(last),
        log.firstCastAt(),
        log.lastCastAt(),
        log.rowsKept());
  }

  private @Nullable CharacteristicReport like(CharacteristicReport one) {
    return second.report().characteristics().stream()
        .filter(other -> other.name().equals(one.name()))
        .findFirst()
        .orElse(null);
  }

  private void add(
      What what,
      @Nullable String characteristic,
      @Nullable String its,
      double before,
      double after,
      Difference difference) {
    // What cannot be told is no question asked.
    if (Double.isFinite(difference.low()) && Double.isFinite(difference.high())) {
      asked.add(new Asked(what, characteristic, its, before, after, difference));
    }
  }

  /**
   * Means of turn effects, start-up left out. Turns hang together: each mean's error is that of as
   * many independent turns as they are worth (AR(1), φ of both stretches together).
   */
  private void level(CharacteristicReport one, CharacteristicReport other) {
    double[] before = turns(one.wheelChart());
    double[] after = turns(other.wheelChart());
    if (before.length < FEWEST_TURNS || after.length < FEWEST_TURNS) {
      return;
    }
    double phi = memory(before, after);
    Moments a = Moments.of(before);
    Moments b = Moments.of(after);
    double na = Autocorrelation.effectiveSampleSize(before.length, phi);
    double nb = Autocorrelation.effectiveSampleSize(after.length, phi);
    add(
        What.LEVEL,
        one.name(),
        null,
        a.mean(),
        b.mean(),
        Difference.ofMeans(
            a.mean(), a.sd() / Math.sqrt(na), na - 1, b.mean(), b.sd() / Math.sqrt(nb), nb - 1));
  }

  private static double[] turns(@Nullable WheelChart chart) {
    return chart == null
        ? new double[0]
        : chart.points().stream()
            .filter(point -> !point.startUp())
            .mapToDouble(TurnPoint::value)
            .toArray();
  }

  /**
   * Lag-one correlation of the turns of both stretches, by their lengths; a short series shows too
   * little of it, by (1 + 4φ)/n on average where its mean is estimated (Marriott and Pope 1954;
   * Kendall 1954), which is put back. From 0, or turns would count for more than they are, to 0.95.
   */
  static double memory(double[] before, double[] after) {
    double sum = 0;
    double turns = 0;
    for (double[] each : List.of(before, after)) {
      double n = each.length;
      double lag = Autocorrelation.lag1(each);
      if (!Double.isNaN(lag)) {
        sum += n * (lag + (1 + 4 * lag) / n);
        turns += n;
      }
    }
    return turns == 0 ? 0 : Math.min(0.95, Math.max(0, sum / turns));
  }

  /** What is left of each anode when molds and turns are taken out, its freedom allowed for. */
  private void spread(String name) {
    double[] before = leftOver(first.wheel(), name);
    double[] after = leftOver(second.wheel(), name);
    Difference ratio = Difference.ratioOfSpreads(before, after);
    add(What.SPREAD, name, null, Moments.of(before).sd(), Moments.of(after).sd(), ratio);
  }

  private static double[] leftOver(WheelRecord wheel, String name) {
    Characteristic its =
        wheel.characteristics().stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .orElse(null);
    if (its == null) {
      return new double[0];
    }
    TurnIndex turns = TurnIndex.of(wheel);
    double[] value = its.values().toArray();
    for (int i = 0; i < value.length; i++) {
      value[i] = turns.startUp()[i] ? Double.NaN : value[i];
    }
    TwoWay twoWay = TwoWay.fit(turns.ofRow(), turns.mold(), value, value.length);
    if (!twoWay.isDefined() || twoWay.residualDf() < 1) {
      return new double[0];
    }
    double[] ofTurns = twoWay.rowEffects();
    double[] ofMolds = twoWay.columnEffects();
    long count = 0;
    for (int i = 0; i < value.length; i++) {
      value[i] -= twoWay.center() + ofTurns[turns.ofRow()[i]] + ofMolds[turns.mold()[i]];
      count += Double.isNaN(value[i]) ? 0 : 1;
    }
    // Fitted effects take a part of the scatter with them: more of it where molds cast seldom.
    double lost = Math.sqrt((count - 1.0) / twoWay.residualDf());
    for (int i = 0; i < value.length; i++) {
      value[i] *= lost;
    }
    return value;
  }

  private void capability(CharacteristicReport one, CharacteristicReport other) {
    var a = one.overall().capability();
    var b = other.overall().capability();
    Estimate before = a == null ? null : a.ppk();
    Estimate after = b == null ? null : b.ppk();
    if (before != null && after != null) {
      Double low1 = before.low();
      Double high1 = before.high();
      Double low2 = after.low();
      Double high2 = after.high();
      if (low1 != null && high1 != null && low2 != null && high2 != null) {
        add(
            What.CAPABILITY,
            one.name(),
            null,
            before.value(),
            after.value(),
            Difference.ofIntervals(before.value(), low1, high1, after.value(), low2, high2));
      }
    }
  }

  private void rejects() {
    String wheel = first.wheel().wheel();
    RejectReport before = RejectReport.ofWheel(first.report().rejects(), wheel);
    RejectReport after = RejectReport.ofWheel(second.report().rejects(), wheel);
    if (before == null || after == null) {
      return;
    }
    share(null, before.all(), after.all(), dispersion(before, after));
    if (mold != null) {
      RejectReport.OfMold one = before.of(mold);
      RejectReport.OfMold other = after.of(mold);
      if (one != null && other != null) {
        // One cast a turn: what makes whole charges bad is spread over all molds.
        share(mold, one.share(), other.share(), 1);
      }
    }
  }

  /** Charges differ by more than chance, and so do stretches: intervals are as much wider. */
  private static double dispersion(RejectReport before, RejectReport after) {
    Double a = before.dispersion();
    Double b = after.dispersion();
    return Math.max(1, Math.max(a == null ? 1 : a, b == null ? 1 : b));
  }

  private void share(@Nullable String its, Share before, Share after, double wider) {
    if (before.of() == 0 || after.of() == 0) {
      return;
    }
    add(
        What.REJECTED,
        null,
        its,
        before.value(),
        after.value(),
        Difference.ofIntervals(
            before.value(),
            wide(before.value(), before.low(), wider),
            wide(before.value(), before.high(), wider),
            after.value(),
            wide(after.value(), after.low(), wider),
            wide(after.value(), after.high(), wider)));
  }

  private static double wide(double value, double end, double wider) {
    return Math.min(1, Math.max(0, value + (end - value) * wider));
  }

  /** How each mold stands off the others; of a mold that was changed within, the one that it is. */
  private void offsets(String name) {
    for (MoldVerdict one : first.report().verdicts()) {
      MoldVerdict other =
          second.report().verdicts().stream()
              .filter(its -> its.mold().equals(one.mold()))
              .findFirst()
              .orElse(null);
      Standing before = one.standing(name);
      Standing after = other == null ? null : other.standing(name);
      if (before != null
          && after != null
          && before.casts() >= FEWEST_CASTS
          && after.casts() >= FEWEST_CASTS) {
        add(
            What.OFFSET,
            name,
            one.mold(),
            before.offset(),
            after.offset(),
            Difference.ofIntervals(
                before.offset(),
                before.offsetLow(),
                before.offsetHigh(),
                after.offset(),
                after.offsetLow(),
                after.offsetHigh()));
      }
    }
  }

  /** One family of questions, each with what is left of it when all are considered. */
  private List<Compared> corrected(boolean isOfMold) {
    List<Asked> family =
        asked.stream()
            .filter(one -> (mold != null && Objects.equals(one.mold(), mold)) == isOfMold)
            .toList();
    double[] corrected =
        FalseDiscovery.familyWise(
            family.stream().mapToDouble(one -> one.difference().p()).toArray());
    List<Compared> all = new ArrayList<>();
    for (int i = 0; i < corrected.length; i++) {
      Asked one = family.get(i);
      Difference its = one.difference();
      all.add(
          new Compared(
              one.what(),
              one.characteristic(),
              one.mold(),
              one.before(),
              one.after(),
              new Estimate(its.value(), its.low(), its.high()),
              its.p(),
              corrected[i],
              isOfMold));
    }
    return all;
  }
}
