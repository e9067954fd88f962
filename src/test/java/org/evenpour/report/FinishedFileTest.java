package org.evenpour.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FinishedFileTest {
  @TempDir Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }

  @Test
  void replacesTheEarlierFileOnceTheNewOneIsWhole() throws IOException {
    Path file = folder.resolve("report.json");
    Files.writeString(file, "old");
    FinishedFile.write(
        file,
        out -> {
          out.write("new".getBytes(UTF_8));
          out.flush();
          assertThat(file).hasContent("old");
        });
    assertThat(file).hasContent("new");
    assertThat(names()).containsExactly("report.json");
  }

  @Test
  void leavesNothingWhereTheWritingFails() throws IOException {
    Path file = folder.resolve("report.json");
    assertThatThrownBy(
            () ->
                FinishedFile.write(
                    file,
                    out -> {
                      out.write(new byte[100_000]);
                      throw new IOException("No space left on device");
                    }))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("report.json")
        .hasMessageContaining("No space left on device");
    assertThat(names()).isEmpty();
  }

  @Test
  void leavesTheEarlierFileWhereTheProgramItselfFails() throws IOException {
    Path file = folder.resolve("report.json");
    Files.writeString(file, "old");
    assertThatThrownBy(
            () ->
                FinishedFile.write(
                    file,
                    out -> {
                      out.write(1);
                      throw new IllegalStateException("broken");
                    }))
        .isInstanceOf(IllegalStateException.class);
    assertThat(file).hasContent("old");
    assertThat(names()).containsExactly("report.json");
  }

  @Test
  void leavesAllAsTheyWereWhereOneOfSeveralFails() throws IOException {
    Path first = Files.writeString(folder.resolve("a.json"), "old");
    Path second = folder.resolve("no/such.xlsx");
    Map<Path, FinishedFile.Content> files = new LinkedHashMap<>();
    files.put(first, out -> out.write('a'));
    files.put(second, out -> out.write('b'));
    assertThatThrownBy(() -> FinishedFile.writeAll(files))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith(second + " cannot be written")
        .hasMessageNotContaining("a.json");
    assertThat(first).hasContent("old");
    files.remove(second);
    files.put(folder.resolve("b.xlsx"), out -> out.write('b'));
    FinishedFile.writeAll(files);
    assertThat(first).hasContent("a");
    assertThat(folder.resolve("b.xlsx")).hasContent("b");
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all).hasSize(2);
    }
  }

  @Test
  void saysThatTheFolderIsMissing() {
    assertThatThrownBy(() -> FinishedFile.write(folder.resolve("no/such.json"), out -> {}))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("make the folder first");
  }

  @Test
  void saysThatANameIsAFolder() {
    assertThatThrownBy(() -> FinishedFile.write(folder, out -> {}))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("is a folder");
  }

  @Test
  void writesThroughALinkInsteadOfReplacingIt() throws IOException {
    Path file = Files.writeString(folder.resolve("real.json"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
    FinishedFile.write(link, out -> out.write("new".getBytes(UTF_8)));
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(file).hasContent("new");
  }

  @Test
  void writesIntoADeviceAndSaysWhenItIsFull() {
    Path full = Path.of("/dev/full"); // Linux: every write to it finds the disk full
    assumeThat(Files.exists(full)).isTrue();
    assertThatThrownBy(() -> FinishedFile.write(full, out -> out.write(1)))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("/dev/full");
    assertThat(Files.exists(full)).isTrue();
  }
}
