package org.evenpour.view.screen;

import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.SwingWorker;
import javax.swing.Timer;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Selection;
import org.evenpour.view.model.Stretch;
import org.evenpour.view.model.StretchReport;
import org.jspecify.annotations.Nullable;

/**
 * Audits the chosen stretch by itself, in the background, once the choice has come to rest. Owned
 * by the event thread.
 */
final class StretchFigures {
  /** A choice: so long after the last move of the stretch. */
  private static final int REST_MILLIS = 300;

  /** Of what the figures are just now. */
  enum State {
    /** Of the whole log, for no stretch is chosen. */
    WHOLE,
    /** Still of the whole log; those of the stretch are being computed. */
    COMPUTING,
    /** Of the stretch. */
    DONE,
    /** Of the whole log, for nobody wants those of the stretch, or there are none. */
    STOPPED
  }

  private final Selection selection;
  private final Supplier<@Nullable OpenedLog> log;
  private final Consumer<@Nullable StretchReport> onDone;
  private final Timer rest = new Timer(REST_MILLIS, event -> begin());
  private @Nullable Wanted wanted;
  private @Nullable Work work;
  private State state = State.WHOLE;

  private record Wanted(String wheel, Stretch stretch) {}

  /**
   * @param log what is open
   * @param onDone takes the audit, or null where there is none, and shows it
   */
  StretchFigures(
      Selection selection,
      Supplier<@Nullable OpenedLog> log,
      Consumer<@Nullable StretchReport> onDone) {
    this.selection = selection;
    this.log = log;
    this.onDone = onDone;
    rest.setRepeats(false);
  }

  State state() {
    return state;
  }

  /** Looks what is chosen. */
  void look() {
    Stretch stretch = selection.stretch();
    if (stretch == null) {
      cancel();
      wanted = null;
      state = State.WHOLE;
      return;
    }
    Wanted now = new Wanted(selection.wheel(), stretch);
    if (!now.equals(wanted)) {
      cancel();
      wanted = now;
      state = State.COMPUTING;
      rest.restart();
    }
  }

  /** The log was read again: what is shown stays until it is computed anew. */
  void again() {
    if (wanted != null && state != State.STOPPED) {
      cancel();
      rest.restart();
    }
  }

  /** Another log is shown, or another reading of it: a stretch has no figures yet. */
  void forget() {
    cancel();
    wanted = null;
  }

  /** Leaves it at the whole log's figures until another stretch is chosen. */
  void stop() {
    cancel();
    state = State.STOPPED;
    onDone.accept(null);
  }

  /** Computes nothing any more. */
  void cancel() {
    rest.stop();
    Work now = work;
    if (now != null) {
      now.cancel(false);
      work = null;
    }
  }

  private void begin() {
    OpenedLog now = log.get();
    Wanted its = wanted;
    if (now != null && its != null) {
      Work begun = new Work(now, its);
      work = begun;
      begun.execute();
    }
  }

  /** One audit; what comes of it is let go where it was cancelled. */
  private final class Work extends SwingWorker<@Nullable StretchReport, Void> {
    private final OpenedLog its;
    private final Wanted of;

    Work(OpenedLog its, Wanted of) {
      this.its = its;
      this.of = of;
    }

    @Override
    protected @Nullable StretchReport doInBackground() {
      return StretchReport.of(its, of.wheel(), of.stretch());
    }

    @Override
    protected void done() {
      if (work != this) {
        return;
      }
      work = null;
      try {
        StretchReport report = get();
        state = report == null ? State.STOPPED : State.DONE;
        onDone.accept(report);
      } catch (CancellationException none) {
        state = State.STOPPED;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        state = State.STOPPED;
        onDone.accept(null);
        throw new IllegalStateException("a stretch could not be audited", e.getCause());
      }
    }
  }
}
