package org.evenpour.view.model;

import java.io.IOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.QuoteMode;
import org.evenpour.casting.Formulas;

/** Writes tables as comma-separated text. */
public final class CsvText {
  /** A choice: no more is quoted than RFC 4180 asks for (2.6), where the library quotes more. */
  private static final Pattern MUST_BE_QUOTED = Pattern.compile("[,\"\n\r]");

  private static final CSVFormat QUOTED =
      CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.ALL).get();

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
    String safe = isWords ? Formulas.defused(text) : text.replace('−', '-').replace("—", "");
    return MUST_BE_QUOTED.matcher(safe).find() ? QUOTED.format(safe) : safe;
  }
}
