package org.evenpour.view.screen;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import javax.swing.SwingWorker;
import javax.swing.Timer;
import org.evenpour.intake.Progress;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.OpenedLog;
import org.jspecify.annotations.Nullable;

/**
 * Reads opened files again when one of them has changed, in the background and not oftener than
 * every few seconds. Owned by the event thread.
 */
final class Renewal {
  /** A choice: figures need not be newer than this. */
  private static final int LEAST_PAUSE_MILLIS = 3000;

  /** A choice: a million rows, which take some three seconds to read, get a pause of eight. */
  private static final int ROWS_A_MILLI = 200;

  private final Consumer<OpenedLog> renewed;
  private final Consumer<Throwable> failed;
  private final Timer timer = new Timer(LEAST_PAUSE_MILLIS, event -> begin());
  private PlantFiles sources = PlantFiles.NONE;
  private List<Long> stamp = List.of();
  private @Nullable Look work;

  /**
   * @param renewed is told what was read
   * @param failed is told why files that have changed could not be read
   */
  Renewal(Consumer<OpenedLog> renewed, Consumer<Throwable> failed) {
    this.renewed = renewed;
    this.failed = failed;
    timer.setRepeats(false);
  }

  /**
   * Looks after these files from now on.
   *
   * @param readAs their stamp before they were read
   * @param rows how many there were
   */
  void watch(PlantFiles its, List<Long> readAs, long rows) {
    stop();
    sources = its;
    stamp = readAs;
    pause(rows);
  }

  private void pause(long rows) {
    timer.setInitialDelay((int) Math.min(60_000, LEAST_PAUSE_MILLIS + rows / ROWS_A_MILLI));
    timer.restart();
  }

  /** Looks after nothing. */
  void stop() {
    timer.stop();
    Look now = work;
    if (now != null) {
      now.cancel(false);
      work = null;
    }
  }

  private void begin() {
    Look begun = new Look(sources, stamp);
    work = begun;
    begun.execute();
  }

  /** What was read, and the files' stamp before. */
  private record Read(List<Long> stamp, OpenedLog log) {}

  /** Looks once, and reads where it must. */
  private final class Look extends SwingWorker<@Nullable Read, Void> {
    private final PlantFiles its;
    private final List<Long> before;

    Look(PlantFiles its, List<Long> before) {
      this.its = its;
      this.before = before;
    }

    @Override
    protected @Nullable Read doInBackground() throws Exception {
      List<Long> now = its.stamp();
      if (now.equals(before)) {
        return null;
      }
      // Where its streams run in parallel, they do on this one thread: the screen needs a
      // processor.
      ForkJoinPool beside = new ForkJoinPool(1);
      FutureTask<Read> read =
          new FutureTask<>(
              () -> new Read(now, OpenedLog.read(its, Progress.NONE, this::isCancelled)));
      try {
        beside.execute(read);
        return read.get();
      } catch (ExecutionException e) {
        throw e.getCause() instanceof Exception why ? why : e;
      } finally {
        beside.shutdown();
      }
    }

    @Override
    protected void done() {
      if (work != this) {
        return;
      }
      work = null;
      long rows = 0;
      try {
        Read read = get();
        if (read != null) {
          stamp = read.stamp();
          rows = read.log().record().rowsRead();
          renewed.accept(read.log());
        }
      } catch (CancellationException none) {
        return;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        failed.accept(e.getCause());
      }
      pause(rows);
    }
  }
}
