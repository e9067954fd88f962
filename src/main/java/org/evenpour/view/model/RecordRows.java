package org.evenpour.view.model;

import java.io.IOException;
import java.util.AbstractList;
import java.util.List;
import org.evenpour.casting.WheelRecord;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.Columns;
import org.evenpour.report.table.RecordTables;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Csv;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The rows of the chosen wheel, stretch and mold as a table. Nothing is copied: a cell is made when
 * it is looked at, so a million rows open at once.
 *
 * @param columns what is shown of a row of the record
 * @param first the first row of the record that is shown; used where no mold is chosen
 * @param size how many rows
 * @param ofMold the rows that are shown; null = all from {@code first} on
 */
@SuppressWarnings("ArrayRecordComponent") // rows of a mold: handed on, never compared
public record RecordRows(
    List<Column<Integer>> columns, int first, int size, int @Nullable [] ofMold) {

  /** What is shown of an opened log. */
  public static RecordRows of(Desk desk) {
    WheelRows wheel = desk.wheel();
    Stretch turns = desk.turns();
    String mold = desk.selection().mold();
    int from = wheel.rowAt(turns.from());
    int to = wheel.rowAt(turns.to());
    int[] rows = null;
    if (mold != null) {
      rows = java.util.Arrays.stream(wheel.rows(mold)).filter(r -> r >= from && r < to).toArray();
    }
    return new RecordRows(columns(desk), from, rows == null ? to - from : rows.length, rows);
  }

  /** The columns' headings. */
  public List<String> headings() {
    return columns.stream().map(Column::heading).toList();
  }

  /** The row of the record behind a row of the table. */
  public int row(int index) {
    return ofMold == null ? first + index : ofMold[index];
  }

  /** A cell. */
  public Cell cell(int index, int column) {
    return columns.get(column).cell().apply(row(index));
  }

  /** Writes all rows as comma-separated text. */
  public void writeCsv(Appendable out) throws IOException {
    Csv.write(
        columns,
        new AbstractList<Integer>() {
          @Override
          public Integer get(int index) {
            return row(index);
          }

          @Override
          public int size() {
            return size;
          }
        },
        out);
  }

  private static List<Column<Integer>> columns(Desk desk) {
    WheelRecord record = desk.wheel().record();
    Sentences sentences = desk.sentences();
    return RecordTables.anodes(
            Columns.narrow(sentences),
            record,
            sentences,
            one -> desk.look().units().shown(one.unit().suffix()),
            0,
            Words::capital)
        .figure("line", Digits.plain(0), row -> (double) RecordTables.line(record, row))
        .list();
  }
}
