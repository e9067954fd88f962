package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.BaseRecord;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.OwnPastProposal;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.NotLookedFor;
import org.jspecify.annotations.Nullable;

/**
 * What one characteristic of a record is judged by, from its first turn to its last: the approved
 * versions while they are in force; before and between them, limits that are proposed from that
 * stretch itself.
 */
final class Terms {
  private Terms() {}

  static List<Term> of(
      WheelRecord record,
      String characteristic,
      double[] value,
      TurnIndex turns,
      AlarmBudget budget,
      LimitsBook book) {
    List<LimitsBook.Change> changes = book.changes(record.wheel(), characteristic);
    int[] from = firstRows(record, turns, changes);
    List<Term> terms = new ArrayList<>();
    for (int i = 0; i < changes.size(); i++) {
      LimitsVersion version = changes.get(i).version();
      LimitsInForce limits =
          version == null
              ? proposed(
                  base(record, value, turns, from[i], from[i + 1], new boolean[value.length]),
                  budget)
              : version.limits();
      terms.add(new Term(changes.get(i).fromMillis(), version, limits));
    }
    return terms;
  }

  private static @Nullable LimitsInForce proposed(BaseRecord base, AlarmBudget budget) {
    LimitProposal.Proposal proposal = proposal(base, budget);
    return proposal == null ? null : proposal.limits();
  }

  /**
   * Limits from a base period, of molds and turns or, where these cannot be told apart, of molds.
   */
  static LimitProposal.@Nullable Proposal proposal(BaseRecord base, AlarmBudget budget) {
    LimitProposal.Proposal proposal = LimitProposal.inFull(base, budget);
    boolean isTooFew =
        proposal == null && LimitProposal.obstacle(base) == LimitProposal.Obstacle.FEW_MOLDS;
    // Only where molds are too few: a short base is no better for asking less of it.
    return isTooFew ? OwnPastProposal.inFull(base, budget) : proposal;
  }

  /**
   * For each of the terms why nothing was looked for in it; null where something was.
   *
   * @param terms that {@link #of} gave for the same record
   */
  static List<@Nullable NotLookedFor> notLookedFor(
      List<Term> terms,
      WheelRecord record,
      String characteristic,
      double[] value,
      TurnIndex turns,
      LimitsBook book) {
    List<@Nullable NotLookedFor> all = new ArrayList<>();
    int[] from = firstRows(record, turns, book.changes(record.wheel(), characteristic));
    for (int i = 0; i < terms.size(); i++) {
      all.add(
          terms.get(i).limits() != null
              ? null
              : NotLookedFor.of(
                  base(record, value, turns, from[i], from[i + 1], new boolean[value.length])));
    }
    return all;
  }

  /** The first row under each change: a turn goes by its first anode, and none goes back. */
  private static int[] firstRows(
      WheelRecord record, TurnIndex turns, List<LimitsBook.Change> changes) {
    int rows = record.rows();
    int[] from = new int[changes.size() + 1];
    Arrays.fill(from, rows);
    int now = -1;
    for (int i = 0; i < rows && now + 1 < changes.size(); i++) {
      if (i == 0 || turns.ofRow()[i] != turns.ofRow()[i - 1]) {
        while (now + 1 < changes.size()
            && changes.get(now + 1).fromMillis() <= record.castAtMillis().get(i)) {
          from[++now] = i;
        }
      }
    }
    return from;
  }

  /**
   * The base period that these rows make: start-up and missing values left out, and at most {@link
   * LimitProposal#BASE_TURNS} turns.
   *
   * @param fromRow the first of a turn
   * @param toRow the row after the last
   * @param leftOut rows that are not to be used
   */
  static BaseRecord base(
      WheelRecord record,
      double[] value,
      TurnIndex turns,
      int fromRow,
      int toRow,
      boolean[] leftOut) {
    int[] rows = rows(value, turns, fromRow, toRow, leftOut);
    int first = fromRow < toRow ? turns.ofRow()[fromRow] : 0;
    int last = fromRow < toRow ? turns.ofRow()[toRow - 1] : -1;
    int[] turn = new int[rows.length];
    int[] mold = new int[rows.length];
    int[] side = new int[rows.length];
    double[] x = new double[rows.length];
    for (int n = 0; n < rows.length; n++) {
      int i = rows[n];
      turn[n] = turns.ofRow()[i] - first;
      mold[n] = record.mold().get(i);
      side[n] = Math.max(0, record.side().get(i));
      x[n] = value[i];
    }
    return new BaseRecord(
        turn,
        mold,
        side,
        x,
        Math.min(LimitProposal.BASE_TURNS, last - first + 1),
        record.molds().size(),
        Math.max(1, record.sides().size()));
  }

  /** The rows of the record that a base period has, in its order. */
  static int[] rows(double[] value, TurnIndex turns, int fromRow, int toRow, boolean[] leftOut) {
    int end = fromRow;
    while (end < toRow && turns.ofRow()[end] - turns.ofRow()[fromRow] < LimitProposal.BASE_TURNS) {
      end++;
    }
    int[] rows = new int[end - fromRow];
    int n = 0;
    for (int i = fromRow; i < end; i++) {
      if (!Double.isNaN(value[i]) && !turns.startUp()[i] && !leftOut[i]) {
        rows[n++] = i;
      }
    }
    return Arrays.copyOf(rows, n);
  }
}
