package org.evenpour.view.screen;

import java.util.concurrent.ExecutionException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javax.swing.SwingWorker;
import org.jspecify.annotations.Nullable;

/**
 * Work on a worker thread, whose outcome is taken on the event thread. The last begun counts: what
 * comes of one that was given up, or followed by another, is let go. Owned by the event thread.
 */
final class Background<T> {
  private @Nullable Running running;

  /** What is to be done; on a worker thread. */
  interface Work<T> {
    /**
     * @param isGivenUp whether nobody waits any more
     */
    T done(BooleanSupplier isGivenUp) throws Exception;
  }

  boolean isBusy() {
    return running != null;
  }

  /**
   * Begins, and gives up what was begun before.
   *
   * @param done takes what came of it
   * @param failed takes why nothing did
   */
  void begin(Work<T> work, Consumer<T> done, Consumer<Throwable> failed) {
    cancel();
    Running begun = new Running(work, done, failed);
    running = begun;
    begun.execute();
  }

  /** Gives up what was begun; it ends by itself. */
  void cancel() {
    Running now = running;
    running = null;
    if (now != null) {
      now.cancel(false);
    }
  }

  private final class Running extends SwingWorker<T, Void> {
    private final Work<T> work;
    private final Consumer<T> took;
    private final Consumer<Throwable> failed;

    Running(Work<T> work, Consumer<T> took, Consumer<Throwable> failed) {
      this.work = work;
      this.took = took;
      this.failed = failed;
    }

    @Override
    protected T doInBackground() throws Exception {
      return work.done(this::isCancelled);
    }

    @Override
    protected void done() {
      if (running != this) {
        return;
      }
      running = null;
      try {
        took.accept(get());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        failed.accept(e.getCause());
      }
    }
  }
}
