package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Quantity;

/**
 * What was truly shifted, where and by how much.
 *
 * <p>Nothing here is asserted: each fault's effect is measured, pour by pour, as the wheel with
 * this fault alone minus the same wheel without any, before the gauges round.
 *
 * @param fault which
 * @param mold number; empty for a side or the wheel
 * @param side A or B; empty for a mold or the wheel
 * @param characteristic {@code mass}, {@code thickness}, {@code wedge} or {@value
 *     PlantedShift#REJECTS}: the chance of a rejection whatever the figures say, as a share
 * @param firstTurn in which anything differs at all
 * @param lastTurn in which at least a quarter of the largest difference is left
 * @param size mean difference over these turns; for {@code spread} the standard deviation, within
 *     turns, that the fault adds
 * @param unit of the size
 * @param endedBy the event that ended it; empty where it lasts, damage that stays included, or
 *     ended by itself
 */
record Truth(
    Fault fault,
    String mold,
    String side,
    String characteristic,
    int firstTurn,
    int lastTurn,
    Direction direction,
    double size,
    String unit,
    String endedBy) {

  static final List<String> COLUMNS =
      List.of(
          "fault",
          "scope",
          "wheel",
          "mold",
          "side",
          "characteristic",
          "first_turn",
          "last_turn",
          "direction",
          "size",
          "unit",
          "cause",
          "carried_by",
          "ended_by");

  /**
   * A chance of rejection that rises by less at a mold, or by half of it at the wheel, is no row.
   */
  private static final double LEAST_SHARE = 0.01;

  private record Judged(
      String label,
      String unit,
      ToDoubleFunction<Pour> value,
      double pourSigma,
      double turnSigma) {}

  private static final List<Judged> JUDGED =
      List.of(
          new Judged(
              Quantity.MASS,
              "kg",
              Pour::massKg,
              Plant.POUR_SIGMA_MASS_KG,
              Plant.TURN_SIGMA_MASS_KG),
          new Judged(
              Quantity.THICKNESS,
              "mm",
              pour -> pour.thickness().meanMm(),
              Plant.POUR_SIGMA_THICKNESS_MM,
              Plant.TURN_SIGMA_THICKNESS_MM),
          new Judged(
              Quantity.WEDGE,
              "mm",
              pour -> pour.thickness().wedgeMm(),
              Plant.POUR_SIGMA_WEDGE_MM,
              Plant.TURN_SIGMA_WEDGE_MM),
          new Judged(
              PlantedShift.REJECTS, "share", Pour::rejectChance, LEAST_SHARE, LEAST_SHARE / 2));

  /** Differences of one characteristic by turn. Owned by the thread that measures. */
  private static final class Differences {
    final int[] count;
    final double[] sum;
    final double[] sumOfSquares;

    Differences(int turns) {
      count = new int[turns + 1];
      sum = new double[turns + 1];
      sumOfSquares = new double[turns + 1];
    }

    void add(int turn, double difference) {
      count[turn]++;
      sum[turn] += difference;
      sumOfSquares[turn] += difference * difference;
    }

    double mean(int turn) {
      return count[turn] == 0 ? 0 : Math.abs(sum[turn] / count[turn]);
    }

    double mean(int first, int last) {
      double total = 0;
      int n = 0;
      for (int turn = first; turn <= last; turn++) {
        total += sum[turn];
        n += count[turn];
      }
      return total / n;
    }

    double sdWithinTurns(int first, int last) {
      double squares = 0;
      int freedom = 0;
      for (int turn = first; turn <= last; turn++) {
        if (count[turn] > 1) {
          squares += sumOfSquares[turn] - sum[turn] * sum[turn] / count[turn];
          freedom += count[turn] - 1;
        }
      }
      return freedom == 0 ? 0 : Math.sqrt(squares / freedom);
    }
  }

  /** Everything that the faults on this wheel truly shift, by at least one sigma of its scope. */
  static List<Truth> of(Wheel wheel) {
    List<Truth> truths = new ArrayList<>();
    for (PlantedFault planted : wheel.faults()) {
      if (!planted.fault().isDecoy()) {
        measure(wheel, planted, truths);
      }
    }
    return List.copyOf(truths);
  }

  private static void measure(Wheel wheel, PlantedFault planted, List<Truth> truths) {
    int turns = wheel.schedule().turns();
    int groups = Math.max(1, planted.molds());
    Differences[][] differences = new Differences[groups][JUDGED.size()];
    for (Differences[] group : differences) {
      for (int i = 0; i < JUDGED.size(); i++) {
        group[i] = new Differences(turns);
      }
    }
    Wheel with = wheel.fresh(List.of(planted));
    Wheel without = wheel.fresh(List.of());
    String side = side(planted);
    while (with.hasNext()) {
      Pour faulty = with.next().pour();
      Pour sound = without.next().pour();
      int group = planted.firstMold() < 0 ? 0 : faulty.mold() - 1 - planted.firstMold();
      boolean isOfSide = side.isEmpty() || side.equals(faulty.ladle());
      if (group >= 0 && group < groups && isOfSide) {
        for (int i = 0; i < JUDGED.size(); i++) {
          double difference =
              JUDGED.get(i).value.applyAsDouble(faulty) - JUDGED.get(i).value.applyAsDouble(sound);
          differences[group][i].add(faulty.turn(), difference);
        }
      }
    }
    for (int group = 0; group < groups; group++) {
      String mold =
          planted.firstMold() < 0 ? "" : Integer.toString(planted.firstMold() + group + 1);
      for (int i = 0; i < JUDGED.size(); i++) {
        judge(planted, mold, side, JUDGED.get(i), differences[group][i], turns, truths);
      }
    }
  }

  private static void judge(
      PlantedFault planted,
      String mold,
      String side,
      Judged judged,
      Differences differences,
      int turns,
      List<Truth> truths) {
    double largest = 0;
    int first = 0;
    for (int turn = 1; turn <= turns; turn++) {
      double mean = differences.mean(turn);
      largest = Math.max(largest, mean);
      if (first == 0 && mean > 1e-9) {
        first = turn;
      }
    }
    if (first == 0) {
      return;
    }
    int last = turns;
    while (differences.mean(last) < largest / 4) {
      last--;
    }
    // What outlasts the fault, as warp does, was ended by nothing: a next turn is its last echo.
    String endedBy =
        planted.lastTurn() < turns && last <= planted.lastTurn() + 1 ? planted.endedBy() : "";
    double size = differences.mean(first, last);
    boolean isShared = mold.isEmpty();
    if (Math.abs(size) >= (isShared ? judged.turnSigma : judged.pourSigma)) {
      Direction direction = size > 0 ? Direction.HIGH : Direction.LOW;
      truths.add(
          new Truth(
              planted.fault(),
              mold,
              side,
              judged.label,
              first,
              last,
              direction,
              size,
              judged.unit,
              endedBy));
    }
    double spread = differences.sdWithinTurns(first, last);
    boolean isMeasured = !judged.label.equals(PlantedShift.REJECTS);
    if (isShared && isMeasured && spread >= judged.pourSigma) {
      truths.add(
          new Truth(
              planted.fault(),
              mold,
              side,
              judged.label,
              first,
              last,
              Direction.SPREAD,
              spread,
              judged.unit,
              endedBy));
    }
  }

  private static String side(PlantedFault planted) {
    return planted.side() < 0 ? "" : planted.side() == 0 ? "A" : "B";
  }

  /** As the truth file shows it, a cell for each of {@link #COLUMNS}. */
  List<String> cells() {
    return List.of(
        fault.id(),
        fault.reach().name().toLowerCase(Locale.ROOT),
        Plant.WHEEL,
        mold,
        side,
        characteristic,
        Integer.toString(firstTurn),
        Integer.toString(lastTurn),
        direction.id(),
        Decimal.text(size, characteristic.equals(PlantedShift.REJECTS) ? 3 : 2),
        unit,
        fault.cause(),
        fault == Fault.STARVED_SPRAY || fault == Fault.WET_WASH ? "mold_temp_c" : "",
        endedBy);
  }
}
