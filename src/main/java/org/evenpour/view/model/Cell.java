package org.evenpour.view.model;

import org.evenpour.picture.Mark;
import org.evenpour.picture.Picture;
import org.jspecify.annotations.Nullable;

/** What stands in the cell of a table: always text, for people and files; often more. */
public sealed interface Cell {

  /** As text. */
  String text();

  /** By what a column is sorted; null comes last. */
  @Nullable Comparable<?> order();

  /** Words. */
  record Text(String text) implements Cell {
    @Override
    public Comparable<?> order() {
      return text;
    }
  }

  /**
   * A label that counts: mold 9 comes before mold 10.
   *
   * @param text as it is written
   */
  record Label(String text) implements Cell {
    @Override
    public Comparable<?> order() {
      String digits = text.replaceAll("[^0-9]", "");
      return digits.isEmpty() || digits.length() > 15
          ? Double.POSITIVE_INFINITY
          : (Double) Double.parseDouble(digits);
    }
  }

  /**
   * A number.
   *
   * @param text with the decimals of its column; "—" where it is missing
   * @param order the number itself
   */
  record Figure(String text, @Nullable Double order) implements Cell {}

  /**
   * A number with a mark before it.
   *
   * @param mark which way
   */
  record Marked(Mark mark, String text, @Nullable Double order) implements Cell {}

  /**
   * A small picture.
   *
   * @param picture drawn into the cell
   * @param text what it shows, as figures
   */
  record Drawn(Picture picture, String text, @Nullable Double order) implements Cell {}
}
