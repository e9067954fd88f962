package org.evenpour.live;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The file in which people say that they have seen signals: one line each, only ever added to.
 *
 * <p>A line counts when it is whole, line end included; what a killed process left of one is closed
 * by the next line and passed over. Every cell is quoted and holds no line break, so a line that
 * was cut off can never be taken for a whole one. A line is on the disk when {@link #add} returns.
 *
 * <p>Owned by the engine's thread; several processes may add to the same file.
 */
public final class SeenFile {
  private static final String HEADINGS = "at,signal,since_turn,turn,who,note\n";
  private static final int CELLS = 6;
  private static final Pattern CELL = Pattern.compile("\\G\"((?:[^\"]|\"\")*)\"(,|$)");

  private final Path file;

  /**
   * @param file need not be there yet
   */
  public SeenFile(Path file) {
    this.file = file;
  }

  /** The file beside a log. */
  public static SeenFile beside(Path log) {
    return new SeenFile(log.resolveSibling(log.getFileName() + ".seen.csv"));
  }

  /** Where it is. */
  public Path path() {
    return file;
  }

  /** All whole lines, in their order. */
  public List<Seen> read() throws IOException {
    String text;
    try {
      text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      return List.of();
    }
    List<Seen> all = new ArrayList<>();
    int from = 0;
    for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', from)) {
      Seen seen = parsed(text.substring(from, end).stripTrailing());
      if (seen != null) {
        all.add(seen);
      }
      from = end + 1;
    }
    return all;
  }

  /** Adds a line; it is on the disk when this returns. */
  public void add(Seen seen) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      try (var lock = channel.lock()) {
        long size = channel.size();
        String before = size == 0 ? HEADINGS : endsItsLine(channel, size) ? "" : "\n";
        ByteBuffer line = ByteBuffer.wrap((before + line(seen)).getBytes(StandardCharsets.UTF_8));
        channel.position(size);
        while (line.hasRemaining()) {
          channel.write(line);
        }
        channel.force(true);
      }
    }
  }

  private static boolean endsItsLine(FileChannel channel, long size) throws IOException {
    ByteBuffer last = ByteBuffer.allocate(1);
    return channel.read(last, size - 1) == 1 && last.get(0) == '\n';
  }

  private static String line(Seen seen) {
    return String.join(
            ",",
            quoted(seen.at().toString()),
            quoted(seen.signal()),
            quoted(Integer.toString(seen.sinceTurn())),
            quoted(Integer.toString(seen.turn())),
            quoted(seen.who()),
            quoted(seen.note()))
        + "\n";
  }

  private static String quoted(String cell) {
    String oneLine = cell.replaceAll("\\R|\\p{Cntrl}", " ").strip();
    return '"' + plain(oneLine).replace("\"", "\"\"") + '"';
  }

  /**
   * Text that no spreadsheet takes for a formula (OWASP, <i>CSV Injection</i>): a quote mark goes
   * before one that begins like one.
   */
  private static String plain(String text) {
    return !text.isEmpty() && "=+-@".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }

  private static String asTyped(String text) {
    return text.length() > 1 && text.charAt(0) == '\'' && "=+-@".indexOf(text.charAt(1)) >= 0
        ? text.substring(1)
        : text;
  }

  private static @Nullable Seen parsed(String line) {
    List<String> cells = new ArrayList<>();
    Matcher cell = CELL.matcher(line);
    int end = 0;
    while (cells.size() <= CELLS && end < line.length() && cell.find()) {
      cells.add(asTyped(cell.group(1).replace("\"\"", "\"")));
      end = cell.end();
    }
    if (cells.size() != CELLS || end != line.length()) {
      return null;
    }
    try {
      return new Seen(
          Instant.parse(cells.get(0)),
          cells.get(1),
          Integer.parseInt(cells.get(2)),
          Integer.parseInt(cells.get(3)),
          cells.get(4),
          cells.get(5));
    } catch (DateTimeException | NumberFormatException e) {
      return null;
    }
  }
}
