package org.evenpour.feed;

import java.time.Instant;
import org.evenpour.intake.LogHeader;
import org.evenpour.words.Remark;

/**
 * What a plant's rows come through while it casts: a growing log, or a connection. It gives
 * headings and rows as they would stand in a log, so that one judgement serves them all.
 *
 * <p>{@link #start} and {@link #close} are called by one owner, once each; everything that is heard
 * comes on the feed's own thread.
 */
public interface Feed extends AutoCloseable {

  /** What people call its source: a file's name, an address. */
  String name();

  /**
   * Whether rows that nobody takes yet wait at the source. Where they do, the listener may let the
   * feed wait; where they do not, it must take each row at once or count it as lost.
   */
  boolean keepsRows();

  /** Begins, on a thread of its own. */
  void start(Listener listener);

  /** Stops and waits until the thread is done; nothing is heard after that. */
  @Override
  void close();

  /** Hears what comes. */
  interface Listener {

    /** Rows follow that stand under these headings. */
    void header(LogHeader header);

    /**
     * A row came.
     *
     * @param line its number at the source, from 1
     * @param text as it would stand in a log
     * @param arrivedAt when it came; for what was there before, when the source last grew
     */
    void row(long line, byte[] text, Instant arrivedAt);

    /**
     * Everything that there is was handed over. Told again and again while nothing comes, so that
     * silence at the source and silence of the feed itself can be told apart.
     */
    void caughtUp(Instant at);

    /**
     * The source cannot be read now; the feed goes on trying.
     *
     * @param what is wrong and what would mend it
     */
    void trouble(Remark what);

    /** The source can be read again. */
    void recovered();
  }
}
