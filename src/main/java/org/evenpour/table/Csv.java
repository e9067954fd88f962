package org.evenpour.table;

import java.io.IOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.QuoteMode;
import org.evenpour.casting.Formulas;
import org.evenpour.words.Digits;

/** Prints tables as comma-separated text. */
public final class Csv {
  /** A choice: no more is quoted than RFC 4180 asks for (2.6), where the library quotes more. */
  private static final Pattern MUST_BE_QUOTED = Pattern.compile("[,\"\n\r]");

  private static final CSVFormat QUOTED =
      CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.ALL).get();

  private Csv() {}

  /** Headings, then a line for each row. */
  public static <R> void write(List<Column<R>> columns, List<R> rows, Appendable out)
      throws IOException {
    for (int i = 0; i < columns.size(); i++) {
      out.append(i == 0 ? "" : ",").append(field(columns.get(i).heading(), true));
    }
    out.append('\n');
    for (R row : rows) {
      for (int i = 0; i < columns.size(); i++) {
        out.append(i == 0 ? "" : ",").append(field(columns.get(i).cell().apply(row)));
      }
      out.append('\n');
    }
  }

  /** A cell: numbers as every program reads them, missing ones as nothing. */
  static String field(Cell cell) {
    return field(
        cell instanceof Cell.Figure figure && figure.digits().kind() == Digits.Kind.COUNT
            ? plain(figure)
            : cell.text(),
        cell instanceof Cell.Text || cell instanceof Cell.Label);
  }

  /** A cell as it is pasted between others: in one line, without tabs, and never a formula. */
  public static String pasted(Cell cell) {
    boolean isWords = cell instanceof Cell.Text || cell instanceof Cell.Label;
    String text =
        cell instanceof Cell.Figure figure && figure.digits().kind() == Digits.Kind.COUNT
            ? plain(figure)
            : cell.text();
    return pasted(text, isWords);
  }

  /** A heading, or another text, in the same way. */
  public static String pasted(String text, boolean isWords) {
    String line = text.replaceAll("[\\p{Cntrl}\\p{Zl}\\p{Zp}]", " ").strip();
    return isWords ? Formulas.defused(line) : line.replace('−', '-').replace("—", "");
  }

  private static String plain(Cell.Figure count) {
    Double value = count.value();
    return value == null ? Cell.MISSING : Digits.number(value, 0);
  }

  /**
   * Text, quoted where it must be. Figures get a minus that every program reads; words that a
   * spreadsheet would take for a formula get an apostrophe before them (OWASP ASVS 5.0, 1.2.10).
   */
  static String field(String text, boolean isWords) {
    String safe = isWords ? Formulas.defused(text) : text.replace('−', '-').replace("—", "");
    return MUST_BE_QUOTED.matcher(safe).find() ? QUOTED.format(safe) : safe;
  }
}
