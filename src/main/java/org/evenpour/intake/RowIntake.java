package org.evenpour.intake;

import static org.evenpour.intake.LogColumn.Role;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.evenpour.casting.Anode;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.Pages;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Takes in a log's rows one by one, in their order: judges whether each can be used, and lets the
 * records of its wheels grow. A whole log and one that still grows go through here alike.
 *
 * <p>Owned by the thread that reads the log.
 */
public final class RowIntake {

  /** What became of a row. */
  public enum Outcome {
    /** It was added to the record of its wheel. */
    KEPT,
    /** It cannot be used; {@link RowIntake#setAside()} says why. */
    SET_ASIDE,
    /** It was cast before or after the period that is asked for. */
    OUTSIDE_PERIOD,
    /** There is nothing in it. */
    BLANK
  }

  /** A file's index stands in a row's line above this many bits. */
  public static final int LINE_BITS = 40;

  private static final int WHEELS_LIMIT = 64;

  /** Of a row that is passed over, and never said. */
  private static final Remark OUTSIDE = Remark.verbatim("");

  private static final int TEXT_SHOWN = 240;

  private final Profiles profiles;
  private final Pages pages;
  private final long fromMillis;
  private final long toMillis;
  private final WildTimes wild;
  private final List<WheelIntake> wheels = new ArrayList<>();
  private final LabelIndex wheelIndex = new LabelIndex();
  private final Map<String, SettingIntake> settings = new LinkedHashMap<>();
  private final WheelIntake.Others others;
  private final IntakeNotes notes = new IntakeNotes();
  private final KeptRows kept = new KeptRows(wheels);
  private @Nullable Columns columns;
  private int files = -1;
  private long rowsRead;
  private long rowsSetAside;
  private @Nullable WheelIntake wheel;
  private @Nullable SetAsideRow setAside;

  /**
   * An intake before its first row.
   *
   * @param profiles what the plant says of its wheels
   * @param pages where the records' columns come from
   * @param from rows cast before this are not kept; null = from the first on
   * @param to rows cast at this time or later are not kept; null = to the last
   */
  public RowIntake(Profiles profiles, Pages pages, @Nullable Instant from, @Nullable Instant to) {
    this(profiles, pages, from, to, WildTimes.notLookedFor());
  }

  /**
   * An intake that knows which rows have wrong times, or looks for such rows.
   *
   * @param wild are set aside, and told of what was found
   */
  public RowIntake(
      Profiles profiles,
      Pages pages,
      @Nullable Instant from,
      @Nullable Instant to,
      WildTimes wild) {
    this.wild = wild;
    this.profiles = profiles;
    this.pages = pages;
    fromMillis = from == null ? Long.MIN_VALUE : clamp(from);
    toMillis = to == null ? Long.MAX_VALUE : clamp(to);
    others =
        new WheelIntake.Others(
            SettingIntake.ofNames("ladle", pages),
            SettingIntake.ofNames("mold_serial", pages),
            SettingIntake.ofNames("disposition", pages),
            SettingIntake.ofNames("defect", pages),
            new ArrayList<>());
  }

  /** From now on rows come from the log with these headings. */
  public void open(LogHeader header) {
    files++;
    Path name = Path.of(header.file()).getFileName();
    columns = new Columns(header, name == null ? header.file() : name.toString());
    notes.header(columns.log, header.warnings());
  }

  /**
   * Takes in one row.
   *
   * @param line its number in the log, from 1
   * @param cells in the order of the headings
   */
  public Outcome accept(long line, List<String> cells) {
    return accept(line, opened().cutter.of(cells));
  }

  /**
   * Takes in one row as it stands in the log.
   *
   * @param line its number in the log, from 1
   * @param text the whole record, with or without its line end
   */
  public Outcome accept(long line, byte[] text) {
    RowCutter cutter = opened().cutter;
    Block block = cutter.newBlock(text.length + 1);
    System.arraycopy(text, 0, block.bytes, 0, text.length);
    block.length = text.length;
    return accept(line, cutter.cut(block));
  }

  private Outcome accept(long line, Block block) {
    if (block.rows == 0) {
      return Outcome.BLANK;
    }
    if (block.rows > 1) {
      throw new IllegalArgumentException("these are " + block.rows + " rows, not one");
    }
    look(block, line);
    Outcome outcome = take(block, 0, line);
    settle(block);
    return outcome;
  }

  /** The last row that was kept, as the engine takes it in. */
  public Anode anode() {
    return lastWheel().lastAnode(others);
  }

  /**
   * The record that the last kept row was added to, as its last row. Its columns may be shorter
   * than the record once further rows were taken in; ask again then.
   */
  public WheelRecord record() {
    return lastWheel().record(others);
  }

  private WheelIntake lastWheel() {
    if (wheel == null) {
      throw new IllegalStateException("no row was kept");
    }
    return wheel;
  }

  /** The last row that was set aside. */
  public SetAsideRow setAside() {
    if (setAside == null) {
      throw new IllegalStateException("no row was set aside");
    }
    return setAside;
  }

  /** The records of all wheels of which rows were kept, by the wheels' names. */
  public List<WheelRecord> records() {
    return wheels.stream()
        .filter(one -> one.rows() > 0)
        .sorted(Comparator.comparing(one -> one.name))
        .map(one -> one.record(others))
        .toList();
  }

  /** Rows taken in, set-aside ones included, blank ones and those outside the period not. */
  public long rowsRead() {
    return rowsRead;
  }

  /** Rows that could not be used. */
  public long rowsSetAside() {
    return rowsSetAside;
  }

  /** Rows outside the period. */
  public long rowsOutside() {
    return notes.outside();
  }

  /** What the reader should know. */
  public List<Remark> warnings() {
    List<SettingIntake> all = new ArrayList<>(settings.values());
    all.addAll(List.of(others.ladle(), others.serial(), others.disposition(), others.defect()));
    return notes.warnings(
        all, settings.keySet(), wheels.stream().filter(one -> one.rows() > 0).toList(), profiles);
  }

  IntakeNotes notes() {
    return notes;
  }

  /**
   * Notes what is odd about how a block is written.
   *
   * @param line of its first row
   */
  void look(Block block, long line) {
    Columns now = opened();
    if (block.notUtf8Line >= 0) {
      notes.notUtf8(now.log, line + block.notUtf8Line);
    }
    if (block.decimalCommas) {
      notes.decimalCommas(now.log);
    }
    if (block.thousands > 0) {
      int row = block.thousandsCell / block.columns;
      int column = block.thousandsCell % block.columns;
      notes.thousands(
          now.log,
          now.headings.getOrDefault(column, ""),
          block.thousands,
          block.cell(row, column),
          line + block.line[row]);
    }
  }

  /** Takes in a row of a block; its record has it once {@link #settle} was called. */
  Outcome take(Block block, int row, long line) {
    Columns now = opened();
    Remark reason = judge(now, block, row, line);
    if (reason == null) {
      rowsRead++;
      return Outcome.KEPT;
    }
    if (reason.equals(OUTSIDE)) {
      return Outcome.OUTSIDE_PERIOD;
    }
    rowsRead++;
    rowsSetAside++;
    setAside = new SetAsideRow(now.log, line, reason, block.text(row, TEXT_SHOWN));
    return Outcome.SET_ASIDE;
  }

  /** Null if the row was kept; {@link #OUTSIDE} the period; else why it is set aside. */
  private @Nullable Remark judge(Columns now, Block block, int row, long line) {
    if (block.hasFault(row)) {
      return Reasons.fault(block, row);
    }
    WheelIntake of = wheel(now, block, row);
    if (of == null) {
      return Reasons.tooManyWheels(WHEELS_LIMIT);
    }
    long time = block.times[row];
    if (time == TimeReader.MISSING || time == TimeReader.UNREADABLE) {
      return Reasons.time(block, row, now.castAt);
    }
    long millis = TimeReader.millis(time);
    if (TimeReader.isLocal(time)) {
      millis = of.clock.utc(millis, of.notBefore());
      notes.wallTime(now.log, line, of.profile);
    }
    if (millis < fromMillis || millis >= toMillis) {
      notes.outside(millis);
      return OUTSIDE;
    }
    long place = ((long) files << LINE_BITS) | line;
    if (wild.isKnown(place, millis)) {
      return Reasons.leap(millis);
    }
    Remark reason = now.mold.find(of, block, row);
    if (reason != null) {
      return reason;
    }
    int turn = 0;
    if (now.turn != null) {
      double given = block.number(row, now.turn.index());
      turn = (int) given;
      if (turn != given) {
        return Reasons.turn(block, row, now.turn);
      }
    }
    reason = now.values.read(of, block, row, line, notes);
    if (reason != null) {
      return reason;
    }
    if (millis < of.notBefore() && !wild.contradict(of, millis)) {
      return Reasons.backwards(of, millis, files);
    }
    if (now.turn != null && now.mold.index >= 0 && of.seen.holds(turn, now.mold.index)) {
      return Reasons.twice(turn, of.molds.name(now.mold.index));
    }
    keep(now, of, block, row, line, millis, turn);
    return null;
  }

  private void keep(
      Columns now, WheelIntake of, Block block, int row, long line, long millis, int given) {
    int mold = now.mold.added(of, block, row);
    int turn = given;
    if (now.turn == null) {
      turn = of.turns.next(mold, of.moldNumber(mold));
    } else {
      of.turns.follow(turn);
      of.seen.add(turn, mold);
    }
    long place = ((long) files << LINE_BITS) | line;
    wild.kept(of, place, millis);
    of.follow(millis, place);
    now.values.keep(kept.size);
    kept.add(of, row, line, millis, turn, mold, place);
    wheel = of;
  }

  /**
   * Adds the rows that were kept to the records, column by column: to be called before the block is
   * cut anew.
   *
   * @param block that they stand in
   */
  void settle(Block block) {
    Columns now = opened();
    if (kept.size > 0) {
      kept.addTo();
      now.values.addTo(kept);
      for (int i = 0; i < now.others.length; i++) {
        now.others[i].add(kept, block, now.otherColumns[i]);
      }
      kept.size = 0;
    }
  }

  private @Nullable WheelIntake wheel(Columns now, Block block, int row) {
    int cell = now.wheel == null ? -1 : row * block.columns + now.wheel.index();
    byte[] bytes = block.bytes;
    int from = cell < 0 ? 0 : block.from[cell];
    int to = cell < 0 ? 0 : block.to[cell];
    int index = wheelIndex.find(bytes, from, to);
    if (index < 0) {
      if (wheels.size() == WHEELS_LIMIT) {
        return null;
      }
      index = wheels.size();
      String name = CellText.decode(bytes, from, to);
      wheels.add(new WheelIntake(index, name, profiles.forWheel(name), pages));
      wheelIndex.put(bytes, from, to, index);
    }
    return wheels.get(index);
  }

  private Columns opened() {
    if (columns == null) {
      throw new IllegalStateException("no log was opened");
    }
    return columns;
  }

  private static long clamp(Instant instant) {
    try {
      return instant.toEpochMilli();
    } catch (ArithmeticException e) {
      return instant.isBefore(Instant.EPOCH) ? Long.MIN_VALUE : Long.MAX_VALUE;
    }
  }

  /** Where things stand in the rows of the log that is open. */
  private final class Columns {
    final String log;
    final Map<Integer, String> headings;
    final RowCutter cutter;
    final LogColumn castAt;
    final @Nullable LogColumn wheel;
    final @Nullable LogColumn turn;
    final MoldCell mold;
    final ValueCells values;
    final SettingIntake[] others;
    final int[] otherColumns;

    Columns(LogHeader header, String log) {
      this.log = log;
      headings = new LinkedHashMap<>();
      header.columns().forEach(column -> headings.put(column.index(), column.heading()));
      cutter = header.cutter(LogBlocks.RECORD_LIMIT);
      castAt = header.needed(Role.CAST_AT);
      wheel = header.find(Role.WHEEL);
      turn = header.find(Role.TURN);
      mold = new MoldCell(header.needed(Role.MOLD));
      values = new ValueCells(header);
      List<SettingIntake> taken = new ArrayList<>();
      List<Integer> at = new ArrayList<>();
      for (LogColumn column : header.columns()) {
        SettingIntake other = other(column);
        if (other != null) {
          taken.add(other);
          at.add(column.index());
        }
      }
      others = taken.toArray(SettingIntake[]::new);
      otherColumns = at.stream().mapToInt(Integer::intValue).toArray();
    }
  }

  private @Nullable SettingIntake other(LogColumn column) {
    return switch (column.role()) {
      case LADLE -> others.ladle();
      case MOLD_SERIAL -> others.serial();
      case DISPOSITION -> others.disposition();
      case DEFECT -> others.defect();
      case NAMED, SETTING ->
          settings.computeIfAbsent(
              column.name().toLowerCase(Locale.ROOT), any -> newSetting(column));
      default -> null;
    };
  }

  private SettingIntake newSetting(LogColumn column) {
    SettingIntake setting =
        column.role() == Role.NAMED
            ? SettingIntake.ofNames(column.name(), pages)
            : SettingIntake.open(column.name(), column.unit(), pages);
    others.settings().add(setting);
    return setting;
  }
}
