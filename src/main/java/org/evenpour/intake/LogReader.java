package org.evenpour.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.Pages;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Reads whole logs. The calling thread, which owns this, reads blocks and takes in their rows in
 * order; others cut the blocks into cells meanwhile, and however many they are, the record is the
 * same.
 */
public final class LogReader {
  private static final int CUTTERS =
      Math.max(2, Math.min(8, Runtime.getRuntime().availableProcessors()));

  /** For each cutter: one that is cut, one that waits, one that is taken in or read. */
  private static final int BLOCKS_AT_ONCE = 3;

  private final Profiles profiles;
  private final RowIntake intake;
  private final SetAside setAside;
  private final Progress progress;
  private final ExecutorService cutters;
  private final int blocksAtOnce;
  private final List<SetAsideRow> kept = new ArrayList<>();
  private @Nullable SetAsideRow firstOfLog;
  private long bytesBefore;
  private long bytesTotal;

  private LogReader(
      Profiles profiles,
      RowIntake intake,
      SetAside setAside,
      Progress progress,
      ExecutorService cutters,
      int blocksAtOnce) {
    this.profiles = profiles;
    this.intake = intake;
    this.setAside = setAside;
    this.progress = progress;
    this.cutters = cutters;
    this.blocksAtOnce = blocksAtOnce;
  }

  /**
   * Reads logs, in the order of their first usable rows.
   *
   * @param logs in any order
   * @param profiles what the plant says of its wheels
   * @param events to go with the record
   * @param from rows cast before this are not kept; null = from the first on
   * @param to rows cast at this time or later are not kept; null = to the last
   * @param setAside where rows that cannot be used are written; the caller completes it
   * @param progress is told how far reading has come
   * @throws IntakeException if a log cannot be read or has no usable row
   */
  public static CastingRecord read(
      List<Path> logs,
      Profiles profiles,
      List<CastingEvent> events,
      @Nullable Instant from,
      @Nullable Instant to,
      SetAside setAside,
      Progress progress)
      throws IntakeException {
    return read(logs, profiles, events, from, to, setAside, progress, CUTTERS);
  }

  /** The same with so many threads that cut. */
  static CastingRecord read(
      List<Path> logs,
      Profiles profiles,
      List<CastingEvent> events,
      @Nullable Instant from,
      @Nullable Instant to,
      SetAside setAside,
      Progress progress,
      int cutting)
      throws IntakeException {
    List<Path> ordered = ordered(logs, profiles);
    WildTimes wild = WildTimes.lookedFor();
    while (true) {
      CastingRecord record =
          read(
              ordered,
              profiles,
              events,
              new RowIntake(profiles, Pages.ofMemory(), from, to, wild),
              setAside,
              progress,
              cutting);
      if (!wild.isAnyFound()) {
        return record;
      }
      setAside.anew();
      wild = wild.forNextReading();
    }
  }

  private static CastingRecord read(
      List<Path> ordered,
      Profiles profiles,
      List<CastingEvent> events,
      RowIntake intake,
      SetAside setAside,
      Progress progress,
      int cutting)
      throws IntakeException {
    ExecutorService cutters = Executors.newFixedThreadPool(cutting, LogReader::cutterThread);
    LogReader reader =
        new LogReader(profiles, intake, setAside, progress, cutters, BLOCKS_AT_ONCE * cutting);
    try {
      for (Path log : ordered) {
        reader.bytesTotal += size(log);
      }
      for (Path log : ordered) {
        reader.read(log);
      }
    } finally {
      cutters.shutdownNow();
    }
    List<WheelRecord> wheels = intake.records();
    if (wheels.isEmpty()) {
      throw IntakeException.ofFile(
          ordered.get(0).toString(),
          "log.period",
          intake.notes().outsideFirst(),
          intake.notes().outsideLast());
    }
    List<Remark> warnings = new ArrayList<>(intake.warnings());
    warnings.addAll(EventsReader.unknown(events, wheels));
    return new CastingRecord(
        ordered.stream().map(LogReader::name).toList(),
        wheels,
        events,
        intake.rowsRead(),
        intake.rowsSetAside(),
        reader.kept,
        warnings);
  }

  private void read(Path log) throws IntakeException {
    setAside.begin(log);
    long readBefore = intake.rowsRead();
    long setAsideBefore = intake.rowsSetAside();
    long outsideBefore = intake.rowsOutside();
    firstOfLog = null;
    try (LogBlocks blocks = LogBlocks.open(log)) {
      RowCutter cutter = open(log, blocks, intake, profiles);
      cut(log, blocks, cutter);
      bytesBefore += blocks.bytesRead();
    } catch (UncheckedIOException e) {
      throw IntakeException.noRoom(log, e);
    }
    long read = intake.rowsRead() - readBefore;
    boolean noneKept = read == intake.rowsSetAside() - setAsideBefore;
    if (noneKept && intake.rowsOutside() == outsideBefore) {
      throw nothingUsable(log);
    }
  }

  /** Reads the headings and opens the log for its rows. */
  private static RowCutter open(Path log, LogBlocks blocks, RowIntake intake, Profiles profiles)
      throws IntakeException {
    LogBlocks.Heading heading = blocks.heading();
    LogHeader header = LogHeader.read(log.toString(), heading.line(), heading.text(), profiles);
    blocks.separate((byte) header.separator());
    intake.open(header);
    return header.cutter(LogBlocks.RECORD_LIMIT);
  }

  private void cut(Path log, LogBlocks blocks, RowCutter cutter) throws IntakeException {
    ArrayDeque<Block> free = new ArrayDeque<>();
    ArrayDeque<Future<Block>> cutting = new ArrayDeque<>();
    boolean more = true;
    long line = blocks.firstLine();
    while (more || !cutting.isEmpty()) {
      while (more && cutting.size() < blocksAtOnce) {
        Block block = free.isEmpty() ? cutter.newBlock(LogBlocks.READ_BYTES) : free.remove();
        more = blocks.next(block);
        if (more) {
          cutting.add(cutters.submit(() -> cutter.cut(block)));
        }
      }
      if (!cutting.isEmpty()) {
        Block block = await(log, cutting.remove());
        take(log, block, line);
        line += block.lines;
        free.add(block);
        progress.at(bytesBefore + blocks.bytesRead(), Math.max(bytesTotal, bytesBefore));
      }
    }
  }

  private void take(Path log, Block block, long line) throws IntakeException {
    intake.look(block, line);
    for (int row = 0; row < block.rows; row++) {
      if (intake.take(block, row, line + block.line[row]) == RowIntake.Outcome.SET_ASIDE) {
        SetAsideRow aside = intake.setAside();
        setAside.add(log, aside.line(), aside.reason(), block.text(row, Integer.MAX_VALUE));
        if (kept.size() < CastingRecord.SET_ASIDE_KEPT) {
          kept.add(aside);
        }
        if (firstOfLog == null) {
          firstOfLog = aside;
        }
      }
    }
    intake.settle(block);
  }

  private static Block await(Path log, Future<Block> cut) throws IntakeException {
    try {
      return cut.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw IntakeException.ofFile(log.toString(), "log.interrupted");
    } catch (ExecutionException e) {
      throw new IllegalStateException("a block of " + log + " could not be cut", e.getCause());
    }
  }

  private IntakeException nothingUsable(Path log) {
    SetAsideRow aside = firstOfLog;
    return aside == null
        ? IntakeException.ofFile(log.toString(), "log.rows")
        : new IntakeException(log.toString(), aside.line(), 0, "log.none", aside.reason());
  }

  private static List<Path> ordered(List<Path> logs, Profiles profiles) throws IntakeException {
    if (logs.size() < 2) {
      if (logs.isEmpty()) {
        throw new IllegalArgumentException("no log");
      }
      return logs;
    }
    Set<Path> files = new HashSet<>();
    Map<Path, Long> firsts = new HashMap<>();
    for (Path log : logs) {
      try {
        if (!files.add(log.toRealPath())) {
          throw IntakeException.ofFile(log.toString(), "log.twice");
        }
      } catch (IOException e) {
        throw IntakeException.unreadable(log, e);
      }
      firsts.put(log, firstUsableMillis(log, profiles));
    }
    return logs.stream()
        .sorted(
            Comparator.comparing((Path log) -> firsts.getOrDefault(log, Long.MAX_VALUE))
                .thenComparing(Path::toString))
        .toList();
  }

  private static long firstUsableMillis(Path log, Profiles profiles) throws IntakeException {
    RowIntake intake = new RowIntake(profiles, Pages.ofMemory(), null, null);
    try (LogBlocks blocks = LogBlocks.open(log)) {
      RowCutter cutter = open(log, blocks, intake, profiles);
      Block block = cutter.newBlock(LogBlocks.READ_BYTES);
      while (blocks.next(block)) {
        cutter.cut(block);
        for (int row = 0; row < block.rows; row++) {
          if (intake.take(block, row, 1) == RowIntake.Outcome.KEPT) {
            intake.settle(block);
            return intake.record().castAtMillis().get(0);
          }
        }
      }
    }
    return Long.MAX_VALUE;
  }

  private static long size(Path log) throws IntakeException {
    try {
      return Files.size(log);
    } catch (IOException e) {
      throw IntakeException.unreadable(log, e);
    }
  }

  private static String name(Path log) {
    Path name = log.getFileName();
    return name == null ? log.toString() : name.toString();
  }

  private static Thread cutterThread(Runnable work) {
    Thread thread = new Thread(work, "evenpour-cutter");
    thread.setDaemon(true);
    return thread;
  }
}
