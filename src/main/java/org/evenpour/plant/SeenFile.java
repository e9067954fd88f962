package org.evenpour.plant;

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
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;
import org.evenpour.casting.Formulas;
import org.evenpour.store.Chain;
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
  private static final String HEADINGS = "at,signal,since_turn,turn,who,note,chain\n";
  private static final int CELLS = 6;

  /** Closes what a killed process left of a line; it never is one. */
  private static final String UNFINISHED = "\tunfinished\n";

  /** A line's number among those that count, and the hash of the one before it. */
  private static final Pattern PLACE = Pattern.compile("([0-9]{1,9}) ([0-9a-f]{64})");

  private static final CSVFormat CSV =
      CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.ALL).setRecordSeparator('\n').get();

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

  /**
   * All whole lines, in their order.
   *
   * @throws IOException if it cannot be read, or a line was changed, moved, taken out or put in:
   *     names it
   */
  public List<Seen> read() throws IOException {
    try {
      return lines(text()).stream().map(Line::seen).toList();
    } catch (NoSuchFileException e) {
      return List.of();
    }
  }

  /** Where the chain of its lines ends; each line is checked. */
  public Chain.Head head() throws IOException {
    try {
      return Chain.head(entries(lines(text())));
    } catch (NoSuchFileException e) {
      return Chain.head(List.of());
    }
  }

  private String text() throws IOException {
    return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
  }

  private record Line(Chain.Entry entry, Seen seen) {}

  private static List<Chain.Entry> entries(List<Line> lines) {
    return lines.stream().map(Line::entry).toList();
  }

  private List<Line> lines(String text) throws IOException {
    List<Line> all = new ArrayList<>();
    int from = 0;
    int number = 0;
    for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', from)) {
      Line line = parsed(++number, text.substring(from, end).stripTrailing());
      if (line != null) {
        all.add(line);
      }
      from = end + 1;
    }
    Chain.verify(file, entries(all));
    return all;
  }

  /** Adds a line; it is on the disk when this returns. */
  public void add(Seen seen) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      try (var lock = channel.lock()) {
        long size = channel.size();
        String there = new String(bytes(channel), StandardCharsets.UTF_8);
        String before = size == 0 ? HEADINGS : end(there);
        Chain.Link place = Chain.next(entries(lines(there + before)));
        ByteBuffer line =
            ByteBuffer.wrap((before + line(seen, place)).getBytes(StandardCharsets.UTF_8));
        channel.position(size);
        while (line.hasRemaining()) {
          channel.write(line);
        }
        channel.force(true);
      }
    }
  }

  private static byte[] bytes(FileChannel channel) throws IOException {
    ByteBuffer all = ByteBuffer.allocate(Math.toIntExact(channel.size()));
    int read = 0;
    while (all.hasRemaining() && read >= 0) {
      read = channel.read(all, all.position());
    }
    return Arrays.copyOf(all.array(), all.position());
  }

  /** What closes the last line: it counts where nothing but its end is missing. */
  private String end(String text) throws IOException {
    if (text.endsWith("\n")) {
      return "";
    }
    Line last = parsed(0, text.substring(text.lastIndexOf('\n') + 1));
    boolean isHashed = lines(text).stream().anyMatch(line -> line.entry().link() != null);
    return last != null && (last.entry().link() != null || !isHashed) ? "\n" : UNFINISHED;
  }

  private static String line(Seen seen, Chain.Link place) {
    return CSV.format(
            Stream.of(
                    seen.at().toString(),
                    seen.signal(),
                    Integer.toString(seen.sinceTurn()),
                    Integer.toString(seen.turn()),
                    seen.who(),
                    seen.note(),
                    place.number() + " " + place.before())
                .map(cell -> Formulas.defused(cell.replaceAll("\\R|\\p{Cntrl}", " ").strip()))
                .toArray())
        + "\n";
  }

  /** The cells of a line as it is written here; of any other, none. */
  private static List<String> cells(String line) {
    try (CSVParser parser = CSVParser.parse(line, CSV)) {
      List<CSVRecord> records = parser.getRecords();
      if (records.size() == 1 && CSV.format((Object[]) records.get(0).values()).equals(line)) {
        return records.get(0).stream().map(Formulas::asTyped).toList();
      }
    } catch (IOException | RuntimeException e) {
      // a quote that is not closed, or stands where none may
    }
    return List.of();
  }

  private static @Nullable Line parsed(int number, String line) {
    List<String> cells = cells(line);
    boolean isHashed = cells.size() == CELLS + 1;
    if (cells.size() != CELLS && !isHashed) {
      return null;
    }
    Matcher place = PLACE.matcher(isHashed ? cells.get(CELLS) : "");
    if (isHashed && !place.matches()) {
      return null;
    }
    try {
      return new Line(
          new Chain.Entry(
              number,
              line,
              isHashed ? new Chain.Link(Integer.parseInt(place.group(1)), place.group(2)) : null),
          new Seen(
              Instant.parse(cells.get(0)),
              cells.get(1),
              Integer.parseInt(cells.get(2)),
              Integer.parseInt(cells.get(3)),
              cells.get(4),
              cells.get(5)));
    } catch (DateTimeException | NumberFormatException e) {
      return null;
    }
  }
}
