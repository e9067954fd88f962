package org.evenpour.plant;

import java.time.Instant;
import java.util.Locale;
import org.evenpour.findings.AuditReport.Signal;

/**
 * Somebody saw a signal.
 *
 * @param at when they said so
 * @param signal which, as {@link #name} names it
 * @param sinceTurn its onset, as it was estimated then
 * @param turn the last turn to which it held then
 * @param who their name; empty where they did not say
 * @param note what they found or did
 */
public record Seen(Instant at, String signal, int sinceTurn, int turn, String who, String note) {

  /** A signal that is seen now. */
  public static Seen of(Instant at, Signal signal, String who, String note) {
    return new Seen(at, name(signal), signal.sinceTurn(), signal.lastTurn(), who, note);
  }

  /**
   * What a signal is called in the file: wheel, characteristic, where and which way. Its number may
   * change from one audit to the next; this does not.
   */
  public static String name(Signal signal) {
    String where =
        switch (signal.scope()) {
          case WHEEL -> "wheel";
          case SIDE -> "ladle side " + signal.side();
          case MOLD -> "mold " + signal.mold();
          case POUR -> "anode of mold " + signal.mold();
        };
    return (signal.wheel().isEmpty() ? "" : signal.wheel() + ", ")
        + signal.characteristic()
        + ", "
        + where
        + ", "
        + signal.direction().name().toLowerCase(Locale.ROOT);
  }

  /**
   * Whether this is about that signal: it has the same name, and held at the turn at which it was
   * seen. Its onset may be estimated anew as turns come.
   */
  public boolean isOf(Signal other) {
    return signal.equals(name(other)) && other.sinceTurn() <= turn && sinceTurn <= other.lastTurn();
  }
}
