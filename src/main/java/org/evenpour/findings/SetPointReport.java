package org.evenpour.findings;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether to move the mass set-point of one ladle side or to leave it alone. It advises; the crew
 * decides by the plant's procedure.
 *
 * <p>Masses in kg. Deviations are those of the side's turns from the aim, as they would be had the
 * set-point stood all along where it stands now; start-up turns and turns with too few anodes are
 * left out.
 *
 * @param side null where the log names no ladle sides
 * @param displayUnit suffix of the unit in which people read masses
 * @param aim what the side should pour; null where that is not known
 * @param setPoint where the set-point stood last; null where the log has none
 * @param movesTakenOut how often the set-point was moved in this record
 * @param turns how many turns count
 * @param lambda how fast the level wanders: the weight of the newest turn in the forecast, 0 where
 *     it stands still; null with fewer than 20 turns
 * @param lambdaLow 95 % limit
 * @param lambdaHigh 95 % limit
 * @param sigma s.d. of a turn about its forecast
 * @param forecast how far off the aim the next turn will be
 * @param forecastLow 95 % limit of the level
 * @param forecastHigh 95 % limit of the level
 * @param deadband leave it alone while the forecast lies within ± this
 * @param moveCosts what one move costs: as much as so many turns 1 kg off target
 * @param answer what to do
 * @param moveBy by how much, rounded to a step that people set; null where nothing is to be moved,
 *     or not before somebody has looked
 * @param turnsBetweenMoves how many turns will pass from one move to the next, on average; null
 *     where the level stands still, so that no further move is expected
 * @param lookFirst id of the signal whose cause comes first; null where there is none
 * @param leftAlone this record with the set-point left where it stands now
 * @param withDeadband this record, adjusted whenever the forecast left the deadband
 * @param compensated this record, corrected after every turn by what that turn was off
 * @param ordinary the same without the turns of signals; null where no turn is one of those
 */
public record SetPointReport(
    String wheel,
    @Nullable String side,
    String displayUnit,
    @Nullable Double aim,
    @Nullable Double setPoint,
    int movesTakenOut,
    int turns,
    @Nullable Double lambda,
    @Nullable Double lambdaLow,
    @Nullable Double lambdaHigh,
    @Nullable Double sigma,
    @Nullable Double forecast,
    @Nullable Double forecastLow,
    @Nullable Double forecastHigh,
    @Nullable Double deadband,
    double moveCosts,
    Answer answer,
    @Nullable Double moveBy,
    @Nullable Double turnsBetweenMoves,
    @Nullable String lookFirst,
    @Nullable Replay leftAlone,
    @Nullable Replay withDeadband,
    @Nullable Replay compensated,
    @Nullable Ordinary ordinary,
    List<Point> points) {

  /** Copies the list. */
  public SetPointReport {
    points = List.copyOf(points);
  }

  /** What to do. */
  public enum Answer {
    /** Leave it alone. */
    LEAVE,
    /** Move it. */
    MOVE,
    /** Leave it alone: on this record the rule would have done worse than leaving it alone. */
    NO_GAIN,
    /** The wheel's signal with a possible cause is under way: look there first. */
    LOOK_FIRST,
    /** The side's own signal is under way: its scale may be off, so weigh a known mass first. */
    WEIGH_FIRST,
    /** Its scale was checked a few turns ago: what was weighed before says nothing of what is. */
    JUST_CHECKED,
    /** Too few turns to tell. */
    TOO_SHORT,
    /** Nothing says what to aim at. */
    NO_AIM
  }

  /**
   * What a rule would have made of this record.
   *
   * @param rms root mean square off the aim
   * @param mean mean off the aim
   * @param sd s.d. of the turns
   * @param moves how often the set-point would have been moved
   */
  public record Replay(double rms, double mean, double sd, long moves) {}

  /**
   * What the rules would have made of ordinary turns, those of signals left out.
   *
   * @param turns how many are left
   * @param signals ids of those whose turns are left out
   */
  public record Ordinary(
      int turns, List<String> signals, Replay leftAlone, Replay withDeadband, Replay compensated) {

    /** Copies the list. */
    public Ordinary {
      signals = List.copyOf(signals);
    }
  }

  /**
   * One turn of the side.
   *
   * @param deviation off the aim
   * @param forecast of it, made before it
   * @param withDeadband off the aim, had the deadband been followed
   * @param compensated off the aim, had every turn been compensated
   */
  public record Point(
      int turn,
      Instant at,
      double deviation,
      double forecast,
      double withDeadband,
      double compensated) {}
}
