package org.evenpour.live;

import java.lang.System.Logger.Level;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * How judgements that failed are told, and when they are tried again: with one anode more, then
 * with two, four and so on, up to {@link #MOST}, for an audit that fails in seconds would else fail
 * at every anode.
 *
 * <p>The fault itself goes to the program's log, for whoever mends it; people read what it means.
 *
 * <p>Owned by the engine's thread.
 */
final class Unjudged {
  /** A choice: about a turn. */
  static final int MOST = 32;

  private static final System.Logger LOG = System.getLogger("org.evenpour.live");

  private long anodes;
  private long tryAt;
  private int patience;
  private @Nullable Remark told;

  /** An anode was cast. */
  void anode() {
    anodes++;
  }

  /** A judgement failed. */
  void failed(Throwable fault) {
    LOG.log(Level.WARNING, "a judgement of " + anodes + " anodes failed", fault);
    patience = Math.min(MOST, Math.max(1, 2 * patience));
    tryAt = anodes + patience;
    told = Remark.of("live.unjudged", anodes);
  }

  /** What is judged by has changed. */
  void tryNow() {
    tryAt = anodes;
  }

  /** Whether there are anodes enough to try again. */
  boolean isPatient() {
    return anodes >= tryAt;
  }

  /** All that was to be judged is. */
  void judged() {
    told = null;
    patience = 0;
    tryAt = 0;
  }

  /** What people should know; null where nothing failed since all was judged. */
  @Nullable Remark told() {
    return told;
  }
}
