package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;

/**
 * What of a sheet of tables is printed: as many of its columns, from the left, as stay legible
 * across landscape A4, and as many of its rows as its pages hold. All others are in the sheet.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Printout {
  /** What programs add to a row's height by rounding it to pixels, and a little. */
  private static final double CAUTION = 1.03;

  private final List<Double> heights = new ArrayList<>();
  private int rows;

  /** Takes in the next row of the sheet, whose height is set. */
  void accept(Row row) {
    // Rows beyond the longest printout are only counted.
    if (rows < 4_000) {
      heights.add((double) row.getHeightInPoints());
    }
    rows++;
  }

  /**
   * Sets the sheet's print area.
   *
   * @param widths of its columns in letters
   * @param pages so many at most
   * @param isNewest whether its last rows are printed, which must all be one line high
   */
  void finish(Paper paper, SXSSFSheet sheet, int[] widths, int pages, boolean isNewest) {
    Printer.forPaper(paper, sheet);
    double wide = 0;
    int columns = 0;
    while (columns < widths.length
        && wide + widths[columns] * Page.LETTER_POINTS <= Page.widestOfA4()) {
      wide += widths[columns++] * Page.LETTER_POINTS;
    }
    double room =
        pages * Page.highestOfA4(Math.min(1, Page.LEAST_SCALE * Page.widestOfA4() / wide));
    // The headings are printed on every page; a row that meets its end goes over whole.
    double used = pages * heights.get(0);
    double tallest = heights.stream().mapToDouble(one -> one).max().orElse(0);
    room -= pages > 1 ? (pages - 1) * tallest : 0;
    int printed = 1;
    while (printed < heights.size()) {
      double next = heights.get(isNewest ? heights.size() - printed : printed) * CAUTION;
      if (used + next > room) {
        break;
      }
      used += next;
      printed++;
    }
    int last = Math.max(1, isNewest ? rows : printed) - 1;
    int first = isNewest ? Math.max(0, rows - printed + (printed < rows ? 1 : 0)) : 0;
    sheet
        .getWorkbook()
        .setPrintArea(
            sheet.getWorkbook().getSheetIndex(sheet),
            0,
            Math.max(1, columns) - 1,
            isNewest && printed >= rows ? 0 : first,
            last);
    sheet.setRepeatingRows(CellRangeAddress.valueOf("1:1"));
    List<String> more = new ArrayList<>();
    if (printed < rows) {
      more.add(paper.say("paper.more.rows", paper.words().count(rows - printed)));
    }
    if (columns < widths.length) {
      more.add(paper.say("paper.more.columns", paper.words().count(widths.length - columns)));
    }
    if (!more.isEmpty()) {
      sheet.getHeader().setRight(String.join(" · ", more));
    }
    sheet.setMargin(PageMargin.TOP, Page.TOP_WITH_HEAD);
  }

  /** How many rows there are so far. */
  int rows() {
    return rows;
  }
}
