package org.evenpour.feed;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.evenpour.intake.LogHeader;

/**
 * Which rows were handed on before, by hash: where a log is read anew from its beginning, those
 * that still stand in it are not handed on once more, to be set aside each time as poured twice.
 *
 * <p>FNV-1a of 64 bits, of headings and row: two of a million rows are taken for one with a chance
 * of 3 in 100 million. Some 16 bytes a row. Owned by the thread that follows the log.
 */
final class HandedRows {
  private static final long BASIS = 0xcbf29ce484222325L;
  private static final long PRIME = 0x100000001b3L;

  private long[] table = new long[1 << 12];
  private int size;
  private long headings = BASIS;
  private long since;
  private long repeated;

  /** Rows follow that stand under these headings. */
  void header(LogHeader header) {
    headings = hash(BASIS, header.columns().toString().getBytes(StandardCharsets.UTF_8));
  }

  /** The log is read from its beginning again. */
  void again() {
    repeated = Math.max(repeated, since);
    since = 0;
  }

  /**
   * Whether a row is to be handed on: it is new, or stands further back than all that was read
   * before, where the same row once more is one too many and to be told.
   */
  boolean isNew(byte[] row) {
    since++;
    boolean isAdded = add(hash(headings, row));
    return isAdded || since > repeated;
  }

  private static long hash(long from, byte[] bytes) {
    long hash = from;
    int end = bytes.length;
    // A last line may have got its line end since.
    while (end > 0 && (bytes[end - 1] == '\n' || bytes[end - 1] == '\r')) {
      end--;
    }
    for (int i = 0; i < end; i++) {
      hash = (hash ^ (bytes[i] & 0xff)) * PRIME;
    }
    return hash == 0 ? 1 : hash; // 0 marks a free place
  }

  private boolean add(long hash) {
    if (2 * size > table.length) {
      long[] old = table;
      table = new long[2 * old.length];
      size = 0;
      Arrays.stream(old).filter(one -> one != 0).forEach(this::put);
    }
    return put(hash);
  }

  private boolean put(long hash) {
    int mask = table.length - 1;
    int at = (int) (hash ^ hash >>> 32) & mask;
    while (table[at] != 0) {
      if (table[at] == hash) {
        return false;
      }
      at = at + 1 & mask;
    }
    table[at] = hash;
    size++;
    return true;
  }
}
