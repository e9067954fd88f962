package org.evenpour.intake;

import java.util.Arrays;

/**
 * A stretch of a file that ends where a record ends, and its rows once they are cut. Owned by one
 * thread at a time: the reader fills it, a cutter cuts it, the reader takes the rows.
 */
final class Block {

  /** What is wrong with a row as a row; nothing can be said of its cells then. */
  enum Fault {
    NONE,
    CELLS,
    QUOTE,
    NUL,
    TOO_LONG
  }

  /** So many bytes are shown of a row that is too long. */
  static final int SHOWN_OF_TOO_LONG = 240;

  /** The file's bytes, and after {@link #length} the cells that had to be taken out of quotes. */
  byte[] bytes;

  int length;

  /** Whether there is any quote. */
  boolean quoted;

  /** Whether this is but the beginning of one line that is longer than may be held. */
  boolean tooLong;

  /** How many lines there are. */
  int lines;

  /** Line of the first row that is not UTF-8, from 0 within the block; −1 if all are. */
  int notUtf8Line;

  /** Whether any number is written with a decimal comma; looked for where that may be. */
  boolean decimalCommas;

  /** Numbers with a point before three digits, of which it says the thousands where commas do. */
  int thousands;

  /** The first of them. */
  int thousandsCell;

  int rows;
  final int columns;

  /** One per row, from 0 within the block. */
  int[] line = new int[0];

  int[] textFrom = new int[0];
  int[] textTo = new int[0];
  int[] cellCount = new int[0];
  private Fault[] faults = new Fault[0];

  /** As {@link TimeReader} reads it; one per row, since a table has one column of times. */
  long[] times = new long[0];

  /** One per cell, row by row. */
  int[] from = new int[0];

  int[] to = new int[0];

  /** As {@link DecimalReader} reads them; only of columns of numbers. */
  double[] numbers = new double[0];

  Block(int columns, int capacity) {
    this.columns = columns;
    bytes = new byte[capacity];
  }

  void clear() {
    length = 0;
    quoted = false;
    tooLong = false;
    clearRows();
  }

  void clearRows() {
    lines = 0;
    rows = 0;
    notUtf8Line = -1;
    decimalCommas = false;
    thousands = 0;
  }

  /** Looks at how a number is written that may have a decimal comma. */
  void lookAtMarks(int cell) {
    int point = -1;
    for (int at = from[cell]; at < to[cell]; at++) {
      decimalCommas |= bytes[at] == ',';
      if (bytes[at] == '.') {
        point = at;
      }
    }
    // 1.171 and 43.171, but not 0.171
    int digits = point - from[cell];
    if (digits >= 1 && digits <= 4 && to[cell] - point == 4 && bytes[from[cell]] != '0') {
      thousandsCell = thousands++ == 0 ? cell : thousandsCell;
    }
  }

  Fault fault(int row) {
    return faults[row];
  }

  boolean hasFault(int row) {
    return faults[row] != Fault.NONE;
  }

  String text(int row, int atMost) {
    int wanted = faults[row] == Fault.TOO_LONG ? Math.min(atMost, SHOWN_OF_TOO_LONG) : atMost;
    int end = textFrom[row] + Math.min(textTo[row] - textFrom[row], wanted);
    boolean cut = end < textTo[row] || tooLong;
    while (cut && end > textFrom[row] && bytes[end - 1] < 0) {
      end--; // not in the midst of a character
    }
    return CellText.decode(bytes, textFrom[row], end) + (cut ? "…" : "");
  }

  String cell(int row, int column) {
    int cell = row * columns + column;
    return CellText.decode(bytes, from[cell], to[cell]);
  }

  boolean isBlank(int row, int column) {
    int cell = row * columns + column;
    return from[cell] == to[cell];
  }

  double number(int row, int column) {
    return numbers[row * columns + column];
  }

  /** Makes room for one more row. */
  void reserveRow() {
    if (rows == line.length) {
      int capacity = Math.max(16, rows * 2);
      line = Arrays.copyOf(line, capacity);
      textFrom = Arrays.copyOf(textFrom, capacity);
      textTo = Arrays.copyOf(textTo, capacity);
      cellCount = Arrays.copyOf(cellCount, capacity);
      faults = Arrays.copyOf(faults, capacity);
      times = Arrays.copyOf(times, capacity);
      from = Arrays.copyOf(from, capacity * columns);
      to = Arrays.copyOf(to, capacity * columns);
      numbers = Arrays.copyOf(numbers, capacity * columns);
    }
  }

  /** Takes in the row for which room was made. */
  void addRow(int rowLine, int rowFrom, int rowTo, int cells, Fault rowFault) {
    line[rows] = rowLine;
    textFrom[rows] = rowFrom;
    textTo[rows] = rowTo;
    cellCount[rows] = cells;
    faults[rows] = rowFault;
    rows++;
  }

  void ensureBytes(int capacity) {
    if (bytes.length < capacity) {
      bytes = Arrays.copyOf(bytes, Math.max(capacity, bytes.length * 2));
    }
  }
}
