package org.evenpour.report.workbook;

import java.util.List;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.evenpour.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Where a table was printed, so that pictures and formulas find its cells by their columns' keys.
 *
 * @param sheets the sheets' names, one after another
 * @param firstRow index of the first row on each
 * @param firstColumn index of the first column
 * @param rowsOnSheet how many of its rows a sheet holds
 */
record Printed<R>(
    Table<R> table, List<String> sheets, int firstRow, int firstColumn, int rowsOnSheet) {

  private int column(String key) {
    int column = table.keys().indexOf(key);
    if (column < 0) {
      throw new IllegalArgumentException(table.key() + " has no column " + key);
    }
    return firstColumn + column;
  }

  /** The address of a cell, for a formula on the same sheet. */
  String cell(String key, int index) {
    return CellReference.convertNumToColString(column(key)) + (firstRow + index % rowsOnSheet + 1);
  }

  /** A place in the workbook, for a link. */
  static String address(String sheet, String cell) {
    String name = WorkbookUtil.createSafeSheetName(sheet);
    return "'" + name.replace("'", "''") + "'!" + cell;
  }

  /** The place of a cell in the workbook, for a link. */
  String place(String key, int index) {
    return address(sheets.get(index / rowsOnSheet), cell(key, index));
  }

  /** Where rows of a column stand; those that a sheet holds where they begin. */
  String range(String key, int from, int to, boolean isFixed) {
    int row = firstRow + from % rowsOnSheet;
    int column = column(key);
    CellRangeAddress cells = new CellRangeAddress(row, row + to - from - 1, column, column);
    return cells.formatAsString(sheets.get(from / rowsOnSheet), isFixed);
  }

  /** Numbers of a column, with what stands there, for programs that don't look. */
  XDDFNumericalDataSource<Double> numbers(String key, int from, int to) {
    return XDDFDataSourcesFactory.fromArray(
        values(key, from, to), range(key, from, to, true), column(key));
  }

  /** The numbers that stand there; null where none does. */
  @Nullable Double[] values(String key, int from, int to) {
    var cell = table.column(key).cell();
    @Nullable Double[] values = new @Nullable Double[to - from];
    for (int i = from; i < to; i++) {
      values[i - from] = (Double) cell.apply(table.rows().get(i)).order();
    }
    return values;
  }

  /** The words that stand there. */
  String[] texts(String key, int from, int to) {
    var cell = table.column(key).cell();
    return table.rows().subList(from, to).stream()
        .map(row -> Texts.cell(cell.apply(row).text()))
        .toArray(String[]::new);
  }
}
