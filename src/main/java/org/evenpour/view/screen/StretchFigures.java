package org.evenpour.view.screen;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
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
  private final Background<Optional<StretchReport>> work = new Background<>();
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
    work.cancel();
  }

  private void begin() {
    OpenedLog now = log.get();
    Wanted its = wanted;
    if (now != null && its != null) {
      work.begin(
          isGivenUp -> Optional.ofNullable(StretchReport.of(now, its.wheel(), its.stretch())),
          report -> {
            state = report.isEmpty() ? State.STOPPED : State.DONE;
            onDone.accept(report.orElse(null));
          },
          why -> {
            state = State.STOPPED;
            onDone.accept(null);
            throw new IllegalStateException("a stretch could not be audited", why);
          });
    }
  }
}
