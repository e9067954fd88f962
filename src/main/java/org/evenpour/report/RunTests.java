package org.evenpour.report;

import java.util.Comparator;
import java.util.List;

/** The run tests in the order in which reports list them. */
public final class RunTests {

  /** Their ids. */
  public static final List<String> IDS =
      List.of(
          "beyond-limit",
          "nine-one-side",
          "six-trending",
          "fourteen-alternating",
          "two-of-three-outer",
          "four-of-five-middle",
          "fifteen-inner",
          "eight-outside-inner");

  /** This order, and any other id after them by name. */
  public static final Comparator<String> ORDER =
      Comparator.<String>comparingInt(
              id -> {
                int index = IDS.indexOf(id);
                return index < 0 ? Integer.MAX_VALUE : index;
              })
          .thenComparing(Comparator.naturalOrder());

  private RunTests() {}
}
