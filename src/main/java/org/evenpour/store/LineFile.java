package org.evenpour.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * A file of JSON objects, one a line, that is only ever added to.
 *
 * <p>Each line has its number, and the hash of the line before it, by which {@link Chain} shows
 * what was done to it; it may be signed. The last member of each line is {@code "check"}: the
 * CRC-32 of the line's bytes before it (as zip files have it). So a line that was cut off is never
 * taken for a whole one. A killed process can leave one at the end: readers pass it over and say
 * so, and the next writer closes it with a mark. Anything else that fails its check sum is damage,
 * and an error.
 *
 * <p>Several processes may add at the same time: each holds a lock while it looks at what there is
 * and writes. Any thread may use it.
 */
public final class LineFile {
  /** Ends a line that a killed process left; a tab never stands in a JSON text of ours. */
  private static final String UNFINISHED = "\tunfinished";

  private static final String SIGNATURE = ",\"signature\":\"";

  private static final Pattern CHECKED =
      Pattern.compile("(.*),\"check\":\"([0-9a-f]{8})\"}", Pattern.DOTALL);

  /** What a line says of its place, and who signed it; within a text every quote is escaped. */
  private static final Pattern PLACE =
      Pattern.compile(
          ",\"number\":([0-9]{1,9}),\"before\":\"([0-9a-f]{64})\""
              + "(?:,\"signer\":\"([^\"]*)\",\"signature\":\"([^\"]*)\")?"
              + ",\"check\":\"[0-9a-f]{8}\"\\}$");

  /** Java refuses a second lock within one process instead of waiting. */
  private static final Object ONE_AT_A_TIME = new Object();

  private final Path file;

  private final @Nullable SigningKey key;

  /** Lines that are added are signed. */
  LineFile(Path file, @Nullable SigningKey key) {
    this.file = file;
    this.key = key;
  }

  /**
   * A whole line.
   *
   * @param number from 1
   * @param json the object, its check sum included
   */
  record Line(int number, String json) {
    Chain.Entry entry() {
      Matcher place = PLACE.matcher(json);
      return new Chain.Entry(
          number,
          json,
          place.find() ? new Chain.Link(Integer.parseInt(place.group(1)), place.group(2)) : null);
    }
  }

  /**
   * What was read.
   *
   * @param unfinished number of the last line where it was cut off; 0 where it was not
   */
  record Lines(List<Line> whole, int unfinished) {
    List<Chain.Entry> entries() {
      return whole.stream().map(Line::entry).toList();
    }
  }

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
      while (!added(fresh)) {
        // Another file has that name by now: one that was never written to was taken away.
      }
    }
  }

  private boolean added(Fresh fresh) throws IOException {
    boolean isNew = Files.notExists(file);
    try (FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      Object opened = key();
      try (var lock = channel.lock()) {
        if (!Objects.equals(opened, key())) {
          return false;
        }
        boolean isWritten = false;
        try {
          isWritten = added(channel, fresh);
        } finally {
          if (isNew && !isWritten && channel.size() == 0) {
            Files.deleteIfExists(file); // nothing came of it, and nobody is to wonder at it
          }
        }
        return true;
      }
    }
  }

  /** Which file has that name now; null where none has, or the disk does not tell. */
  private @Nullable Object key() {
    try {
      return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
    } catch (IOException e) {
      return null;
    }
  }

  private boolean added(FileChannel channel, Fresh fresh) throws IOException {
    byte[] before = bytes(channel);
    Lines lines = lines(before);
    List<Chain.Entry> entries = new ArrayList<>(lines.entries());
    StringBuilder text = new StringBuilder();
    for (String json : fresh.after(lines)) {
      String line = checked(json, Chain.next(entries));
      entries.add(new Line(0, line).entry());
      text.append(line).append('\n');
    }
    if (text.isEmpty()) {
      return false;
    }
    boolean isOpen = before.length > 0 && before[before.length - 1] != '\n';
    String end = !isOpen ? "" : lines.unfinished() > 0 ? UNFINISHED + "\n" : "\n";
    write(channel, before.length, ByteBuffer.wrap((end + text).getBytes(StandardCharsets.UTF_8)));
    return true;
  }

  /** Where the chain ends. */
  public Chain.Head head() throws IOException {
    return Chain.head(read().entries());
  }

  /**
   * Whether the hash that a head had once is still there.
   *
   * @throws FileException if not
   */
  public void holds(String hash) throws IOException {
    if (Chain.lineOf(read().entries(), hash) == 0) {
      throw new FileException(Remark.of("at.file", file, Remark.of("chain.head", hash)));
    }
  }

  /**
   * Whether every line from the first signed one on is signed by one of these.
   *
   * @param signers public keys
   * @throws FileException if one is not: says which
   */
  public void isSignedBy(List<String> signers) throws IOException {
    boolean isSigned = false;
    for (Line line : read().whole()) {
      Matcher place = PLACE.matcher(line.json());
      String signer = place.find() ? place.group(3) : null;
      isSigned |= signer != null;
      if (isSigned && (signer == null || !signers.contains(signer))) {
        throw new FileException(
            at(line.number(), Remark.of(signer == null ? "chain.unsigned" : "chain.stranger")));
      }
    }
    if (!isSigned) {
      throw new FileException(Remark.of("at.file", file, Remark.of("chain.unsigned.all")));
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
      throw new FileException(Remark.of("at.file", file, FileException.reason(e)), e);
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
        return verified(whole, number);
      } else if (!line.isEmpty() && !line.endsWith(UNFINISHED)) {
        throw new FileException(at(number, Remark.of("limits.damaged")));
      }
      from = end + 1;
    }
    return verified(whole, 0);
  }

  private Lines verified(List<Line> whole, int unfinished) throws FileException {
    Lines lines = new Lines(whole, unfinished);
    Chain.verify(file, lines.entries());
    for (Line line : whole) {
      Matcher place = PLACE.matcher(line.json());
      if (place.find()
          && place.group(3) != null
          && !SigningKey.isSigned(
              line.json().substring(0, place.start(4) - SIGNATURE.length()),
              place.group(3),
              place.group(4))) {
        throw new FileException(at(line.number(), Remark.of("chain.signature")));
      }
    }
    return lines;
  }

  /** What is to be said of a line. */
  Remark at(int number, Remark what) {
    return Remark.of("at.line", file, number, what);
  }

  private static boolean isWhole(String text) {
    Matcher line = CHECKED.matcher(text);
    return line.matches() && line.group(2).equals(sum(line.group(1)));
  }

  private String checked(String json, Chain.Link place) {
    String before =
        json.substring(0, json.length() - 1)
            + ",\"number\":"
            + place.number()
            + ",\"before\":\""
            + place.before()
            + "\"";
    if (key != null) {
      before += ",\"signer\":\"" + key.signer() + "\"";
      before += SIGNATURE + key.signature(before) + "\"";
    }
    return before + ",\"check\":\"" + sum(before) + "\"}";
  }

  private static String sum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", sum.getValue());
  }
}
