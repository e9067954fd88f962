package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each input that ever broke the program, with what belongs to it: {@code NAME.csv} and, where it
 * needs them, {@code NAME.yaml}, {@code NAME.events.csv} and {@code NAME.gauge.csv}. What was wrong
 * stands in {@code README.md} beside them.
 */
class CorpusTest {
  private static final Path CORPUS = Path.of("src", "test", "resources", "corpus");

  @TempDir Path folder;

  static List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(CORPUS)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.matches("[^.]+\\.csv"))
          .map(name -> name.substring(0, name.length() - 4))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void breaksNothingAnyMore(String name) throws IOException {
    copy(name + ".csv", TriedAudit.LOG);
    copy(name + ".yaml", TriedAudit.PROFILE);
    copy(name + ".events.csv", TriedAudit.EVENTS);
    copy(name + ".gauge.csv", TriedAudit.GAUGE);
    assertThat(TriedAudit.finding(folder, false)).isEmpty();
  }

  @Test
  void eachIsExplained() throws IOException {
    String text = Files.readString(CORPUS.resolve("README.md"));
    assertThat(names())
        .isNotEmpty()
        .allSatisfy(name -> assertThat(text).contains("`" + name + "`"));
  }

  private void copy(String from, String to) throws IOException {
    if (Files.exists(CORPUS.resolve(from))) {
      Files.copy(CORPUS.resolve(from), folder.resolve(to));
    }
  }
}
