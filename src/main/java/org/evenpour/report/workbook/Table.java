package org.evenpour.report.workbook;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.evenpour.report.Words;
import org.jspecify.annotations.Nullable;

/**
 * One table of the workbook, written from top to bottom: headings that stay in sight, a filter,
 * widths by content, and a page that prints. A table longer than a sheet goes on on the next.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Table {

  /** A sheet holds no more rows. */
  static final int SHEET_ROWS = 1_048_576;

  private static final int NARROWEST = 9;
  private static final int WIDEST = 28;
  private static final int WIDE_TEXT = 60;
  private static final float LINE_POINTS = 15;
  private static final float TALLEST_POINTS = 400; // a row can't be higher than 409

  private final SXSSFWorkbook book;
  private final Styles styles;
  private final Words words;
  private final ZoneId zone;
  private final String name;
  private final List<Column> headings;
  private final int[] widths;
  private final int sheetRows;
  private SXSSFSheet sheet;
  private Row row;
  private int part = 1;
  private int column;

  Table(Paper paper, String name, List<Column> headings) {
    this(paper, name, headings, SHEET_ROWS);
  }

  /**
   * @param sheetRows how many rows a sheet may hold
   */
  Table(Paper paper, String name, List<Column> headings, int sheetRows) {
    this.book = paper.book();
    this.styles = paper.styles();
    this.words = paper.words();
    this.zone = paper.zone();
    this.name = name;
    this.headings = List.copyOf(headings);
    this.sheetRows = sheetRows;
    this.widths = new int[headings.size()];
    this.sheet = book.createSheet(WorkbookUtil.createSafeSheetName(name));
    this.row = head();
  }

  private Row head() {
    sheet.setDefaultRowHeightInPoints(LINE_POINTS);
    Row head = sheet.createRow(0);
    int lines = 1;
    for (int i = 0; i < headings.size(); i++) {
      String heading = Texts.cell(headings.get(i).heading());
      Cell cell = head.createCell(i);
      cell.setCellStyle(headings.get(i).figures() ? styles.numberHeading() : styles.heading());
      cell.setCellValue(heading);
      int width = headingWidth(heading);
      widths[i] = Math.max(widths[i], width);
      lines = Math.max(lines, linesOf(heading, width - 2));
    }
    head.setHeightInPoints(LINE_POINTS * lines + 3);
    return head;
  }

  /** Wide enough for the longest word, and for the whole in three lines; the filter needs room. */
  private static int headingWidth(String heading) {
    int longest = 0;
    for (String word : heading.split(" ", -1)) {
      longest = Math.max(longest, word.length());
    }
    return Math.min(WIDEST, Math.max(longest, (heading.length() + 2) / 3) + 4);
  }

  /** How many lines a text takes where so many characters fit on one; breaks only at spaces. */
  static int linesOf(String text, int characters) {
    int lines = 0;
    for (String paragraph : text.split("\n", -1)) {
      lines++;
      int used = 0;
      for (String word : paragraph.split(" ", -1)) {
        if (used > 0 && used + 1 + word.length() > characters) {
          lines++;
          used = 0;
        }
        used += (used > 0 ? 1 : 0) + word.length();
        while (used > characters) { // a word longer than the line
          lines++;
          used -= characters;
        }
      }
    }
    return lines;
  }

  /** Begins the next row. */
  Table next() {
    if (row.getRowNum() + 1 >= sheetRows) {
      finish();
      part++;
      sheet =
          book.createSheet(WorkbookUtil.createSafeSheetName(words.say("sheet.part", name, part)));
      row = head();
    }
    row = sheet.createRow(row.getRowNum() + 1);
    column = 0;
    return this;
  }

  /** The sheet's name, as references need it. */
  String sheetName() {
    return sheet.getSheetName();
  }

  /** The current row's index from 0. */
  int rowIndex() {
    return row.getRowNum();
  }

  Table blank() {
    column++;
    return this;
  }

  Table text(@Nullable String text) {
    return put(text, styles.text(), WIDEST);
  }

  /** Text that may run over several lines. */
  Table prose(@Nullable String text) {
    return prose(text, WIDE_TEXT);
  }

  /** Text that may run over several lines, in a column so many characters wide at most. */
  Table prose(@Nullable String text, int widest) {
    if (text != null) {
      // By hand, for not every program does it when it opens the file.
      float height = LINE_POINTS * linesOf(Texts.cell(text), widest - 4) + 1;
      row.setHeightInPoints(Math.min(TALLEST_POINTS, Math.max(row.getHeightInPoints(), height)));
    }
    return put(text, styles.wrapped(), widest);
  }

  private Table put(@Nullable String text, CellStyle style, int widest) {
    if (text == null || text.isEmpty()) {
      return blank();
    }
    String kept = Texts.cell(text);
    Cell cell = cell(style, Math.min(widest, kept.length() + 2));
    cell.setCellValue(kept);
    return this;
  }

  /** A mold's label: a number where it is one. */
  Table label(@Nullable String label) {
    if (label == null || !Texts.isNumber(label)) {
      return text(label);
    }
    cell(styles.label(), label.length() + 2).setCellValue(Integer.parseInt(label));
    return this;
  }

  Table count(@Nullable Number count) {
    if (count == null) {
      return blank();
    }
    cell(styles.count(), Long.toString(count.longValue()).length() * 4 / 3 + 2)
        .setCellValue(count.doubleValue());
    return this;
  }

  /** A turn's number, without thousands. */
  Table turn(@Nullable Integer turn) {
    return turn == null ? blank() : number((double) turn, styles.number(0));
  }

  Table number(@Nullable Double value, CellStyle style) {
    if (value == null) {
      return blank();
    }
    cell(style, shown(value, style)).setCellValue(value);
    return this;
  }

  /**
   * A formula over cells of this sheet, with the value that the audit found.
   *
   * @param formula made of our own cell references, never of a log's text
   */
  Table formula(String formula, double value, CellStyle style) {
    Cell cell = cell(style, shown(value, style));
    // In this order: a formula set after a number would be written with a wrong zero.
    cell.setCellFormula(formula);
    cell.setCellValue(value);
    return this;
  }

  Table date(Instant at) {
    LocalDateTime local = LocalDateTime.ofInstant(at, zone);
    if (local.getYear() < 1900 || local.getYear() > 9999) { // a sheet's calendar ends there
      return text(local.toString());
    }
    cell(styles.date(), 18).setCellValue(local);
    return this;
  }

  private static int shown(double value, CellStyle style) {
    int whole = (int) Math.max(1, Math.floor(Math.log10(Math.max(1, Math.abs(value)))) + 1);
    String format = style.getDataFormatString();
    int end = format.indexOf(';');
    int point = format.indexOf('.');
    int decimals = point < 0 ? 0 : (end < 0 ? format.length() : end) - point;
    return Math.min(WIDE_TEXT, whole + decimals + 3);
  }

  private Cell cell(CellStyle style, int width) {
    widths[column] = Math.max(widths[column], width);
    Cell cell = row.createCell(column++);
    cell.setCellStyle(style);
    return cell;
  }

  /** Sets widths, filter, panes and paper; the table is done. */
  Sheet finish() {
    for (int i = 0; i < widths.length; i++) {
      sheet.setColumnWidth(i, Math.max(NARROWEST, widths[i]) * 256);
    }
    sheet.createFreezePane(0, 1);
    sheet.setAutoFilter(new CellRangeAddress(0, row.getRowNum(), 0, headings.size() - 1));
    sheet.setRepeatingRows(CellRangeAddress.valueOf("1:1"));
    forPaper(sheet, words);
    return sheet;
  }

  /** Landscape A4, as wide as the page, with the sheet's name and page numbers at its foot. */
  static void forPaper(Sheet sheet, Words words) {
    PrintSetup print = sheet.getPrintSetup();
    print.setLandscape(true);
    print.setPaperSize(PrintSetup.A4_PAPERSIZE);
    sheet.setFitToPage(true);
    print.setFitWidth((short) 1);
    print.setFitHeight((short) 0);
    sheet.setMargin(PageMargin.LEFT, 0.4);
    sheet.setMargin(PageMargin.RIGHT, 0.4);
    sheet.getFooter().setLeft(words.say("paper.footer", sheet.getSheetName().replace("&", "&&")));
    sheet.getFooter().setRight(words.say("paper.page", "&P", "&N"));
  }
}
