package org.evenpour.live;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.plant.Seen;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Everything that is known at one moment. Never changes, and is handed from the engine's thread to
 * the screen's.
 *
 * @param source what people call where the rows come from
 * @param reading whether what was there at the start is still being read
 * @param rows how many rows came
 * @param rowsSetAside how many of them could not be used
 * @param lastSetAside the last of these; null where there is none
 * @param lastWasSetAside whether it was the very last row
 * @param rowsLost how many rows came faster than they could be taken in, and are lost
 * @param trouble why the source cannot be read; null where it can
 * @param noteTrouble why a note was not kept; null where all were
 * @param plantTrouble why a new version of the profile or the events is not in force; null where
 *     all are
 * @param unjudged that a judgement failed, and until when what was in force before stays; null
 *     where none did
 * @param aheadMillis how far the last anode's time lay ahead of the clock when it came; 0 where it
 *     did not
 * @param arrivedAt when the last row came; null before the first
 * @param usableAt when the last row came that could be used; null before the first
 * @param lookedAt when the feed was last heard of
 * @param silentAfterMillis a row that comes later than this after the last one is late: four times
 *     the usual
 * @param wheels by their names
 * @param current the wheel that cast the last anode; an index of {@code wheels}, −1 before
 * @param record all that was cast and the audit of it; null before there is one
 * @param now the signals of {@code report} that matter now: those that hold, and single anodes of
 *     the last turns
 * @param seen what was acknowledged, oldest first
 */
public record Snapshot(
    String source,
    boolean reading,
    long rows,
    long rowsSetAside,
    @Nullable SetAsideRow lastSetAside,
    boolean lastWasSetAside,
    long rowsLost,
    @Nullable Remark trouble,
    @Nullable Remark noteTrouble,
    @Nullable Remark plantTrouble,
    @Nullable Remark unjudged,
    long aheadMillis,
    @Nullable Instant arrivedAt,
    @Nullable Instant usableAt,
    @Nullable Instant lookedAt,
    long silentAfterMillis,
    List<WheelNow> wheels,
    int current,
    @Nullable RecordNow record,
    List<Signal> now,
    List<Seen> seen) {

  /** Copies the lists. */
  public Snapshot {
    wheels = List.copyOf(wheels);
    now = List.copyOf(now);
    seen = List.copyOf(seen);
  }

  /** The newest audit; null before there is one. */
  public @Nullable AuditReport report() {
    return record == null ? null : record.report();
  }

  /** Before anything was heard. */
  public static Snapshot before(String source) {
    return new Snapshot(
        source, true, 0, 0, null, false, 0, null, null, null, null, 0, null, null, null, 0,
        List.of(), -1, null, List.of(), List.of());
  }

  /** The same, of a feed that has ended. */
  Snapshot atRest(RecordNow its, @Nullable Remark plantsTrouble) {
    return new Snapshot(
        source,
        false,
        its.record().rowsRead(),
        its.record().rowsSetAside(),
        null,
        false,
        0,
        null,
        null,
        plantsTrouble,
        null,
        0,
        null,
        null,
        null,
        0,
        List.of(),
        -1,
        its,
        its.report().signals().stream().filter(Signal::open).toList(),
        List.of());
  }

  /** Why not the newest version of all is in force; null where it is. */
  public @Nullable Remark stuck() {
    return unjudged == null ? plantTrouble : unjudged;
  }

  /** The same, the feed being heard of at another time. */
  public Snapshot lookedAt(Instant at) {
    return with(unjudged, at, seen);
  }

  /** The same, where what came since could not be judged. */
  Snapshot withUnjudged(Remark what) {
    return with(what, lookedAt, seen);
  }

  /** The same, with other notes. */
  public Snapshot withSeen(List<Seen> others) {
    return with(unjudged, lookedAt, others);
  }

  private Snapshot with(@Nullable Remark what, @Nullable Instant at, List<Seen> others) {
    return new Snapshot(
        source,
        reading,
        rows,
        rowsSetAside,
        lastSetAside,
        lastWasSetAside,
        rowsLost,
        trouble,
        noteTrouble,
        plantTrouble,
        what,
        aheadMillis,
        arrivedAt,
        usableAt,
        at,
        silentAfterMillis,
        wheels,
        current,
        record,
        now,
        others);
  }

  /** Who acknowledged a signal, when and with which note; null where nobody did. */
  public @Nullable Seen seen(Signal signal) {
    Seen last = null;
    for (Seen one : seen) {
      if (one.isOf(signal)) {
        last = one;
      }
    }
    return last;
  }
}
