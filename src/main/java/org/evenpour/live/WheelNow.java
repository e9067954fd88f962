package org.evenpour.live;

import java.util.List;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.jspecify.annotations.Nullable;

/**
 * One wheel as it stands just now. Never changes.
 *
 * @param wheel its name; empty where the log has no wheel column
 * @param profile what the plant says of it
 * @param molds labels, by mold index
 * @param inOrder indices of the molds as they stand on the wheel, in the order of pouring
 * @param last the last anode
 * @param charge of the last anode; empty where the log does not say
 * @param crew of the last anode; empty where the log does not say
 * @param characteristics what is judged, in the order of an anode's values
 * @param turns the last turns, oldest first, the one under way last
 * @param turnsInAll how many turns the record has
 */
public record WheelNow(
    String wheel,
    WheelProfile profile,
    List<String> molds,
    List<Integer> inOrder,
    Anode last,
    String charge,
    String crew,
    List<Judged> characteristics,
    List<Turn> turns,
    int turnsInAll) {

  /** Copies the lists. */
  public WheelNow {
    molds = List.copyOf(molds);
    inOrder = List.copyOf(inOrder);
    characteristics = List.copyOf(characteristics);
    turns = List.copyOf(turns);
  }

  /**
   * One characteristic.
   *
   * @param unit in which figures are computed
   * @param displayUnit in which the plant reads them
   * @param limits of the turns' means; null while there are none
   * @param departures how far each mold stands from the wheel just now, by mold index; null where
   *     it is not known
   * @param usual how far each mold usually stands from the wheel: what it is judged against
   * @param pourSigma s.d. from pour to pour; null while there are no limits
   */
  public record Judged(
      String name,
      Unit unit,
      Unit displayUnit,
      Specification specification,
      @Nullable TurnLimits limits,
      List<@Nullable Double> departures,
      List<@Nullable Double> usual,
      @Nullable Double pourSigma) {}

  /**
   * The limits of a wheel's turn means: three sigma by the moving range.
   *
   * @param baseTurns how many turns they rest on
   */
  public record TurnLimits(double lower, double center, double upper, int baseTurns) {}

  /**
   * One turn.
   *
   * @param turn its number
   * @param anodes in the order of casting
   * @param means of each characteristic, corrected for which molds were there; NaN where it is not
   *     known, and while the turn is under way
   */
  public record Turn(int turn, List<Anode> anodes, List<Double> means) {
    /** Copies the lists. */
    public Turn {
      anodes = List.copyOf(anodes);
      means = List.copyOf(means);
    }
  }
}
