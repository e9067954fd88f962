package org.evenpour.intake;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Cuts the bytes of a log that is still being written into its headings and its records, as they
 * come. A record counts when its line end is there; until then it is waited for.
 *
 * <p>Owned by the thread that follows the log.
 */
public final class ArrivingRecords {

  /** As for a log at rest: a row is read alike, however it came. */
  private static final int LIMIT = LogBlocks.RECORD_LIMIT;

  /**
   * A choice: where a quote is open and so many lines behind it have as many cells as a row, it is
   * one quote too many, and not a cell with line breaks that is still being written.
   */
  private static final int LINES_BEHIND_A_STRAY_QUOTE = 3;

  private final String file;
  private final Profiles profiles;
  private RecordScanner scanner = new RecordScanner(RecordScanner.ANY, LIMIT);
  private @Nullable LogHeader header;
  private byte[] waiting = new byte[1 << 12];
  private int length;
  private long line = 1;
  private boolean begun;
  private boolean skipping;

  /** Takes the headings and the records, in their order. */
  public interface Reader {
    /** Records follow that stand under these headings. */
    void header(LogHeader header);

    /**
     * A record is whole.
     *
     * @param line its number in the log, from 1
     * @param text as it stands there, line end included; it is the reader's to keep
     */
    void record(long line, byte[] text);
  }

  /**
   * A log before its first byte.
   *
   * @param file as the user named it
   * @param profiles whose headings are made the names that the program knows
   */
  public ArrivingRecords(String file, Profiles profiles) {
    this.file = file;
    this.profiles = profiles;
  }

  /**
   * Takes in the next bytes.
   *
   * @param bytes of which the first {@code count} are new
   * @param reader gets what became whole
   * @throws IntakeException if the headings cannot be used
   */
  public void add(byte[] bytes, int count, Reader reader) throws IntakeException {
    if (waiting.length < length + count) {
      waiting = Arrays.copyOf(waiting, Math.max(length + count, waiting.length * 2));
    }
    System.arraycopy(bytes, 0, waiting, length, count);
    length += count;
    cut(reader, false);
  }

  /**
   * Nothing more is there for now. A record that waits for the end of a quote, while whole rows
   * stand behind it, ends with its first line, as it would if no byte followed: one stray quote
   * costs one row, and holds none back.
   */
  public void pause(Reader reader) throws IntakeException {
    LogHeader its = header;
    while (its != null && !skipping && isStray(its)) {
      int end = lineEnd(0, false);
      take(0, end, reader);
      drop(end);
      cut(reader, false);
    }
  }

  private boolean isStray(LogHeader its) {
    int rows = 0;
    int at = RecordScanner.lineEnd(waiting, 0, length, false);
    while (at != RecordScanner.INCOMPLETE && rows < LINES_BEHIND_A_STRAY_QUOTE) {
      int end = RecordScanner.lineEnd(waiting, at, length, false);
      if (end == RecordScanner.INCOMPLETE) {
        return false;
      }
      int cells = 1;
      for (int i = at; i < end; i++) {
        cells += waiting[i] == (byte) its.separator() ? 1 : 0;
      }
      rows += cells == its.columns().size() ? 1 : 0;
      at = end;
    }
    return rows >= LINES_BEHIND_A_STRAY_QUOTE;
  }

  private void drop(int bytes) {
    length -= bytes;
    System.arraycopy(waiting, bytes, waiting, 0, length);
  }

  /** No byte follows: the log was closed for good, and its last line needs no line end. */
  public void finish(Reader reader) throws IntakeException {
    cut(reader, true);
  }

  private void cut(Reader reader, boolean last) throws IntakeException {
    int at = 0;
    if (!begun) {
      if (length < 3 && !last) {
        return;
      }
      begun = true;
      at = beginning();
    }
    while (at < length) {
      int end = skipping ? -lineEnd(at, last) : scanner.end(waiting, at, length, last);
      if (end == RecordScanner.INCOMPLETE) {
        if (length - at <= LIMIT) {
          break;
        }
        end = tooLong(at, reader);
      } else {
        take(at, Math.abs(end), reader);
      }
      at = Math.abs(end);
    }
    drop(at);
  }

  private int lineEnd(int at, boolean last) {
    return RecordScanner.lineEnd(waiting, at, length, last);
  }

  /** Hands on the beginning of an endless line; what follows of it is passed over. */
  private int tooLong(int at, Reader reader) throws IntakeException {
    if (!skipping) {
      if (header == null) {
        throw new IntakeException(file, line, 0, "log.long");
      }
      // One byte more than a row may have: it is set aside for what it is.
      reader.record(line, Arrays.copyOfRange(waiting, at, at + LIMIT + 1));
      skipping = true;
    }
    // A carriage return may be the first half of the line end.
    return waiting[length - 1] == '\r' ? length - 1 : length;
  }

  private void take(int from, int to, Reader reader) throws IntakeException {
    byte[] text = Arrays.copyOfRange(waiting, from, to);
    if (skipping) {
      skipping = false;
    } else if (header == null) {
      heading(text, reader);
    } else {
      reader.record(line, text);
    }
    line += lines(text);
  }

  private void heading(byte[] text, Reader reader) throws IntakeException {
    for (byte b : text) {
      if (b == 0) {
        throw IntakeException.ofFile(file, "file.nul");
      }
    }
    String decoded = CellText.decode(text, 0, text.length);
    if (!decoded.isBlank()) {
      LogHeader read = LogHeader.read(file, line, decoded.stripTrailing(), profiles);
      header = read;
      scanner = new RecordScanner((byte) read.separator(), LIMIT);
      reader.header(read);
    }
  }

  private int beginning() throws IntakeException {
    if (length >= 2 && ((waiting[0] & 0xff) << 8 | (waiting[1] & 0xff)) >= 0xFEFF) {
      throw IntakeException.ofFile(file, "file.utf16");
    }
    boolean marked =
        length >= 3
            && waiting[0] == (byte) 0xEF
            && waiting[1] == (byte) 0xBB
            && waiting[2] == (byte) 0xBF;
    return marked ? 3 : 0;
  }

  private static int lines(byte[] text) {
    int lines = 0;
    int at = 0;
    while (at < text.length) {
      at = RecordScanner.lineEnd(text, at, text.length, true);
      lines++;
    }
    return lines;
  }
}
