package org.evenpour.command;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/**
 * Text for a terminal, without what a terminal would obey: control characters other than line ends,
 * tabs and returns, and the marks that turn the direction of writing (Unicode Standard Annex 9),
 * become question marks. A log's labels, or a file's name, may hold such.
 */
final class PlainWriter extends FilterWriter {

  PlainWriter(Writer out) {
    super(out);
  }

  private static char plain(char c) {
    boolean isObeyed = Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t';
    boolean turns = c >= '\u202a' && c <= '\u202e' || c >= '\u2066' && c <= '\u2069';
    return isObeyed || turns ? '?' : c;
  }

  @Override
  public void write(int c) throws IOException {
    out.write(plain((char) c));
  }

  @Override
  public void write(char[] text, int from, int count) throws IOException {
    char[] plain = new char[count];
    for (int i = 0; i < count; i++) {
      plain[i] = plain(text[from + i]);
    }
    out.write(plain, 0, count);
  }

  @Override
  public void write(String text, int from, int count) throws IOException {
    write(text.toCharArray(), from, count);
  }
}
