package org.evenpour.view.model;

import java.io.IOException;
import java.util.List;

/** Writes tables as comma-separated text. */
public final class CsvText {
  private CsvText() {}

  /** A table: headings, then a line for each row. */
  public static <R> void write(
      List<Column<R>> columns, List<R> rows, Language language, Appendable out) throws IOException {
    line(columns.stream().map(column -> column.heading(language)).toList(), false, out);
    for (R row : rows) {
      for (int i = 0; i < columns.size(); i++) {
        Cell cell = columns.get(i).cell().apply(row);
        boolean isWords = cell instanceof Cell.Text || cell instanceof Cell.Label;
        out.append(i == 0 ? "" : ",").append(cell(cell.text(), isWords));
      }
      out.append('\n');
    }
  }

  /** One line of cells that hold words, or figures. */
  public static void line(List<String> cells, boolean guarded, Appendable out) throws IOException {
    for (int i = 0; i < cells.size(); i++) {
      out.append(i == 0 ? "" : ",").append(cell(cells.get(i), guarded));
    }
    out.append('\n');
  }

  /**
   * A cell: quoted where it must be. Figures get a minus that every program reads; words that a
   * spreadsheet would take for a formula get an apostrophe before them (OWASP ASVS 5.0, 1.2.10).
   */
  public static String cell(String text, boolean isWords) {
    String safe = isWords ? text : text.replace('−', '-').replace("—", "");
    if (isWords && !safe.isEmpty() && "=+-@\t\r".indexOf(safe.charAt(0)) >= 0) {
      safe = "'" + safe;
    }
    boolean quoted =
        safe.indexOf(',') >= 0
            || safe.indexOf('"') >= 0
            || safe.indexOf('\n') >= 0
            || safe.indexOf('\r') >= 0;
    return quoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }
}
