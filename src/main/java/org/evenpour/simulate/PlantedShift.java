package org.evenpour.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.simulate.TruthTable.Line;
import org.jspecify.annotations.Nullable;

/**
 * One row of a truth file: a characteristic was shifted at one place over some turns.
 *
 * @param fault its name
 * @param scope where
 * @param wheel empty = whichever the log is of
 * @param mold empty unless the scope is a mold or a pour
 * @param side empty unless the scope is a side
 * @param characteristic {@code mass}, {@code thickness}, …, or {@value #REJECTS}
 * @param firstTurn number of the first turn
 * @param lastTurn number of the last turn
 * @param direction which way
 * @param cause the setting or event behind it; empty where no record shows one
 * @param carriedBy a setting that passes it on; empty for most
 * @param sizeSigma how large, in the sigma of its scope; null where the file does not say
 */
public record PlantedShift(
    String fault,
    Scope scope,
    String wheel,
    String mold,
    String side,
    String characteristic,
    int firstTurn,
    int lastTurn,
    Direction direction,
    String cause,
    String carriedBy,
    @Nullable Double sizeSigma) {

  /** What a row calls the share that is rejected whatever its figures say. */
  public static final String REJECTS = "rejects";

  private static final List<String> NEEDED =
      List.of("fault", "characteristic", "first_turn", "last_turn", "direction");

  /**
   * Reads a truth file. Columns that it does not know are passed over; {@code scope}, {@code
   * wheel}, {@code mold}, {@code side}, {@code cause}, {@code carried_by} and {@code size_sigma}
   * may be missing. A row without a characteristic shifts nothing and is passed over too.
   *
   * @throws IOException with file, line, what is wrong and what mends it
   */
  public static List<PlantedShift> read(Path file) throws IOException {
    TruthTable table = TruthTable.read(file, NEEDED);
    List<PlantedShift> all = new ArrayList<>();
    for (Line line : table.lines()) {
      if (!table.text(line, "characteristic").isEmpty()) {
        all.add(of(table, line));
      }
    }
    return List.copyOf(all);
  }

  private static PlantedShift of(TruthTable table, Line line) throws IOException {
    int first = table.whole(line, "first_turn");
    int last = table.whole(line, "last_turn");
    if (last < first) {
      throw table.error(
          line, "last_turn " + last + " is before first_turn " + first, "exchange or correct them");
    }
    String mold = table.text(line, "mold");
    String side = table.text(line, "side");
    Scope scope = scope(table, line, mold, side);
    if ((scope == Scope.MOLD || scope == Scope.POUR) && mold.isEmpty()) {
      throw table.error(line, "the mold is missing", "name it, or correct the scope");
    }
    if (scope == Scope.SIDE && side.isEmpty()) {
      throw table.error(line, "the side is missing", "name it, or correct the scope");
    }
    return new PlantedShift(
        table.needed(line, "fault"),
        scope,
        table.text(line, "wheel"),
        mold,
        side,
        table.needed(line, "characteristic"),
        first,
        last,
        one(Direction.values(), table, line, "direction"),
        table.text(line, "cause"),
        table.text(line, "carried_by"),
        table.text(line, "size_sigma").isEmpty()
            ? null
            : Double.valueOf(Math.abs(table.number(line, "size_sigma"))));
  }

  private static Scope scope(TruthTable table, Line line, String mold, String side)
      throws IOException {
    if (table.text(line, "scope").isEmpty()) {
      return !mold.isEmpty() ? Scope.MOLD : !side.isEmpty() ? Scope.SIDE : Scope.WHEEL;
    }
    return one(Scope.values(), table, line, "scope");
  }

  private static <E extends Enum<E>> E one(E[] known, TruthTable table, Line line, String column)
      throws IOException {
    String text = table.needed(line, column).toLowerCase(Locale.ROOT);
    List<String> names = new ArrayList<>();
    for (E each : known) {
      String name = each.name().toLowerCase(Locale.ROOT);
      if (name.equals(text)) {
        return each;
      }
      names.add(name);
    }
    throw table.error(
        line, column + " \"" + text + "\" is not known", "use one of " + String.join(", ", names));
  }

  /** The same at whichever wheel the log is of. */
  public PlantedShift atAnyWheel() {
    return new PlantedShift(
        fault,
        scope,
        "",
        mold,
        side,
        characteristic,
        firstTurn,
        lastTurn,
        direction,
        cause,
        carriedBy,
        sizeSigma);
  }
}
