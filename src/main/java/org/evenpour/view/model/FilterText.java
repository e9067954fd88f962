package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * What was typed to filter rows: letters that a row holds anywhere, and fields with what they are,
 * such as {@code mold:23}, all of which must hold.
 *
 * @param letters in small letters; empty = any
 * @param fields with their values
 */
public record FilterText(String letters, List<Field> fields) {

  /** A field's name in small letters, and what it is. */
  record Field(String name, Pattern value) {}

  /** Copies the list. */
  public FilterText {
    fields = List.copyOf(fields);
  }

  /** Reads what was typed. A name without a value yet is still being typed, and asks nothing. */
  public static FilterText of(String typed) {
    List<String> letters = new ArrayList<>();
    List<Field> fields = new ArrayList<>();
    for (String word : typed.strip().toLowerCase(Locale.ROOT).split("\\s+", -1)) {
      int colon = word.indexOf(':');
      // A time has digits before its colon, and is no field.
      boolean isField = colon > 0 && word.substring(0, colon).chars().allMatch(FilterText::isName);
      if (!isField) {
        letters.add(word);
      } else if (colon + 1 < word.length()) {
        String value = Pattern.quote(word.substring(colon + 1));
        // Whole, so that mold 2 is not mold 23.
        String whole = "(?<![\\p{L}\\p{N}])" + value + "(?![\\p{L}\\p{N}])";
        fields.add(new Field(word.substring(0, colon), Pattern.compile(whole)));
      }
    }
    return new FilterText(String.join(" ", letters), fields);
  }

  private static boolean isName(int c) {
    return Character.isLetter(c) || c == '_';
  }

  /**
   * Whether a row passes.
   *
   * @param cells what a row has under a name; none where it has no such field
   * @param holds whether a row holds some letters anywhere
   */
  public boolean passes(Function<String, List<String>> cells, Predicate<String> holds) {
    return (letters.isEmpty() || holds.test(letters))
        && fields.stream()
            .allMatch(
                field ->
                    cells.apply(field.name()).stream()
                        .anyMatch(
                            cell -> field.value().matcher(cell.toLowerCase(Locale.ROOT)).find()));
  }
}
