package org.evenpour.report.workbook;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.FontFamily;
import org.apache.poi.ss.usermodel.FontScheme;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.evenpour.words.Digits;

/**
 * The cell styles of one workbook, each made once.
 *
 * <p>Owned by the thread that writes the workbook.
 */
final class Styles {
  private static final byte[] PALE = {(byte) 0xee, (byte) 0xee, (byte) 0xee};

  /** Dark enough to be read on paper: 7 to 1 against white. */
  private static final byte[] GRAY = {(byte) 0x59, (byte) 0x59, (byte) 0x59};

  private static final short APART = 1;

  private final SXSSFWorkbook book;
  private final Map<String, CellStyle> made = new HashMap<>();
  private final Font body;
  private final Font bold;
  private final Font large;
  private final Font gray;
  private final Font underlined;

  Styles(SXSSFWorkbook book) {
    this.book = book;
    ((XSSFFont) book.getFontAt(0)).setScheme(FontScheme.NONE);
    body = font();
    bold = font();
    bold.setBold(true);
    large = font();
    large.setBold(true);
    large.setFontHeightInPoints((short) 16);
    gray = font();
    ((XSSFFont) gray).setColor(new XSSFColor(GRAY));
    underlined = font();
    underlined.setUnderline(Font.U_SINGLE);
  }

  /**
   * One more of the body's font, by its name alone: a workbook without a theme has no theme's font,
   * and a program that looks for it takes any other, which is wider.
   */
  private Font font() {
    XSSFFont font = (XSSFFont) book.createFont();
    font.setFamily(FontFamily.SWISS);
    return font;
  }

  private CellStyle style(String key, Consumer<CellStyle> make) {
    return made.computeIfAbsent(
        key,
        missing -> {
          CellStyle style = book.createCellStyle();
          style.setFont(body);
          style.setVerticalAlignment(VerticalAlignment.TOP);
          make.accept(style);
          return style;
        });
  }

  private CellStyle format(String format) {
    return style(
        format,
        style -> {
          style.setDataFormat(book.createDataFormat().getFormat(format));
          style.setAlignment(HorizontalAlignment.RIGHT);
        });
  }

  /** Text that stays text, even when somebody edits the cell and it begins with an equals sign. */
  private static void keepAsText(CellStyle style) {
    ((XSSFCellStyle) style).setQuotePrefixed(true);
  }

  CellStyle title() {
    return style(
        "title",
        style -> {
          style.setFont(large);
          keepAsText(style);
          standApart(style);
        });
  }

  /** Over text, which stands left. */
  CellStyle heading() {
    return heading(HorizontalAlignment.LEFT);
  }

  /** Over numbers, which stand right. */
  CellStyle numberHeading() {
    return heading(HorizontalAlignment.RIGHT);
  }

  private CellStyle heading(HorizontalAlignment alignment) {
    return style(
        "heading " + alignment,
        style -> {
          style.setAlignment(alignment);
          style.setIndention(alignment == HorizontalAlignment.LEFT ? APART : 0);
          style.setFont(bold);
          style.setWrapText(true);
          style.setVerticalAlignment(VerticalAlignment.BOTTOM);
          style.setBorderBottom(BorderStyle.THIN);
          ((XSSFCellStyle) style).setFillForegroundColor(new XSSFColor(PALE));
          style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
          keepAsText(style);
        });
  }

  CellStyle text() {
    return style(
        "text",
        style -> {
          keepAsText(style);
          standApart(style);
        });
  }

  /** A little to the right, so that text does not touch the number before it. */
  private static void standApart(CellStyle style) {
    style.setAlignment(HorizontalAlignment.LEFT);
    style.setIndention(APART);
  }

  CellStyle wrapped() {
    return style(
        "wrapped",
        style -> {
          style.setWrapText(true);
          keepAsText(style);
          standApart(style);
        });
  }

  /** A sentence that does not follow when somebody changes a limit. */
  CellStyle audited() {
    return style(
        "audited",
        style -> {
          style.setFont(gray);
          style.setWrapText(true);
          keepAsText(style);
          standApart(style);
        });
  }

  /** The same as another style, in gray. */
  CellStyle audited(CellStyle of) {
    return style(
        "audited " + of.getIndex(),
        style -> {
          style.cloneStyleFrom(of);
          style.setFont(gray);
        });
  }

  /** A figure that people may change. */
  CellStyle input(Digits digits) {
    return style(
        "input " + digits.format(),
        style -> {
          style.setDataFormat(book.createDataFormat().getFormat(digits.format()));
          style.setAlignment(HorizontalAlignment.RIGHT);
          style.setFont(bold);
          style.setBorderBottom(BorderStyle.MEDIUM);
          style.setBorderTop(BorderStyle.MEDIUM);
          style.setBorderLeft(BorderStyle.MEDIUM);
          style.setBorderRight(BorderStyle.MEDIUM);
        });
  }

  /** A sentence that leads to another sheet. */
  CellStyle link() {
    return style(
        "link",
        style -> {
          style.setFont(underlined);
          style.setWrapText(true);
          keepAsText(style);
          standApart(style);
        });
  }

  /** A place to write in by hand. */
  CellStyle fillIn() {
    return style(
        "fill in",
        style -> {
          style.setBorderBottom(BorderStyle.THIN);
          style.setBorderLeft(BorderStyle.THIN);
          style.setBorderRight(BorderStyle.THIN);
          style.setBorderTop(BorderStyle.THIN);
          keepAsText(style);
        });
  }

  CellStyle section() {
    return style(
        "section",
        style -> {
          style.setFont(bold);
          keepAsText(style);
          standApart(style);
        });
  }

  /** A mold's number, which stands left like its name would. */
  CellStyle label() {
    return style(
        "label",
        style -> {
          style.setDataFormat(book.createDataFormat().getFormat("0"));
          standApart(style);
        });
  }

  CellStyle of(Digits digits) {
    return format(digits.format());
  }

  CellStyle date() {
    return format("yyyy-mm-dd hh:mm");
  }
}
