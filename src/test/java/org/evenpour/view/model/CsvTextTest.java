package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;

class CsvTextTest {
  @Test
  void figuresHaveAMinusThatEveryProgramReads() {
    assertThat(CsvText.cell("−1.5", false)).isEqualTo("-1.5");
  }

  @Test
  void missingFiguresAreEmpty() {
    assertThat(CsvText.cell("—", false)).isEmpty();
  }

  // OWASP ASVS 5.0, 1.2.10: words that a spreadsheet would run as a formula are defused.
  @Test
  void wordsThatLookLikeFormulasAreDefused() {
    assertThat(CsvText.cell("=SUM(A1)", true)).isEqualTo("'=SUM(A1)");
    assertThat(CsvText.cell("@cmd", true)).isEqualTo("'@cmd");
    assertThat(CsvText.cell("-1.5", false)).isEqualTo("-1.5");
  }

  // RFC 4180, 2.6 and 2.7.
  @Test
  void commasAndQuotesAreQuoted() {
    assertThat(CsvText.cell("a, \"b\"", true)).isEqualTo("\"a, \"\"b\"\"\"");
  }

  @Test
  void lineBreaksAreQuotedAndNothingElseIs() throws IOException {
    StringBuilder out = new StringBuilder();
    CsvText.line(List.of("", "one\ntwo", "three\rfour", " #!é ", "=1,2", "\"=3"), true, out);
    assertThat(out).hasToString(",\"one\ntwo\",\"three\rfour\", #!é ,\"'=1,2\",\"\"\"=3\"\n");
    try (CSVParser parser = CSVParser.parse(out.toString(), CSVFormat.RFC4180)) {
      assertThat(parser.getRecords().get(0).toList())
          .containsExactly("", "one\ntwo", "three\rfour", " #!é ", "'=1,2", "\"=3");
    }
  }
}
