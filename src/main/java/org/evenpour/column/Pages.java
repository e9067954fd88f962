package org.evenpour.column;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Hands out the pages that a record's columns are made of: from memory until its share is used, and
 * from a mapped temporary file after that, so that a log larger than memory's share is still read
 * whole. Pages lie outside the heap, where no garbage collection walks or moves them.
 *
 * <p>Owned by the thread that reads the log; pages once filled may be read by any thread.
 */
public final class Pages {

  /** Values in a page. */
  public static final int LENGTH = 1 << 15;

  /** Values in a column's first page to begin with: most columns of many wheels hold few. */
  private static final int FIRST_LENGTH = LENGTH >> 6;

  private static final int GROWTH = 8;
  private static final int MAPPED_PAGES = 512;

  private final long shareBytes;
  private long usedBytes;
  private ByteBuffer mapped = ByteBuffer.allocate(0);
  private long mappedBytes;

  /**
   * @param shareBytes how much memory the pages may take
   */
  public Pages(long shareBytes) {
    this.shareBytes = shareBytes;
  }

  /** Pages that may take as much as a third of the heap that this process may grow to. */
  public static Pages ofMemory() {
    return new Pages(Runtime.getRuntime().maxMemory() / 3);
  }

  /** How many bytes lie in the temporary file. */
  public long mappedBytes() {
    return mappedBytes;
  }

  /** A first page, which may stay nearly empty: small. */
  ByteBuffer first(int bytesPerValue) {
    return small(FIRST_LENGTH * bytesPerValue);
  }

  /**
   * A page instead of a first one that is full.
   *
   * @param values that the full one holds
   */
  ByteBuffer larger(int values, int bytesPerValue) {
    usedBytes -= (long) values * bytesPerValue;
    int length = Math.min(LENGTH, GROWTH * values);
    return length == LENGTH ? next(bytesPerValue) : small(length * bytesPerValue);
  }

  private ByteBuffer small(int size) {
    usedBytes += size;
    return ByteBuffer.allocateDirect(size).order(ByteOrder.nativeOrder());
  }

  ByteBuffer next(int bytesPerValue) {
    int size = LENGTH * bytesPerValue;
    if (usedBytes + size <= shareBytes) {
      usedBytes += size;
      return ByteBuffer.allocateDirect(size).order(ByteOrder.nativeOrder());
    }
    if (mapped.remaining() < size) {
      mapped = map((long) MAPPED_PAGES * LENGTH);
    }
    ByteBuffer page = mapped.slice(mapped.position(), size).order(ByteOrder.nativeOrder());
    mapped.position(mapped.position() + size);
    mappedBytes += size;
    return page;
  }

  private static ByteBuffer map(long size) {
    try {
      Path file = Files.createTempFile("evenpour-record", ".pages");
      try (FileChannel channel =
          FileChannel.open(
              file,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE,
              StandardOpenOption.DELETE_ON_CLOSE)) {
        // The mapping outlives the channel; the file's name is gone at once, its space when the
        // mapping is.
        return channel.map(FileChannel.MapMode.READ_WRITE, 0, size);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(
          "the log is larger than memory's share, and no room could be made for it in "
              + System.getProperty("java.io.tmpdir")
              + "; free some space there, or set -Djava.io.tmpdir",
          e);
    }
  }
}
