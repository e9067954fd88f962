package org.evenpour.report.workbook;

/**
 * What fits on a printed page. Widths of columns are in letters of the workbook's body font,
 * Calibri 11, of which one is 7 pixels of 96 to the inch wide (ECMA-376 18.3.1.13); LibreOffice
 * takes them the same way.
 */
final class Page {
  /** The body font's size in points. */
  static final double FONT_POINTS = 11;

  /** Nothing is printed smaller than this, in points: a choice, what is read at arm's length. */
  static final double LEAST_POINTS = 8;

  /** To this share of its size a sheet may be drawn together. */
  static final double LEAST_SCALE = LEAST_POINTS / FONT_POINTS;

  static final double LETTER_POINTS = 5.25;

  /** Margins in inches. */
  static final double SIDE = 0.4;

  static final double TOP = 0.35;

  /** A head stands in it. */
  static final double TOP_WITH_HEAD = 0.55;

  /** The foot stands in it. */
  static final double BOTTOM = 0.55;

  static final double FOOT = 0.25;

  private static final double INCH = 72;

  /** Width and height of A4 in inches; US Letter is wider and less high. */
  static final double A4_WIDTH = 8.27;

  static final double A4_HEIGHT = 11.69;

  static final double LETTER_HEIGHT = 11;

  private Page() {}

  /** So many points of a sheet fit across a page, drawn together as far as may be. */
  static double widest(boolean isLandscape) {
    return ((isLandscape ? LETTER_HEIGHT : A4_WIDTH) - 2 * SIDE) * INCH / LEAST_SCALE;
  }

  /**
   * So many points of a sheet fit one under the other.
   *
   * @param scale to which the sheet is drawn together
   */
  static double highest(boolean isLandscape, double scale) {
    return ((isLandscape ? A4_WIDTH : LETTER_HEIGHT) - TOP - BOTTOM) * INCH / scale;
  }

  /** The same of A4 alone, landscape. */
  static double widestOfA4() {
    return (A4_HEIGHT - 2 * SIDE) * INCH / LEAST_SCALE;
  }

  /** The same of A4 alone, landscape, under a head. */
  static double highestOfA4(double scale) {
    return (A4_WIDTH - TOP_WITH_HEAD - BOTTOM) * INCH / scale;
  }
}
