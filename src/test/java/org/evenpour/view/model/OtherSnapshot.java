package org.evenpour.view.model;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.live.RecordNow;
import org.evenpour.live.Snapshot;
import org.evenpour.live.WheelNow;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** A snapshot of which a test sets some parts otherwise. */
final class OtherSnapshot {
  private final Snapshot s;
  private @Nullable SetAsideRow lastSetAside;
  private boolean lastWasSetAside;
  private long rowsLost;
  private @Nullable Remark trouble;
  private @Nullable Remark plantTrouble;
  private @Nullable Remark unjudged;
  private long aheadMillis;
  private @Nullable Instant arrivedAt;
  private @Nullable Instant lookedAt;
  private List<WheelNow> wheels;
  private int current;
  private @Nullable RecordNow record;
  private List<Signal> now;

  private OtherSnapshot(Snapshot s) {
    this.s = s;
    lastSetAside = s.lastSetAside();
    lastWasSetAside = s.lastWasSetAside();
    rowsLost = s.rowsLost();
    trouble = s.trouble();
    plantTrouble = s.plantTrouble();
    unjudged = s.unjudged();
    aheadMillis = s.aheadMillis();
    arrivedAt = s.arrivedAt();
    lookedAt = s.lookedAt();
    wheels = s.wheels();
    current = s.current();
    record = s.record();
    now = s.now();
  }

  /** The same as a snapshot, so far. */
  static OtherSnapshot than(Snapshot s) {
    return new OtherSnapshot(s);
  }

  OtherSnapshot setAside(@Nullable SetAsideRow row) {
    lastSetAside = row;
    lastWasSetAside = row != null;
    return this;
  }

  OtherSnapshot rowsLost(long rows) {
    rowsLost = rows;
    return this;
  }

  OtherSnapshot trouble(@Nullable Remark why) {
    trouble = why;
    return this;
  }

  OtherSnapshot plantTrouble(@Nullable Remark why) {
    plantTrouble = why;
    return this;
  }

  OtherSnapshot unjudged(Remark why) {
    unjudged = why;
    return this;
  }

  OtherSnapshot aheadMillis(long millis) {
    aheadMillis = millis;
    return this;
  }

  /** A row came, and the feed was heard of. */
  OtherSnapshot heardAt(Instant at) {
    arrivedAt = at;
    lookedAt = at;
    return this;
  }

  OtherSnapshot wheel(WheelNow wheel) {
    wheels = List.of(wheel);
    current = 0;
    return this;
  }

  OtherSnapshot record(@Nullable RecordNow its) {
    record = its;
    return this;
  }

  OtherSnapshot withoutSignals() {
    now = List.of();
    return this;
  }

  /** What was set. */
  Snapshot snapshot() {
    return new Snapshot(
        s.source(),
        s.reading(),
        s.rows(),
        s.rowsSetAside(),
        lastSetAside,
        lastWasSetAside,
        rowsLost,
        trouble,
        s.noteTrouble(),
        plantTrouble,
        unjudged,
        aheadMillis,
        arrivedAt,
        s.usableAt(),
        lookedAt,
        s.silentAfterMillis(),
        wheels,
        current,
        record,
        now,
        s.seen());
  }
}
