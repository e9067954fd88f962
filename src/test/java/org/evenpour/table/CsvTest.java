package org.evenpour.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.evenpour.table.Column.Kind;
import org.evenpour.words.Digits;
import org.junit.jupiter.api.Test;

class CsvTest {
  @Test
  void figuresHaveAMinusThatEveryProgramReads() {
    assertThat(Csv.field("−1.5", false)).isEqualTo("-1.5");
  }

  @Test
  void missingFiguresAreEmpty() {
    assertThat(Csv.field("—", false)).isEmpty();
  }

  // OWASP ASVS 5.0, 1.2.10: words that a spreadsheet would run as a formula are defused.
  @Test
  void wordsThatLookLikeFormulasAreDefused() {
    assertThat(Csv.field("=SUM(A1)", true)).isEqualTo("'=SUM(A1)");
    assertThat(Csv.field("@cmd", true)).isEqualTo("'@cmd");
    assertThat(Csv.field("-1.5", false)).isEqualTo("-1.5");
  }

  // RFC 4180, 2.6 and 2.7.
  @Test
  void commasAndQuotesAreQuoted() {
    assertThat(Csv.field("a, \"b\"", true)).isEqualTo("\"a, \"\"b\"\"\"");
  }

  @Test
  void lineBreaksAreQuotedAndNothingElseIs() throws IOException {
    StringBuilder out = new StringBuilder();
    List<String> texts = List.of("", "one\ntwo", "three\rfour", " #!é ", "=1,2", "\"=3");
    List<Column<List<String>>> columns = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      int at = i;
      columns.add(
          new Column<>("c" + i, Kind.WORDS, "", "", "", 9, row -> new Cell.Text(row.get(at))));
    }
    Csv.write(columns, List.of(texts), out);
    out.delete(0, out.indexOf("\n") + 1);
    assertThat(out).hasToString(",\"one\ntwo\",\"three\rfour\", #!é ,\"'=1,2\",\"\"\"=3\"\n");
    try (CSVParser parser = CSVParser.parse(out.toString(), CSVFormat.RFC4180)) {
      assertThat(parser.getRecords().get(0).toList())
          .containsExactly("", "one\ntwo", "three\rfour", " #!é ", "'=1,2", "\"=3");
    }
  }

  @Test
  void countsAreWrittenWithoutThousandsAndSharesAsPercent() {
    assertThat(Csv.field(new Cell.Figure(1_234_567.0, Digits.count(",")))).isEqualTo("1234567");
    assertThat(Csv.field(new Cell.Figure(null, Digits.count(",")))).isEmpty();
    assertThat(Csv.field(new Cell.Figure(0.0346, Digits.share(1)))).isEqualTo("3.5 %");
    assertThat(Csv.field(new Cell.Figure(-0.5, Digits.signed(2)))).isEqualTo("-0.50");
  }

  @Test
  void headingsThatComeFromALogAreDefusedToo() throws IOException {
    StringBuilder out = new StringBuilder();
    Column<String> named =
        new Column<>("c", Kind.WORDS, "=cmd", "kg", "", 9, row -> new Cell.Text(row));
    Csv.write(List.of(named), List.of(), out);
    assertThat(out).hasToString("\"'=cmd, kg\"\n");
  }
}
