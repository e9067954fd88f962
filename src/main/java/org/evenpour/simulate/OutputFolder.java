package org.evenpour.simulate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.evenpour.casting.PartFiles;

/**
 * Files that appear together: each is written under a temporary name; only when all are whole do
 * they take their places, over any files of an earlier run.
 *
 * <p>Owned by the thread that writes.
 */
final class OutputFolder implements AutoCloseable {
  private static final CSVFormat CSV = CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();

  private final Path directory;
  private final Set<String> names = new LinkedHashSet<>();

  private OutputFolder(Path directory) {
    this.directory = directory;
  }

  /** A folder, made if it is missing. */
  static OutputFolder at(Path directory) throws IOException {
    Files.createDirectories(directory);
    return new OutputFolder(directory);
  }

  void text(String name, String text) throws IOException {
    Files.writeString(PartFiles.make(part(name)), text, StandardCharsets.UTF_8);
  }

  void table(String name, List<String> columns, List<List<String>> rows) throws IOException {
    try (CSVPrinter printer = table(name, columns)) {
      for (List<String> row : rows) {
        printer.printRecord(row);
      }
    }
  }

  /** A table whose rows the caller prints; it closes it. */
  CSVPrinter table(String name, List<String> columns) throws IOException {
    CSVPrinter printer =
        new CSVPrinter(
            Files.newBufferedWriter(PartFiles.make(part(name)), StandardCharsets.UTF_8), CSV);
    printer.printRecord(columns);
    return printer;
  }

  /** One row as it stands in a table, without its end of line. */
  static String line(List<String> cells) {
    return CSV.format(cells.toArray());
  }

  /** Everything is written: puts the files in their places. */
  void complete() throws IOException {
    for (String name : names) {
      PartFiles.finish(part(name), directory.resolve(name));
    }
  }

  private Path part(String name) {
    names.add(name);
    return directory.resolve(name + ".part");
  }

  /** Takes away what was written, unless it took its place. */
  @Override
  public void close() throws IOException {
    for (String name : names) {
      PartFiles.drop(part(name));
    }
  }
}
