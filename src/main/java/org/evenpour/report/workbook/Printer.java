package org.evenpour.report.workbook;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.function.LongConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Prints tables into a workbook: on sheets of their own with headings that stay in sight, a filter,
 * widths by content and a page that prints, or beside pictures.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Printer {

  /** A sheet holds no more rows. */
  static final int SHEET_ROWS = 1_048_576;

  static final float LINE_POINTS = 15;
  private static final float TALLEST_POINTS = 400; // a row can't be higher than 409

  /** So many letters of running text, some of them narrow, fit where a digit's width is counted. */
  static final double RUNNING = 1.15;

  private static final int NARROWEST = 9;
  private static final int WIDEST = 28;
  private static final int WIDEST_NUMBER = 60;
  private static final int DATE_WIDTH = 18;

  /** A cell of this row, or rows of a table printed before, as formulas name them. */
  private static final Pattern PLACE =
      Pattern.compile("\\{(?:(\\w+)/)?([^:}]+)(?::(\\d+)-(\\d+))?}");

  /** Tables in the order of time whose newest rows are the ones to have on paper. */
  private static final Set<String> NEWEST = Set.of("turns", "thinned", "adjust_turns");

  private final Paper paper;
  private final int sheetRows;
  private final Map<String, Printed<?>> printed = new HashMap<>();
  private int[] widths = {};

  Printer(Paper paper) {
    this(paper, SHEET_ROWS);
  }

  /**
   * @param sheetRows how many rows a sheet may hold
   */
  Printer(Paper paper, int sheetRows) {
    this.paper = paper;
    this.sheetRows = sheetRows;
  }

  /** Prints a table on a sheet of its own; a longer one goes on on the next. */
  <R> void print(Table<R> table) {
    print(table, 1, rows -> {});
  }

  /** The same where there is anything to print. */
  <R> void printIfAny(Table<R> table) {
    if (!table.rows().isEmpty()) {
      print(table);
    }
  }

  /**
   * The same for somebody who waits.
   *
   * @param pages so many are printed on paper at most
   * @param written is told how many rows are printed
   */
  <R> void print(Table<R> table, int pages, LongConsumer written) {
    Printed<R> place = new Printed<>(table, new ArrayList<>(), 1, 0, sheetRows - 1);
    printed.put(table.key(), place);
    int done = 0;
    do {
      int part = place.sheets().size() + 1;
      String name = part == 1 ? table.name() : paper.say("sheet.part", table.name(), part);
      SXSSFSheet sheet = paper.book().createSheet(WorkbookUtil.createSafeSheetName(name));
      place.sheets().add(sheet.getSheetName());
      Printout printout = new Printout();
      widths = new int[table.columns().size()];
      Row head = sheet.createRow(0);
      head(head, table, 0, true);
      printout.accept(head);
      int rows = Math.min(table.rows().size() - done, sheetRows - 1);
      for (int i = 0; i < rows; i++) {
        Row row = sheet.createRow(i + 1);
        row(row, place, done++);
        printout.accept(row);
        written.accept(done);
      }
      widen(sheet, 0);
      sheet.createFreezePane(0, 1);
      sheet.setAutoFilter(new CellRangeAddress(0, rows, 0, widths.length - 1));
      printout.finish(paper, sheet, widths, pages, NEWEST.contains(table.key()));
    } while (done < table.rows().size());
    name(place);
  }

  /**
   * Prints tables one under the other on one sheet, each under its name; the last, the longest, has
   * a filter. Those without rows are left out, and where none has any, the sheet is.
   *
   * @param firstRow index of the first row, where pictures stand above them
   * @return the sheet; null where there is none
   */
  @Nullable SXSSFSheet together(String name, List<Table<?>> tables, int firstRow) {
    List<Table<?>> filled = tables.stream().filter(table -> !table.rows().isEmpty()).toList();
    if (filled.isEmpty()) {
      return null;
    }
    SXSSFSheet sheet = paper.book().createSheet(WorkbookUtil.createSafeSheetName(name));
    Printout printout = new Printout();
    int[] widest = {};
    int next = 0;
    while (next < firstRow) {
      Row above = sheet.createRow(next++);
      above.setHeightInPoints(LINE_POINTS);
      printout.accept(above);
    }
    for (Table<?> table : filled) {
      if (filled.size() > 1 || firstRow > 0) {
        Row title = sheet.createRow(next++);
        title.setHeightInPoints(1.5f * LINE_POINTS);
        put(title, 0, paper.styles().section()).setCellValue(Texts.cell(table.name()));
        printout.accept(title);
      }
      next = under(sheet, next, table, printout);
      widest = wider(widest, widths);
    }
    widths = widest;
    widen(sheet, 0);
    Table<?> last = filled.get(filled.size() - 1);
    int head = next - 1 - last.rows().size();
    sheet.setAutoFilter(new CellRangeAddress(head, next - 1, 0, last.columns().size() - 1));
    printout.finish(paper, sheet, widths, 1, false);
    return sheet;
  }

  private <R> int under(SXSSFSheet sheet, int firstRow, Table<R> table, Printout printout) {
    Printed<R> place =
        new Printed<>(table, List.of(sheet.getSheetName()), firstRow + 1, 0, sheetRows - 1);
    printed.put(table.key(), place);
    widths = new int[table.columns().size()];
    Row head = sheet.createRow(firstRow);
    head(head, table, 0, true);
    printout.accept(head);
    for (int i = 0; i < table.rows().size(); i++) {
      Row row = sheet.createRow(firstRow + 1 + i);
      row(row, place, i);
      printout.accept(row);
    }
    name(place);
    return firstRow + 1 + table.rows().size();
  }

  private static int[] wider(int[] some, int[] others) {
    int[] widest = Arrays.copyOf(some, Math.max(some.length, others.length));
    for (int i = 0; i < others.length; i++) {
      widest[i] = Math.max(widest[i], others[i]);
    }
    return widest;
  }

  /** Gives a table's cells, headings included, a name by its key: {@code table_molds}. */
  private void name(Printed<?> place) {
    int rows = Math.min(place.table().rows().size(), place.rowsOnSheet());
    Name name = paper.book().createName();
    name.setNameName("table_" + place.table().key());
    name.setRefersToFormula(
        new CellRangeAddress(
                place.firstRow() - 1,
                place.firstRow() - 1 + rows,
                place.firstColumn(),
                place.firstColumn() + place.table().columns().size() - 1)
            .formatAsString(place.sheets().get(0), true));
  }

  /**
   * Prints a table to the right of pictures.
   *
   * @param firstColumn index of its first column
   */
  <R> Printed<R> beside(SXSSFSheet sheet, int firstColumn, Table<R> table) {
    Printed<R> place =
        new Printed<>(table, List.of(sheet.getSheetName()), 1, firstColumn, sheetRows - 1);
    widths = new int[table.columns().size()];
    head(sheet.createRow(0), table, firstColumn, false);
    for (int i = 0; i < table.rows().size(); i++) {
      row(sheet.createRow(i + 1), place, i);
    }
    widen(sheet, firstColumn);
    name(place);
    return place;
  }

  /**
   * Prints a table between other rows of a sheet, whose widths stay.
   *
   * @param firstRow index of its headings
   * @param widthOf the width of each column, in letters
   * @return how high it is, in points
   */
  <R> double within(SXSSFSheet sheet, int firstRow, Table<R> table, IntUnaryOperator widthOf) {
    Printed<R> place =
        new Printed<>(table, List.of(sheet.getSheetName()), firstRow + 1, 0, sheetRows - 1);
    printed.put(table.key(), place);
    widths = new int[table.columns().size()];
    Row head = sheet.createRow(firstRow);
    head(head, table, 0, true);
    int lines = 1;
    for (int i = 0; i < widths.length; i++) {
      String heading = Texts.cell(table.columns().get(i).heading());
      lines = Math.max(lines, linesOf(heading, widthOf.applyAsInt(i) - 2));
    }
    head.setHeightInPoints(LINE_POINTS * lines + 3);
    double height = head.getHeightInPoints();
    for (int i = 0; i < table.rows().size(); i++) {
      Row row = sheet.createRow(firstRow + 1 + i);
      row.setHeightInPoints(LINE_POINTS);
      row(row, place, i);
      height += row.getHeightInPoints();
    }
    name(place);
    return height;
  }

  /** Says where a table will stand that formulas name before it is printed. */
  void announce(Table<?> table) {
    printed.put(
        table.key(),
        new Printed<>(
            table, List.of(WorkbookUtil.createSafeSheetName(table.name())), 1, 0, sheetRows - 1));
  }

  /** Where a table was printed. */
  Printed<?> printed(String table) {
    Printed<?> place = printed.get(table);
    if (place == null) {
      throw new IllegalStateException(table + " was not printed");
    }
    return place;
  }

  /** The first place in a column that holds this text, for a link; null where none does. */
  @Nullable String place(String table, String key, String text) {
    return place(printed(table), key, text);
  }

  private static <R> @Nullable String place(Printed<R> in, String key, String text) {
    var cell = in.table().column(key).cell();
    for (int i = 0; i < in.table().rows().size(); i++) {
      if (cell.apply(in.table().rows().get(i)).text().equals(text)) {
        return in.place(key, i);
      }
    }
    return null;
  }

  private <R> void head(Row head, Table<R> table, int firstColumn, boolean isHigh) {
    head.getSheet().setDefaultRowHeightInPoints(LINE_POINTS);
    int lines = 1;
    for (int i = 0; i < table.columns().size(); i++) {
      Column<R> column = table.columns().get(i);
      String heading = Texts.cell(column.heading());
      var cell = head.createCell(firstColumn + i);
      cell.setCellStyle(
          column.kind() == Kind.FIGURES
              ? paper.styles().numberHeading()
              : paper.styles().heading());
      cell.setCellValue(heading);
      widths[i] = headingWidth(heading);
      lines = Math.max(lines, linesOf(heading, widths[i] - 2));
    }
    if (isHigh) {
      head.setHeightInPoints(LINE_POINTS * lines + 3);
    }
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

  private <R> void row(Row row, Printed<R> place, int index) {
    R of = place.table().rows().get(index);
    for (int i = 0; i < widths.length; i++) {
      Column<R> column = place.table().columns().get(i);
      Cell declared = column.cell().apply(of);
      boolean isAudited = declared instanceof Cell.AsAudited;
      Cell cell = declared instanceof Cell.AsAudited audited ? audited.cell() : declared;
      int at = place.firstColumn() + i;
      int width;
      if (cell instanceof Cell.Named named) {
        width = figure(row, at, named.figure());
        if (named.figure().value() != null) {
          row.getCell(at).setCellStyle(paper.styles().input(named.figure().digits()));
          name(named.name(), place.place(column.key(), index));
        }
      } else if (cell instanceof Cell.Figure figure) {
        width = figure(row, at, figure);
      } else if (cell instanceof Cell.Computed computed) {
        width = computed(row, at, computed, place, index);
      } else if (cell instanceof Cell.Time time) {
        width = time(row, at, time);
      } else if (cell instanceof Cell.Label label && Texts.isNumber(label.text())) {
        put(row, at, paper.styles().label()).setCellValue(Integer.parseInt(label.text()));
        width = label.text().length() + 2;
      } else {
        width = text(row, at, cell.text(), column);
      }
      if (isAudited && row.getCell(at) != null) {
        row.getCell(at).setCellStyle(paper.styles().audited(row.getCell(at).getCellStyle()));
      }
      widths[i] = Math.max(widths[i], width);
    }
  }

  private void name(String name, String cell) {
    Name named = paper.book().createName();
    named.setNameName(name);
    named.setRefersToFormula(
        cell.replaceFirst(
            "!([A-Z]+)([0-9]+)$",
            Matcher.quoteReplacement("!$") + "$1" + Matcher.quoteReplacement("$") + "$2"));
  }

  private static org.apache.poi.ss.usermodel.Cell put(Row row, int column, CellStyle style) {
    var cell = row.createCell(column);
    cell.setCellStyle(style);
    return cell;
  }

  private int text(Row row, int column, String text, Column<?> of) {
    if (text.isEmpty()) {
      return 0;
    }
    String kept = Texts.cell(text);
    boolean isProse = of.kind() == Kind.PROSE;
    int widest = isProse ? of.width() : WIDEST;
    if (isProse) {
      // By hand, for not every program does it when it opens the file.
      float height = LINE_POINTS * linesOf(kept, (int) ((widest - 3) * RUNNING)) + 1;
      row.setHeightInPoints(Math.min(TALLEST_POINTS, Math.max(row.getHeightInPoints(), height)));
    }
    put(row, column, isProse ? paper.styles().wrapped() : paper.styles().text()).setCellValue(kept);
    return Math.min(widest, kept.length() + 2);
  }

  private int figure(Row row, int column, Cell.Figure figure) {
    Double value = figure.value();
    if (value == null) {
      return 0;
    }
    put(row, column, paper.styles().of(figure.digits())).setCellValue(value);
    return shown(value, figure.digits().format());
  }

  private int computed(Row row, int column, Cell.Computed computed, Printed<?> place, int index) {
    Double value = computed.figure().value();
    if (value == null) {
      return 0;
    }
    var cell = put(row, column, paper.styles().of(computed.figure().digits()));
    // In this order: a formula set after a number would be written with a wrong zero.
    cell.setCellFormula(formula(computed.formula(), place, index));
    cell.setCellValue(value);
    return shown(value, computed.figure().digits().format());
  }

  /** A formula with addresses where it names columns. */
  private String formula(String formula, Printed<?> place, int index) {
    return PLACE
        .matcher(formula)
        .replaceAll(
            named ->
                Matcher.quoteReplacement(
                    named.group(1) == null
                        ? place.cell(named.group(2), index)
                        : printed(named.group(1))
                            .range(
                                named.group(2),
                                Integer.parseInt(named.group(3)),
                                Integer.parseInt(named.group(4)) + 1,
                                false)));
  }

  private int time(Row row, int column, Cell.Time time) {
    LocalDateTime local = LocalDateTime.ofInstant(time.at(), time.zone());
    if (local.getYear() < 1900 || local.getYear() > 9999) { // a sheet's calendar ends there
      put(row, column, paper.styles().text()).setCellValue(local.toString());
      return local.toString().length() + 2;
    }
    put(row, column, paper.styles().date()).setCellValue(local);
    return DATE_WIDTH;
  }

  private static int shown(double value, String format) {
    int whole = (int) Math.max(1, Math.floor(Math.log10(Math.max(1, Math.abs(value)))) + 1);
    int end = format.indexOf(';');
    int point = format.indexOf('.');
    int thousands = format.contains(",") ? whole / 3 : 0;
    int decimals = point < 0 ? 0 : (end < 0 ? format.length() : end) - point;
    return Math.min(WIDEST_NUMBER, whole + thousands + decimals + 3);
  }

  private void widen(SXSSFSheet sheet, int firstColumn) {
    for (int i = 0; i < widths.length; i++) {
      widths[i] = Math.max(NARROWEST, widths[i]);
      sheet.setColumnWidth(firstColumn + i, widths[i] * 256);
    }
  }

  /**
   * Landscape A4, as wide as the page; at its foot the sheet's name, the wheel and the period, the
   * program's version, and the page.
   */
  static void forPaper(Paper paper, SXSSFSheet sheet) {
    PrintSetup print = sheet.getPrintSetup();
    print.setLandscape(true);
    print.setPaperSize(PrintSetup.A4_PAPERSIZE);
    sheet.setFitToPage(true);
    print.setFitWidth((short) 1);
    print.setFitHeight((short) 0);
    sheet.setMargin(PageMargin.LEFT, Page.SIDE);
    sheet.setMargin(PageMargin.RIGHT, Page.SIDE);
    sheet.setMargin(PageMargin.TOP, Page.TOP);
    sheet.setMargin(PageMargin.BOTTOM, Page.BOTTOM);
    sheet.setMargin(PageMargin.HEADER, Page.FOOT);
    sheet.setMargin(PageMargin.FOOTER, Page.FOOT);
    sheet.getFooter().setLeft(paper.foot(sheet.getSheetName()));
    sheet.getFooter().setCenter(paper.program());
    sheet.getFooter().setRight(paper.say("paper.page", "&P", "&N"));
    // Else head and foot would be drawn together with the sheet, and be smaller than its text.
    paper
        .book()
        .getXSSFWorkbook()
        .getSheet(sheet.getSheetName())
        .getCTWorksheet()
        .getHeaderFooter()
        .setScaleWithDoc(false);
  }
}
