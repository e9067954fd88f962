package org.evenpour.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Cuts a block into rows and cells and reads what can be read of a cell alone. Never changes, so
 * that any number of threads may cut with it, each its own block.
 *
 * <p>Records without a quote are cut here, byte by byte; any other goes through Commons CSV, as
 * Latin-1, in which every byte is one character and comes back as it was.
 */
final class RowCutter {
  private static final int RECORDS_AT_ONCE = 1000;

  private final byte separator;
  private final boolean decimalComma;
  private final int limit;
  private final int columns;
  private final int timeColumn;
  private final int[] numberColumns;
  private final RecordScanner scanner;
  private final CSVFormat format;
  private final boolean always;

  /**
   * A cutter of one file.
   *
   * @param separator between its cells
   * @param cells how each column is read; at most one is a time
   * @param limit the most bytes that a record may have
   */
  RowCutter(byte separator, List<LogColumn.Cell> cells, int limit) {
    this(separator, cells, limit, false);
  }

  /**
   * A cutter of one file.
   *
   * @param always whether Commons CSV cuts every record, those without quotes too
   */
  RowCutter(byte separator, List<LogColumn.Cell> cells, int limit, boolean always) {
    this.separator = separator;
    this.decimalComma = separator != ',';
    this.limit = limit;
    this.always = always;
    columns = cells.size();
    timeColumn = cells.indexOf(LogColumn.Cell.TIME);
    numberColumns =
        IntStream.range(0, columns).filter(i -> cells.get(i) == LogColumn.Cell.NUMBER).toArray();
    scanner = new RecordScanner(separator, limit);
    format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter((char) separator)
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(false)
            .get();
  }

  /** A block for this file's records. */
  Block newBlock(int capacity) {
    return new Block(columns, capacity);
  }

  /** Cuts a block that was filled. */
  Block cut(Block block) {
    block.clearRows();
    if (block.tooLong) {
      block.reserveRow();
      block.addRow(0, 0, block.length, 0, Block.Fault.TOO_LONG);
      block.lines = 1;
      return block;
    }
    // A line end after the last byte spares the question for the end at every byte.
    block.ensureBytes(block.length + 1);
    block.bytes[block.length] = '\n';
    int scratch = block.length + 1;
    int at = 0;
    while (at < block.length) {
      int end = always ? -1 : plain(block, at);
      if (end < 0) {
        General general = general(block, at, scratch);
        end = general.end;
        scratch = general.scratch;
      }
      at = end;
    }
    return block;
  }

  /** Cuts one record without quotes; −1 if it has one. */
  private int plain(Block block, int begin) {
    byte[] bytes = block.bytes;
    block.reserveRow();
    int[] from = block.from;
    int[] to = block.to;
    int base = block.rows * columns;
    int cell = 0;
    int cellFrom = begin;
    boolean written = false;
    boolean extra = false;
    boolean nul = false;
    boolean high = false;
    int i = begin;
    while (true) {
      byte b = bytes[i];
      if (b > '"' && b != separator) {
        i++;
        continue;
      }
      if (b == separator || b == '\n' || b == '\r') {
        int first = cellFrom;
        int after = i;
        while (first < after && CellText.isBlank(bytes[first])) {
          first++;
        }
        while (first < after && CellText.isBlank(bytes[after - 1])) {
          after--;
        }
        if (cell < columns) {
          from[base + cell] = first;
          to[base + cell] = after;
        } else if (first < after) {
          extra = true;
        }
        written |= first < after;
        cell++;
        cellFrom = i + 1;
        if (b != separator) {
          break;
        }
      } else if (b == '"') {
        return -1;
      } else if (b < 0) {
        high = true;
      } else if (b == 0) {
        nul = true;
      }
      i++;
    }
    int line = block.lines++;
    if (written || nul || i - begin > limit) {
      finish(block, line, begin, i, cell, extra, nul);
      if (high) {
        checkUtf8(block, line, begin, i);
      }
    }
    return i + (i + 1 < block.length && bytes[i] == '\r' && bytes[i + 1] == '\n' ? 2 : 1);
  }

  /** Where records ended, and where free space begins after their cells. */
  private record General(int end, int scratch) {}

  /** Cuts the records from here on that are whole, or the one that is not. */
  private General general(Block block, int begin, int scratch) {
    int end = begin;
    List<Integer> ends = new ArrayList<>();
    while (end < block.length && ends.size() < RECORDS_AT_ONCE) {
      int next = scanner.end(block.bytes, end, block.length, true);
      if (next < 0) {
        if (ends.isEmpty()) {
          return new General(unclosed(block, begin, -next), scratch);
        }
        break;
      }
      end = next;
      ends.add(end);
    }
    String text = new String(block.bytes, begin, end - begin, StandardCharsets.ISO_8859_1);
    int free = scratch;
    int at = begin;
    try (CSVParser parser = CSVParser.parse(text, format)) {
      Iterator<CSVRecord> records = parser.iterator();
      for (int next : ends) {
        List<byte[]> cells =
            records.next().stream()
                .map(cell -> cell.getBytes(StandardCharsets.ISO_8859_1))
                .toList();
        block.reserveRow();
        free = fill(block, block.lines, at, withoutLineEnd(block.bytes, at, next), cells, free);
        block.lines += lines(block.bytes, at, next);
        at = next;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new General(end, free);
  }

  private int unclosed(Block block, int begin, int end) {
    int textTo = withoutLineEnd(block.bytes, begin, end);
    Block.Fault fault = textTo - begin > limit ? Block.Fault.TOO_LONG : Block.Fault.QUOTE;
    block.reserveRow();
    block.addRow(block.lines++, begin, textTo, 0, fault);
    return end;
  }

  /** Makes a block of one row whose cells are known already. */
  Block of(List<String> cells) {
    byte[] text =
        String.join(String.valueOf((char) separator), cells).getBytes(StandardCharsets.UTF_8);
    Block block = new Block(columns, 2 * text.length + 1);
    System.arraycopy(text, 0, block.bytes, 0, text.length);
    block.length = text.length;
    block.reserveRow();
    List<byte[]> bytes = cells.stream().map(cell -> cell.getBytes(StandardCharsets.UTF_8)).toList();
    fill(block, 0, 0, text.length, bytes, text.length);
    block.lines = 1;
    return block;
  }

  /** Takes in the cells of one record; returns where free space begins after them. */
  private int fill(Block block, int line, int begin, int end, List<byte[]> cells, int scratch) {
    int free = scratch;
    int base = block.rows * columns;
    boolean written = false;
    boolean extra = false;
    boolean nul = false;
    for (int cell = 0; cell < cells.size(); cell++) {
      byte[] bytes = cells.get(cell);
      int first = 0;
      int after = bytes.length;
      while (first < after && CellText.isBlank(bytes[first])) {
        first++;
      }
      while (first < after && CellText.isBlank(bytes[after - 1])) {
        after--;
      }
      for (byte b : bytes) {
        nul |= b == 0;
      }
      if (cell < columns) {
        block.ensureBytes(free + after - first);
        System.arraycopy(bytes, first, block.bytes, free, after - first);
        block.from[base + cell] = free;
        block.to[base + cell] = free + after - first;
        free += after - first;
      }
      written |= first < after;
      extra |= cell >= columns && first < after;
    }
    if (written || nul || end - begin > limit) {
      finish(block, line, begin, end, cells.size(), extra, nul);
      checkUtf8(block, line, begin, end);
    }
    return free;
  }

  private void finish(
      Block block, int line, int begin, int end, int cells, boolean extra, boolean nul) {
    int row = block.rows;
    if (end - begin > limit) {
      block.addRow(line, begin, end, cells, Block.Fault.TOO_LONG);
    } else if (nul) {
      block.addRow(line, begin, end, cells, Block.Fault.NUL);
    } else if (cells < columns || extra) {
      block.addRow(line, begin, end, cells, Block.Fault.CELLS);
    } else {
      block.addRow(line, begin, end, cells, Block.Fault.NONE);
      int base = row * columns;
      if (timeColumn >= 0) {
        block.times[row] =
            TimeReader.read(
                block.bytes, block.from[base + timeColumn], block.to[base + timeColumn]);
      }
      for (int column : numberColumns) {
        double number =
            DecimalReader.read(
                block.bytes, block.from[base + column], block.to[base + column], decimalComma);
        block.numbers[base + column] =
            Double.isNaN(number) || DecimalReader.isReading(number)
                ? number
                : DecimalReader.UNREADABLE;
        if (decimalComma && Double.isFinite(number)) {
          block.lookAtMarks(base + column);
        }
      }
    }
  }

  private static void checkUtf8(Block block, int line, int from, int to) {
    if (block.notUtf8Line < 0 && !CellText.isUtf8(block.bytes, from, to)) {
      block.notUtf8Line = line;
    }
  }

  private static int withoutLineEnd(byte[] bytes, int begin, int end) {
    int to = end;
    while (to > begin && (bytes[to - 1] == '\n' || bytes[to - 1] == '\r')) {
      to--;
    }
    return to;
  }

  private static int lines(byte[] bytes, int from, int to) {
    int lines = 0;
    int at = from;
    while (at < to) {
      at = RecordScanner.lineEnd(bytes, at, to, true);
      lines++;
    }
    return lines;
  }
}
