package org.evenpour.intake;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.QuoteMode;
import org.evenpour.casting.Formulas;
import org.evenpour.casting.PartFiles;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Writes the rows that are set aside to a file for each log: line, reason, and the row as it stands
 * there. The files appear all at once, when everything is done; a log without such rows gets none,
 * and one that an earlier run left is taken away.
 *
 * <p>Owned by the thread that reads the logs.
 */
public final class SetAside implements AutoCloseable {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.MINIMAL).setRecordSeparator('\n').get();
  private static final CSVFormat ROW = FORMAT.builder().setQuoteMode(QuoteMode.ALL).get();

  private static final class Target {
    final Path file;
    final Path part;
    @Nullable BufferedWriter writer;

    Target(Path file) {
      this.file = file;
      this.part =
          file.resolveSibling(file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    }
  }

  private final @Nullable UnaryOperator<Path> fileOfLog;
  private final Map<Path, Target> targets = new LinkedHashMap<>();
  private final Set<Path> taken = new HashSet<>();

  private SetAside(@Nullable UnaryOperator<Path> fileOfLog) {
    this.fileOfLog = fileOfLog;
  }

  /** Writes no file. */
  public static SetAside nowhere() {
    return new SetAside(null);
  }

  /** Writes {@code <log>.set-aside.csv} beside each log. */
  public static SetAside besideLogs() {
    return to(log -> log.resolveSibling(log.getFileName() + ".set-aside.csv"));
  }

  /** Writes {@code <log>.set-aside.csv} into a folder. */
  public static SetAside into(Path folder) {
    return to(log -> folder.resolve(log.getFileName() + ".set-aside.csv"));
  }

  /** Writes where a function says. Two logs never share a file: the second one's is numbered. */
  public static SetAside to(UnaryOperator<Path> fileOfLog) {
    return new SetAside(fileOfLog);
  }

  /** All logs are read anew: what was written counts for nothing. */
  void anew() throws IntakeException {
    close();
    taken.clear();
  }

  /** A log is read from now on. */
  void begin(Path log) {
    if (fileOfLog == null || targets.containsKey(log)) {
      return;
    }
    targets.put(log, new Target(free(fileOfLog.apply(log), taken)));
  }

  /** The files that rows of these logs would be written to, or that are taken away. */
  public List<Path> filesOf(List<Path> logs) {
    UnaryOperator<Path> its = fileOfLog;
    Set<Path> names = new HashSet<>();
    List<Path> files = new ArrayList<>();
    if (its != null) {
      for (Path log : new LinkedHashSet<>(logs)) {
        files.add(free(its.apply(log), names));
      }
    }
    return files;
  }

  private static Path free(Path wanted, Set<Path> names) {
    Path file = wanted;
    for (int number = 2; !names.add(file.toAbsolutePath().normalize()); number++) {
      file = wanted.resolveSibling(number + "-" + wanted.getFileName());
    }
    return file;
  }

  /** Writes a row of a log that was begun. */
  void add(Path log, long line, Remark reason, String text) throws IntakeException {
    Target target = targets.get(log);
    if (target == null) {
      return;
    }
    try {
      BufferedWriter writer = target.writer;
      if (writer == null) {
        writer = Files.newBufferedWriter(PartFiles.make(target.part), StandardCharsets.UTF_8);
        target.writer = writer;
        writer.write("line,reason,row\n");
      }
      writer.write(line + ",");
      writer.write(FORMAT.format(Formulas.defused(reason.toString())) + ",");
      ROW.print(writer).print(Formulas.defused(text));
      writer.write('\n');
    } catch (IOException e) {
      throw IntakeException.unwritable(target.file, e);
    }
  }

  /**
   * Everything went well: puts the files in their places.
   *
   * @return the files that were written
   */
  public List<Path> complete() throws IntakeException {
    List<Path> written = new ArrayList<>();
    for (Target target : targets.values()) {
      try {
        if (target.writer != null) {
          target.writer.close();
        }
      } catch (IOException e) {
        throw IntakeException.unwritable(target.file, e);
      }
    }
    for (Target target : targets.values()) {
      try {
        if (target.writer == null) {
          Files.deleteIfExists(target.file);
        } else {
          PartFiles.finish(target.part, target.file);
          written.add(target.file);
        }
      } catch (IOException e) {
        throw IntakeException.unwritable(target.file, e);
      }
    }
    targets.clear();
    return written;
  }

  /** Takes away what was written, unless everything was completed. */
  @Override
  public void close() throws IntakeException {
    IntakeException failure = null;
    for (Target target : targets.values()) {
      if (target.writer == null) {
        continue;
      }
      try {
        target.writer.close();
      } catch (IOException e) {
        // What could not be written is not wanted any more.
        failure = failure == null ? IntakeException.unwritable(target.file, e) : failure;
      }
      try {
        PartFiles.drop(target.part);
      } catch (IOException e) {
        failure = failure == null ? IntakeException.unwritable(target.file, e) : failure;
      }
    }
    targets.clear();
    if (failure != null) {
      throw failure;
    }
  }
}
