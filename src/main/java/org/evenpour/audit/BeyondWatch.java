package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.audit.LeftOver.Acting;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.control.TurnSeries;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.Taken;
import org.evenpour.findings.BeyondSettings.View;
import org.evenpour.findings.EffectInFull;
import org.jspecify.annotations.Nullable;

/** Charts what the proven effects of settings leave of the turns of one wheel. */
final class BeyondWatch {
  /**
   * So many times as clear as on the plain chart a lasting shift must stand, or the view only says
   * the same again: a choice.
   */
  private static final double CLEARER = 1.1;

  /** A setting that is known in fewer of the turns is not taken off: a choice. */
  private static final double OFTEN = 0.8;

  /** An approved base makes effects and limits if so many of its turns are there: a choice. */
  private static final int BASE_TURNS = 60;

  /** Turns on either side of a signal that may be part of it: an onset is an estimate. */
  private static final int MARGIN = 4;

  private final WheelRecord wheel;
  private final TurnIndex index;
  private final WheelTurns turns;

  BeyondWatch(WheelRecord wheel, TurnIndex index) {
    this.wheel = wheel;
    this.index = index;
    turns = new WheelTurns(wheel, index);
  }

  /**
   * Views of those characteristics that have any, judged, with nothing said yet of what tells of
   * their departures already.
   *
   * @param found of the wheel's characteristics
   * @param settings of the wheel, with their effects
   * @param signals of the wheel
   * @param limits of the audit
   */
  List<Audited.OfView> of(
      List<CharacteristicReport> found,
      List<SettingReport> settings,
      List<Signal> signals,
      List<Audited.InForce> limits) {
    if (!SettingWatch.takesShare(wheel)) {
      return List.of();
    }
    double rate = AlarmBudget.beyondSettings(wheel.profile(), found.size(), index.turnMinutes());
    return found.parallelStream()
        .flatMap(
            one ->
                limits.stream()
                    .filter(its -> its.isOf(wheel.wheel(), one.name()))
                    .map(its -> of(one, settings, signals, its, rate))
                    .flatMap(Stream::ofNullable))
        .toList();
  }

  private Audited.@Nullable OfView of(
      CharacteristicReport found,
      List<SettingReport> settings,
      List<Signal> signals,
      Audited.InForce inForce,
      double rate) {
    LimitsInForce plain = inForce.limits();
    AuditReport.WheelChart chart = found.wheelChart();
    if (plain == null || chart == null) {
      return null;
    }
    double[] y = turns.effects(chart.points());
    List<Acting> acting = new ArrayList<>();
    for (String name : proven(found.name(), settings)) {
      Acting its = acting(name);
      if (its != null && isOften(y, its.x())) {
        acting.add(its);
      }
    }
    double noise =
        // Pours that hang together from turn to turn do so in their mean: the rest is white.
        square(plain.pour().sigma()) * (1 - plain.pour().correlation()) / wheel.molds().size();
    LeftOver left =
        LeftOver.of(y, acting, base(y, inForce), within(found.name(), signals), noise, rate);
    if (left == null) {
      return null;
    }
    SeriesLimits its = left.limits();
    // gain/σ is what a lasting shift by one unit leaves in each charted innovation.
    double clearer = its.gain() / its.sigma() * plain.wheel().sigma() / plain.wheel().gain();
    // So written, NaN makes no view.
    if (!(clearer >= CLEARER)) {
      return null;
    }
    View view =
        new View(
            wheel.wheel(),
            found.name(),
            left.taken(),
            turns.number()[0],
            left.baseTurns(),
            its.sigma(),
            its.correlation(),
            clearer,
            List.of());
    return new Audited.OfView(judged(view, its, y), its);
  }

  /** Settings whose effect is proven and a straight line, the surest first. */
  private static List<String> proven(String characteristic, List<SettingReport> settings) {
    record Sure(String name, double ratio) {}
    List<Sure> sure = new ArrayList<>();
    for (SettingReport setting : settings) {
      for (AuditReport.Effect effect : setting.effects()) {
        Double perUnit = effect.perUnit();
        Double low = effect.low();
        EffectInFull.Line line = effect.inFull().line();
        if (effect.characteristic().equals(characteristic)
            && effect.inFull().known() == EffectInFull.Known.PROVEN
            && perUnit != null
            && low != null
            && (line == null || !line.isBent())) {
          sure.add(new Sure(setting.name(), Math.abs(perUnit) / (perUnit - low)));
        }
      }
    }
    sure.sort(Comparator.comparingDouble(Sure::ratio).reversed());
    return sure.stream().map(Sure::name).toList();
  }

  /** Where a setting stood as it acts, by turn; null where the wheel has no such numbers. */
  private @Nullable Acting acting(String name) {
    for (Setting setting : wheel.settings()) {
      DoubleColumn numbers = setting.numbers();
      if (setting.name().equals(name) && numbers != null) {
        return new Acting(name, turns.setting(numbers, setting.profile().lagTurns()));
      }
    }
    return null;
  }

  private static boolean isOften(double[] y, double[] x) {
    int known = 0;
    int all = 0;
    for (int t = 0; t < y.length; t++) {
      all += Double.isNaN(y[t]) ? 0 : 1;
      // A turn without the setting has no point, so that the view would look away.
      known += Double.isNaN(y[t] + x[t]) ? 0 : 1;
    }
    return known >= OFTEN * all;
  }

  /** The turns of the approved base, where enough of them are here; else all. */
  private boolean[] base(double[] y, Audited.InForce inForce) {
    boolean[] all = new boolean[y.length];
    Arrays.fill(all, true);
    LimitsVersion version = newestVersion(inForce);
    if (version == null) {
      return all;
    }
    boolean[] some = new boolean[y.length];
    int known = 0;
    for (int t = 0; t < y.length; t++) {
      Instant at = Instant.ofEpochMilli(turns.atMillis()[t]);
      some[t] =
          !at.isBefore(version.base().firstCastAt()) && !at.isAfter(version.base().lastCastAt());
      known += some[t] && !Double.isNaN(y[t]) ? 1 : 0;
    }
    // A base that has aged out of the newest turns tells too little of the effects.
    return known >= BASE_TURNS ? some : all;
  }

  /** The version that the newest turns were judged by; null where nobody approved any. */
  private static @Nullable LimitsVersion newestVersion(Audited.InForce inForce) {
    for (Term term : inForce.terms()) {
      if (term.limits() != null && term.limits().equals(inForce.limits())) {
        return term.version();
      }
    }
    return null;
  }

  /** Turns within signals of the wheel or a ladle side. */
  private boolean[] within(String characteristic, List<Signal> signals) {
    boolean[] within = new boolean[turns.number().length];
    for (Signal signal : signals) {
      if (BeyondTold.isOfWheel(signal) && signal.characteristic().equals(characteristic)) {
        for (int t = 0; t < within.length; t++) {
          within[t] |=
              turns.number()[t] >= signal.sinceTurn() - MARGIN
                  && turns.number()[t] <= signal.lastTurn() + MARGIN;
        }
      }
    }
    return within;
  }

  /**
   * The same views of a record that went on, by the effects and limits that they have.
   *
   * @param views of any wheels
   * @param found of this wheel's characteristics
   */
  List<Audited.OfView> again(List<Audited.OfView> views, List<CharacteristicReport> found) {
    return views.parallelStream()
        .filter(one -> one.view().wheel().equals(wheel.wheel()))
        .map(
            one ->
                new Audited.OfView(
                    judged(
                        one.view(),
                        one.limits(),
                        turns.effects(points(one.view().characteristic(), found))),
                    one.limits()))
        .toList();
  }

  private static List<TurnPoint> points(String name, List<CharacteristicReport> found) {
    for (CharacteristicReport one : found) {
      AuditReport.WheelChart chart = one.wheelChart();
      if (one.name().equals(name) && chart != null) {
        return chart.points();
      }
    }
    return List.of();
  }

  private View judged(View view, SeriesLimits limits, double[] y) {
    List<Taken> taken = view.settings();
    List<Acting> acting = new ArrayList<>();
    for (Taken each : taken) {
      Acting its = acting(each.setting());
      if (its == null) {
        return view.with(List.of());
      }
      acting.add(its);
    }
    double[] left = LeftOver.left(y, taken, acting);
    double[] spread = new double[y.length];
    double[] off = new double[taken.size()];
    for (int t = 0; t < y.length; t++) {
      for (int j = 0; j < off.length; j++) {
        off[j] = acting.get(j).x()[t] - taken.get(j).mean();
      }
      // Errors of effects are no part of the turn's own: they add in squares.
      spread[t] = Math.hypot(1, LeftOver.effectError(taken, off) / limits.sigma());
    }
    List<Departure> departures = new ArrayList<>();
    for (Episode one :
        TurnSeries.episodes(limits, turns.number(), turns.atMillis(), left, spread)) {
      double error =
          Math.hypot(one.sizeError(), LeftOver.effectError(taken, meanOff(one, taken, acting)));
      double half = LeftOver.Z * error;
      // What the effects' own errors may make of a setting that stands far off is no departure.
      if (Math.abs(one.size()) > half) {
        departures.add(departure(view, one, half));
      }
    }
    return view.with(departures);
  }

  /** How far the settings stood off while an episode lasted. */
  private double[] meanOff(Episode episode, List<Taken> taken, List<Acting> acting) {
    double[] off = new double[taken.size()];
    for (int j = 0; j < off.length; j++) {
      double[] x = acting.get(j).x();
      double sum = 0;
      int n = 0;
      for (int t = 0; t < x.length; t++) {
        long at = turns.atMillis()[t];
        boolean isWithin = at >= episode.sinceAtMillis() && at <= episode.lastAtMillis();
        if (isWithin && !Double.isNaN(x[t])) {
          sum += x[t] - taken.get(j).mean();
          n++;
        }
      }
      off[j] = n == 0 ? 0 : sum / n;
    }
    return off;
  }

  private Departure departure(View view, Episode one, double half) {
    return new Departure(
        wheel.wheel(),
        view.characteristic(),
        view.settings().stream().map(Taken::setting).toList(),
        one.direction() > 0 ? Direction.HIGH : Direction.LOW,
        one.firstTurn(),
        one.lastTurn(),
        one.sinceTurn(),
        Instant.ofEpochMilli(one.sinceAtMillis()),
        Instant.ofEpochMilli(one.lastAtMillis()),
        one.open(),
        one.size(),
        one.size() - half,
        one.size() + half,
        one.sizeSigma(),
        List.of(),
        true,
        null);
  }

  private static double square(double x) {
    return x * x;
  }
}
