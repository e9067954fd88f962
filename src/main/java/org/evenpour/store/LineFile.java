package org.evenpour.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.evenpour.casting.FileException;
import org.evenpour.casting.Remark;

/**
 * A file of JSON objects, one a line, that is only ever added to.
 *
 * <p>The last member of each line is {@code "check"}: the CRC-32 of the line's bytes before it (as
 * zip files have it). So a line that was cut off is never taken for a whole one. A killed process
 * can leave one at the end: readers pass it over and say so, and the next writer closes it with a
 * mark. Anything else that fails its check sum is damage, and an error.
 *
 * <p>Several processes may add at the same time: each holds a lock while it looks at what there is
 * and writes. Any thread may use it.
 */
final class LineFile {
  /** Ends a line that a killed process left; a tab never stands in a JSON text of ours. */
  private static final String UNFINISHED = "\tunfinished";

  private static final Pattern CHECKED =
      Pattern.compile("(.*),\"check\":\"([0-9a-f]{8})\"}", Pattern.DOTALL);

  /** Java refuses a second lock within one process instead of waiting. */
  private static final Object ONE_AT_A_TIME = new Object();

  private final Path file;

  LineFile(Path file) {
    this.file = file;
  }

  /**
   * A whole line.
   *
   * @param number from 1
   * @param json the object, its check sum included
   */
  record Line(int number, String json) {}

  /**
   * What was read.
   *
   * @param unfinished number of the last line where it was cut off; 0 where it was not
   */
  record Lines(List<Line> whole, int unfinished) {}

  /** Makes new lines of what stands in the file. */
  @FunctionalInterface
  interface Fresh {
    /** Objects without check sums. */
    List<String> after(Lines before) throws IOException;
  }

  /**
   * All whole lines; none where there is no file.
   *
   * @throws IOException if the file cannot be read, or a line before the last is damaged
   */
  Lines read() throws IOException {
    try {
      return lines(Files.readAllBytes(file));
    } catch (NoSuchFileException e) {
      return new Lines(List.of(), 0);
    }
  }

  /**
   * Adds lines, and returns when they are on the disk. Nobody else adds anything between what
   * {@code fresh} sees and what it adds.
   */
  void append(Fresh fresh) throws IOException {
    synchronized (ONE_AT_A_TIME) {
      try (FileChannel channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
        try (var lock = channel.lock()) {
          byte[] before = bytes(channel);
          Lines lines = lines(before);
          StringBuilder text = new StringBuilder();
          for (String json : fresh.after(lines)) {
            text.append(checked(json)).append('\n');
          }
          boolean isOpen = before.length > 0 && before[before.length - 1] != '\n';
          String end = !isOpen ? "" : lines.unfinished() > 0 ? UNFINISHED + "\n" : "\n";
          ByteBuffer out = ByteBuffer.wrap((end + text).getBytes(StandardCharsets.UTF_8));
          write(channel, before.length, out);
        }
      }
    }
  }

  /** Where there is no room, Java says so, but not of which file. */
  private void write(FileChannel channel, long at, ByteBuffer out) throws IOException {
    try {
      channel.position(at);
      while (out.hasRemaining()) {
        channel.write(out);
      }
      channel.force(true);
    } catch (IOException e) {
      throw new IOException(file + ": " + e.getMessage(), e);
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

  private Lines lines(byte[] bytes) throws IOException {
    List<Line> whole = new ArrayList<>();
    int number = 0;
    int from = 0;
    while (from < bytes.length) {
      int end = from;
      while (end < bytes.length && bytes[end] != '\n') {
        end++;
      }
      number++;
      String text = new String(bytes, from, end - from, StandardCharsets.UTF_8);
      String line = text.endsWith("\r") ? text.substring(0, text.length() - 1) : text;
      if (isWhole(line)) {
        whole.add(new Line(number, line));
      } else if (end == bytes.length) {
        return new Lines(whole, number);
      } else if (!line.isEmpty() && !line.endsWith(UNFINISHED)) {
        throw new FileException(at(number, Remark.of("limits.damaged")));
      }
      from = end + 1;
    }
    return new Lines(whole, 0);
  }

  /** What is to be said of a line. */
  Remark at(int number, Remark what) {
    return Remark.of("at.line", file, number, what);
  }

  private static boolean isWhole(String text) {
    Matcher line = CHECKED.matcher(text);
    return line.matches() && line.group(2).equals(sum(line.group(1)));
  }

  private static String checked(String json) {
    String before = json.substring(0, json.length() - 1);
    return before + ",\"check\":\"" + sum(before) + "\"}";
  }

  private static String sum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", sum.getValue());
  }
}
