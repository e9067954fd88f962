package org.evenpour.live;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.evenpour.audit.Audited;
import org.evenpour.audit.PlantRecords;
import org.evenpour.audit.Replayed;
import org.evenpour.casting.Anode;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.FileException;
import org.evenpour.casting.Scope;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.Pages;
import org.evenpour.control.Episode;
import org.evenpour.feed.FileStamp;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.RowIntake;
import org.evenpour.intake.WildTimes;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * A record that grows by one row at a time, judged as it grows.
 *
 * <p>What is there at the start is read whole and audited; the limits that the audit proposes stay
 * in force, and every anode goes through the engine's monitors, those of the start first. A record
 * too short for good limits gets new ones after 8 turns and whenever it is twice as long, up to
 * 250. When a turn is closed, its signals are linked anew.
 *
 * <p>Owned by the engine's thread.
 */
public final class LiveRecord {
  /** A single anode is shown for so many turns. */
  private static final int POUR_SHOWN_TURNS = 2;

  private static final double LATE = 4;
  private static final long LEAST_SILENCE_MILLIS = 10_000;
  private static final int GAPS = 15;

  private final String source;
  private final RowIntake intake;
  private List<CastingEvent> events;
  private final SeenFile seenFile;
  private PlantRecords plant = PlantRecords.NONE;
  private List<Seen> seen = List.of();
  private @Nullable FileStamp seenStamp;
  private final List<SetAsideRow> setAside = new ArrayList<>();
  private final Map<String, WheelWatch> watches = new LinkedHashMap<>();
  private final Map<String, WheelNow> shown = new LinkedHashMap<>();
  private @Nullable Audited audited;
  private List<Signal> now = List.of();
  private String current = "";
  private boolean turnClosed;
  private boolean anew; // all is to be judged again, by the same limits
  private boolean renewal;
  private @Nullable Settling settling;
  private final Unjudged unjudged = new Unjudged();
  private @Nullable SetAsideRow lastSetAside;
  private boolean lastWasSetAside;
  private @Nullable Remark trouble;
  private @Nullable Remark seenTrouble;
  private @Nullable Remark plantTrouble;
  private long aheadMillis;
  private @Nullable Instant arrivedAt;
  private @Nullable Instant usableAt;
  private @Nullable Instant lookedAt;
  private long lastCastMillis = Long.MIN_VALUE;
  private final long[] gaps = new long[GAPS];
  private int gapCount;

  /**
   * A record before its first row.
   *
   * @param source what people call where the rows come from
   * @param profiles what the plant says of its wheels
   * @param events that were written down
   * @param seenFile where acknowledged signals stand
   */
  public LiveRecord(
      String source, Profiles profiles, List<CastingEvent> events, SeenFile seenFile) {
    this(source, profiles, events, seenFile, null);
  }

  /**
   * As above, of a source that can be read anew.
   *
   * @param wild rows whose times are known to be wrong, and what is found of them; null where
   *     nobody could read anew
   */
  LiveRecord(
      String source,
      Profiles profiles,
      List<CastingEvent> events,
      SeenFile seenFile,
      @Nullable WildTimes wild) {
    this.source = source;
    this.events = List.copyOf(events);
    this.seenFile = seenFile;
    intake =
        wild == null
            ? new RowIntake(profiles, Pages.ofMemory(), null, null)
            : new RowIntake(profiles, Pages.ofMemory(), null, null, wild);
    readSeen();
  }

  /**
   * Reads what was acknowledged, by this program or another, if its file has changed.
   *
   * @return whether anything is new
   */
  boolean readSeen() {
    FileStamp stamp = FileStamp.of(seenFile.path());
    if (Objects.equals(stamp, seenStamp)) {
      return false;
    }
    seenStamp = stamp;
    try {
      List<Seen> before = seen;
      seen = seenFile.read();
      return !seen.equals(before);
    } catch (IOException e) {
      seenTrouble = notes("live.seen.unreadable", e);
      return true;
    }
  }

  /**
   * Events were written down, or corrected: these are in force as soon as all is settled, for what
   * was cast before as well. The limits stay.
   *
   * @return whether anything is new
   */
  boolean events(List<CastingEvent> fresh) {
    if (fresh.equals(events)) {
      return false;
    }
    events = List.copyOf(fresh);
    anew = audited != null;
    unjudged.tryNow();
    return true;
  }

  /**
   * Something else is kept beside the log. Where limits were approved or retired, or a
   * specification was dated, they are in force from now on, each for the turns of its time, and
   * where nothing is approved limits are proposed anew.
   *
   * @return whether anything is new
   */
  boolean plant(PlantRecords fresh) {
    if (fresh.equals(plant)) {
      return false;
    }
    renewal |= audited != null && !fresh.book().equals(plant.book());
    turnClosed = true; // gauges and marks go into the next audit
    plant = fresh;
    unjudged.tryNow();
    return audited != null;
  }

  /**
   * A new version of the profile or of the events is not in force, and why; null where all are.
   *
   * @return whether that is new
   */
  boolean plantTrouble(@Nullable Remark what) {
    boolean isNew = !Objects.equals(what, plantTrouble);
    plantTrouble = what;
    return isNew;
  }

  /** Rows follow that stand under these headings. */
  public void header(LogHeader header) {
    intake.open(header);
  }

  /** Takes in a row. */
  public void row(long line, byte[] text, Instant at) {
    switch (intake.accept(line, text)) {
      case KEPT -> {
        lastWasSetAside = false;
        kept(at);
      }
      case SET_ASIDE -> {
        lastWasSetAside = true;
        SetAsideRow row = intake.setAside();
        lastSetAside = row;
        if (setAside.size() < CastingRecord.SET_ASIDE_KEPT) {
          setAside.add(row);
        }
      }
      case OUTSIDE_PERIOD, BLANK -> {
        return;
      }
    }
    clockReads(at);
    Instant before = arrivedAt;
    if (!watches.isEmpty() && before != null && at.isAfter(before)) {
      gap(at.toEpochMilli() - before.toEpochMilli());
    }
    arrivedAt = at;
    usableAt = lastWasSetAside ? usableAt : at;
  }

  /**
   * Where the clock was set back, everything came that much earlier by it: else an hour's silence
   * would not be noticed for an hour.
   */
  private void clockReads(Instant at) {
    Instant looked = lookedAt;
    if (looked != null && at.isBefore(looked)) {
      Duration back = Duration.between(looked, at);
      lookedAt = at;
      arrivedAt = moved(arrivedAt, back);
      usableAt = moved(usableAt, back);
    }
  }

  private static @Nullable Instant moved(@Nullable Instant at, Duration by) {
    return at == null ? null : at.plus(by);
  }

  private void kept(Instant at) {
    Anode anode = intake.anode();
    aheadMillis = Math.max(0, anode.castAtMillis() - at.toEpochMilli());
    unjudged.anode();
    if (watches.isEmpty()) {
      if (lastCastMillis != Long.MIN_VALUE && anode.castAtMillis() > lastCastMillis) {
        gap(anode.castAtMillis() - lastCastMillis);
      }
      lastCastMillis = anode.castAtMillis();
      return;
    }
    WheelRecord record = intake.record();
    current = record.wheel();
    WheelWatch watch = watches.get(current);
    if (watch == null || !watch.fits(record)) {
      // A wheel or a characteristic that was not there before.
      renewal |= settling == null || !settling.proposes(record);
      return;
    }
    try {
      if (watch.accept(anode, record)) {
        turnClosed = true;
        renewal |= watch.isDue();
      }
    } catch (RuntimeException e) {
      watches.remove(current); // its charts stand between two anodes now, and are of no use
      failed(e);
      renewal = audited != null;
    }
  }

  private void gap(long millis) {
    gaps[gapCount++ % GAPS] = millis;
  }

  /**
   * Everything that there is was taken in.
   *
   * @param at when
   */
  public void caughtUp(Instant at) {
    looked(at);
    settle();
  }

  /** Whether {@link #settling} has something to do. */
  boolean isUnsettled() {
    return unjudged.isPatient() && (audited == null || renewal || anew)
        || audited != null && turnClosed;
  }

  /** The feed was heard of, and there is nothing new. */
  void looked(Instant at) {
    clockReads(at);
    lookedAt = at;
  }

  /** An earlier snapshot with what {@link #looked} alone has changed. */
  Snapshot lookedAt(Snapshot before) {
    Instant at = lookedAt;
    return at == null ? before : before.lookedAt(at);
  }

  private void settle() {
    try {
      Settling begun = settling();
      if (begun != null) {
        settled(begun.run());
      }
    } catch (RuntimeException e) {
      failed(e);
    }
  }

  /**
   * A judgement ended with a fault of ours. What was in force stays in force, the anodes are shown
   * as they come, and it is tried again when there are more of them: limits and links go by all
   * that was cast, so that what no method could answer with these it may answer with those.
   */
  void failed(Throwable fault) {
    Settling its = settling;
    settling = null;
    unjudged.failed(fault);
    if (its == null) {
      // A watch did, or what it was handed: all are made anew.
      watches.clear();
      renewal = audited != null;
    } else if (its.by() == null) {
      renewal = audited != null;
    } else {
      anew |= its.judged().isEmpty();
    }
    for (WheelRecord record : intake.records()) {
      WheelWatch watch = watches.get(record.wheel());
      if (watch == null || !watch.fits(record)) {
        WheelWatch only = WheelWatch.unjudging(record, plant.book());
        only.catchUp(record);
        watches.put(record.wheel(), only);
        current = current.isEmpty() ? record.wheel() : current;
      }
    }
  }

  /**
   * What takes longer, for another thread to do: audits where there are no limits yet or they are
   * to be renewed; links what has changed. What comes of it is to be handed to {@link #settled}
   * before the next is asked for.
   *
   * @return null where there is nothing to be done
   */
  @Nullable Settling settling() {
    if (!isUnsettled()) {
      return null;
    }
    List<WheelRecord> records = intake.records().stream().map(WheelRecord::frozen).toList();
    if (records.isEmpty()) {
      return null;
    }
    boolean isPatient = unjudged.isPatient();
    Audited by = renewal && isPatient ? null : audited;
    boolean isAnew = anew && isPatient;
    Map<String, Map<String, Replayed>> judged = new LinkedHashMap<>();
    if (by != null && !isAnew) {
      for (WheelRecord record : records) {
        WheelWatch watch = watches.get(record.wheel());
        if (watch != null && watch.fits(record)) {
          judged.put(record.wheel(), watch.replayed());
        }
      }
    }
    // What has to wait after a fault is still to be done.
    renewal &= !isPatient;
    anew &= !isPatient;
    turnClosed = false;
    List<Remark> warnings = new ArrayList<>(intake.warnings());
    warnings.addAll(EventsReader.unknown(events, records));
    settling = new Settling(record(records, warnings), by, judged, plant);
    return settling;
  }

  private CastingRecord record(List<WheelRecord> frozen, List<Remark> warnings) {
    return new CastingRecord(
        List.of(source),
        frozen,
        events,
        intake.rowsRead(),
        intake.rowsSetAside(),
        setAside,
        warnings);
  }

  /** Takes what came of {@link #settling}, and judges by it what was cast meanwhile. */
  void settled(Settling.Settled done) {
    Settling its = settling;
    settling = null;
    boolean isAll = !renewal && !anew;
    List<WheelRecord> records = intake.records();
    boolean limitsStay = its != null && its.by() != null;
    audited = done.audited();
    if (!done.watches().isEmpty()) {
      watch(records, done.watches(), limitsStay);
    }
    now =
        done.audited().report().signals().stream()
            .filter(signal -> matters(signal, records))
            .toList();
    if (isAll) {
      unjudged.judged();
    }
  }

  private void watch(List<WheelRecord> records, Map<String, WheelWatch> fresh, boolean limitsStay) {
    long latest = Long.MIN_VALUE;
    for (WheelRecord record : records) {
      WheelWatch watch = fresh.get(record.wheel());
      if (watch == null) {
        continue; // came meanwhile, and asks for limits of its own
      }
      if (limitsStay) {
        watch.beginLike(watches.get(record.wheel()));
      }
      if (watch.fits(record) && watch.catchUp(record)) {
        turnClosed = true;
        renewal |= watch.isDue();
      }
      long last = record.castAtMillis().get(record.rows() - 1);
      if (last > latest) {
        latest = last;
        current = record.wheel();
      }
    }
    watches.clear();
    watches.putAll(fresh);
  }

  private static boolean matters(Signal signal, List<WheelRecord> records) {
    if (signal.scope() != Scope.POUR) {
      return signal.open();
    }
    for (WheelRecord record : records) {
      if (record.wheel().equals(signal.wheel())) {
        int turn = record.turn().get(record.rows() - 1);
        return signal.lastTurn() >= turn - POUR_SHOWN_TURNS && signal.lastTurn() <= turn;
      }
    }
    return false;
  }

  /** The source cannot be read, and why; null where it can again. */
  public void trouble(@Nullable Remark what) {
    trouble = what;
  }

  /** Somebody has seen a signal: writes it down. */
  public void seen(Seen one) {
    try {
      seenFile.add(one);
      seenTrouble = null;
      readSeen();
    } catch (IOException e) {
      seenTrouble = notes("live.seen.unwritable", e);
    }
  }

  private Remark notes(String key, IOException why) {
    return Remark.of("at.file", seenFile.path(), Remark.of(key, FileException.reason(why)));
  }

  /** The episodes of a wheel, one list for each characteristic, as its closed turns show them. */
  List<List<Episode>> episodes(String wheel) {
    WheelWatch watch = watches.get(wheel);
    return watch == null ? List.of() : watch.episodes();
  }

  /** Who watches a wheel; null where nobody does. */
  @Nullable WheelWatch watch(String wheel) {
    return watches.get(wheel);
  }

  /**
   * What is known now.
   *
   * @param rowsLost how many rows were lost on the way here
   */
  public Snapshot snapshot(long rowsLost) {
    Audited its = audited;
    for (WheelRecord record : intake.records()) {
      WheelWatch watch = watches.get(record.wheel());
      if (watch != null && watch.fits(record)) {
        shown.put(record.wheel(), watch.now(record));
      }
    }
    List<WheelNow> wheels = List.copyOf(shown.values());
    int index = -1;
    for (int i = 0; i < wheels.size(); i++) {
      if (wheels.get(i).wheel().equals(current)) {
        index = i;
      }
    }
    return new Snapshot(
        source,
        audited == null && unjudged.told() == null,
        intake.rowsRead(),
        intake.rowsSetAside(),
        lastSetAside,
        lastWasSetAside,
        rowsLost,
        trouble,
        seenTrouble,
        plantTrouble,
        unjudged.told(),
        aheadMillis,
        arrivedAt,
        usableAt,
        lookedAt,
        silentAfterMillis(),
        wheels,
        index,
        its == null ? null : new RecordNow(shownRecord(its.report()), its.report(), plant, intake),
        now,
        seen);
  }

  /** All rows until now of the wheels that a report is of. */
  private CastingRecord shownRecord(AuditReport report) {
    return record(
        intake.records().stream()
            .filter(one -> report.log().wheels().contains(one.wheel()))
            .map(WheelRecord::frozen)
            .toList(),
        // Nobody is warned by rows: the report's notes say it, once a turn.
        List.of());
  }

  /** Four times the median of the last gaps. */
  private long silentAfterMillis() {
    int count = Math.min(gapCount, GAPS);
    if (count == 0) {
      return LEAST_SILENCE_MILLIS;
    }
    long[] some = Arrays.copyOf(gaps, count);
    Arrays.sort(some);
    return Math.max(LEAST_SILENCE_MILLIS, Math.round(LATE * some[count / 2]));
  }
}
