package org.evenpour.control;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.WheelProfile;
import org.evenpour.column.Labels;
import org.evenpour.stats.RunTest;
import org.jspecify.annotations.Nullable;

/**
 * Watches one characteristic of one wheel while its limits succeed one another: each stretch by a
 * {@link CharacteristicMonitor} of its own.
 *
 * <p>A turn is judged as a whole by what was in force when its first anode was cast. Where another
 * version comes into force all charts restart, and an episode under way ends there. Start-up goes
 * on across it. Molds and sides are known to a version by their labels. A mold that was changed
 * after a version's base period, by an event or by its serial, begins that version on trial; one
 * that was not in the base period learns its own level.
 *
 * <p>Owned by one thread.
 */
public final class SuccessiveMonitor {
  private final List<Term> terms;
  private Labels molds;
  private Labels sides;
  private Labels serials;
  private final StartUp startUp;
  private final CharacteristicMonitor.TurnListener listener;
  private final Map<Integer, Long> changedAtMillis = new HashMap<>();
  private final List<Stint> stints = new ArrayList<>();

  private int term = -1;
  private int turn;
  private @Nullable Stint now;

  /**
   * From a time on, these limits are in force.
   *
   * @param version null where they are approved by nobody
   * @param limits the version's, or those that were proposed; null = nothing is judged
   */
  public record Term(
      long fromMillis, @Nullable LimitsVersion version, @Nullable LimitsInForce limits) {}

  /**
   * @param terms in the order of their times, the first before all anodes
   * @param profile of the wheel: how long a gap is a stop, how many molds there are
   * @param molds labels of the molds' indices
   * @param sides labels of the sides' indices
   * @param serials labels of the serials' indices
   * @param listener hears of every closed turn
   */
  public SuccessiveMonitor(
      List<Term> terms,
      WheelProfile profile,
      Labels molds,
      Labels sides,
      Labels serials,
      CharacteristicMonitor.TurnListener listener) {
    this.terms = List.copyOf(terms);
    this.molds = molds;
    this.sides = sides;
    this.serials = serials;
    this.listener = listener;
    // One number for all terms, since start-up goes on across them.
    int most = molds.size();
    for (Term one : terms) {
      most = Math.max(most, one.limits() == null ? 0 : one.limits().offsets().length);
    }
    startUp = new StartUp(profile, most);
  }

  /** Tells the labels of all indices, where others have come to those that were known. */
  public void labels(Labels allMolds, Labels allSides, Labels allSerials) {
    molds = allMolds;
    sides = allSides;
    serials = allSerials;
  }

  /** Takes in the next anode, as {@link CharacteristicMonitor#accept} does. */
  public void accept(
      long castAtMillis, int anodeTurn, int mold, int side, int serial, double value) {
    Stint stint = now;
    if (stint == null || anodeTurn != turn) {
      turn = anodeTurn;
      int next = Math.max(0, term);
      // Only onwards: times may run back by a little, which must not restart all charts.
      while (next + 1 < terms.size() && terms.get(next + 1).fromMillis() <= castAtMillis) {
        next++;
      }
      if (stint == null || next != term) {
        if (stint != null) {
          // The turn under way is judged by what was in force when it began.
          stint.end();
        }
        term = next;
        stint = new Stint(terms.get(term), castAtMillis, anodeTurn);
        stints.add(stint);
        now = stint;
        stint.begin();
      }
      stint.turns++;
    }
    stint.accept(castAtMillis, anodeTurn, mold, side, serial, value);
  }

  /** A position got a new mold, or its mold was dressed or leveled. */
  public void moldChanged(MoldChange change) {
    // The latest alone tells whether a mold was changed after a version's base.
    changedAtMillis.merge(change.mold(), change.atMillis(), Math::max);
    if (now != null) {
      now.moldChanged(change.mold());
    }
  }

  /** Closes the turn under way; to be called when the log ends. */
  public void finish() {
    if (now != null && now.monitor != null) {
      now.monitor.finish();
    }
  }

  /** All episodes so far. */
  public List<Episode> episodes() {
    List<Episode> all = new ArrayList<>();
    for (Stint stint : stints) {
      all.addAll(stint.episodes());
    }
    return all;
  }

  /** The limits by which anodes are judged now; null where they are not. */
  public @Nullable LimitsInForce limits() {
    return now == null ? null : now.term.limits();
  }

  /** The version that is in force now; null where none is approved. */
  public @Nullable LimitsVersion version() {
    return now == null ? null : now.term.version();
  }

  /** As {@link CharacteristicMonitor#departure}. */
  public double departure(int mold) {
    return now == null || now.monitor == null || mold >= molds.size()
        ? Double.NaN
        : now.monitor.departure(now.ownMold(mold));
  }

  /** As {@link CharacteristicMonitor#usual}. */
  public double usual(int mold) {
    return now == null || now.monitor == null || mold >= molds.size()
        ? Double.NaN
        : now.monitor.usual(now.ownMold(mold));
  }

  /** How often a run test completed on the wheel's classic chart, each turn by its own limits. */
  public long count(RunTest test) {
    long count = 0;
    for (Stint stint : stints) {
      count += stint.monitor == null ? 0 : stint.monitor.wheelTests().count(test);
    }
    return count;
  }

  /** Which turns were judged by what, in the order of time. */
  public List<Judged> judged() {
    return stints.stream().map(Stint::judged).toList();
  }

  /**
   * Turns that were judged by the same limits.
   *
   * @param term what was in force
   */
  public record Judged(
      Term term, int firstTurn, int lastTurn, long firstAtMillis, long lastAtMillis, int turns) {}

  /** A stretch under one term. */
  private final class Stint {
    private final Term term;
    private final @Nullable CharacteristicMonitor monitor;
    private final Map<Integer, Integer> ownMolds = new HashMap<>();
    private final List<Integer> logMolds = new ArrayList<>();
    private final Map<Integer, Integer> ownSides = new HashMap<>();
    private final List<Integer> logSides = new ArrayList<>();
    private final Map<Integer, String> baseSerials = new HashMap<>();
    private final long firstAtMillis;
    private final int firstTurn;
    private long lastAtMillis;
    private int lastTurn;
    private int turns;
    private boolean ended;

    Stint(Term term, long atMillis, int turn) {
      this.term = term;
      firstAtMillis = atMillis;
      firstTurn = turn;
      LimitsInForce limits = term.limits();
      LimitsVersion version = term.version();
      monitor =
          limits == null
              ? null
              : version == null
                  ? new CharacteristicMonitor(limits.withoutWear(), startUp, 0, listener)
                  : new CharacteristicMonitor(
                      limits, startUp, fromMiddle(version, atMillis), listener);
    }

    /**
     * Turns from the middle of a version's base to a time, at the base's pace; beyond its end no
     * more than another base would have.
     */
    private static double fromMiddle(LimitsVersion version, long atMillis) {
      LimitsVersion.Base base = version.base();
      long first = base.firstCastAt().toEpochMilli();
      double length = Math.max(1, base.lastCastAt().toEpochMilli() - first);
      double part = Math.max(0, Math.min(2, (atMillis - first) / length));
      return (part - 0.5) * version.limits().baseTurns();
    }

    /** Molds that were changed since the limits' base period are on trial. */
    void begin() {
      LimitsVersion version = term.version();
      if (version != null) {
        for (LimitsVersion.MoldBase one : version.molds()) {
          logMolds.add(-1);
          if (!one.serial().isEmpty()) {
            baseSerials.put(logMolds.size() - 1, one.serial());
          }
        }
        version.sides().forEach(side -> logSides.add(-1));
      }
      long known =
          // For the first term this wraps around to the latest time: the loop asks for that alone.
          version == null ? term.fromMillis() - 1 : version.base().lastCastAt().toEpochMilli();
      for (Map.Entry<Integer, Long> change : changedAtMillis.entrySet()) {
        if (version == null && term.fromMillis() == Long.MIN_VALUE || change.getValue() > known) {
          moldChanged(change.getKey());
        }
      }
    }

    void moldChanged(int mold) {
      if (monitor != null) {
        monitor.moldChanged(ownMold(mold));
      }
    }

    void accept(long at, int anodeTurn, int mold, int side, int serial, double value) {
      lastAtMillis = at;
      lastTurn = anodeTurn;
      if (monitor == null) {
        // A stop is a stop also where nothing is judged.
        startUp.isStartUp(at);
        return;
      }
      int own = ownMold(mold);
      if (serial >= 0 && baseSerials.containsKey(own)) {
        // Asked once: from then on the monitor compares each serial with the one before.
        if (!serials.name(serial).equals(baseSerials.remove(own))) {
          monitor.moldChanged(own);
        }
      }
      monitor.accept(at, anodeTurn, own, ownSide(side), serial, value);
    }

    /** The version's own index of a mold; beyond its molds where it does not know it. */
    int ownMold(int mold) {
      return term.version() == null ? mold : own(mold, ownMolds, logMolds, molds, moldLabels());
    }

    private int ownSide(int side) {
      LimitsVersion version = term.version();
      return version == null || side < 0
          ? side
          : own(side, ownSides, logSides, sides, version.sides());
    }

    private List<String> moldLabels() {
      LimitsVersion version = term.version();
      return version == null
          ? List.of()
          : version.molds().stream().map(LimitsVersion.MoldBase::mold).toList();
    }

    private static int own(
        int index,
        Map<Integer, Integer> owns,
        List<Integer> logs,
        Labels labels,
        List<String> known) {
      Integer before = owns.get(index);
      if (before != null) {
        return before;
      }
      int own = known.indexOf(labels.name(index));
      if (own < 0) {
        own = logs.size();
        logs.add(index);
      } else {
        logs.set(own, index);
      }
      owns.put(index, own);
      return own;
    }

    void end() {
      if (monitor != null) {
        monitor.finish();
      }
      ended = true;
    }

    List<Episode> episodes() {
      if (monitor == null) {
        return List.of();
      }
      List<Episode> all = new ArrayList<>();
      for (Episode one : monitor.episodes()) {
        Episode its = term.version() == null ? one : one.withIndex(logIndex(one));
        // Under other limits nothing can go on: the charts that it was on are gone.
        all.add(ended ? its.ended() : its);
      }
      return all;
    }

    private int logIndex(Episode one) {
      return switch (one.chart()) {
        case POUR, MOLD -> logMolds.get(one.index());
        case SIDE -> logSides.get(one.index());
        case WHEEL, SPREAD -> one.index();
      };
    }

    Judged judged() {
      return new Judged(term, firstTurn, lastTurn, firstAtMillis, lastAtMillis, turns);
    }
  }
}
