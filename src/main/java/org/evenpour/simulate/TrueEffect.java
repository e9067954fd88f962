package org.evenpour.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.simulate.TruthTable.Line;

/**
 * One row of an effects file: what a lasting change of one unit of a setting truly does.
 *
 * @param wheel empty = whichever the log is of
 * @param setting its column
 * @param characteristic {@code mass}, {@code thickness}, …
 * @param perUnit in the characteristic's unit; 0 where it does nothing
 */
public record TrueEffect(String wheel, String setting, String characteristic, double perUnit) {

  private static final List<String> NEEDED = List.of("setting", "characteristic", "effect");

  /**
   * Reads an effects file. Columns that it does not know are passed over.
   *
   * @throws IOException with file, line, what is wrong and what mends it
   */
  public static List<TrueEffect> read(Path file) throws IOException {
    TruthTable table = TruthTable.read(file, NEEDED);
    List<TrueEffect> all = new ArrayList<>();
    for (Line line : table.lines()) {
      all.add(
          new TrueEffect(
              table.text(line, "wheel"),
              table.needed(line, "setting"),
              table.needed(line, "characteristic"),
              table.number(line, "effect")));
    }
    return List.copyOf(all);
  }

  /** The same at whichever wheel the log is of. */
  public TrueEffect atAnyWheel() {
    return new TrueEffect("", setting, characteristic, perUnit);
  }
}
