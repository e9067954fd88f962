package org.evenpour.report;

/** Text that every reader of a file can take in. */
public final class WellFormed {
  private WellFormed() {}

  /**
   * The text with each half of a broken surrogate pair replaced by U+FFFD, as the Unicode standard
   * recommends; a log row that was cut to length may end in such a half.
   */
  public static String text(String text) {
    int broken = firstBroken(text);
    if (broken < 0) {
      return text;
    }
    StringBuilder mended = new StringBuilder(text);
    while (broken >= 0) {
      mended.setCharAt(broken, '\uFFFD');
      broken = firstBroken(mended);
    }
    return mended.toString();
  }

  private static int firstBroken(CharSequence text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isHighSurrogate(c)
          && i + 1 < text.length()
          && Character.isLowSurrogate(text.charAt(i + 1))) {
        i++;
      } else if (Character.isSurrogate(c)) {
        return i;
      }
    }
    return -1;
  }
}
