package org.evenpour.report.workbook;

import java.util.List;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.jspecify.annotations.Nullable;

/**
 * The figures that stand to the right of pictures and that these are drawn from.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Beside {
  private final Paper paper;
  private final SXSSFSheet sheet;
  private final int firstColumn;
  private Row row;
  private int column;

  Beside(Paper paper, SXSSFSheet sheet, int firstColumn, List<String> headings) {
    this.paper = paper;
    this.sheet = sheet;
    this.firstColumn = firstColumn;
    sheet.setDefaultRowHeightInPoints(15);
    this.row = sheet.createRow(0);
    for (String heading : headings) {
      put(paper.styles().heading()).setCellValue(heading);
      sheet.setColumnWidth(
          firstColumn + column - 1, Math.max(9, heading.length() * 2 / 3 + 4) * 256);
    }
  }

  /** The wording of whether a characteristic is stable; where nobody looked, nobody knows. */
  static String stable(CharacteristicReport characteristic) {
    return characteristic.monitoring().notLookedFor() != null
        ? "stable.unknown"
        : characteristic.inFull().isStable() ? "stable.yes" : "stable.no";
  }

  static String capital(String name) {
    return name.isEmpty()
        ? name
        : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }

  private Cell put(CellStyle style) {
    Cell cell = row.createCell(firstColumn + column++);
    cell.setCellStyle(style);
    return cell;
  }

  /** Begins the next row. */
  Beside next() {
    row = sheet.createRow(row.getRowNum() + 1);
    column = 0;
    return this;
  }

  /** Index of the row that comes next. */
  int rowIndex() {
    return row.getRowNum() + 1;
  }

  Beside text(String text) {
    put(paper.styles().text()).setCellValue(Texts.cell(text));
    return this;
  }

  Beside label(String label) {
    if (Texts.isNumber(label)) {
      put(paper.styles().label()).setCellValue(Integer.parseInt(label));
      return this;
    }
    return text(label);
  }

  Beside number(@Nullable Double value, CellStyle style) {
    if (value == null) {
      column++;
    } else {
      put(style).setCellValue(value);
    }
    return this;
  }

  /** The difference of two cells of this row, the larger first, with its value. */
  Beside difference(int larger, int smaller, @Nullable Double value, CellStyle style) {
    if (value == null) {
      column++;
      return this;
    }
    Cell cell = put(style);
    cell.setCellFormula(address(larger) + "-" + address(smaller));
    cell.setCellValue(value);
    return this;
  }

  private String address(int columnHere) {
    return CellReference.convertNumToColString(firstColumn + columnHere) + (row.getRowNum() + 1);
  }

  /** A column of these figures, for a picture. */
  XDDFNumericalDataSource<Double> numbers(int firstRow, int columnHere, @Nullable Double[] values) {
    return Picture.numbers(sheet.getSheetName(), firstRow, firstColumn + columnHere, values);
  }

  /** Where a column of these figures stands. */
  String range(int firstRow, int rows, int columnHere) {
    return Picture.range(sheet.getSheetName(), firstRow, rows, firstColumn + columnHere);
  }

  /** Prints the pictures without these figures. */
  void finish(int pictures) {
    Table.forPaper(sheet, paper.words());
    sheet.getPrintSetup().setLandscape(false);
    sheet
        .getWorkbook()
        .setPrintArea(
            sheet.getWorkbook().getSheetIndex(sheet),
            0,
            Picture.COLUMNS - 1,
            0,
            Math.max(1, pictures * Picture.ROWS));
    for (int picture = Picture.ON_A_PAGE; picture < pictures; picture += Picture.ON_A_PAGE) {
      sheet.setRowBreak(picture * Picture.ROWS - 1);
    }
    sheet.setDisplayGridlines(false);
  }
}
