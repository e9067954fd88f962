package org.evenpour.report.workbook;

import java.util.List;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * A sheet of twelve columns on which sentences and small tables stand one under the other, as high
 * as they need to be: heights are set by hand, for not every program does it for merged cells.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Grid {
  static final int COLUMNS = 12;
  private static final int FIRST_WIDTH = 17;
  private static final int LAST_WIDTH = 13;
  private static final int WIDTH = 11;

  /** A merged cell's text ends before its edge, and begins after its indent. */
  private static final int EDGES = 2;

  /** Of so many letters of running text as many as this fit where one digit's width is counted. */
  private static final double RUNNING = 1.25;

  /** The same of a few words, of which one may be long. */
  private static final double FEW_WORDS = 1.1;

  private final Paper paper;
  private final SXSSFSheet sheet;
  private int rows;
  private double points;

  Grid(Paper paper, SXSSFSheet sheet) {
    this.paper = paper;
    this.sheet = sheet;
    for (int i = 0; i < COLUMNS; i++) {
      sheet.setColumnWidth(i, width(i) * 256);
    }
  }

  private static int width(int column) {
    return column == 0 ? FIRST_WIDTH : column == COLUMNS - 1 ? LAST_WIDTH : WIDTH;
  }

  /**
   * Some of the columns of a line.
   *
   * @param link a place in this workbook; null where there is none
   */
  record Piece(int columns, CellStyle style, String text, @Nullable String link) {
    Piece(int columns, CellStyle style, String text) {
      this(columns, style, text, null);
    }
  }

  /** Index of the next row. */
  int next() {
    return rows;
  }

  /** How high all rows so far are. */
  double points() {
    return points;
  }

  /** A narrow empty row. */
  void gap() {
    row(6);
  }

  private Row row(double height) {
    Row row = sheet.createRow(rows++);
    row.setHeightInPoints((float) height);
    points += height;
    return row;
  }

  /** Leaves rows free for a picture. */
  void leave(int count) {
    for (int i = 0; i < count; i++) {
      row(Printer.LINE_POINTS);
    }
  }

  void title(String text) {
    line(26, List.of(new Piece(COLUMNS, paper.styles().title(), text)));
  }

  void section(String text) {
    gap();
    line(List.of(new Piece(COLUMNS, paper.styles().section(), text)));
  }

  /** A sentence over the whole width. */
  void prose(String text) {
    prose(text, paper.styles().wrapped());
  }

  void prose(String text, CellStyle style) {
    line(List.of(new Piece(COLUMNS, style, text)));
  }

  /** A line, as high as its longest piece needs. */
  void line(List<Piece> pieces) {
    line(height(pieces), pieces);
  }

  /** How high a line would be. */
  static double height(List<Piece> pieces) {
    int lines = 1;
    int at = 0;
    for (Piece piece : pieces) {
      int width = -EDGES;
      for (int i = at; i < at + piece.columns(); i++) {
        width += width(i);
      }
      int letters = (int) (width * (piece.columns() > 2 ? RUNNING : FEW_WORDS));
      lines = Math.max(lines, Printer.linesOf(Texts.cell(piece.text()), letters));
      at += piece.columns();
    }
    return Math.min(400, Printer.LINE_POINTS * lines + 1.0);
  }

  private void line(double height, List<Piece> pieces) {
    Row row = row(height);
    int at = 0;
    for (Piece piece : pieces) {
      // Borders and filling are of every cell of a merged one, text only of its first.
      boolean isFramed = piece.style().getBorderBottom() != BorderStyle.NONE;
      for (int i = at; i < at + (isFramed ? piece.columns() : 1); i++) {
        row.createCell(i).setCellStyle(piece.style());
      }
      row.getCell(at).setCellValue(Texts.cell(piece.text()));
      if (piece.link() != null) {
        Hyperlink link = paper.book().getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
        link.setAddress(piece.link());
        row.getCell(at).setHyperlink(link);
      }
      if (piece.columns() > 1) {
        sheet.addMergedRegion(
            new CellRangeAddress(row.getRowNum(), row.getRowNum(), at, at + piece.columns() - 1));
      }
      at += piece.columns();
    }
  }

  /** A table, one of its columns to each column of the grid. */
  <R> void table(Printer printer, Table<R> table) {
    points += printer.within(sheet, rows, table, Grid::width);
    rows += table.rows().size() + 1;
  }
}
