package org.evenpour.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Takes a file apart into its headings and blocks that end where a record ends. Never holds more of
 * a line than a record may have. Owned by the thread that reads the file.
 */
final class LogBlocks implements AutoCloseable {

  /** The most bytes that a record may have. */
  static final int RECORD_LIMIT = 1 << 20;

  /** So many bytes are read at once. */
  static final int READ_BYTES = 1 << 18;

  private final Path file;
  private final InputStream in;
  private final int recordLimit;
  private final int readBytes;
  private RecordScanner scanner;
  private byte[] carry = new byte[0];
  private long bytesRead;
  private long firstLine = 1;
  private boolean atEnd;

  private LogBlocks(Path file, InputStream in, int recordLimit, int readBytes) {
    this.file = file;
    this.in = in;
    this.recordLimit = recordLimit;
    this.readBytes = readBytes;
    scanner = new RecordScanner(RecordScanner.ANY, recordLimit);
  }

  /** Opens bytes that may come from anywhere, with other sizes. */
  static LogBlocks of(Path file, InputStream in, int recordLimit, int readBytes) {
    return new LogBlocks(file, in, recordLimit, readBytes);
  }

  /** Opens a file. */
  static LogBlocks open(Path file) throws IntakeException {
    if (Files.isDirectory(file)) {
      throw IntakeException.ofFile(file.toString(), "file.folder");
    }
    try {
      return of(file, Files.newInputStream(file), RECORD_LIMIT, READ_BYTES);
    } catch (IOException e) {
      throw IntakeException.unreadable(file, e);
    }
  }

  /** The number of the line after the headings, from 1. */
  long firstLine() {
    return firstLine;
  }

  /** How many bytes were read. */
  long bytesRead() {
    return bytesRead;
  }

  /**
   * The line with the headings.
   *
   * @param line where it stands, from 1
   * @param text as it stands there
   */
  record Heading(long line, String text) {}

  /**
   * Reads the first line that is not blank.
   *
   * @throws IntakeException if there is none, or if the file is no text
   */
  Heading heading() throws IntakeException {
    fill(Math.max(recordLimit, 4));
    if (starts(0xFE, 0xFF) || starts(0xFF, 0xFE)) {
      throw IntakeException.ofFile(file.toString(), "file.utf16");
    }
    int at = starts(0xEF, 0xBB, 0xBF) ? 3 : 0;
    long line = 1;
    while (true) {
      if (!atEnd && carry.length - at <= recordLimit) {
        carry = Arrays.copyOfRange(carry, at, carry.length);
        at = 0;
        fill(2 * recordLimit + 4);
      }
      if (at == carry.length) {
        throw IntakeException.ofFile(file.toString(), "file.empty");
      }
      int end = scanner.end(carry, at, carry.length, atEnd);
      boolean unclosed = end < 0;
      end = Math.abs(end);
      if (end == RecordScanner.INCOMPLETE || end - at > recordLimit) {
        checkNul(at, Math.min(carry.length, at + recordLimit));
        throw new IntakeException(file.toString(), line, 0, "file.long");
      }
      checkNul(at, end);
      String text = CellText.decode(carry, at, end);
      long lines = text.lines().count();
      if (!text.chars().allMatch(c -> c <= ' ' || c == ',' || c == ';')) {
        if (unclosed) {
          throw new IntakeException(file.toString(), line, 0, "file.quote");
        }
        carry = Arrays.copyOfRange(carry, end, carry.length);
        firstLine = line + lines;
        return new Heading(line, text);
      }
      line += lines;
      at = end;
    }
  }

  /** From now on cells are cut at this separator. */
  void separate(byte separator) {
    scanner = new RecordScanner(separator, recordLimit);
  }

  /**
   * Fills a block with the next records.
   *
   * @return false, and an empty block, if there are none
   */
  boolean next(Block block) throws IntakeException {
    block.clear();
    int length = carry.length;
    block.ensureBytes(length + readBytes + 1);
    System.arraycopy(carry, 0, block.bytes, 0, length);
    while (true) {
      if (!atEnd) {
        block.ensureBytes(length + readBytes + 1);
        length += read(block.bytes, length, readBytes);
      }
      if (length == 0) {
        return false;
      }
      int end = lastRecordEnd(block, length);
      // Two more than the limit may be a line end.
      if (end > 0 || length > recordLimit + 2) {
        block.length = end;
        carry = Arrays.copyOfRange(block.bytes, end, length);
        if (end == 0) {
          skipLine(block);
        }
        return true;
      }
    }
  }

  private int lastRecordEnd(Block block, int length) {
    byte[] bytes = block.bytes;
    block.quoted = holdsQuote(bytes, length);
    if (!block.quoted) {
      return atEnd && length <= recordLimit + 2 ? length : lastLineEnd(bytes, length);
    }
    int end = 0;
    while (end < length) {
      int next = scanner.end(bytes, end, length, atEnd);
      if (next == RecordScanner.INCOMPLETE) {
        break;
      }
      end = Math.abs(next);
    }
    return end;
  }

  /** Index after the last line end that is surely whole; 0 if there is none. */
  private int lastLineEnd(byte[] bytes, int length) {
    int from = length;
    if (from > 0 && bytes[from - 1] == '\r' && !atEnd) {
      from--;
    }
    for (int i = from - 1; i >= 0; i--) {
      if (bytes[i] == '\n' || bytes[i] == '\r') {
        return i + 1;
      }
    }
    return 0;
  }

  /** Keeps the beginning of a line and reads over the rest. */
  private void skipLine(Block block) throws IntakeException {
    int kept = Math.min(Block.SHOWN_OF_TOO_LONG, recordLimit);
    block.ensureBytes(kept);
    System.arraycopy(carry, 0, block.bytes, 0, kept);
    block.length = kept;
    block.tooLong = true;
    while (true) {
      int end = RecordScanner.lineEnd(carry, 0, carry.length, atEnd);
      if (end != RecordScanner.INCOMPLETE) {
        carry = Arrays.copyOfRange(carry, end, carry.length);
        return;
      }
      // A carriage return may be the first half of the line end.
      boolean half = carry[carry.length - 1] == '\r';
      carry = half ? new byte[] {'\r'} : new byte[0];
      fill(carry.length + readBytes);
      if (carry.length == 0) {
        return;
      }
    }
  }

  private void fill(int wanted) throws IntakeException {
    int length = carry.length;
    if (!atEnd && length < wanted) {
      byte[] more = Arrays.copyOf(carry, wanted);
      int read = read(more, length, wanted - length);
      carry = atEnd ? Arrays.copyOf(more, length + read) : more;
    }
  }

  /** Reads so many bytes, or as many as there are. */
  private int read(byte[] into, int at, int wanted) throws IntakeException {
    try {
      int read = in.readNBytes(into, at, wanted);
      bytesRead += read;
      atEnd = read < wanted;
      return read;
    } catch (IOException e) {
      throw IntakeException.unreadable(file, e);
    }
  }

  private boolean starts(int... first) {
    if (carry.length < first.length) {
      return false;
    }
    for (int i = 0; i < first.length; i++) {
      if ((carry[i] & 0xff) != first[i]) {
        return false;
      }
    }
    return true;
  }

  private void checkNul(int from, int to) throws IntakeException {
    for (int i = from; i < to; i++) {
      if (carry[i] == 0) {
        throw IntakeException.ofFile(file.toString(), "file.nul");
      }
    }
  }

  /** Eight bytes at a time: a zero byte in bytes ^ quotes is a quote. */
  private static boolean holdsQuote(byte[] bytes, int length) {
    ByteBuffer words = ByteBuffer.wrap(bytes, 0, length).order(ByteOrder.nativeOrder());
    int whole = length & ~7;
    for (int i = 0; i < whole; i += 8) {
      long x = words.getLong(i) ^ 0x2222222222222222L;
      if (((x - 0x0101010101010101L) & ~x & 0x8080808080808080L) != 0) {
        return true;
      }
    }
    for (int i = whole; i < length; i++) {
      if (bytes[i] == '"') {
        return true;
      }
    }
    return false;
  }

  @Override
  public void close() throws IntakeException {
    try {
      in.close();
    } catch (IOException e) {
      throw IntakeException.unreadable(file, e);
    }
  }
}
