package org.evenpour.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The offset from UTC that a log writes behind its own times. */
public final class OwnOffset {
  /** So much of a log is looked at: a choice, some hundred rows. */
  private static final int HEAD = 16_384;

  private static final Pattern TIME =
      Pattern.compile(
          "\\d{4}-\\d\\d-\\d\\d[T ]\\d\\d:\\d\\d(?::\\d\\d(?:[.,]\\d+)?)?(Z|[+-]\\d\\d:?\\d\\d)");

  private OwnOffset() {}

  /**
   * The offset of the first times in a log that carry one; null where none does, or they differ.
   */
  public static @Nullable ZoneOffset of(Path log) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(log)) {
      head = in.readNBytes(HEAD);
    }
    ZoneOffset found = null;
    Matcher times = TIME.matcher(new String(head, StandardCharsets.ISO_8859_1));
    while (times.find()) {
      ZoneOffset next = ZoneOffset.of(times.group(1));
      if (found != null && !found.equals(next)) {
        return null; // summer time ends, or plants differ: no one offset is the log's own
      }
      found = next;
    }
    return found;
  }
}
