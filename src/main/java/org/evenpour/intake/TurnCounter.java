package org.evenpour.intake;

import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * Counts a wheel's turns from the order of its molds, where the log does not give them.
 *
 * <p>A new turn begins when a mold comes that was already cast in this turn; and, where molds are
 * numbered and their steps of one have shown which way the wheel counts, when the number jumps back
 * by more than half the molds. So a turn in which molds were skipped ends where it should. Owned by
 * the thread that reads the log.
 */
final class TurnCounter {
  private final int moldsExpected;
  private final BitSet castInTurn = new BitSet();
  private int turn;
  private boolean begun;
  private int moldsSeen;
  private long stepsUp;
  private long stepsDown;
  private long last = -1;

  /**
   * A counter before the first anode.
   *
   * @param molds how many the profile says; null when it does not
   */
  TurnCounter(@Nullable Integer molds) {
    moldsExpected = molds == null ? 0 : molds;
  }

  /**
   * Counts one anode.
   *
   * @param mold index of its mold
   * @param number the mold's number; −1 if it has none
   * @return its turn, from 1
   */
  int next(int mold, long number) {
    boolean again = castInTurn.get(mold);
    if (!begun || again || jumpsBack(number)) {
      turn++;
      begun = true;
      castInTurn.clear();
    }
    castInTurn.set(mold);
    moldsSeen = Math.max(moldsSeen, mold + 1);
    if (number >= 0 && last >= 0) {
      if (number == last + 1) {
        stepsUp++;
      } else if (number == last - 1) {
        stepsDown++;
      }
    }
    last = number;
    return turn;
  }

  /** Follows a log that gives its turns, so that one without them goes on after it. */
  void follow(int given) {
    turn = given;
    begun = false;
    last = -1;
  }

  private boolean jumpsBack(long number) {
    if (number < 0 || last < 0 || stepsUp == stepsDown) {
      return false;
    }
    long back = stepsUp > stepsDown ? last - number : number - last;
    return 2 * back > Math.max(moldsSeen, moldsExpected);
  }
}
