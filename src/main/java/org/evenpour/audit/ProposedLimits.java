package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.AlarmBudget;
import org.evenpour.control.BaseRecord;
import org.evenpour.control.CharacteristicMonitor;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.LimitsVersion.Base;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.control.MoldChange;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.NotLookedFor;
import org.jspecify.annotations.Nullable;

/**
 * Limits that a base period gives for one characteristic of one wheel, for somebody to approve.
 *
 * @param displayUnit in which people read them
 * @param draft not approved and not numbered; null where the base gives none
 * @param lacks what the base lacks where it gives none; else null
 */
public record ProposedLimits(
    String wheel,
    String characteristic,
    Unit displayUnit,
    @Nullable LimitsVersion draft,
    @Nullable NotLookedFor lacks) {
  private static final Instant ALWAYS = Instant.parse("0000-01-01T00:00:00Z");

  /**
   * What somebody wants left out of the base period.
   *
   * @param from anodes that were cast then or later
   * @param to and before then
   */
  public record LeaveOut(Instant from, Instant to, String reason) {
    boolean holds(long castAtMillis) {
      return castAtMillis >= from.toEpochMilli() && castAtMillis < to.toEpochMilli();
    }
  }

  /**
   * Proposes limits for every characteristic of every wheel. A mold that was changed in the base
   * period counts from its last change on, for only that mold is still there.
   *
   * @param record with the base period, and perhaps more
   * @param from only anodes that were cast then or later; null = from the first
   * @param to and before then; null = to the last
   * @param leaveOut what else is not to be used
   */
  public static List<ProposedLimits> of(
      CastingRecord record, @Nullable Instant from, @Nullable Instant to, List<LeaveOut> leaveOut) {
    List<ProposedLimits> all = new ArrayList<>();
    for (WheelRecord recorded : record.wheels()) {
      WheelRecord wheel = Audit.measured(recorded);
      TurnIndex turns = TurnIndex.of(wheel);
      AlarmBudget budget =
          AlarmBudget.of(
              wheel.profile(),
              wheel.molds().size(),
              wheel.sides().size(),
              wheel.characteristics().size(),
              SettingWatch.takesShare(wheel),
              turns.turnMinutes());
      List<MoldChange> changes = Audit.moldChanges(record.events(), wheel);
      for (Characteristic one : wheel.characteristics()) {
        Making making = new Making(wheel, one, turns, changes, from, to, leaveOut);
        LimitsVersion draft = making.draft(record.logs(), budget);
        all.add(
            new ProposedLimits(
                wheel.wheel(),
                one.name(),
                one.displayUnit(),
                draft,
                draft == null ? NotLookedFor.of(making.base()) : null));
      }
    }
    return all;
  }

  /** What there is to approve. */
  public static List<LimitsVersion> drafts(List<ProposedLimits> proposed) {
    List<LimitsVersion> drafts = new ArrayList<>();
    for (ProposedLimits one : proposed) {
      LimitsVersion draft = one.draft();
      if (draft != null) {
        drafts.add(draft);
      }
    }
    return drafts;
  }

  /** The record as it would be judged by them, as if they had always been in force. */
  public static AuditReport judged(CastingRecord record, List<ProposedLimits> proposed) {
    List<LimitsVersion> always =
        drafts(proposed).stream()
            .map(one -> one.numbered(1).approved(ALWAYS, ALWAYS, "", ""))
            .toList();
    return Audit.run(record, PlantRecords.of(new LimitsBook(always, List.of(), List.of())));
  }

  /**
   * How many signals limits would have given.
   *
   * @param within to the end of their base
   * @param after it
   */
  public record Found(long within, long after) {}

  /**
   * Counts the signals of a draft's characteristic.
   *
   * @param judged the record, judged by the draft
   */
  public static Found found(LimitsVersion draft, AuditReport judged) {
    long within = 0;
    long after = 0;
    for (AuditReport.Signal signal : judged.signals()) {
      boolean its =
          signal.wheel().equals(draft.wheel())
              && signal.characteristic().equals(draft.characteristic());
      boolean isAfter = signal.firstCastAt().isAfter(draft.base().lastCastAt());
      within += its && !isAfter ? 1 : 0;
      after += its && isAfter ? 1 : 0;
    }
    return new Found(within, after);
  }

  /** One characteristic's limits in the making; owned by one thread. */
  private static final class Making {
    private final WheelRecord record;
    private final Characteristic characteristic;
    private final TurnIndex turns;
    private final double[] value;
    private final int fromRow;
    private final int toRow;
    private final boolean[] out;
    private final List<LeftOut> leftOut = new ArrayList<>();

    Making(
        WheelRecord record,
        Characteristic characteristic,
        TurnIndex turns,
        List<MoldChange> changes,
        @Nullable Instant from,
        @Nullable Instant to,
        List<LeaveOut> leaveOut) {
      this.record = record;
      this.characteristic = characteristic;
      this.turns = turns;
      value = characteristic.values().toArray();
      out = new boolean[value.length];
      int first = 0;
      while (first < value.length && from != null && at(first) < from.toEpochMilli()) {
        first++;
      }
      int last = value.length;
      while (last > first && to != null && at(last - 1) >= to.toEpochMilli()) {
        last--;
      }
      fromRow = first;
      toRow = Math.max(first, last);
      // In this order, and each anode under the first reason that takes it: told once.
      stretches(Reason.BEYOND_BASE, "", null, fromRow, toRow, this::isBeyond);
      stretches(Reason.START_UP, "", null, fromRow, toRow, i -> turns.startUp()[i] && !isBeyond(i));
      for (LeaveOut one : leaveOut) {
        stretches(
            Reason.BY_HAND,
            one.reason(),
            null,
            fromRow,
            toRow,
            i -> isUsable(i) && one.holds(at(i)));
        for (int i = fromRow; i < toRow; i++) {
          // Only after it was told, or its own stretch would find nothing usable any more.
          out[i] |= one.holds(at(i));
        }
      }
      oldMolds(changes);
    }

    private long at(int row) {
      return record.castAtMillis().get(row);
    }

    private boolean isBeyond(int row) {
      return turns.ofRow()[row] - turns.ofRow()[fromRow] >= LimitProposal.BASE_TURNS;
    }

    private boolean isUsable(int row) {
      return !out[row] && !turns.startUp()[row] && !isBeyond(row) && !Double.isNaN(value[row]);
    }

    /** Casts before a mold's last change within the base; all, where too few came after it. */
    private void oldMolds(List<MoldChange> changes) {
      int[] since = new int[record.molds().size()];
      int[] serial = new int[since.length];
      int next = 0;
      java.util.Arrays.fill(since, -1);
      java.util.Arrays.fill(serial, -1);
      for (int i = fromRow; i < toRow && !isBeyond(i); i++) {
        while (next < changes.size() && changes.get(next).atMillis() <= at(i)) {
          MoldChange change = changes.get(next++);
          // What was changed before the base is one mold throughout it.
          if (change.atMillis() >= at(fromRow)) {
            since[change.mold()] = i;
          }
        }
        int mold = record.mold().get(i);
        int its = record.serial().get(i);
        if (its >= 0) {
          since[mold] = serial[mold] >= 0 && serial[mold] != its ? i : since[mold];
          serial[mold] = its;
        }
      }
      for (int m = 0; m < since.length; m++) {
        if (since[m] >= 0) {
          leaveOutBefore(m, since[m]);
        }
      }
    }

    private void leaveOutBefore(int mold, int row) {
      int left = 0;
      for (int i = row; i < toRow; i++) {
        left += record.mold().get(i) == mold && isUsable(i) ? 1 : 0;
      }
      // With fewer an offset would be worse than the one that the mold learns on its own.
      boolean enough = left >= CharacteristicMonitor.TRIAL;
      String note =
          enough
              ? "changed at " + Instant.ofEpochMilli(at(row))
              : "changed at "
                  + Instant.ofEpochMilli(at(row))
                  + "; "
                  + left
                  + " casts since are too few, it will learn its own level";
      IntPredicate old = i -> record.mold().get(i) == mold && isUsable(i) && (i < row || !enough);
      stretches(Reason.OLD_MOLD, note, mold, fromRow, toRow, old);
      for (int i = fromRow; i < toRow; i++) {
        out[i] |= record.mold().get(i) == mold && (i < row || !enough);
      }
    }

    BaseRecord base() {
      return Terms.base(record, value, turns, fromRow, toRow, out);
    }

    @Nullable LimitsVersion draft(List<String> logs, AlarmBudget budget) {
      LimitProposal.Proposal proposal = fromRow == toRow ? null : Terms.proposal(base(), budget);
      if (proposal == null) {
        return null;
      }
      int[] rows = Terms.rows(value, turns, fromRow, toRow, out);
      shifted(proposal, rows);
      TreeSet<Integer> its = new TreeSet<>();
      long[] casts = new long[record.molds().size()];
      String[] serials = new String[casts.length];
      java.util.Arrays.fill(serials, "");
      for (int n = 0; n < rows.length; n++) {
        int mold = record.mold().get(rows[n]);
        its.add(turns.ofRow()[rows[n]]);
        // Only what its offset rests on, for these casts make its standard error.
        casts[mold] += proposal.shifted()[n] || proposal.far()[n] ? 0 : 1;
        int serial = record.serial().get(rows[n]);
        serials[mold] = serial >= 0 ? record.serials().name(serial) : serials[mold];
      }
      List<MoldBase> molds = new ArrayList<>();
      for (int m = 0; m < casts.length; m++) {
        molds.add(new MoldBase(record.molds().name(m), serials[m], casts[m]));
      }
      leftOut.sort(Comparator.comparing(LeftOut::from).thenComparing(LeftOut::reason));
      return new LimitsVersion(
          record.wheel(),
          characteristic.name(),
          characteristic.unit().suffix(),
          0,
          Instant.EPOCH,
          Instant.EPOCH,
          "",
          "",
          new Base(
              logs,
              Instant.ofEpochMilli(at(rows[0])),
              Instant.ofEpochMilli(at(rows[rows.length - 1])),
              its.size(),
              rows.length),
          leftOut,
          molds,
          record.sides().names(),
          proposal.limits());
    }

    /** What the proposal itself left out. */
    private void shifted(LimitProposal.Proposal proposal, int[] rows) {
      TreeMap<Integer, List<Integer>> ofMold = new TreeMap<>();
      for (int n = 0; n < rows.length; n++) {
        ofMold.computeIfAbsent(record.mold().get(rows[n]), m -> new ArrayList<>()).add(n);
        if (proposal.far()[n]) {
          long at = at(rows[n]);
          add(Reason.FAR_POUR, off(proposal.residual()[n]), record.mold().get(rows[n]), at, at, 1);
        }
      }
      ofMold.forEach(
          (mold, places) -> {
            // By the mold's own casts, for those of others always lie between them in the log.
            int from = 0;
            while (from < places.size()) {
              int to = from;
              double sum = 0;
              int known = 0;
              while (to < places.size() && proposal.shifted()[places.get(to)]) {
                double residual = proposal.residual()[places.get(to++)];
                sum += Double.isNaN(residual) ? 0 : residual;
                known += Double.isNaN(residual) ? 0 : 1;
              }
              if (to > from) {
                add(
                    Reason.MOLD_SHIFTED,
                    known == 0 ? "" : off(sum / known),
                    mold,
                    at(rows[places.get(from)]),
                    at(rows[places.get(to - 1)]),
                    to - from);
              }
              from = Math.max(to, from + 1);
            }
          });
      int first = turns.ofRow()[fromRow];
      boolean[] isUsed = new boolean[value.length];
      for (int row : rows) {
        isUsed[row] = true;
      }
      stretches(
          Reason.TURN_SHIFTED,
          "",
          null,
          fromRow,
          toRow,
          i -> isUsed[i] && proposal.turnShifted()[turns.ofRow()[i] - first]);
    }

    private String off(double by) {
      return String.format(Locale.ROOT, "%+.3g %s", by, characteristic.unit().symbol());
    }

    private void add(
        Reason reason, String note, @Nullable Integer mold, long from, long to, long anodes) {
      leftOut.add(
          new LeftOut(
              reason,
              note,
              mold == null ? null : record.molds().name(mold),
              Instant.ofEpochMilli(from),
              Instant.ofEpochMilli(to),
              anodes));
    }

    /** Rows one after another, of one mold or of all, between which no other usable one lies. */
    private void stretches(
        Reason reason, String note, @Nullable Integer mold, int from, int to, IntPredicate is) {
      long count = 0;
      int first = -1;
      int last = -1;
      for (int i = from; i < to; i++) {
        if (is.test(i)) {
          first = count == 0 ? i : first;
          last = i;
          count++;
        } else if (count > 0 && mold == null && !Double.isNaN(value[i])) {
          add(reason, note, null, at(first), at(last), count);
          count = 0;
        }
      }
      if (count > 0) {
        add(reason, note, mold, at(first), at(last), count);
      }
    }
  }
}
