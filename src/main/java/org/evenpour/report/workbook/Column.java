package org.evenpour.report.workbook;

/**
 * One column of a table.
 *
 * @param heading with the unit, where all its figures have one
 * @param figures whether it holds numbers or times, which stand right
 */
record Column(String heading, boolean figures) {
  static Column words(String heading) {
    return new Column(heading, false);
  }

  static Column figures(String heading) {
    return new Column(heading, true);
  }
}
