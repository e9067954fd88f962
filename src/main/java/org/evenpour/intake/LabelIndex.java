package org.evenpour.intake;

import java.util.Arrays;

/**
 * Finds a label's index by the bytes of its cell, without making text of them. Open addressing;
 * owned by the thread that reads the log.
 */
final class LabelIndex {
  private byte[][] keys = new byte[64][];
  private int[] hashes = new int[64];
  private int[] values = new int[64];
  private int size;
  // Wheel, charge and ladle mostly repeat the row before.
  private int last;

  /** The index of a label; −1 if these bytes are new. */
  int find(byte[] bytes, int from, int to) {
    byte[] key = keys[last];
    if (key != null && Arrays.equals(key, 0, key.length, bytes, from, to)) {
      return values[last];
    }
    int hash = hash(bytes, from, to);
    for (int at = slot(hash); ; at = (at + 1) & (keys.length - 1)) {
      key = keys[at];
      if (key == null) {
        return -1;
      }
      if (hashes[at] == hash && Arrays.equals(key, 0, key.length, bytes, from, to)) {
        last = at;
        return values[at];
      }
    }
  }

  /** Remembers bytes that are new. */
  void put(byte[] bytes, int from, int to, int value) {
    if (size * 2 >= keys.length) {
      grow();
    }
    insert(Arrays.copyOfRange(bytes, from, to), hash(bytes, from, to), value);
    size++;
  }

  private void grow() {
    byte[][] oldKeys = keys;
    int[] oldHashes = hashes;
    int[] oldValues = values;
    keys = new byte[oldKeys.length * 2][];
    hashes = new int[keys.length];
    values = new int[keys.length];
    last = 0;
    for (int i = 0; i < oldKeys.length; i++) {
      if (oldKeys[i] != null) {
        insert(oldKeys[i], oldHashes[i], oldValues[i]);
      }
    }
  }

  private void insert(byte[] key, int hash, int value) {
    int at = slot(hash);
    while (keys[at] != null) {
      at = (at + 1) & (keys.length - 1);
    }
    keys[at] = key;
    hashes[at] = hash;
    values[at] = value;
  }

  private int slot(int hash) {
    return hash & (keys.length - 1);
  }

  private static int hash(byte[] bytes, int from, int to) {
    int hash = 1;
    for (int i = from; i < to; i++) {
      hash = hash * 31 + bytes[i];
    }
    return hash ^ (hash >>> 15);
  }
}
