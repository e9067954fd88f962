package org.evenpour.casting;

/**
 * Molds in the order in which people count them: by number where labels are numbers, by text
 * otherwise.
 */
public final class MoldOrder {
  private MoldOrder() {}

  /** Compares two labels. */
  public static int compare(String a, String b) {
    boolean aNumber = isNumber(a);
    if (aNumber && isNumber(b)) {
      int byLength = Integer.compare(a.length(), b.length());
      return byLength != 0 ? byLength : a.compareTo(b);
    }
    return aNumber ? -1 : isNumber(b) ? 1 : a.compareTo(b);
  }

  private static boolean isNumber(String label) {
    return !label.isEmpty() && label.chars().allMatch(c -> c >= '0' && c <= '9');
  }
}
