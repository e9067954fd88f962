package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.evenpour.audit.RejectRows.Stretch;
import org.evenpour.control.Episode;
import org.evenpour.stats.Shares;

/**
 * Where and when more than usual was rejected: at one mold, at the whole wheel for some charges, or
 * in a single turn; of any defect or of one. Shares come from the record itself, so that a mold
 * that is always worse raises nothing here: that it stands out is {@link RejectAudit}'s to say.
 */
final class RejectWatch {
  /** The most turns that are looked at together, some four months; a choice. */
  private static final int MOST_TURNS = 4_000;

  /**
   * False alarms of one look: a chart tells one stretch in each, so that it cannot spend more. A
   * choice.
   */
  private static final double ALARMS = 2;

  // How the false alarms are shared out; choices. Most goes to the molds, which are many. They add
  // up to more than 1: what a defect and all of them tell together is one stretch. Measured, see
  // rejects.md.
  private static final double MOLD_PART = 0.78;
  private static final double WHEEL_PART = 0.86;

  /** Of the wheel's part; what single turns do not spend is left to the spells. */
  private static final double TURN_PART = 0.4;

  /** How much more two looks at a half may find than one: measured, see rejects.md. */
  private static final double TWICE = 1.5;

  /**
   * Chance of so many at a mold, being like the others in a bad spell of its wheel, below which it
   * is told by itself. Small, for its stretch was chosen as its densest.
   */
  private static final double AMONG_OTHERS = 5e-4;

  /**
   * The same record, the same answer; but another one other draws, for one and the same luck in
   * drawing would make all charts of a kind too sharp, or too dull.
   */
  static long seed(int[] of) {
    return Arrays.hashCode(of);
  }

  private final RejectRows rows;
  private final int defects;
  private final double perTurn;

  /**
   * @param rows all of a wheel
   * @param defects how many there are
   * @param perTurn false alarms a turn
   */
  RejectWatch(RejectRows rows, int defects, double perTurn) {
    this.rows = rows;
    this.defects = defects;
    this.perTurn = perTurn;
  }

  /** All stretches, in the order of their onsets. */
  List<Stretch> stretches() {
    // A mold's rejects are few, and take long to tell anything; a wheel's charts are few, and one
    // look at many turns could not spend what they may.
    List<Stretch> molds =
        looks(
            rows,
            MOST_TURNS,
            (some, alarms) ->
                new RejectsOfMolds(some).stretches(some.frequent(defects), alarms * MOLD_PART));
    int few = (int) Math.min(MOST_TURNS, ALARMS / perTurn);
    RejectRows others = without(molds);
    List<Stretch> spells =
        looks(
            others,
            few,
            (some, alarms) -> {
              RejectsOfWheel its = new RejectsOfWheel(some);
              double left = alarms * WHEEL_PART - its.turnAlarms(alarms * TURN_PART);
              return its.spells(some.frequent(defects), left);
            });
    List<Stretch> turnsAlone =
        looks(others, few, (some, alarms) -> new RejectsOfWheel(some).turns(alarms * TURN_PART));
    List<Stretch> all = new ArrayList<>(spells);
    molds.stream()
        .filter(one -> spells.stream().noneMatch(spell -> isPart(one, spell)))
        .forEach(all::add);
    turnsAlone.stream().filter(one -> spells.stream().noneMatch(one::isLike)).forEach(all::add);
    all.sort(
        Comparator.comparingLong((Stretch one) -> one.episode().sinceAtMillis())
            .thenComparing(one -> one.episode().chart())
            .thenComparing(one -> one.episode().index()));
    return all;
  }

  /** One look at some turns, with so many false alarms. */
  private interface Look {
    List<Stretch> at(RejectRows some, double alarms);
  }

  /** Looks at so many turns after one another, each half of them twice. */
  private List<Stretch> looks(RejectRows all, int most, Look look) {
    List<Stretch> found = new ArrayList<>();
    int half = Math.max(1, most / 2);
    int turns = all.turns().turns();
    double alarms = perTurn * (turns <= 2 * half ? turns : TWICE * half);
    int from = 0;
    do {
      int to = Math.min(turns, from + 2 * half);
      // What both looks find is told once.
      look.at(all.between(firstRow(from), firstRow(to)), alarms).stream()
          .filter(one -> found.stream().noneMatch(one::isLike))
          .forEach(found::add);
      from += half;
    } while (from + half < turns);
    return found;
  }

  /** The first row of a turn; the number of rows for the turn after the last. */
  private int firstRow(int turn) {
    int[] ofRow = rows.turns().ofRow();
    int at = Arrays.binarySearch(ofRow, turn);
    while (at > 0 && ofRow[at - 1] == turn) {
      at--;
    }
    return at < 0 ? -at - 1 : at;
  }

  /** A mold's own stretch is no part of what the wheel did. */
  private RejectRows without(List<Stretch> molds) {
    if (molds.isEmpty()) {
      return rows;
    }
    int[] some = rows.why().clone();
    for (Stretch one : molds) {
      for (int row = 0; row < some.length; row++) {
        some[row] = rows.isWithin(row, one.episode()) ? -1 : some[row];
      }
    }
    return rows.judging(some);
  }

  /** Whether a mold did no more than its wheel did at the time. */
  private boolean isPart(Stretch mold, Stretch spell) {
    if (!isMostlyWithin(mold.episode(), spell.episode())) {
      return false;
    }
    Episode time = mold.episode().ofWheel();
    int hits = 0;
    int casts = 0;
    for (int row = rows.begin(); row < rows.end(); row++) {
      if (rows.isJudged(row) && rows.isWithin(row, time)) {
        casts++;
        hits += rows.isHit(row, mold.defect()) ? 1 : 0;
      }
    }
    return Shares.moreThanOthers(mold.rejected(), mold.of(), hits, casts) > AMONG_OTHERS;
  }

  private static boolean isMostlyWithin(Episode one, Episode other) {
    int from = Math.max(one.sinceTurn(), other.sinceTurn());
    int to = Math.min(one.lastTurn(), other.lastTurn());
    return 2 * (to - from + 1) > one.lastTurn() - one.sinceTurn() + 1;
  }

  /** Chance of at least one where so many are expected. */
  static double level(double expected) {
    return -Math.expm1(-expected);
  }
}
