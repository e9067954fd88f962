package org.evenpour.intake;

/**
 * Remembers which molds were cast in which turns of a wheel: one bit for each, 64 molds of a turn
 * in one word. Open addressing; owned by the thread that reads the log.
 */
final class SeenPours {
  private static final int WORD_BITS = 5;

  private long[] keys = new long[1024];
  private long[] words = new long[1024];
  private int size;
  private int last;

  /** Whether this mold was cast in this turn. */
  boolean holds(int turn, int mold) {
    long key = key(turn, mold);
    int at = find(key);
    return words[at] != 0 && ((words[at] >>> mold) & 1) != 0;
  }

  /** Remembers that this mold was cast in this turn. */
  void add(int turn, int mold) {
    if (size * 2 >= keys.length) {
      grow();
    }
    long key = key(turn, mold);
    int at = find(key);
    if (words[at] == 0) {
      keys[at] = key;
      size++;
    }
    words[at] |= 1L << mold;
  }

  private int find(long key) {
    if (keys[last] == key && words[last] != 0) {
      return last;
    }
    int at = slot(key);
    // A word that is used has a bit set.
    while (words[at] != 0 && keys[at] != key) {
      at = (at + 1) & (keys.length - 1);
    }
    last = at;
    return at;
  }

  private void grow() {
    long[] oldKeys = keys;
    long[] oldWords = words;
    keys = new long[oldKeys.length * 2];
    words = new long[keys.length];
    last = 0;
    for (int i = 0; i < oldKeys.length; i++) {
      if (oldWords[i] != 0) {
        int at = slot(oldKeys[i]);
        while (words[at] != 0) {
          at = (at + 1) & (keys.length - 1);
        }
        keys[at] = oldKeys[i];
        words[at] = oldWords[i];
      }
    }
  }

  private static long key(int turn, int mold) {
    return ((long) turn << WORD_BITS) | (mold >>> 6);
  }

  private int slot(long key) {
    // Fibonacci hashing (Knuth, The Art of Computer Programming 3, 6.4)
    return (int) ((key * 0x9E3779B97F4A7C15L) >>> 32) & (keys.length - 1);
  }
}
