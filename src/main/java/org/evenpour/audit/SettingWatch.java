package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.BaseRecord;
import org.evenpour.control.CharacteristicMonitor;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.MoldChange;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.findings.SettingsWatched.Gap;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.findings.SettingsWatched.Reason;
import org.evenpour.findings.SettingsWatched.Watched;
import org.jspecify.annotations.Nullable;

/**
 * Watches the recorded numeric settings of one wheel over its newest turns, with the engine that
 * watches the characteristics: limits are proposed from these turns, and each anode goes through
 * them.
 *
 * <p>Only lasting moves count: of single molds, of a ladle side, of the wheel. What the record
 * shows to have no usual level is not watched, and why is told.
 */
final class SettingWatch {
  /**
   * A series more like itself from turn to turn has hardly a level that it could leave: at a tenth
   * of a false alarm in five shifts, a move of three times its scatter takes some sixty turns to be
   * found, and the anodes show it long before. A choice.
   */
  private static final double MOST_CORRELATION = 0.8;

  /** The same by a quick look, which a move in the record makes larger: a choice. */
  private static final double PLAINLY = 0.9;

  /**
   * What all molds have in common is told of where it stands off so many times its scatter over the
   * whole record: where it has often been by itself is no news. A choice.
   */
  private static final double LEAST_SCATTERS = 2;

  /** Above what its limits know by this factor, a series has a longer memory: a choice. */
  private static final double LONGER = 1.25;

  /** What moves more often than once in so many turns does so by habit: a choice. */
  private static final int RESTLESS_TURNS = 80;

  /** And more often than this in all: a choice. */
  private static final int RESTLESS_MOVES = 3;

  private final WheelRecord wheel;
  private final TurnIndex turns;
  private final List<MoldChange> changes;
  private final @Nullable Audited by;
  private final boolean hasView;
  private final int fromRow;
  private final int watchedTurns;

  private SettingWatch(
      WheelRecord wheel,
      TurnIndex turns,
      List<MoldChange> changes,
      @Nullable Audited by,
      boolean hasView) {
    this.by = by;
    this.hasView = hasView;
    this.wheel = wheel;
    this.turns = turns;
    this.changes = changes;
    fromRow = SettingSeries.fromRow(turns);
    watchedTurns = Math.min(turns.turns(), LimitProposal.BASE_TURNS);
  }

  /** Whether a wheel's settings take their share of the false alarms. */
  static boolean takesShare(WheelRecord wheel) {
    return wheel.profile().settingsAlarmShare() > 0
        && wheel.settings().stream().anyMatch(setting -> setting.numbers() != null);
  }

  /**
   * What is watched, what moved, and by which limits.
   *
   * @param limits that were proposed, or in force
   */
  record Result(SettingsWatched watched, List<Audited.OfSetting> limits) {
    /** The same with the signals that tell of each move, and with the wheel's second view. */
    Result toldBy(WheelRecord wheel, List<Signal> signals, BeyondSettings beyond, Advice advice) {
      return new Result(
          new SettingsWatched(
              watched.settings(),
              SettingMoves.told(wheel, watched.moves(), signals, advice),
              beyond),
          limits);
    }
  }

  /**
   * Watches; no signal tells of any move yet.
   *
   * @param changes of molds, in the order of time
   * @param by whose limits are in force; null = they are proposed from these turns
   * @param hasView whether the wheel's second view takes its part of the settings' share
   */
  static Result of(
      WheelRecord wheel,
      TurnIndex turns,
      List<MoldChange> changes,
      @Nullable Audited by,
      boolean hasView) {
    return new SettingWatch(wheel, turns, changes, by, hasView).watch();
  }

  private Result watch() {
    List<SettingSeries> all = new ArrayList<>();
    for (Setting setting : wheel.settings()) {
      DoubleColumn numbers = setting.numbers();
      if (numbers != null && isWatched(setting)) {
        all.add(SettingSeries.of(wheel, turns, fromRow, setting, numbers));
      }
    }
    // Counted before anything is charted: what turns out to wander leaves its part unused,
    // which is cautious.
    int count = (int) all.stream().filter(one -> one.reason() == null).count();
    List<Watched> watched = new ArrayList<>();
    List<Move> moves = new ArrayList<>();
    List<Audited.OfSetting> limits = new ArrayList<>();
    // In the list's order, whichever thread ends first.
    all.parallelStream()
        .map(one -> watch(one, count))
        .toList()
        .forEach(
            one -> {
              watched.add(one.watched());
              moves.addAll(one.moves());
              limits.addAll(one.limits());
            });
    moves.sort(Comparator.comparing(Move::sinceAt));
    return new Result(new SettingsWatched(watched, moves, BeyondSettings.NONE), limits);
  }

  /** Where limits are in force, those settings alone that have any. */
  private boolean isWatched(Setting setting) {
    Audited its = by;
    return its == null
        || its.settings().stream()
            .anyMatch(
                one -> one.wheel().equals(wheel.wheel()) && one.setting().equals(setting.name()));
  }

  private record Outcome(Watched watched, List<Move> moves, List<Audited.OfSetting> limits) {}

  private Outcome watch(SettingSeries series, int settings) {
    Setting setting = series.setting();
    Reason reason = wheel.profile().settingsAlarmShare() > 0 ? series.reason() : Reason.NO_SHARE;
    List<Scope> scopes = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    List<Move> moves = new ArrayList<>();
    List<Audited.OfSetting> limits = new ArrayList<>();
    if (reason == null) {
      double[] own = series.molds();
      AlarmBudget budget =
          AlarmBudget.ofSetting(
              wheel.profile(),
              own == null ? 0 : wheel.molds().size(),
              wheel.sides().size(),
              settings,
              hasView,
              turns.turnMinutes());
      List<Charted> charted = new ArrayList<>();
      if (own != null) {
        charted.add(charted(series, true, List.of(Scope.MOLD), budget, gaps));
      }
      if (gaps.isEmpty()) {
        charted.add(
            charted(
                series,
                false,
                own != null || series.bySide()
                    ? List.of(Scope.SIDE, Scope.WHEEL)
                    : List.of(Scope.WHEEL),
                budget,
                gaps));
      } else {
        // What molds have no level in, their means have none in either.
        gaps.add(new Gap(Scope.WHEEL, Reason.WANDERS));
      }
      for (Charted each : charted) {
        if (each.limits() != null) {
          limits.add(each.limits());
        }
        for (Scope scope : each.scopes()) {
          List<Move> its = SettingMoves.of(wheel, setting, scope, each.of(scope));
          if (isRestless(its)) {
            gaps.add(new Gap(scope, Reason.RESTLESS));
          } else {
            scopes.add(scope);
            moves.addAll(its);
          }
        }
      }
      reason = scopes.isEmpty() && gaps.isEmpty() ? Reason.FEW : null;
    }
    if (reason != null) {
      gaps.add(new Gap(null, reason));
    }
    int first = wheel.rows() == 0 ? 0 : wheel.turn().get(fromRow);
    return new Outcome(
        new Watched(wheel.wheel(), setting.name(), scopes, gaps, first), moves, limits);
  }

  /**
   * What the engine made of one series.
   *
   * @param limits that it was judged by; null where it was not
   * @param scopes that can be watched
   */
  private record Charted(
      Audited.@Nullable OfSetting limits, List<Scope> scopes, List<Episode> episodes) {
    static final Charted NOTHING = new Charted(null, List.of(), List.of());

    /** Lasting moves; a single value, or how much values scatter, is nobody's warning. */
    List<Episode> of(Scope scope) {
      return episodes.stream().filter(one -> one.chart() == engines(scope)).toList();
    }
  }

  private static Episode.Chart engines(Scope scope) {
    return switch (scope) {
      case MOLD, POUR -> Episode.Chart.MOLD;
      case SIDE -> Episode.Chart.SIDE;
      case WHEEL -> Episode.Chart.WHEEL;
    };
  }

  /**
   * Judges one series, by the limits in force or by limits that it proposes itself.
   *
   * @param ofMolds whether the molds' own values; else what all molds have in common
   * @param asked scopes that the values may show
   * @param gaps takes those that cannot be watched
   */
  private Charted charted(
      SettingSeries series,
      boolean ofMolds,
      List<Scope> asked,
      AlarmBudget budget,
      List<Gap> gaps) {
    double[] own = series.molds();
    double[] value = ofMolds && own != null ? own : series.shared();
    SettingMemory memory = new SettingMemory(wheel, turns, fromRow, value, series.shared());
    Audited.OfSetting known =
        by == null
            ? proposed(series.setting(), ofMolds, value, steady(asked, memory, gaps), budget)
            : inForce(series.setting(), ofMolds, by);
    if (known == null) {
      return Charted.NOTHING;
    }
    LimitsInForce limits = known.limits();
    List<Scope> steady = known.scopes();
    Charted all = new Charted(known, steady, episodes(value, ofMolds, limits));
    List<Scope> scopes = new ArrayList<>();
    List<Episode> far = new ArrayList<>();
    for (Scope scope : steady) {
      // Without the moves that were found: a real step looks like wander.
      double grows = memory.growth(scope, all.of(scope));
      boolean wanders =
          limits(limits, scope).stream()
              .anyMatch(
                  one ->
                      one.correlation() > MOST_CORRELATION
                          || grows > LONGER * SettingMemory.growth(one.correlation(), one.noise()));
      // Where moves leave nothing to compare, they are how the setting is.
      if (wanders || (Double.isNaN(grows) && all.of(scope).size() > 1)) {
        gaps.add(new Gap(scope, Reason.WANDERS));
        continue;
      }
      scopes.add(scope);
      double least = scope == Scope.MOLD ? 0 : LEAST_SCATTERS * memory.scatter(scope);
      all.of(scope).stream().filter(one -> Math.abs(one.size()) >= least).forEach(far::add);
    }
    return new Charted(known, scopes, far);
  }

  /** What is not plain to see to wander: limits of a long memory take long to compute. */
  private List<Scope> steady(List<Scope> asked, SettingMemory memory, List<Gap> gaps) {
    List<Scope> steady = new ArrayList<>();
    for (Scope scope : asked) {
      if (scope == Scope.SIDE && wheel.sides().size() < 2) {
        continue;
      }
      if (memory.correlation(scope) > PLAINLY) {
        gaps.add(new Gap(scope, Reason.WANDERS));
      } else {
        steady.add(scope);
      }
    }
    return steady;
  }

  private Audited.@Nullable OfSetting proposed(
      Setting setting, boolean ofMolds, double[] value, List<Scope> scopes, AlarmBudget budget) {
    LimitsInForce limits =
        scopes.isEmpty()
            ? null
            : LimitProposal.propose(
                base(value),
                budget.hearing(
                    scopes.contains(Scope.MOLD),
                    scopes.contains(Scope.SIDE),
                    scopes.contains(Scope.WHEEL)));
    return limits == null
        ? null
        // Its own turns are judged by it, about whose middle levels stand.
        : new Audited.OfSetting(
            wheel.wheel(), setting.name(), ofMolds, scopes, limits.withoutWear());
  }

  private Audited.@Nullable OfSetting inForce(Setting setting, boolean ofMolds, Audited its) {
    return its.settings().stream()
        .filter(one -> one.isOf(wheel.wheel(), setting.name(), ofMolds))
        .findFirst()
        .orElse(null);
  }

  private static List<SeriesLimits> limits(LimitsInForce limits, Scope scope) {
    return switch (scope) {
      case MOLD, POUR -> List.of(limits.pour());
      case SIDE -> limits.sides();
      case WHEEL -> List.of(limits.wheel());
    };
  }

  private BaseRecord base(double[] of) {
    int n = 0;
    int rows = of.length;
    int[] turn = new int[rows];
    int[] mold = new int[rows];
    int[] side = new int[rows];
    double[] value = new double[rows];
    int first = turns.ofRow()[fromRow];
    for (int i = 0; i < rows; i++) {
      int row = fromRow + i;
      if (!Double.isNaN(of[i]) && !turns.startUp()[row]) {
        turn[n] = turns.ofRow()[row] - first;
        mold[n] = wheel.mold().get(row);
        side[n] = Math.max(0, wheel.side().get(row));
        value[n++] = of[i];
      }
    }
    return new BaseRecord(
        Arrays.copyOf(turn, n),
        Arrays.copyOf(mold, n),
        Arrays.copyOf(side, n),
        Arrays.copyOf(value, n),
        watchedTurns,
        wheel.molds().size(),
        Math.max(1, wheel.sides().size()));
  }

  private List<Episode> episodes(double[] value, boolean knowsMolds, LimitsInForce limits) {
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(
            limits, wheel.profile(), (turn, at, effect, anodes, startUp) -> {});
    int next = 0;
    for (int i = 0; i < value.length; i++) {
      int row = fromRow + i;
      long at = wheel.castAtMillis().get(row);
      while (next < changes.size() && changes.get(next).atMillis() <= at) {
        // What all molds have alike knows no molds.
        if (knowsMolds && i > 0) {
          monitor.moldChanged(changes.get(next).mold());
        }
        next++;
      }
      monitor.accept(
          at,
          wheel.turn().get(row),
          wheel.mold().get(row),
          wheel.side().get(row),
          knowsMolds ? wheel.serial().get(row) : -1,
          value[i]);
    }
    monitor.finish();
    return monitor.episodes();
  }

  private boolean isRestless(List<Move> moves) {
    // Both, for a few moves in a short record are no habit yet.
    return moves.size() > RESTLESS_MOVES && moves.size() * RESTLESS_TURNS > watchedTurns;
  }
}
