package org.evenpour.intake;

/**
 * Finds where records end in a file's bytes, quoted cells with line breaks in them included.
 *
 * <p>A quote opens a cell only at the cell's start (blanks aside), and the one that closes it
 * stands before a separator or the line's end (RFC 4180). A record whose quotes do not do so ends
 * with its first line, so that one stray quote costs one row and not the rest of the file.
 */
final class RecordScanner {

  /** The record's end was not found yet. */
  static final int INCOMPLETE = 0;

  /** Stands for a separator that is not known yet: comma, semicolon and tab all count. */
  static final byte ANY = 0;

  private final byte separator;
  private final int limit;

  /**
   * A scanner of one file.
   *
   * @param separator between cells, or {@link #ANY}
   * @param limit the most bytes that a record may have
   */
  RecordScanner(byte separator, int limit) {
    this.separator = separator;
    this.limit = limit;
  }

  /**
   * Where a record ends.
   *
   * @param from index of its first byte
   * @param length how many bytes there are
   * @param last whether no byte can follow them
   * @return index after its line end; the same, negative, if its quotes are not closed or it is
   *     longer than the limit, and then of its first line only; {@link #INCOMPLETE}
   */
  int end(byte[] bytes, int from, int length, boolean last) {
    boolean cellStart = true;
    int i = from;
    while (i < length) {
      byte b = bytes[i];
      if (b == '\n' || b == '\r') {
        return i - from > limit
            ? firstLine(bytes, from, length, last)
            : afterLineEnd(bytes, i, length, last);
      }
      if (isSeparator(b)) {
        cellStart = true;
      } else if (cellStart && b == '"') {
        i = afterQuoted(bytes, i + 1, from, length, last);
        if (i == INCOMPLETE) {
          return INCOMPLETE;
        }
        if (i < 0) {
          return firstLine(bytes, from, length, last);
        }
        cellStart = false;
        continue;
      } else if (!isBlank(b)) {
        cellStart = false;
      }
      i++;
    }
    if (length - from > limit) {
      return firstLine(bytes, from, length, last);
    }
    return last ? length : INCOMPLETE;
  }

  /** Index of what follows a quoted cell; −1 if that is neither separator nor line end. */
  private int afterQuoted(byte[] bytes, int begin, int from, int length, boolean last) {
    int i = begin;
    while (true) {
      if (i - from > limit) {
        return -1;
      }
      if (i >= length) {
        return last ? -1 : INCOMPLETE;
      }
      if (bytes[i] != '"') {
        i++;
      } else if (i + 1 < length && bytes[i + 1] == '"') {
        i += 2;
      } else {
        i++;
        break;
      }
    }
    while (i < length && isBlank(bytes[i])) {
      i++;
    }
    if (i - from > limit) {
      return -1;
    }
    if (i >= length) {
      return last ? length : INCOMPLETE;
    }
    return isSeparator(bytes[i]) || bytes[i] == '\n' || bytes[i] == '\r' ? i : -1;
  }

  private static int firstLine(byte[] bytes, int from, int length, boolean last) {
    return -lineEnd(bytes, from, length, last);
  }

  /** Index after the end of the line that a byte stands in; {@link #INCOMPLETE}. */
  static int lineEnd(byte[] bytes, int from, int length, boolean last) {
    for (int i = from; i < length; i++) {
      if (bytes[i] == '\n' || bytes[i] == '\r') {
        return afterLineEnd(bytes, i, length, last);
      }
    }
    return last ? length : INCOMPLETE;
  }

  private static int afterLineEnd(byte[] bytes, int at, int length, boolean last) {
    if (bytes[at] == '\n') {
      return at + 1;
    }
    if (at + 1 < length) {
      return bytes[at + 1] == '\n' ? at + 2 : at + 1;
    }
    return last ? length : INCOMPLETE;
  }

  private boolean isSeparator(byte b) {
    return separator == ANY ? b == ',' || b == ';' || b == '\t' : b == separator;
  }

  /** A blank within a line, as Commons CSV sees it. */
  private boolean isBlank(byte b) {
    return (b == ' ' || b == '\t' || b == 0x0b || b == '\f' || (b >= 0x1c && b <= 0x1f))
        && !isSeparator(b);
  }
}
