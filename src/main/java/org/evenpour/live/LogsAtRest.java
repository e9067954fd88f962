package org.evenpour.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Causes;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingRecord;
import org.evenpour.feed.FileStamp;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Owns the record of logs that do not grow: a feed that has ended. They are read whole, which is
 * faster than row by row, and audited once; what comes of it is a {@link Snapshot}, as of a log
 * that grows.
 *
 * <p>Every second it looks at the files. Another version of what lies beside the logs is taken as
 * {@link PlantNow} does; a log that has changed all the same is read again, not oftener than every
 * few seconds. Only what a change asks for is done again: for limits and gauges the audit, for
 * marked causes only the joining of them. All but the first reading is done on one thread, even
 * where streams run in parallel: the screen needs a processor.
 *
 * <p>{@link #snapshot}, {@link #onSnapshot}, {@link #percent}, {@link #failure} and {@link #close}
 * may be called by any thread and never wait.
 */
public final class LogsAtRest implements AutoCloseable {
  private static final long LOOK_EVERY_MILLIS = 1_000;

  /** A choice: figures need not be newer than this. */
  private static final long LEAST_PAUSE_MILLIS = 3_000;

  private static final long LONGEST_PAUSE_MILLIS = 60_000;

  /** A choice: a million rows, which take some three seconds to read, get a pause of eight. */
  private static final int ROWS_A_MILLI = 200;

  private final PlantFiles files;
  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
  private final CountDownLatch closing = new CountDownLatch(1);
  private volatile Snapshot latest;
  private volatile int percent;
  private volatile @Nullable Throwable failure;

  /** What a record was made of. */
  private record Made(
      List<@Nullable FileStamp> logs, Profiles profiles, RecordNow now, long nextReadingNanos) {}

  /**
   * @param files at least one log
   */
  public LogsAtRest(PlantFiles files) {
    this.files = files;
    latest =
        Snapshot.before(
            String.join(", ", files.logs().stream().map(log -> "" + log.getFileName()).toList()));
  }

  /** Begins; to be called once. */
  public void start() {
    Thread first = new Thread(this::begin, "evenpour-logs");
    first.setDaemon(true);
    first.start();
  }

  /** What is known now. */
  public Snapshot snapshot() {
    return latest;
  }

  /**
   * Tells, on a thread of this one, whenever there is something new: a snapshot, progress or a
   * failure.
   *
   * @return ends it
   */
  public Runnable onSnapshot(Runnable listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  /** How far the first reading has come; 100 when it is audited, and from then on. */
  public int percent() {
    return percent;
  }

  /** Why the logs could not be read, or not be read again; null where they could. */
  public @Nullable Throwable failure() {
    return failure;
  }

  /** What is being read is given up at the next block, and nothing is told any more. */
  @Override
  public void close() {
    listeners.clear();
    closing.countDown();
  }

  private void begin() {
    try {
      PlantNow beside = new PlantNow(files);
      Made first = made(beside, null);
      publish(first, beside);
      ForkJoinPool one = new ForkJoinPool(1);
      one.execute(() -> watch(beside, first));
      one.shutdown();
    } catch (IntakeException | IOException | RuntimeException | Error e) {
      failed(e);
    }
  }

  /**
   * Reads and audits once, on the calling thread.
   *
   * @throws CancellationException if it was closed
   */
  public RecordNow read() throws IntakeException, IOException {
    return made(new PlantNow(files), null).now();
  }

  private void watch(PlantNow beside, Made first) {
    Made made = first;
    try {
      while (!closing.await(LOOK_EVERY_MILLIS, TimeUnit.MILLISECONDS)) {
        try {
          beside.look();
          made = made(beside, made);
          publish(made, beside);
        } catch (IntakeException | IOException | RuntimeException | Error e) {
          failed(e);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt(); // nobody here interrupts; whoever does wants an end
    }
  }

  /** What there is to be known now; the same object where nothing has changed. */
  private Made made(PlantNow beside, @Nullable Made before) throws IntakeException, IOException {
    List<@Nullable FileStamp> logs = new ArrayList<>();
    for (Path log : files.logs()) {
      logs.add(FileStamp.of(log));
    }
    PlantRecords plant = beside.records();
    if (before == null
        || !beside.profiles().equals(before.profiles())
        || !beside.events().equals(before.now().record().events())
        || !logs.equals(before.logs()) && System.nanoTime() - before.nextReadingNanos() >= 0) {
      CastingRecord record = rows(beside);
      stopIfClosed();
      return made(logs, beside, new RecordNow(record, Audit.run(record, plant), plant));
    }
    RecordNow now = before.now();
    if (plant.equals(now.plant())) {
      return before;
    }
    boolean isMarkedOnly =
        plant.book().equals(now.plant().book())
            && plant.gauges().equals(now.plant().gauges())
            && plant.advice().equals(now.plant().advice());
    AuditReport report =
        isMarkedOnly ? Causes.joined(now.report(), plant.marks()) : Audit.run(now.record(), plant);
    return made(before.logs(), beside, new RecordNow(now.record(), report, plant));
  }

  private static Made made(List<@Nullable FileStamp> logs, PlantNow beside, RecordNow now) {
    long pause =
        Math.min(LONGEST_PAUSE_MILLIS, LEAST_PAUSE_MILLIS + now.record().rowsRead() / ROWS_A_MILLI);
    return new Made(
        logs, beside.profiles(), now, System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(pause));
  }

  private CastingRecord rows(PlantNow beside) throws IntakeException {
    try (SetAside nowhere = SetAside.nowhere()) {
      return LogReader.read(
          files.logs(),
          beside.profiles(),
          beside.events(),
          null,
          null,
          nowhere,
          (done, total) -> {
            stopIfClosed();
            come(total == 0 ? 0 : (int) Math.min(100, done * 100 / total));
          });
    }
  }

  private void come(int far) {
    if (far > percent) {
      percent = far;
      listeners.forEach(Runnable::run);
    }
  }

  private void stopIfClosed() {
    if (closing.getCount() == 0) {
      throw new CancellationException();
    }
  }

  private void failed(Throwable why) {
    if (closing.getCount() > 0) {
      failure = why;
      listeners.forEach(Runnable::run);
    }
  }

  @SuppressWarnings("ReferenceEquality") // the very same record; to compare it would cost more
  private void publish(Made made, PlantNow beside) {
    Remark trouble = beside.trouble();
    boolean isSame =
        made.now() == latest.record()
            && failure == null
            && Objects.equals(trouble, latest.plantTrouble());
    if (!isSame) {
      failure = null;
      latest = latest.atRest(made.now(), trouble);
      listeners.forEach(Runnable::run);
    }
  }
}
