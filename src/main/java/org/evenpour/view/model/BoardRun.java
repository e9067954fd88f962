package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.Mark;
import org.evenpour.report.Figures;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/**
 * The last turns of one characteristic: each anode against the tolerance, each turn's mean against
 * its limits. All values are in the unit that is shown.
 *
 * @param title name and unit
 * @param low lower end of the axis
 * @param high upper end
 * @param slots how many anodes have room; the newest stands in the last one
 * @param anodes oldest first
 * @param turns oldest first
 * @param lines what is drawn right across
 */
public record BoardRun(
    String title,
    double low,
    double high,
    int slots,
    List<Point> anodes,
    List<Turn> turns,
    List<Line> lines) {

  /** So many turns have room. */
  static final int TURNS = 8;

  /** Copies the lists. */
  public BoardRun {
    anodes = List.copyOf(anodes);
    turns = List.copyOf(turns);
    lines = List.copyOf(lines);
  }

  /**
   * One anode.
   *
   * @param slot from 0
   * @param mark which way it lies outside the tolerance
   */
  public record Point(int slot, double value, Mark mark) {}

  /**
   * One turn.
   *
   * @param label its number
   * @param from slot of its first anode
   * @param to slot after its last anode
   * @param mean null where it is not known
   * @param mark which way the mean lies outside its limits
   */
  public record Turn(String label, int from, int to, @Nullable Double mean, Mark mark) {}

  /** What a line stands for. */
  public enum Kind {
    /** An end of the tolerance. */
    TOLERANCE,
    /** The target. */
    TARGET,
    /** A limit of the turns' means. */
    LIMIT
  }

  /** A line right across, labeled where it ends. */
  public record Line(Kind kind, double value, String label) {}

  /**
   * The run of one characteristic; null where the last turns have no value of it.
   *
   * @param index of the characteristic among an anode's values
   */
  static @Nullable BoardRun of(WheelNow wheel, int index, Unit unit, BoardWords words) {
    WheelNow.Judged judged = wheel.characteristics().get(index);
    int slots = TURNS * wheel.molds().size();
    int count = wheel.turns().stream().mapToInt(turn -> turn.anodes().size()).sum();
    int slot = slots - count;
    List<Point> anodes = new ArrayList<>();
    List<Turn> turns = new ArrayList<>();
    WheelNow.TurnLimits limits = judged.limits();
    for (WheelNow.Turn turn : wheel.turns()) {
      int from = slot;
      for (Anode anode : turn.anodes()) {
        double value = anode.values()[index];
        if (slot >= 0 && !Double.isNaN(value)) {
          anodes.add(new Point(slot, unit.fromCanonical(value), outside(judged, value)));
        }
        slot++;
      }
      if (from >= 0) {
        turns.add(turn(turn, from, slot, turn.means().get(index), limits, unit));
      }
    }
    double[] axis = axis(judged, unit);
    if (anodes.isEmpty() || axis == null) {
      return null;
    }
    String symbol = unit.symbol();
    String name = BoardWords.capital(words.report().characteristic(judged.name()));
    return new BoardRun(
        symbol.isEmpty() ? name : name + ", " + symbol,
        axis[0],
        axis[1],
        slots,
        anodes,
        turns,
        lines(judged, unit, words));
  }

  private static Turn turn(
      WheelNow.Turn turn,
      int from,
      int to,
      double mean,
      WheelNow.@Nullable TurnLimits limits,
      Unit unit) {
    boolean unknown = Double.isNaN(mean);
    Mark mark =
        unknown || limits == null
            ? Mark.NONE
            : mean > limits.upper() ? Mark.HIGH : mean < limits.lower() ? Mark.LOW : Mark.NONE;
    return new Turn(
        Integer.toString(turn.turn()),
        from,
        to,
        unknown ? null : (Double) unit.fromCanonical(mean),
        mark);
  }

  static Mark outside(WheelNow.Judged judged, double value) {
    Double lower = judged.specification().lower();
    Double upper = judged.specification().upper();
    return upper != null && value > upper
        ? Mark.HIGH
        : lower != null && value < lower ? Mark.LOW : Mark.NONE;
  }

  /** Half as much again as the tolerance; else ten sigma of a pour about the center. */
  private static double @Nullable [] axis(WheelNow.Judged judged, Unit unit) {
    Specification its = judged.specification();
    Double lower = its.lower();
    Double upper = its.upper();
    WheelNow.TurnLimits limits = judged.limits();
    Double sigma = judged.pourSigma();
    if (lower != null && upper != null) {
      double more = (upper - lower) / 4;
      return ends(lower - more, upper + more, unit);
    }
    return limits == null || sigma == null
        ? null
        : ends(limits.center() - 5 * sigma, limits.center() + 5 * sigma, unit);
  }

  private static double[] ends(double low, double high, Unit unit) {
    return new double[] {unit.fromCanonical(low), unit.fromCanonical(high)};
  }

  private static List<Line> lines(WheelNow.Judged judged, Unit unit, BoardWords words) {
    List<Line> lines = new ArrayList<>();
    Figures figures = new Figures(unit);
    Specification its = judged.specification();
    add(lines, Kind.TOLERANCE, its.lower(), unit, figures, "{0}", words);
    add(lines, Kind.TOLERANCE, its.upper(), unit, figures, "{0}", words);
    add(lines, Kind.TARGET, its.target(), unit, figures, "run.target", words);
    WheelNow.TurnLimits limits = judged.limits();
    if (limits != null) {
      add(lines, Kind.LIMIT, limits.lower(), unit, figures, "run.limit", words);
      add(lines, Kind.LIMIT, limits.upper(), unit, figures, "run.limit", words);
    }
    return lines;
  }

  private static void add(
      List<Line> lines,
      Kind kind,
      @Nullable Double value,
      Unit unit,
      Figures figures,
      String key,
      BoardWords words) {
    if (value != null) {
      double shown = unit.fromCanonical(value);
      String number = Digits.number(shown, figures.decimals());
      lines.add(new Line(kind, shown, key.equals("{0}") ? number : words.say(key, number)));
    }
  }
}
