package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.Innovations;
import org.evenpour.stats.NormalScores;
import org.evenpour.stats.Onset;
import org.evenpour.stats.RunTest;
import org.evenpour.stats.RunTests;
import org.jspecify.annotations.Nullable;

/**
 * One chart that looks for lasting shifts: cumulative sums that open an episode, and a likelihood
 * ratio that ends it.
 *
 * <p>Standardized points come one at a time and become normal ({@link NormalScores}). What is new
 * in each ({@link Innovations}: one-step-ahead prediction errors, clipped, because one wild pour is
 * not a shift) is added to two sums upward, one for small and one for large shifts, {@code S =
 * max(0, S + u − k)}, and to two downward (Page 1954; {@link CusumPair}). A sum beyond its decision
 * interval opens an episode. Its onset is the maximum-likelihood change point over the last points
 * ({@link Onset}). While it lasts, {@code D = max(0, D + δ(δ/2 − z))}, the log-likelihood ratio of
 * "back at zero" against "still shifted by δ", is summed; D &gt; {@link #RETURN_ODDS} ends the
 * episode at the point where D last was zero.
 *
 * <p>Memory is constant: {@link #MEMORY} points before an episode and {@link #TRACE} within it.
 * Owned by one thread.
 */
final class ShiftChart {
  /** Points that are remembered before an episode opens. */
  static final int MEMORY = 256;

  /** Points of an episode that its onset and size are estimated from. */
  static final int TRACE = 4096;

  /** Log-odds at which a shift counts as over: about 1000 to 1. */
  static final double RETURN_ODDS = 7;

  /** The smallest shift that a return is judged against, in sigma. */
  private static final double SMALLEST_SHIFT = 0.75;

  /** After this many missing points what came before says nothing. */
  private static final int LONG_AGO = 50;

  /** The id under which the cumulative sum stands among the tests of a signal. */
  static final String SUSTAINED_SHIFT = "sustained-shift";

  private final Episode.Chart kind;
  private final int index;
  private final CusumPair decision;
  private final boolean lowToo;
  private final double gain;
  private final double widened;
  private final double first;
  private final double unitSigma;
  private final NormalScores scores;
  private final Innovations innovations;

  private double highSmall;
  private double highLarge;
  private double lowSmall;
  private double lowLarge;
  private int lastTurn = Integer.MIN_VALUE;
  private Trace trace = new Trace(MEMORY);
  private @Nullable OpenEpisode open;
  private final List<Episode> ended = new ArrayList<>();

  /**
   * @param kind what its episodes are of
   * @param index of the mold or side; −1 for the wheel
   * @param limits correlation and decision intervals
   * @param lowToo whether downward shifts count
   * @param unitSigma one standardized unit in the characteristic's unit
   */
  ShiftChart(Episode.Chart kind, int index, SeriesLimits limits, boolean lowToo, double unitSigma) {
    this.kind = kind;
    this.index = index;
    this.lowToo = lowToo;
    this.unitSigma = unitSigma;
    decision = limits.decision();
    scores = limits.scores();
    gain = limits.gain();
    widened = Math.sqrt(limits.excess());
    first = Innovations.first(limits.correlation(), limits.noise());
    innovations = new Innovations(limits.correlation(), limits.noise());
  }

  /** Whether an episode is under way. */
  boolean isOpen() {
    return open != null;
  }

  /**
   * Takes in the next point.
   *
   * @param turn in which it lies
   * @param atMillis when it was cast
   * @param z standardized, marginal s.d. 1
   * @param companion any value whose mean over the episode is wanted
   * @param spread by how much this point scatters more than usual; {@code z} is already divided by
   *     it
   */
  void accept(int turn, long atMillis, double z, double companion, double spread) {
    if (lastTurn != Integer.MIN_VALUE && turn > lastTurn + 1) {
      innovations.skip(Math.min(LONG_AGO, turn - lastTurn - 1));
    }
    lastTurn = turn;
    double clipped = innovations.accept(scores.of(z)) / widened;
    OpenEpisode episode = open;
    if (episode == null) {
      if (trace.size == MEMORY) {
        // Half at once: one by one all others would be copied at every point.
        trace.dropOldestHalf();
      }
      trace.add(turn, atMillis, z * spread, clipped, companion);
      highSmall = Math.max(0, highSmall + clipped - decision.k());
      highLarge = Math.max(0, highLarge + clipped - decision.k2());
      lowSmall = lowToo ? Math.max(0, lowSmall - clipped - decision.k()) : 0;
      lowLarge = lowToo ? Math.max(0, lowLarge - clipped - decision.k2()) : 0;
      // The sums rest while an episode is open: what ends it is the odds of a return.
      boolean high = highSmall > decision.h() || highLarge > decision.h2();
      if (high || lowSmall > decision.h() || lowLarge > decision.h2()) {
        openEpisode(high ? 1 : -1, SUSTAINED_SHIFT);
      }
    } else {
      episode.accept(turn, atMillis, z, clipped, companion, spread);
      if (episode.isOver()) {
        end();
      }
    }
  }

  /** Opens an episode at the newest point for a reason of its own, if none is under way. */
  void force(int direction, String test) {
    if (open == null && trace.size > 0) {
      openEpisode(direction, test);
    }
  }

  private void openEpisode(int direction, String test) {
    Trace longer = new Trace(MEMORY);
    longer.append(trace);
    open = new OpenEpisode(direction, test, longer);
  }

  /** Ends the episode under way, if any, and forgets all points. */
  void restart() {
    if (open != null) {
      end();
    } else {
      clear();
    }
    // Not where an episode ends: there the series goes on, and so does its prediction.
    innovations.restart();
  }

  private void end() {
    if (open != null) {
      ended.add(open.episode(false));
    }
    open = null;
    clear();
  }

  private void clear() {
    trace = new Trace(MEMORY);
    highSmall = 0;
    highLarge = 0;
    lowSmall = 0;
    lowLarge = 0;
  }

  /** All episodes so far, the one under way last. */
  List<Episode> episodes() {
    List<Episode> all = new ArrayList<>(ended);
    if (open != null) {
      all.add(open.episode(true));
    }
    return all;
  }

  /** Points in the order in which they came. */
  private static final class Trace {
    private int[] turns;
    private long[] atMillis;
    private double[] raw;
    private double[] clipped;
    private double[] companions;
    private int size;

    Trace(int capacity) {
      turns = new int[capacity];
      atMillis = new long[capacity];
      raw = new double[capacity];
      clipped = new double[capacity];
      companions = new double[capacity];
    }

    void add(int turn, long at, double z, double clippedZ, double companion) {
      if (size == turns.length) {
        int capacity = 2 * size;
        turns = Arrays.copyOf(turns, capacity);
        atMillis = Arrays.copyOf(atMillis, capacity);
        raw = Arrays.copyOf(raw, capacity);
        clipped = Arrays.copyOf(clipped, capacity);
        companions = Arrays.copyOf(companions, capacity);
      }
      turns[size] = turn;
      atMillis[size] = at;
      raw[size] = z;
      clipped[size] = clippedZ;
      companions[size] = companion;
      size++;
    }

    void append(Trace other) {
      for (int i = 0; i < other.size; i++) {
        add(other.turns[i], other.atMillis[i], other.raw[i], other.clipped[i], other.companions[i]);
      }
    }

    void dropOldestHalf() {
      int half = size / 2;
      int left = size - half;
      System.arraycopy(turns, half, turns, 0, left);
      System.arraycopy(atMillis, half, atMillis, 0, left);
      System.arraycopy(raw, half, raw, 0, left);
      System.arraycopy(clipped, half, clipped, 0, left);
      System.arraycopy(companions, half, companions, 0, left);
      size = left;
    }
  }

  /** An episode under way. */
  private final class OpenEpisode {
    private final int direction;
    private final String test;
    private final Trace points;
    private final int alarm;
    private int nextOnset = 1;

    /** What is told of it: changed only by more than its own error. */
    private Onset onset;

    private int nextEstimate;
    private double shift;
    private double returnSum;
    private int returnFrom;
    private long seen;
    private int latestTurn;
    private long latestAt;
    private int heldTurn;
    private long heldAt;

    OpenEpisode(int direction, String test, Trace points) {
      this.direction = direction;
      this.test = test;
      this.points = points;
      alarm = points.size - 1;
      latestTurn = heldTurn = points.turns[alarm];
      latestAt = heldAt = points.atMillis[alarm];
      returnFrom = points.size;
      onset = Onset.find(points.clipped, points.size, direction, first);
      estimateShift();
      nextEstimate = 1;
    }

    private void estimateShift() {
      Onset now = Onset.find(points.clipped, points.size, direction, first);
      // Back at zero the odds grow by δ²/2 a point: with a tiny δ nothing would ever end.
      shift = Math.max(SMALLEST_SHIFT * gain, direction * now.mean());
    }

    void accept(int turn, long at, double z, double clippedZ, double companion, double spread) {
      if (points.size < TRACE) {
        points.add(turn, at, z * spread, clippedZ, companion);
      }
      latestTurn = turn;
      latestAt = at;
      // The point was divided by the scatter of its turn, and so is what the shift left in it.
      double expected = shift / spread;
      // One wild pour to the other side is no return: none counts for more than a point at one
      // sigma beyond zero.
      double away = Math.max(-1, direction * clippedZ);
      returnSum = Math.max(0, returnSum + expected * (expected / 2 - away));
      if (returnSum == 0) {
        returnFrom = points.size;
        heldTurn = turn;
        heldAt = at;
        seen++;
        // The estimate is renewed at 1, 2, 4, 8, … points, and only where nothing speaks for a
        // return.
        if (seen >= nextEstimate) {
          estimateShift();
          nextEstimate *= 2;
        }
        // Looked at after each eighth more, whoever looks: live and afterwards it is one story.
        if (seen >= nextOnset) {
          onset = onset.renewed(points.clipped, points.size, direction, first);
          nextOnset += 1 + seen / 8;
        }
      }
    }

    boolean isOver() {
      return returnSum > RETURN_ODDS;
    }

    Episode episode(boolean stillOpen) {
      // What came after the odds last stood at nothing is the return, and no part of its size.
      int end = stillOpen ? points.size : Math.max(1, returnFrom);
      Onset its = onset.renewed(points.clipped, end, direction, first);
      int from = its.index();
      int count = end - from;
      double sum = 0;
      double companions = 0;
      for (int i = from; i < end; i++) {
        sum += points.raw[i];
        companions += points.companions[i];
      }
      double mean = sum / count;
      int first = Math.min(alarm, end - 1);
      return new Episode(
          kind,
          index,
          direction,
          points.turns[first],
          stillOpen ? latestTurn : heldTurn,
          points.atMillis[first],
          stillOpen ? latestAt : heldAt,
          points.turns[from],
          points.atMillis[from],
          stillOpen,
          its.ramp(),
          testsFired(from, end),
          count,
          mean * unitSigma,
          unitSigma / gain / Math.sqrt(count),
          mean,
          companions / count,
          0);
    }

    private List<String> testsFired(int from, int end) {
      RunTests tests = new RunTests(0, 1);
      int fired = 0;
      for (int i = from; i < end; i++) {
        fired |= tests.accept(points.raw[i]);
      }
      List<String> names = new ArrayList<>();
      names.add(test);
      for (RunTest each : RunTest.values()) {
        if ((fired & each.mask()) != 0 && !names.contains(each.id())) {
          names.add(each.id());
        }
      }
      return List.copyOf(names);
    }
  }
}
