package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RowCutterTest {
  private static final Path FILE = Path.of("random.csv");
  private static final int COLUMNS = 4;

  /** A row as it was cut: where it stands, what is wrong with it, its cells, its text. */
  private record Row(long line, Block.Fault fault, List<String> cells, String text) {}

  @Property(tries = 3000)
  void cutsRowsWithoutQuotesAsCommonsCsvCutsThem(@ForAll("textsWithoutQuotes") String text)
      throws IntakeException {
    for (char separator : new char[] {',', ';', '\t'}) {
      byte[] bytes = text.replace('|', separator).getBytes(StandardCharsets.UTF_8);
      assertThat(rows(bytes, separator, false, 1000, 4096))
          .isEqualTo(rows(bytes, separator, true, 1000, 4096));
    }
  }

  @Property(tries = 3000)
  void cutsTheSameRowsWhateverTheBlocks(
      @ForAll("texts") String text,
      @ForAll @IntRange(min = 1, max = 40) int readBytes,
      @ForAll @IntRange(min = 4, max = 30) int recordLimit)
      throws IntakeException {
    byte[] bytes = text.replace('|', ',').getBytes(StandardCharsets.UTF_8);
    List<Row> whole = rows(bytes, ',', false, recordLimit, 100_000);
    assertThat(rows(bytes, ',', false, recordLimit, readBytes)).isEqualTo(whole);
    assertThat(rows(bytes, ',', true, recordLimit, readBytes)).isEqualTo(whole);
  }

  /** What is written by the rules of RFC 4180 is read back whole. */
  @Property
  void readsBackWhatCommonsCsvWrites(@ForAll("cells") List<List<String>> table)
      throws IntakeException {
    StringBuilder text = new StringBuilder();
    for (List<String> row : table) {
      text.append(org.apache.commons.csv.CSVFormat.RFC4180.format(row.toArray())).append("\r\n");
    }
    List<List<String>> wanted =
        table.stream()
            .map(row -> row.stream().map(RowCutterTest::trimmed).toList())
            .filter(row -> row.stream().anyMatch(cell -> !cell.isEmpty()))
            .toList();
    List<Row> rows =
        rows(text.toString().getBytes(StandardCharsets.UTF_8), ',', false, 1 << 20, 4096);
    assertThat(rows.stream().map(Row::cells).toList()).isEqualTo(wanted);
    assertThat(rows).allMatch(row -> row.fault() == Block.Fault.NONE);
  }

  @Test
  void joinsQuotedLinesAndCountsThem() throws IntakeException {
    assertThat(cut("a,\"b\nb\",c,d\r\n1,2,3,4\r5,6,7,8"))
        .containsExactly(
            new Row(0, Block.Fault.NONE, List.of("a", "b\nb", "c", "d"), "a,\"b\nb\",c,d"),
            new Row(2, Block.Fault.NONE, List.of("1", "2", "3", "4"), "1,2,3,4"),
            new Row(3, Block.Fault.NONE, List.of("5", "6", "7", "8"), "5,6,7,8"));
  }

  @Test
  void losesOneLineToAQuoteThatIsNotClosed() throws IntakeException {
    assertThat(cut("1,\"2,3,4\n5,6,7,8\n9,10,11,12\n"))
        .extracting(Row::line, Row::fault)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(0L, Block.Fault.QUOTE),
            org.assertj.core.groups.Tuple.tuple(1L, Block.Fault.NONE),
            org.assertj.core.groups.Tuple.tuple(2L, Block.Fault.NONE));
  }

  @Test
  void losesOneLineToAQuoteThatIsClosedInTheNextRow() throws IntakeException {
    assertThat(cut("1,\"2,3,4\n5,\"6\",7,8\n"))
        .extracting(Row::fault)
        .containsExactly(Block.Fault.QUOTE, Block.Fault.NONE);
  }

  @Test
  void takesAQuoteWithinACellAsText() throws IntakeException {
    assertThat(cut("1,5\",3,4\n"))
        .extracting(Row::cells)
        .containsExactly(List.of("1", "5\"", "3", "4"));
  }

  @Test
  void skipsBlankLinesAndLinesOfSeparators() throws IntakeException {
    assertThat(cut("\n\r\n  \n,,,\n1,2,3,4\n,,,,,,,\n\n"))
        .extracting(Row::line)
        .containsExactly(4L);
  }

  @Test
  void marksWrongNumbersOfCellsButNotBlankOnesAtTheEnd() throws IntakeException {
    assertThat(cut("1,2,3\n1,2,3,4,5\n1,2,3,4,,\n1,2,3,\n"))
        .extracting(Row::fault)
        .containsExactly(Block.Fault.CELLS, Block.Fault.CELLS, Block.Fault.NONE, Block.Fault.NONE);
  }

  @Test
  void marksRowsThatHoldNulBytes() throws IntakeException {
    assertThat(cut("1,2,3,\0\n\0\0\0\0\n1,2,3,4"))
        .extracting(Row::fault)
        .containsExactly(Block.Fault.NUL, Block.Fault.NUL, Block.Fault.NONE);
  }

  private static List<Row> cut(String text) throws IntakeException {
    return rows(text.getBytes(StandardCharsets.UTF_8), ',', false, 1 << 20, 4096);
  }

  private static List<Row> rows(
      byte[] bytes, char separator, boolean always, int recordLimit, int readBytes)
      throws IntakeException {
    RowCutter cutter =
        new RowCutter(
            (byte) separator,
            Collections.nCopies(COLUMNS, LogColumn.Cell.TEXT),
            recordLimit,
            always);
    List<Row> rows = new ArrayList<>();
    long line = 0;
    try (LogBlocks blocks =
        LogBlocks.of(FILE, new ByteArrayInputStream(bytes), recordLimit, readBytes)) {
      blocks.separate((byte) separator);
      Block block = cutter.newBlock(16);
      while (blocks.next(block)) {
        cutter.cut(block);
        for (int row = 0; row < block.rows; row++) {
          List<String> cells = new ArrayList<>();
          for (int column = 0; column < COLUMNS && !block.hasFault(row); column++) {
            cells.add(block.cell(row, column));
          }
          // Of a row that is too long, only the beginning is kept, and not always as much.
          boolean tooLong = block.fault(row) == Block.Fault.TOO_LONG;
          rows.add(
              new Row(
                  line + block.line[row],
                  block.fault(row),
                  cells,
                  tooLong ? "" : block.text(row, Integer.MAX_VALUE)));
        }
        line += block.lines;
      }
    }
    return rows;
  }

  /** As the program trims cells: blanks and control characters off both ends. */
  private static String trimmed(String cell) {
    return cell.trim();
  }

  @Provide
  Arbitrary<String> textsWithoutQuotes() {
    return texts("12.5", "é", "mold", " ", "\u000b", "-", "2026-03-04T05:06Z", "x y", "\u00a0");
  }

  @Provide
  Arbitrary<String> texts() {
    return texts("1", "é", "\"", "\"\"", " ", "ab", "\u000b", "\0", "\u00a0", "\"|", "|\"");
  }

  private static Arbitrary<String> texts(String... pieces) {
    Arbitrary<String> structure = Arbitraries.of("|", "|", "|", "\n", "\r\n", "\r");
    return Arbitraries.oneOf(structure, Arbitraries.of(pieces))
        .list()
        .ofMaxSize(60)
        .map(list -> String.join("", list));
  }

  @Provide
  Arbitrary<List<List<String>>> cells() {
    Arbitrary<String> cell =
        Arbitraries.of("1", "a,b", "c\"d", "e\nf", "g\r\nh", "", "é", " i ", "\"", "j;k")
            .list()
            .ofMaxSize(3)
            .map(list -> String.join("", list));
    return Combinators.combine(cell, cell, cell, cell)
        .as((a, b, c, d) -> List.of(a, b, c, d))
        .list()
        .ofMaxSize(20);
  }
}
