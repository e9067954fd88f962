package org.evenpour.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import org.evenpour.store.Chain;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeenFileTest {
  private static final Seen FIRST =
      new Seen(
          Instant.parse("2026-03-05T21:10:00Z"),
          "T1, thickness, mold 7, low",
          131,
          140,
          "R. Soto",
          "nozzle \"7\" half blocked, cleaned");
  private static final Seen SECOND =
      new Seen(Instant.parse("2026-03-06T01:00:00.5Z"), "mass, wheel, high", 150, 152, "", "-2 kg");

  @TempDir Path folder;
  private Path path;
  private SeenFile file;

  @BeforeEach
  void open() {
    path = folder.resolve("log.csv.seen.csv");
    file = SeenFile.beside(folder.resolve("log.csv"));
  }

  @Test
  void readsWhatItWrote() throws IOException {
    assertThat(file.read()).isEmpty();
    file.add(FIRST);
    file.add(SECOND);
    assertThat(new SeenFile(path).read()).containsExactly(FIRST, SECOND);
    assertThat(Files.readAllLines(path))
        .containsExactly(
            "at,signal,since_turn,turn,who,note,chain",
            "\"2026-03-05T21:10:00Z\",\"T1, thickness, mold 7, low\",\"131\",\"140\",\"R. Soto\","
                + "\"nozzle \"\"7\"\" half blocked, cleaned\",\"1 "
                + "0".repeat(64)
                + "\"",
            "\"2026-03-06T01:00:00.500Z\",\"mass, wheel, high\",\"150\",\"152\",\"\",\"'-2 kg\",\"2 "
                + Chain.hash(Files.readAllLines(path).get(1))
                + "\"");
  }

  /** A note that was changed, taken out or put in is named. */
  @Test
  void refusesNotesThatWereTamperedWith() throws IOException {
    file.add(FIRST);
    file.add(SECOND);
    file.add(FIRST);
    List<String> good = Files.readAllLines(path);
    List<String> lines = new java.util.ArrayList<>(good);
    lines.set(1, lines.get(1).replace("R. Soto", "A. Vega"));
    Files.write(path, lines);
    assertThatThrownBy(file::read).hasMessageContaining("seen.csv:2: this line was changed");
    lines = new java.util.ArrayList<>(good);
    lines.remove(2);
    Files.write(path, lines);
    assertThatThrownBy(file::read).hasMessageContaining("seen.csv:3: lines are missing");
    lines = new java.util.ArrayList<>(good);
    lines.add(lines.get(3).replaceAll(",\"3 [0-9a-f]*\"$", ""));
    Files.write(path, lines);
    assertThatThrownBy(() -> file.add(SECOND)).hasMessageContaining("seen.csv:5: this line has no");
    assertThat(Files.readAllLines(path)).isEqualTo(lines);
  }

  /** Notes from before there were hashes stand on, and are held by those that come. */
  @Test
  void readsNotesFromBeforeThereWereHashes() throws IOException {
    file.add(FIRST);
    file.add(SECOND);
    List<String> old =
        Files.readAllLines(path).stream()
            .map(line -> line.replaceAll(",(chain|\"[0-9]+ [0-9a-f]{64}\")$", ""))
            .toList();
    assertThat(String.join("\n", old)).doesNotContain("chain", "000000000");
    Files.write(path, old);
    file.add(FIRST);
    assertThat(file.read()).containsExactly(FIRST, SECOND, FIRST);
    assertThat(file.head().unhashed()).isEqualTo(2);
  }

  /** Whatever a killed process left of its last line, no line before or after it is lost. */
  @Test
  void survivesALineThatWasCutOffAnywhere() throws IOException {
    file.add(FIRST);
    long kept = Files.size(path);
    file.add(SECOND);
    byte[] whole = Files.readAllBytes(path);
    Seen third = new Seen(FIRST.at(), "mass, wheel, low", 9, 9, "", "ok");
    for (int length = (int) kept; length < whole.length; length++) {
      Files.write(path, java.util.Arrays.copyOf(whole, length));
      assertThat(file.read()).containsExactly(FIRST);
      file.add(third);
      // Only the line end may be all that was missing of the second.
      List<Seen> all =
          length == whole.length - 1 ? List.of(FIRST, SECOND, third) : List.of(FIRST, third);
      assertThat(file.read()).as("cut at %d", length).isEqualTo(all);
    }
  }

  @Test
  void neverTakesALineBreakFromANote() throws IOException {
    file.add(new Seen(FIRST.at(), "s", 1, 2, "", "one\r\ntwo\tthree\u2028four"));
    assertThat(file.read()).singleElement().extracting(Seen::note).isEqualTo("one two three four");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1", "+", "-2 kg", "@x", "'", "'-", "\"", "\"\",\"", ",", "a\\", "#", "", "é中😀"
      })
  void anyNoteComesBack(String note) throws IOException {
    Seen seen = new Seen(FIRST.at(), note + "s", 1, 2, note, note);
    file.add(seen);
    // an apostrophe before what begins like a formula is taken for the one that was put there
    assertThat(file.read())
        .containsExactly(note.equals("'-") ? new Seen(FIRST.at(), "-s", 1, 2, "-", "-") : seen);
  }

  @Test
  void passesOverALineThatWasNotWrittenHere() throws IOException {
    file.add(FIRST);
    String line = Files.readAllLines(path).get(1);
    Files.writeString(
        path,
        line.replace("\"131\"", "131") + "\n" + line + ",\n" + line + " x\n",
        StandardOpenOption.APPEND);
    assertThat(file.read()).containsExactly(FIRST);
  }

  @Test
  void passesOverLinesThatPeopleSpoiled() throws IOException {
    file.add(FIRST);
    Files.writeString(path, "what is this\n\"a\",\"b\"\n\n", StandardOpenOption.APPEND);
    file.add(SECOND);
    assertThat(file.read()).containsExactly(FIRST, SECOND);
    assertThat(Files.readString(path)).contains("what is this");
  }
}
