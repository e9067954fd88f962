package org.evenpour.live;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.evenpour.audit.Replayed;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.MoldOrder;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.control.Episode;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.MoldChange;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.jspecify.annotations.Nullable;

/**
 * Watches one wheel: hands each anode to the engine's monitor of each characteristic and keeps the
 * last turns. Owned by the engine's thread; until it is handed to that, by the thread that makes
 * it.
 */
final class WheelWatch {
  /** Limits that were proposed from so many turns stay in force. */
  static final int ENOUGH_TURNS = 250;

  /** So many turns are kept for the board. */
  static final int TURNS = 12;

  private static final List<Term> NONE_IN_FORCE = List.of(new Term(Long.MIN_VALUE, null, null));

  private final String wheel;
  private final LimitsBook book;
  private final List<String> characteristics;
  private final List<SuccessiveMonitor> monitors = new ArrayList<>();
  private final List<Boolean> hasTerms = new ArrayList<>();
  private boolean hasMore;
  private final List<List<TurnPoint>> turnPoints = new ArrayList<>();
  private final List<MoldChange> changes;
  private int nextChange;

  private final Deque<WheelNow.Turn> closed = new ArrayDeque<>();
  private final List<Anode> open = new ArrayList<>();
  private int rows;
  private int turns;
  private int turnsAtStart;
  private int lastMold = -1;
  private long stepsUp;
  private long stepsDown;

  /** Judges nothing, and shows the anodes as they come: there are no limits. */
  static WheelWatch unjudging(WheelRecord record, LimitsBook book) {
    return new WheelWatch(record, name -> NONE_IN_FORCE, List.of(), book);
  }

  /**
   * Watches by limits.
   *
   * @param record of the wheel; none of its rows is watched yet
   * @param terms by characteristic, what is in force
   * @param changes of molds, in the order of time
   * @param book tells the specification of the time
   */
  WheelWatch(
      WheelRecord record,
      Function<String, List<Term>> terms,
      List<MoldChange> changes,
      LimitsBook book) {
    this.book = book;
    wheel = record.wheel();
    characteristics = record.characteristics().stream().map(Characteristic::name).toList();
    this.changes = changes;
    for (String name : characteristics) {
      List<TurnPoint> points = new ArrayList<>();
      turnPoints.add(points);
      List<Term> its = terms.apply(name);
      hasTerms.add(!its.isEmpty());
      monitors.add(
          new SuccessiveMonitor(
              its.isEmpty() ? NONE_IN_FORCE : its,
              record.profile(),
              record.molds(),
              record.sides(),
              record.serials(),
              Replayed.gathering(points)));
    }
  }

  /** Whether this watches all that the record judges. */
  boolean fits(WheelRecord record) {
    return characteristics.equals(
        record.characteristics().stream().map(Characteristic::name).toList());
  }

  /**
   * Takes in the next anode.
   *
   * @param record of the wheel as it stands now
   * @return whether it is the first of a turn, and so the turn before it was closed
   */
  boolean accept(Anode anode, WheelRecord record) {
    rows++;
    while (nextChange < changes.size()
        && changes.get(nextChange).atMillis() <= anode.castAtMillis()) {
      MoldChange change = changes.get(nextChange++);
      for (SuccessiveMonitor monitor : monitors) {
        monitor.moldChanged(change);
      }
    }
    boolean first = open.isEmpty() || open.get(0).turn() != anode.turn();
    for (int i = 0; i < monitors.size(); i++) {
      // The first value of a characteristic that was empty when limits were proposed.
      hasMore |= !hasTerms.get(i) && !Double.isNaN(anode.values()[i]);
      monitors.get(i).labels(record.molds(), record.sides(), record.serials());
      monitors
          .get(i)
          .accept(
              anode.castAtMillis(),
              anode.turn(),
              anode.mold(),
              anode.side(),
              anode.serial(),
              anode.values()[i]);
    }
    if (first) {
      close();
      turns++;
    }
    open.add(anode);
    step(anode.mold(), record.molds().names());
    return first;
  }

  /**
   * Takes in what it has not seen yet of its wheel's record.
   *
   * @return whether a turn was closed
   */
  boolean catchUp(WheelRecord record) {
    boolean closes = false;
    while (rows < record.rows()) {
      closes |= accept(record.anode(rows), record);
    }
    return closes;
  }

  /** How many anodes it has judged. */
  int rows() {
    return rows;
  }

  private void close() {
    if (!open.isEmpty()) {
      int turn = open.get(0).turn();
      List<Double> its = new ArrayList<>();
      for (List<TurnPoint> points : turnPoints) {
        its.add(mean(points, open.get(0)));
      }
      closed.addLast(new WheelNow.Turn(turn, open, its));
      if (closed.size() >= TURNS) {
        closed.removeFirst();
      }
      open.clear();
    }
  }

  /** The effect of the turn that an anode began; NaN where it is not known. */
  private static double mean(List<TurnPoint> points, Anode first) {
    if (points.isEmpty()) {
      return Double.NaN;
    }
    TurnPoint last = points.get(points.size() - 1);
    boolean isIts = last.turn() == first.turn() && last.at().toEpochMilli() == first.castAtMillis();
    return isIts ? last.value() : Double.NaN;
  }

  private void step(int mold, List<String> labels) {
    if (lastMold >= 0) {
      int order = MoldOrder.compare(labels.get(mold), labels.get(lastMold));
      stepsUp += order > 0 ? 1 : 0;
      stepsDown += order < 0 ? 1 : 0;
    }
    lastMold = mold;
  }

  /** The limits were proposed from what has been watched so far. */
  void begin() {
    turnsAtStart = turns;
  }

  /** The limits are those of another watch of the same wheel; null where there was none. */
  void beginLike(@Nullable WheelWatch before) {
    turnsAtStart = before == null ? turns : before.turnsAtStart;
  }

  /** Whether better limits can be had: of a longer record, or of more that is measured. */
  boolean isDue() {
    if (hasMore) {
      return true;
    }
    return monitors.stream().anyMatch(one -> one.version() == null)
        && turnsAtStart < ENOUGH_TURNS
        && turns > Math.max(LimitProposal.LEAST_TURNS, 2 * turnsAtStart);
  }

  /** What the monitors made of each characteristic so far, by its name. */
  Map<String, Replayed> replayed() {
    Map<String, Replayed> all = new LinkedHashMap<>();
    for (int i = 0; i < monitors.size(); i++) {
      all.put(characteristics.get(i), Replayed.of(monitors.get(i), turnPoints.get(i)));
    }
    return all;
  }

  /** The episodes of each characteristic, as the closed turns show them. */
  List<List<Episode>> episodes() {
    return monitors.stream().map(SuccessiveMonitor::episodes).toList();
  }

  /** The wheel as it stands. */
  WheelNow now(WheelRecord record) {
    List<String> labels = List.copyOf(record.molds().names());
    List<WheelNow.Judged> judged = new ArrayList<>();
    for (int i = 0; i < characteristics.size(); i++) {
      judged.add(judged(record.characteristics().get(i), i, labels.size()));
    }
    List<WheelNow.Turn> last = new ArrayList<>(closed);
    last.add(new WheelNow.Turn(open.get(0).turn(), open, unknown(characteristics.size())));
    return new WheelNow(
        wheel,
        record.profile(),
        labels,
        inOrder(labels),
        open.get(open.size() - 1),
        label(record, "charge"),
        label(record, "crew"),
        judged,
        last,
        turns);
  }

  private static List<Double> unknown(int count) {
    List<Double> none = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      none.add(Double.NaN);
    }
    return none;
  }

  private WheelNow.Judged judged(Characteristic characteristic, int i, int molds) {
    SuccessiveMonitor monitor = monitors.get(i);
    LimitsInForce its = monitor.limits();
    List<@Nullable Double> departures = new ArrayList<>();
    List<@Nullable Double> usual = new ArrayList<>();
    for (int mold = 0; mold < molds; mold++) {
      departures.add(known(monitor.departure(mold)));
      usual.add(known(monitor.usual(mold)));
    }
    return new WheelNow.Judged(
        characteristic.name(),
        characteristic.unit(),
        characteristic.displayUnit(),
        book.specification(
            wheel,
            characteristic.name(),
            characteristic.specification(),
            Instant.ofEpochMilli(open.get(open.size() - 1).castAtMillis())),
        its == null ? null : limits(its),
        departures,
        usual,
        its == null ? null : (Double) its.pour().sigma());
  }

  private static @Nullable Double known(double x) {
    return Double.isNaN(x) ? null : (Double) x;
  }

  private static WheelNow.TurnLimits limits(LimitsInForce its) {
    double center = its.wheel().center();
    double reach = 3 * its.movingRangeSigma();
    return new WheelNow.TurnLimits(center - reach, center, center + reach, its.baseTurns());
  }

  /** As people count them, backwards where the wheel pours them backwards. */
  private List<Integer> inOrder(List<String> labels) {
    List<Integer> order = new ArrayList<>();
    for (int mold = 0; mold < labels.size(); mold++) {
      order.add(mold);
    }
    int way = stepsDown > stepsUp ? -1 : 1;
    order.sort((a, b) -> way * MoldOrder.compare(labels.get(a), labels.get(b)));
    return order;
  }

  private static String label(WheelRecord record, String setting) {
    for (Setting one : record.settings()) {
      IntColumn categories = one.categories();
      if (one.name().equals(setting) && categories != null) {
        int index = categories.get(record.rows() - 1);
        return index < 0 ? "" : one.labels().name(index);
      }
    }
    return "";
  }
}
