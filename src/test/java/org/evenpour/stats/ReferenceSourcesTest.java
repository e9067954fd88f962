package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every reference table says where it is from and why it may be passed on. */
class ReferenceSourcesTest {
  private static final Path TABLES = Path.of("shared", "reference");
  private static final int CELLS = 6;

  @Test
  void everyTableHasItsSourceAndWhyItMayBePassedOn() throws IOException {
    List<List<String>> rows =
        Files.readAllLines(TABLES.resolve("SOURCES.md")).stream()
            .filter(line -> line.startsWith("| `"))
            .map(line -> List.of(line.substring(2, line.length() - 2).split(" \\| ", -1)))
            .toList();
    assertThat(rows)
        .allSatisfy(
            row ->
                assertThat(row).hasSize(CELLS).allSatisfy(cell -> assertThat(cell).isNotBlank()));
    try (var files = Files.list(TABLES)) {
      for (Path file : files.filter(one -> one.toString().endsWith(".csv")).toList()) {
        String name = file.getFileName().toString();
        assertThat(rows).as(name).anyMatch(row -> names(row.get(0), name));
      }
    }
  }

  private static boolean names(String cell, String name) {
    return Arrays.stream(cell.replace("`", "").split(", ", -1))
        .anyMatch(one -> name.matches(one.replace(".", "\\.").replace("*", ".*")));
  }
}
