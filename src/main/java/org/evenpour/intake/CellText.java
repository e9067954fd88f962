package org.evenpour.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Text out of a file's bytes, and text as messages show it. */
final class CellText {
  private static final int SHOWN = 60;

  private CellText() {}

  /**
   * The text of some bytes: UTF-8, or Latin-1 where they are not UTF-8, so that an old export's é
   * or ° stays what it was.
   */
  static String decode(byte[] bytes, int from, int to) {
    boolean ascii = true;
    for (int i = from; i < to; i++) {
      if (bytes[i] < 0) {
        ascii = false;
        break;
      }
    }
    if (ascii) {
      return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
    }
    return isUtf8(bytes, from, to)
        ? new String(bytes, from, to - from, StandardCharsets.UTF_8)
        : new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }

  /** Whether bytes are well-formed UTF-8. */
  static boolean isUtf8(byte[] bytes, int from, int to) {
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, from, to - from));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  /** Whether a byte is a blank or a control character, of which none counts at a cell's ends. */
  static boolean isBlank(byte b) {
    return b >= 0 && b <= ' ';
  }

  /** Text between quotes and cut to a readable length. */
  static String shown(String text) {
    String line = oneLine(text);
    if (line.length() > SHOWN) {
      int end = Character.isHighSurrogate(line.charAt(SHOWN - 1)) ? SHOWN - 1 : SHOWN;
      line = line.substring(0, end) + "…";
    }
    return '"' + line + '"';
  }

  /** Text with its line breaks and control characters made blanks. */
  static String oneLine(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c ->
                line.appendCodePoint(
                    Character.isISOControl(c) || c == 0x2028 || c == 0x2029 ? ' ' : c));
    return line.toString();
  }

  /** The known name that is most like one that is not known, if any is at all like it. */
  static Optional<String> nearest(String name, Collection<String> known) {
    String wanted = name.toLowerCase(Locale.ROOT);
    if (wanted.length() > 100) {
      return Optional.empty();
    }
    Optional<String> begun =
        known.stream()
            .filter(candidate -> wanted.length() >= 3 && candidate.startsWith(wanted))
            .sorted()
            .findFirst();
    return begun.or(
        () ->
            known.stream()
                .sorted()
                .min(Comparator.comparingInt(candidate -> distance(wanted, candidate)))
                .filter(best -> distance(wanted, best) <= Math.max(1, best.length() / 2)));
  }

  /** How many letters must be changed, added or left out to make one word of another. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    Arrays.setAll(row, j -> j);
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
