package org.evenpour.link;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.evenpour.control.Episode;

/**
 * Which pours and turns lie within signals, and so say nothing of how the plant normally behaves.
 * Not changed once made.
 */
public final class SignalMask {
  /** Turns on either side of a signal that may be part of it: an onset is an estimate. */
  private static final int MARGIN = 4;

  private final BitSet turns = new BitSet();
  private final BitSet cells = new BitSet();
  private final int molds;
  private final int length;
  private final List<Stretch> stretches = new ArrayList<>();

  /** The turns of one signal, its own place. */
  private record Stretch(Episode.Chart chart, int index, int from, int to) {}

  /**
   * @param grid of the wheel
   * @param episodes of one characteristic
   */
  public SignalMask(TurnGrid grid, List<Episode> episodes) {
    molds = grid.molds();
    length = grid.turns();
    for (Episode episode : episodes) {
      int from = Math.max(0, grid.turnAt(episode.sinceAtMillis()) - MARGIN);
      int to = Math.min(grid.turns(), grid.turnAt(episode.lastAtMillis()) + 1 + MARGIN);
      stretches.add(
          new Stretch(
              episode.chart(),
              episode.index(),
              grid.turnAt(episode.sinceAtMillis()),
              grid.turnAt(episode.lastAtMillis()) + 1));
      switch (episode.chart()) {
        // A side is half of the wheel, and moves its mean as well.
        case WHEEL, SPREAD, SIDE -> turns.set(from, to);
        case MOLD -> {
          for (int t = from; t < to; t++) {
            cells.set(t * molds + episode.index());
          }
        }
        // Without margin: a single pour has no onset that could be misjudged.
        case POUR -> cells.set(grid.turnAt(episode.sinceAtMillis()) * molds + episode.index());
      }
    }
  }

  /**
   * The record cut where signals of one place begin and end: a number for each turn that changes
   * there; −1 for turns so near that an estimate may have put them on either side.
   *
   * @param index of the mold or side; −1 for the wheel
   */
  int[] pieces(Episode.Chart chart, int index) {
    int[] pieces = new int[length];
    BitSet near = new BitSet();
    for (Stretch one : stretches) {
      // One side stands against the others: where any of them moved, each one's contrast did.
      boolean isHere =
          one.chart() == chart && (one.index() == index || chart == Episode.Chart.SIDE);
      if (isHere) {
        begin(pieces, near, one.from());
        begin(pieces, near, one.to());
      }
    }
    // Summed up once: signals times turns would be far too many.
    for (int t = 1; t < length; t++) {
      pieces[t] += pieces[t - 1];
    }
    for (int t = near.nextSetBit(0); t >= 0; t = near.nextSetBit(t + 1)) {
      pieces[t] = -1;
    }
    return pieces;
  }

  private void begin(int[] begins, BitSet near, int turn) {
    if (turn < length) {
      begins[turn]++;
    }
    near.set(Math.max(0, turn - MARGIN), Math.min(length, turn + MARGIN));
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
