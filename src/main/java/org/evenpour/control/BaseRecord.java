package org.evenpour.control;

/**
 * The anodes of the base period of one characteristic, start-up and missing values left out.
 *
 * @param turn index of each anode's turn, from 0, never falling
 * @param mold index of each anode's mold
 * @param side index of each anode's ladle side; 0 where there is none
 * @param value in the unit that figures are computed in
 * @param turns how many turns
 * @param molds how many molds, of the whole log
 * @param sides how many ladle sides; at least 1
 */
@SuppressWarnings("ArrayRecordComponent") // built once, handed to the proposal, dropped
public record BaseRecord(
    int[] turn, int[] mold, int[] side, double[] value, int turns, int molds, int sides) {

  /** How many anodes there are. */
  public int size() {
    return value.length;
  }

  /** How many turns have any value. */
  int turnsWithValues() {
    int count = 0;
    for (int i = 0; i < turn.length; i++) {
      count += i == 0 || turn[i] != turn[i - 1] ? 1 : 0;
    }
    return count;
  }
}
