package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.ClassicCharts;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.MoldChange;
import org.evenpour.control.Replay;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Normality;
import org.evenpour.findings.AuditReport.Overall;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.Variance;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.findings.CapabilityInFull;
import org.evenpour.findings.CapabilityInFull.ByPercentiles;
import org.evenpour.stats.AndersonDarling;
import org.evenpour.stats.Capability;
import org.evenpour.stats.Limits;
import org.evenpour.stats.Moments;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.OneWayAnova;
import org.evenpour.stats.Percentiles;
import org.evenpour.stats.Resemblance;
import org.evenpour.stats.Robust;
import org.evenpour.stats.RunTest;
import org.evenpour.stats.StudentT;
import org.evenpour.stats.TwoWay;
import org.jspecify.annotations.Nullable;

/**
 * All figures of one characteristic of one wheel. Its anodes are judged by a replay through the
 * engine, or were by a feed while they were cast.
 */
final class CharacteristicAudit {
  /** A normal distribution is refused below this p: a choice. */
  private static final double NORMAL_P = 0.05;

  private final WheelRecord record;
  private final Characteristic characteristic;
  private final TurnIndex turns;
  private final int[] mold;
  private final double[] value;
  private final int molds;

  private final Moments moments;
  private final OneWayAnova byMold;
  private final MovingRange[] ranges;
  private final long[] outside;
  private final SpecificationHistory specifications;
  private final boolean isSpecifiedOnce;

  private CharacteristicAudit(
      WheelRecord record, Characteristic characteristic, TurnIndex turns, LimitsBook book) {
    this.record = record;
    this.characteristic = characteristic;
    this.turns = turns;
    mold = turns.mold();
    value = characteristic.values().toArray();
    molds = record.molds().size();
    specifications = new SpecificationHistory(record, characteristic, book);
    // Where one specification held for all, its sums are those of the whole record: no anode enters
    // the same sum twice.
    isSpecifiedOnce = specifications.isOne();
    moments = isSpecifiedOnce ? specifications.all() : new Moments();
    ranges = isSpecifiedOnce ? specifications.ranges() : new MovingRange[molds];
    outside = isSpecifiedOnce ? specifications.outside() : new long[molds];
    if (!isSpecifiedOnce) {
      Arrays.setAll(ranges, i -> new MovingRange());
    }
    byMold =
        new OneWayAnova(Arrays.stream(ranges).map(MovingRange::values).toArray(Moments[]::new));
  }

  /**
   * What an audit of one characteristic gives.
   *
   * @param limits that the newest turns were judged by; null where turns cannot be told from molds
   * @param terms from when on what is in force
   */
  record Result(
      CharacteristicReport report,
      @Nullable LimitsInForce limits,
      List<Term> terms,
      List<Episode> episodes) {}

  /**
   * Before its first pass.
   *
   * @param book what was approved and specified
   */
  static CharacteristicAudit of(
      WheelRecord record, Characteristic characteristic, TurnIndex turns, LimitsBook book) {
    return new CharacteristicAudit(record, characteristic, turns, book);
  }

  /** What it is called. */
  String name() {
    return characteristic.name();
  }

  /**
   * By what it is judged.
   *
   * @param budget how many false alarms each chart of this wheel may raise
   * @param book what was approved
   */
  List<Term> terms(AlarmBudget budget, LimitsBook book) {
    return Terms.of(record, characteristic.name(), value, turns, budget, book);
  }

  /**
   * Judges every anode.
   *
   * @param changes when molds were changed or dressed, in the order of time
   */
  Replayed replay(List<Term> terms, List<MoldChange> changes) {
    List<TurnPoint> points = new ArrayList<>();
    SuccessiveMonitor monitor =
        new SuccessiveMonitor(
            terms,
            record.profile(),
            record.molds(),
            record.sides(),
            record.serials(),
            Replayed.gathering(points));
    Replay.run(record, value, changes, monitor);
    return Replayed.of(monitor, points);
  }

  /**
   * All figures.
   *
   * @param terms by which it was judged
   * @param replayed what came of that
   * @param book what was approved
   */
  Result result(List<Term> terms, Replayed replayed, LimitsBook book) {
    for (int i = 0; i < value.length; i++) {
      double x = value[i];
      if (!Double.isNaN(x)) {
        boolean isOutside = specifications.accept(record.castAtMillis().get(i), mold[i], x);
        if (!isSpecifiedOnce) {
          moments.add(x);
          ranges[mold[i]].add(x);
          outside[mold[i]] += isOutside ? 1 : 0;
        }
      }
    }
    List<Limits> classicLimits = new ArrayList<>();
    for (MovingRange each : ranges) {
      classicLimits.add(each.limits());
    }
    // A second pass: their limits are of the whole record, as handbooks have it.
    ClassicCharts classic = new ClassicCharts(classicLimits);
    for (int i = 0; i < value.length; i++) {
      classic.accept(mold[i], value[i]);
    }
    Term newest = Judgement.newest(replayed.judged());
    LimitsInForce limits = newest == null ? null : newest.limits();
    TwoWay twoWay = TwoWay.fit(turns.ofRow(), mold, value, value.length);
    double[] its = specifications.values(record, value);
    // Of the newest specification's anodes alone, as capability and its intervals are.
    TwoWay itsTwoWay = its == value ? twoWay : TwoWay.fit(turns.ofRow(), mold, its, its.length);
    Resemblance resemblance = Resemblance.of(itsTwoWay, turns.ofRow(), mold, its);
    double[] ascending = Robust.ascending(value);
    Overall overall = overall(ascending, resemblance, itsTwoWay.rowsUsed());
    CharacteristicReport report =
        new CharacteristicReport(
            record.wheel(),
            characteristic.name(),
            characteristic.unit().suffix(),
            characteristic.displayUnit().suffix(),
            specifications.newest(),
            overall,
            variance(twoWay),
            inFull(overall, ascending, its, itsTwoWay, resemblance, replayed.episodes()),
            limits == null ? null : wheelChart(limits, replayed),
            Judgement.monitoring(
                terms,
                Terms.notLookedFor(terms, record, characteristic.name(), value, turns, book),
                replayed.judged(),
                record.profile().falseAlarmsPerShift()),
            moldReports(classicLimits, classic, twoWay, resemblance),
            specifications.used());
    return new Result(report, limits, terms, replayed.episodes());
  }

  private Overall overall(double[] ascending, Resemblance resemblance, int itsTurns) {
    AndersonDarling.Result normal = AndersonDarling.normalSorted(ascending);
    return new Overall(
        moments.count(),
        moments.mean(),
        known(moments.sd()),
        moments.minimum(),
        moments.maximum(),
        Double.isNaN(normal.a2()) || Double.isNaN(normal.pValue())
            ? null
            : new Normality(normal.a2(), normal.pValue()),
        specifications.capability(resemblance, itsTurns));
  }

  /** A capability holds for the future only while no mold, side or wheel departs. */
  private static boolean isStable(List<Episode> episodes) {
    return episodes.stream().allMatch(e -> e.chart() == Episode.Chart.POUR);
  }

  private CapabilityInFull inFull(
      Overall overall,
      double[] ascending,
      double[] its,
      TwoWay itsTwoWay,
      Resemblance resemblance,
      List<Episode> episodes) {
    Specification specification = specifications.newest();
    List<CapabilityInFull.Part> parts = SpreadParts.of(record, turns, mold, its, itsTwoWay);
    Normality normality = overall.normality();
    Boolean normal = normality == null ? null : (Boolean) (normality.pValue() >= NORMAL_P);
    return new CapabilityInFull(
        isStable(episodes),
        normal,
        Boolean.FALSE.equals(normal) && specification.hasLimits()
            ? byPercentiles(its == value ? ascending : Robust.ascending(its))
            : null,
        parts,
        SpreadParts.whatIf(parts, specifications.all(), itsTwoWay, specification),
        Groups.of(record, turns, mold, its, specification, resemblance));
  }

  private @Nullable ByPercentiles byPercentiles(double[] ascending) {
    Specification specification = specifications.newest();
    Percentiles of = Percentiles.of(ascending);
    if (of == null) {
      return null;
    }
    Double lower = specification.lower();
    Double upper = specification.upper();
    return new ByPercentiles(
        of.low(),
        of.median(),
        of.high(),
        lower == null || upper == null
            ? null
            : estimate(of.pp(lower, upper), Percentiles.ppInterval(lower, upper, ascending, 0.95)),
        estimate(of.ppk(lower, upper), Percentiles.ppkInterval(lower, upper, ascending, 0.95)));
  }

  private static @Nullable Estimate estimate(double value, Percentiles.Interval interval) {
    return Double.isFinite(value) ? new Estimate(value, interval.low(), interval.high()) : null;
  }

  static @Nullable Estimate estimate(Capability.@Nullable Estimate e) {
    return e == null ? null : new Estimate(e.value(), known(e.low()), known(e.high()));
  }

  private Variance variance(TwoWay twoWay) {
    OneWayAnova.Result f = byMold.result();
    boolean both = twoWay.isDefined();
    return new Variance(
        // Where turns and molds never meet, the one-way analysis still tells molds from pours.
        known(both ? twoWay.componentColumns() : f.componentBetween()),
        both ? known(twoWay.componentRows()) : null,
        known(both ? twoWay.componentResidual() : f.componentWithin()),
        known(f.f()),
        f.df1() < 1 ? null : (Integer) Math.toIntExact(f.df1()),
        f.df2() < 1 ? null : (Integer) Math.toIntExact(f.df2()),
        known(f.p()));
  }

  private static WheelChart wheelChart(LimitsInForce limits, Replayed replayed) {
    double center = limits.wheel().center();
    double sigma = limits.movingRangeSigma();
    return new WheelChart(
        center,
        center - 3 * sigma,
        center + 3 * sigma,
        sigma,
        replayed.counts(),
        known(limits.wheel().correlation()),
        replayed.turns());
  }

  private List<MoldReport> moldReports(
      List<Limits> limits, ClassicCharts classic, TwoWay twoWay, Resemblance resemblance) {
    boolean both = twoWay.isDefined();
    double t = both ? StudentT.quantile(0.975, (double) twoWay.residualDf()) : Double.NaN;
    double[] effects = twoWay.columnEffects();
    List<MoldReport> reports = new ArrayList<>();
    for (int m = 0; m < molds; m++) {
      Moments moments = byMold.group(m);
      if (moments.count() == 0) {
        continue;
      }
      Map<String, Long> counts = new LinkedHashMap<>();
      for (RunTest test : RunTest.values()) {
        counts.put(test.id(), classic.count(m, test));
      }
      double offset = both ? effects[m] : Double.NaN;
      // A mold is a part of the mean that it is held against: 1 − 1/M of the variance.
      double half =
          t
              * Math.sqrt(
                  twoWay.componentResidual() / moments.count() * (1 - 1.0 / Math.max(2, molds)));
      boolean specified = specifications.hasLimits();
      reports.add(
          new MoldReport(
              record.molds().name(m),
              moments.count(),
              moments.mean(),
              known(moments.sd()),
              known(limits.get(m).sigma()),
              moments.mean(),
              known(limits.get(m).lower()),
              known(limits.get(m).upper()),
              counts,
              specifications.capability(m, resemblance),
              known(offset),
              known(offset - half),
              known(offset + half),
              specified ? (Long) outside[m] : null));
    }
    reports.sort((a, b) -> MoldOrder.compare(a.mold(), b.mold()));
    return reports;
  }

  static @Nullable Double known(double x) {
    return Double.isFinite(x) ? (Double) x : null;
  }
}
