package org.evenpour.audit;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.audit.AuditReport.CapabilityReport;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.AuditReport.Finds;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.audit.AuditReport.Monitoring;
import org.evenpour.audit.AuditReport.Normality;
import org.evenpour.audit.AuditReport.Overall;
import org.evenpour.audit.AuditReport.TurnPoint;
import org.evenpour.audit.AuditReport.Variance;
import org.evenpour.audit.AuditReport.WheelChart;
import org.evenpour.audit.CapabilityInFull.ByPercentiles;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.BaseRecord;
import org.evenpour.control.CharacteristicMonitor;
import org.evenpour.control.ClassicCharts;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.MoldChange;
import org.evenpour.control.Replay;
import org.evenpour.stats.AndersonDarling;
import org.evenpour.stats.Capability;
import org.evenpour.stats.Limits;
import org.evenpour.stats.Moments;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.OneWayAnova;
import org.evenpour.stats.Percentiles;
import org.evenpour.stats.RunTest;
import org.evenpour.stats.RunTests;
import org.evenpour.stats.StudentT;
import org.evenpour.stats.TwoWay;
import org.jspecify.annotations.Nullable;

/**
 * All figures of one characteristic of one wheel, in two passes over its column: the first for
 * means, scatter and limits, the second the replay through the engine.
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

  private final Moments moments = new Moments();
  private final OneWayAnova byMold;
  private final MovingRange[] ranges;
  private final long[] outside;

  private CharacteristicAudit(WheelRecord record, Characteristic characteristic, TurnIndex turns) {
    this.record = record;
    this.characteristic = characteristic;
    this.turns = turns;
    mold = record.mold().toArray();
    value = characteristic.values().toArray();
    molds = record.molds().size();
    byMold = new OneWayAnova(molds);
    ranges = new MovingRange[molds];
    Arrays.setAll(ranges, i -> new MovingRange());
    outside = new long[molds];
  }

  /**
   * What an audit of one characteristic gives.
   *
   * @param limits that were in force; null where turns cannot be told from molds
   */
  record Result(
      CharacteristicReport report, @Nullable LimitsInForce limits, List<Episode> episodes) {}

  /**
   * Audits one characteristic.
   *
   * @param budget how many false alarms each chart of this wheel may raise
   * @param changes when molds were changed or dressed, in the order of time
   */
  static Result of(
      WheelRecord record,
      Characteristic characteristic,
      TurnIndex turns,
      AlarmBudget budget,
      List<MoldChange> changes) {
    return new CharacteristicAudit(record, characteristic, turns).audit(budget, changes);
  }

  private Result audit(AlarmBudget budget, List<MoldChange> changes) {
    Specification specification = characteristic.specification();
    for (int i = 0; i < value.length; i++) {
      double x = value[i];
      if (!Double.isNaN(x)) {
        moments.add(x);
        byMold.add(mold[i], x);
        ranges[mold[i]].add(x);
        if (specification.excludes(x)) {
          outside[mold[i]]++;
        }
      }
    }
    List<Limits> classicLimits = new ArrayList<>();
    for (MovingRange each : ranges) {
      classicLimits.add(each.limits());
    }
    ClassicCharts classic = new ClassicCharts(classicLimits);
    for (int i = 0; i < value.length; i++) {
      classic.accept(mold[i], value[i]);
    }
    LimitsInForce limits = LimitProposal.propose(base(), budget);
    List<TurnPoint> points = new ArrayList<>();
    CharacteristicMonitor monitor = null;
    if (limits != null) {
      monitor =
          new CharacteristicMonitor(
              limits,
              record.profile(),
              (turn, at, effect, anodes, startUp) -> {
                if (!Double.isNaN(effect)) {
                  points.add(
                      new TurnPoint(turn, Instant.ofEpochMilli(at), effect, anodes, startUp));
                }
              });
      Replay.run(record, value, changes, monitor);
    }
    List<Episode> episodes = monitor == null ? List.of() : monitor.episodes();
    TwoWay twoWay = TwoWay.fit(turns.ofRow(), mold, value, value.length);
    Overall overall = overall();
    CharacteristicReport report =
        new CharacteristicReport(
            record.wheel(),
            characteristic.name(),
            characteristic.unit().suffix(),
            characteristic.displayUnit().suffix(),
            specification,
            overall,
            variance(twoWay),
            inFull(overall, twoWay, episodes),
            limits == null || monitor == null
                ? null
                : wheelChart(limits, monitor.wheelTests(), points),
            monitoring(limits),
            moldReports(classicLimits, classic, twoWay));
    return new Result(report, limits, episodes);
  }

  private BaseRecord base() {
    int rows = 0;
    while (rows < value.length && turns.ofRow()[rows] < LimitProposal.BASE_TURNS) {
      rows++;
    }
    int[] turn = new int[rows];
    int[] baseMold = new int[rows];
    int[] side = new int[rows];
    double[] x = new double[rows];
    int n = 0;
    int sides = Math.max(1, record.sides().size());
    for (int i = 0; i < rows; i++) {
      if (!Double.isNaN(value[i]) && !turns.startUp()[i]) {
        turn[n] = turns.ofRow()[i];
        baseMold[n] = mold[i];
        side[n] = Math.max(0, record.side().get(i));
        x[n] = value[i];
        n++;
      }
    }
    return new BaseRecord(
        Arrays.copyOf(turn, n),
        Arrays.copyOf(baseMold, n),
        Arrays.copyOf(side, n),
        Arrays.copyOf(x, n),
        rows == 0 ? 0 : turns.ofRow()[rows - 1] + 1,
        molds,
        sides);
  }

  private Overall overall() {
    AndersonDarling.Result normal = AndersonDarling.normal(value);
    long rangeCount = 0;
    double rangeSum = 0;
    double freedom = 0;
    for (MovingRange each : ranges) {
      if (each.count() > 0 && each.meanRange() > 0) {
        rangeCount += each.count();
        rangeSum += each.meanRange() * each.count();
        freedom += each.degreesOfFreedom();
      }
    }
    double sigmaWithin =
        rangeCount == 0
            ? Double.NaN
            : rangeSum / rangeCount / org.evenpour.stats.ChartConstants.d2(2);
    long out = Arrays.stream(outside).sum();
    return new Overall(
        moments.count(),
        moments.mean(),
        known(moments.sd()),
        moments.minimum(),
        moments.maximum(),
        Double.isNaN(normal.a2()) || Double.isNaN(normal.pValue())
            ? null
            : new Normality(normal.a2(), normal.pValue()),
        capability(moments, sigmaWithin, freedom, out));
  }

  /** A capability holds for the future only while no mold, side or wheel departs. */
  private static boolean isStable(List<Episode> episodes) {
    return episodes.stream().allMatch(e -> e.scope() == Episode.Scope.POUR);
  }

  private CapabilityInFull inFull(Overall overall, TwoWay twoWay, List<Episode> episodes) {
    Specification specification = characteristic.specification();
    List<CapabilityInFull.Part> parts = SpreadParts.of(record, turns, mold, value, twoWay);
    Normality normality = overall.normality();
    Boolean normal = normality == null ? null : (Boolean) (normality.pValue() >= NORMAL_P);
    return new CapabilityInFull(
        isStable(episodes),
        normal,
        Boolean.FALSE.equals(normal) && specification.hasLimits() ? byPercentiles() : null,
        parts,
        SpreadParts.whatIf(parts, moments, twoWay, specification),
        Groups.of(record, mold, value, specification));
  }

  private @Nullable ByPercentiles byPercentiles() {
    Specification specification = characteristic.specification();
    double[] ascending = Arrays.stream(value).filter(x -> !Double.isNaN(x)).sorted().toArray();
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

  private @Nullable CapabilityReport capability(
      Moments moments, double sigmaWithin, double freedom, long out) {
    Specification specification = characteristic.specification();
    if (!specification.hasLimits() || moments.count() == 0) {
      return null;
    }
    Capability c =
        Capability.of(
            moments.count(),
            moments.mean(),
            sigmaWithin,
            freedom,
            moments.sd(),
            specification.lower(),
            specification.target(),
            specification.upper());
    return new CapabilityReport(
        estimate(c.cp()),
        estimate(c.cpk()),
        estimate(c.cpl()),
        estimate(c.cpu()),
        estimate(c.pp()),
        estimate(c.ppk()),
        estimate(c.cpm()),
        known(c.fractionOutsideExpected()),
        (double) out / moments.count());
  }

  static @Nullable Estimate estimate(Capability.@Nullable Estimate e) {
    return e == null ? null : new Estimate(e.value(), known(e.low()), known(e.high()));
  }

  private Variance variance(TwoWay twoWay) {
    OneWayAnova.Result f = byMold.result();
    boolean both = twoWay.isDefined();
    return new Variance(
        known(both ? twoWay.componentColumns() : f.componentBetween()),
        both ? known(twoWay.componentRows()) : null,
        known(both ? twoWay.componentResidual() : f.componentWithin()),
        known(f.f()),
        f.df1() < 1 ? null : (Integer) Math.toIntExact(f.df1()),
        f.df2() < 1 ? null : (Integer) Math.toIntExact(f.df2()),
        known(f.p()));
  }

  private static WheelChart wheelChart(
      LimitsInForce limits, RunTests tests, List<TurnPoint> points) {
    double center = limits.wheel().center();
    double sigma = limits.movingRangeSigma();
    Map<String, Long> counts = new LinkedHashMap<>();
    for (RunTest test : RunTest.values()) {
      counts.put(test.id(), tests.count(test));
    }
    return new WheelChart(
        center,
        center - 3 * sigma,
        center + 3 * sigma,
        sigma,
        counts,
        known(limits.wheel().correlation()),
        List.copyOf(points));
  }

  private Monitoring monitoring(@Nullable LimitsInForce limits) {
    double budget = record.profile().falseAlarmsPerShift();
    return limits == null
        ? new Monitoring(
            "none: turns cannot be told from molds", 0, null, null, null, null, budget, null)
        : new Monitoring(
            limits.source(),
            limits.baseTurns(),
            known(limits.pour().sigma()),
            known(limits.wheel().sigma()),
            known(limits.pour().decision().h()),
            known(limits.pourLimit()),
            budget,
            finds(limits));
  }

  private static Finds finds(LimitsInForce limits) {
    double shift = round(1.5 * limits.pour().sigma());
    return new Finds(shift, limits.pour().turnsToFind(shift), limits.wheel().turnsToFind(shift));
  }

  /** The nearest of 1, 1.5, 2, 3, 5, 7 times a power of ten. */
  private static double round(double x) {
    int exponent = (int) Math.floor(Math.log10(x));
    BigDecimal best = BigDecimal.ONE.scaleByPowerOfTen(exponent);
    for (String digits : new String[] {"1.5", "2", "3", "5", "7", "10"}) {
      BigDecimal each = new BigDecimal(digits).scaleByPowerOfTen(exponent);
      if (Math.abs(Math.log(each.doubleValue() / x)) < Math.abs(Math.log(best.doubleValue() / x))) {
        best = each;
      }
    }
    return best.doubleValue();
  }

  private List<MoldReport> moldReports(List<Limits> limits, ClassicCharts classic, TwoWay twoWay) {
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
      double half =
          t
              * Math.sqrt(
                  twoWay.componentResidual() / moments.count() * (1 - 1.0 / Math.max(2, molds)));
      boolean specified = characteristic.specification().hasLimits();
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
              capability(moments, limits.get(m).sigma(), ranges[m].degreesOfFreedom(), outside[m]),
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
