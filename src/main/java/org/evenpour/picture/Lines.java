package org.evenpour.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Cuts text to a width, however wide letters are measured. */
public final class Lines {
  private Lines() {}

  /**
   * All lines that a text takes.
   *
   * @param words between which it may be broken; one that is wider stands alone
   * @param width of a line
   * @param measure how wide a text is
   */
  public static List<String> of(String[] words, double width, ToDoubleFunction<String> measure) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && measure.applyAsDouble(longer) > width) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }

  /** One line, with an ellipsis where it is cut; empty where not even that has room. */
  public static String fit(String text, double width, ToDoubleFunction<String> measure) {
    if (measure.applyAsDouble(text) <= width) {
      return text;
    }
    int end = text.length();
    while (end > 0 && measure.applyAsDouble(text.substring(0, end).stripTrailing() + "…") > width) {
      end = text.offsetByCodePoints(end, -1);
    }
    return end == 0 ? "" : text.substring(0, end).stripTrailing() + "…";
  }
}
