package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Direction;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Answer;
import org.evenpour.findings.SetPointReport.Ordinary;
import org.evenpour.findings.SetPointReport.Point;
import org.evenpour.findings.SetPointReport.Replay;
import org.evenpour.stats.BoundedAdjustment;
import org.evenpour.stats.DriftingLevel;
import org.evenpour.stats.Funnel;
import org.jspecify.annotations.Nullable;

/**
 * Whether to adjust each ladle side or to leave it alone: an EWMA forecast of the side's level with
 * a deadband whose width weighs a move against being off target (Box and Jenkins 1963).
 *
 * <p>Every anode counts by its distance from the set-point of its own pour, which takes past moves
 * out of the record; the distance of today's set-point from the aim is then added. The aim is the
 * profile's target where today's set-point lies within the specification; without a target it is
 * the set-point, if that was never moved. Otherwise the aim is not known: a set-point that trims
 * can't be told from one that follows an order.
 */
final class SetPointAudit {
  /** Fewer turns say nothing of how a level wanders: a choice. */
  static final int LEAST_TURNS = 20;

  /** A level that stands still is watched by an EWMA of this weight: a choice. */
  private static final double STILL_WEIGHT = 0.1;

  /** It is moved when it is this many s.d. of that EWMA off: the usual three. */
  private static final double STILL_SIGMAS = 3;

  /** And when the move pays within so many turns, a charge or so: a choice. */
  private static final double PAYS_WITHIN_TURNS = 20;

  /** What people set: half kilograms, or whole pounds. Common practice, no source. */
  private static final double STEP_KG = 0.5;

  private static final double POUND_KG = 0.45359237;
  private static final double Z95 = 1.959963984540054;

  /** Advice rests on no more than the newest turns: how a side wandered last year says little. */
  static final int LATEST = 2000;

  private final WheelRecord wheel;
  private final TurnIndex index;
  private final Characteristic mass;
  private final List<Signal> signals;
  private final List<CastingEvent> events;
  private final int side;

  private SetPointAudit(
      WheelRecord wheel,
      TurnIndex index,
      Characteristic mass,
      List<Signal> signals,
      List<CastingEvent> events,
      int side) {
    this.wheel = wheel;
    this.index = index;
    this.mass = mass;
    this.signals = signals;
    this.events = events;
    this.side = side;
  }

  /** One for each side, by name; one alone where the log names none; none without masses. */
  static List<SetPointReport> of(
      WheelRecord wheel, TurnIndex index, List<Signal> signals, List<CastingEvent> events) {
    Characteristic mass =
        wheel.characteristics().stream()
            .filter(one -> one.name().equals(Quantity.MASS))
            .findFirst()
            .orElse(null);
    if (mass == null) {
      return List.of();
    }
    List<Integer> sides = new ArrayList<>();
    for (int side = 0; side < wheel.sides().size(); side++) {
      sides.add(side);
    }
    sides.sort((a, b) -> MoldOrder.compare(wheel.sides().name(a), wheel.sides().name(b)));
    if (sides.isEmpty()) {
      sides.add(-1);
    }
    return sides.stream()
        .map(side -> new SetPointAudit(wheel, index, mass, signals, events, side).report())
        .toList();
  }

  private @Nullable String sideName() {
    return side < 0 ? null : wheel.sides().name(side);
  }

  private SetPointReport report() {
    double[] setPoint = setPoints();
    int moves = 0;
    double last = Double.NaN;
    for (double each : setPoint) {
      moves += !Double.isNaN(each) && !Double.isNaN(last) && each != last ? 1 : 0;
      last = Double.isNaN(each) ? last : each;
    }
    Double now = Double.isNaN(last) ? null : (Double) last;
    Double aim = aim(now, moves);
    double origin = aim == null ? Double.NaN : now == null ? aim : aim - now;
    int[] turn = new int[wheel.rows()];
    int[] mold = new int[wheel.rows()];
    double[] deviation = new double[wheel.rows()];
    int[] firstRow = new int[index.turns()];
    Arrays.fill(firstRow, -1);
    int n = 0;
    for (int i = firstRow(index.turns() - LATEST); i < wheel.rows() && aim != null; i++) {
      double x = mass.values().get(i) - (now == null ? 0 : setPoint[i]) - origin;
      // Without start-up, so that a stop neither moves the forecast nor counts as time.
      if (isHere(i) && !index.startUp()[i] && !Double.isNaN(x)) {
        turn[n] = index.ofRow()[i];
        mold[n] = wheel.mold().get(i);
        deviation[n] = x;
        n++;
        if (firstRow[index.ofRow()[i]] < 0) {
          firstRow[index.ofRow()[i]] = i;
        }
      }
    }
    double[] ofTurns =
        SideLevels.of(
            Arrays.copyOf(turn, n),
            Arrays.copyOf(mold, n),
            Arrays.copyOf(deviation, n),
            index.turns(),
            wheel.molds().size());
    int[] rows = new int[ofTurns.length];
    double[] level = new double[ofTurns.length];
    int turns = 0;
    for (int t = 0; t < ofTurns.length; t++) {
      if (!Double.isNaN(ofTurns[t])) {
        rows[turns] = firstRow[t];
        level[turns++] = ofTurns[t];
      }
    }
    return report(aim, now, moves, Arrays.copyOf(level, turns), rows);
  }

  /** The first row of a turn, counted from 0, or of a later one. */
  private int firstRow(int turn) {
    int low = 0;
    int high = wheel.rows();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (index.ofRow()[middle] < turn) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private boolean isHere(int row) {
    return side < 0 || wheel.side().get(row) == side;
  }

  /** The set-point in force at each row of this side; NaN elsewhere, and where none is known. */
  private double[] setPoints() {
    double[] all = new double[wheel.rows()];
    Arrays.fill(all, Double.NaN);
    DoubleColumn recorded = wheel.setPoint();
    double last = Double.NaN;
    for (int i = 0; recorded != null && i < Math.min(all.length, recorded.size()); i++) {
      if (isHere(i)) {
        // What is not written down again still holds.
        last = Double.isNaN(recorded.get(i)) ? last : recorded.get(i);
        all[i] = last;
      }
    }
    return all;
  }

  private @Nullable Double aim(@Nullable Double setPoint, int moves) {
    Specification specification = mass.specification();
    Double target = specification.target();
    if (target == null) {
      return moves == 0 ? setPoint : null;
    }
    return setPoint == null || !specification.excludes(setPoint) ? target : null;
  }

  private SetPointReport report(
      @Nullable Double aim, @Nullable Double setPoint, int moves, double[] level, int[] rows) {
    double costs = wheel.profile().setPointMoveCosts();
    DriftingLevel drift = DriftingLevel.of(level);
    if (aim == null || level.length < LEAST_TURNS || Double.isNaN(drift.lambda())) {
      return new SetPointReport(
          wheel.wheel(),
          sideName(),
          mass.displayUnit().suffix(),
          aim,
          setPoint,
          moves,
          level.length,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          costs,
          aim == null ? Answer.NO_AIM : Answer.TOO_SHORT,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          List.of());
    }
    Rule rule = Rule.of(drift, costs);
    double half = Z95 * drift.levelSigma(level.length);
    Replay alone = replay(Funnel.leaveAlone(level));
    Replay banded = replay(Funnel.deadband(level, rule.weight, rule.deadband));
    double moveBy = rounded(-drift.forecast());
    // A move that rounds to nothing would be advised again after every turn.
    boolean isInside = Math.abs(drift.forecast()) < rule.deadband || moveBy == 0;
    String own = open(Scope.SIDE, Quantity.MASS);
    String ofWheel = own == null ? open(Scope.WHEEL, Quantity.MASS) : own;
    // Anodes of one side alone that are thick or thin: its scale may be off, whatever it reads.
    String first = ofWheel == null ? open(Scope.SIDE, Quantity.THICKNESS) : ofWheel;
    Answer answer;
    if (own != null) {
      // Inside the deadband too: what is weighed wrong may well look right.
      answer = Answer.WEIGH_FIRST;
    } else if (isInside) {
      answer = Answer.LEAVE;
    } else if (banded.rms() > alone.rms()) {
      // What hangs together within a charge looks like wandering: the replay tells.
      answer = Answer.NO_GAIN;
    } else if (isJustChecked(rows, level.length)) {
      answer = Answer.JUST_CHECKED;
    } else {
      answer = first == null ? Answer.MOVE : Answer.LOOK_FIRST;
    }
    double[] followed = Funnel.deviations(level, rule.weight, rule.deadband);
    double[] compensated = Funnel.deviations(level, 1, 0);
    double[] forecast = drift.forecasts(level);
    List<Point> points = new ArrayList<>();
    for (int t = 0; t < level.length; t++) {
      points.add(
          new Point(
              wheel.turn().get(rows[t]),
              Instant.ofEpochMilli(wheel.castAtMillis().get(rows[t])),
              level[t],
              forecast[t],
              followed[t],
              compensated[t]));
    }
    return new SetPointReport(
        wheel.wheel(),
        sideName(),
        mass.displayUnit().suffix(),
        aim,
        setPoint,
        moves,
        level.length,
        drift.lambda(),
        drift.low(),
        drift.high(),
        drift.sigma(),
        drift.forecast(),
        drift.forecast() - half,
        drift.forecast() + half,
        rule.deadband,
        costs,
        answer,
        // No kilograms while a cause may be found that they would only hide.
        answer == Answer.MOVE ? (Double) moveBy : null,
        rule.interval,
        answer == Answer.LOOK_FIRST || answer == Answer.WEIGH_FIRST ? first : null,
        alone,
        banded,
        replay(Funnel.compensateAlways(level)),
        ordinary(level, rows, rule),
        points);
  }

  /**
   * When to move.
   *
   * @param weight of the newest turn, in the replay
   * @param deadband in kg
   * @param interval turns between moves; null where the level stands still
   */
  private record Rule(double weight, double deadband, @Nullable Double interval) {
    static Rule of(DriftingLevel drift, double costs) {
      double step = drift.lambda() * drift.sigma();
      BoundedAdjustment cheapest =
          drift.wanders() ? BoundedAdjustment.cheapest(1, costs, step) : null;
      if (cheapest != null) {
        return new Rule(drift.lambda(), cheapest.limit(step), cheapest.interval());
      }
      // √(λ/(2 − λ)) is the s.d. of an EWMA of independent values, over theirs.
      double beyondChance =
          STILL_SIGMAS * drift.sigma() * Math.sqrt(STILL_WEIGHT / (2 - STILL_WEIGHT));
      // Off by d costs d² a turn: in n turns a move pays that costs less than n·d².
      double pays = Math.sqrt(costs / PAYS_WITHIN_TURNS);
      return new Rule(STILL_WEIGHT, Math.max(beyondChance, pays), null);
    }
  }

  private static Replay replay(Funnel funnel) {
    return new Replay(
        Math.sqrt(funnel.meanSquare()), funnel.mean(), funnel.sd(), funnel.adjustments());
  }

  private double rounded(double move) {
    double step = mass.displayUnit().suffix().equals("lb") ? POUND_KG : STEP_KG;
    // By its size: Math.round takes halves up, and moves down must round as moves up.
    double steps = (double) Math.round(Math.abs(move) / step);
    return steps == 0 ? 0 : Math.copySign(steps * step, move);
  }

  /** Whether a signal tells of the level of this side's mass or thickness, or of the wheel's. */
  private boolean isOf(String quantity, Signal signal, Scope scope) {
    return signal.scope() == scope
        && (scope == Scope.WHEEL || (signal.side() != null && signal.side().equals(sideName())))
        && signal.wheel().equals(wheel.wheel())
        && signal.characteristic().startsWith(quantity)
        && signal.direction() != Direction.SPREAD;
  }

  /** The open signal of this side, or the whole wheel's that something goes with; null if none. */
  private @Nullable String open(Scope scope, String quantity) {
    return signals.stream()
        .filter(signal -> signal.open() && isOf(quantity, signal, scope))
        .filter(
            signal ->
                scope == Scope.SIDE
                    || signal.links().stream().anyMatch(link -> link.evidence() != Evidence.NONE))
        .map(Signal::id)
        .findFirst()
        .orElse(null);
  }

  /** Whether a scale was checked since so few turns that the level is still what it read before. */
  private boolean isJustChecked(int[] rows, int turns) {
    long since = wheel.castAtMillis().get(rows[Math.max(0, turns - LEAST_TURNS)]);
    // Events may go on where the record ends.
    long last = wheel.castAtMillis().get(wheel.rows() - 1);
    return events.stream()
        .filter(event -> event.kind().equals(EventKind.SCALE_CHECKED))
        .mapToLong(event -> event.at().toEpochMilli())
        .anyMatch(at -> at > since && at <= last);
  }

  /** The rules on turns that no signal of this side's or the wheel's mass covers. */
  private @Nullable Ordinary ordinary(double[] level, int[] rows, Rule rule) {
    List<Signal> named =
        signals.stream()
            .filter(
                one ->
                    isOf(Quantity.MASS, one, Scope.SIDE) || isOf(Quantity.MASS, one, Scope.WHEEL))
            .toList();
    boolean[] covered = new boolean[level.length];
    List<String> told = new ArrayList<>();
    for (Signal signal : named) {
      boolean isAny = false;
      for (int t = 0; t < level.length; t++) {
        long at = wheel.castAtMillis().get(rows[t]);
        boolean isIn =
            at >= signal.sinceAt().toEpochMilli()
                && (signal.open() || at <= signal.lastCastAt().toEpochMilli());
        covered[t] |= isIn;
        isAny |= isIn;
      }
      if (isAny) {
        told.add(signal.id());
      }
    }
    double[] kept = new double[level.length];
    int n = 0;
    for (int t = 0; t < level.length; t++) {
      if (!covered[t]) {
        kept[n++] = level[t];
      }
    }
    if (n == level.length || n < LEAST_TURNS) {
      return null;
    }
    double[] ordinary = Arrays.copyOf(kept, n);
    return new Ordinary(
        n,
        told,
        replay(Funnel.leaveAlone(ordinary)),
        replay(Funnel.deadband(ordinary, rule.weight, rule.deadband)),
        replay(Funnel.compensateAlways(ordinary)));
  }
}
