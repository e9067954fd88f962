package org.evenpour.link;

import java.util.BitSet;
import java.util.List;
import org.evenpour.control.Episode;

/**
 * Which pours and turns lie within signals, and so say nothing of how the plant normally behaves.
 */
public final class SignalMask {
  private final BitSet turns = new BitSet();
  private final BitSet cells = new BitSet();
  private final int molds;

  /**
   * @param grid of the wheel
   * @param episodes of one characteristic
   */
  public SignalMask(TurnGrid grid, List<Episode> episodes) {
    molds = grid.molds();
    for (Episode episode : episodes) {
      int from = grid.turnAt(episode.sinceAtMillis());
      int to = grid.turnAt(episode.lastAtMillis()) + 1;
      switch (episode.scope()) {
        case WHEEL, SPREAD -> turns.set(from, to);
        case SIDE -> turns.set(from, to);
        case MOLD, POUR -> {
          for (int t = from; t < to; t++) {
            cells.set(t * molds + episode.index());
          }
        }
      }
    }
  }

  /** Whether a turn lies within a signal of the wheel or of a side. */
  boolean turn(int turn) {
    return turns.get(turn);
  }

  /** Whether a pour lies within a signal of its mold. */
  boolean cell(int turn, int mold) {
    return cells.get(turn * molds + mold);
  }
}
