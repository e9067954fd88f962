package org.evenpour.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Average run length of a Shewhart chart with run tests, by the finite Markov chain of Champ and
 * Woodall (1987): what the tests remember, for the eight zones a point can fall into.
 *
 * <p>The run length is the sum over t of the probability that nothing has fired by t; once that
 * falls geometrically to 13 digits, the rest is summed in closed form. Trends and alternations
 * compare values, not zones, and are no finite chain: they are refused.
 */
final class RunTestLength {
  private static final Set<RunTest> CHAINS =
      EnumSet.complementOf(EnumSet.of(RunTest.SIX_TRENDING, RunTest.FOURTEEN_ALTERNATING));

  private final Set<RunTest> tests;
  private final RunTest.Lengths lengths;

  RunTestLength(Collection<RunTest> tests, RunTest.Lengths lengths) {
    if (tests.isEmpty() || !CHAINS.containsAll(tests)) {
      throw new IllegalArgumentException(
          "run lengths are computed for one or more of " + CHAINS + ", not for " + tests);
    }
    this.tests = EnumSet.copyOf(tests);
    this.lengths = lengths;
  }

  /** What the tests remember; parts that no test asks for stay 0. */
  private record State(
      int side, int inner, int outside, int high1, int low1, int high2, int low2) {}

  double of(double shift) {
    double[] zones = new double[8];
    for (int z = 0; z < 8; z++) {
      // −∞ −3 −2 −1 0 1 2 3 ∞, taken in the tail where they are small
      double low = z == 0 ? Double.NEGATIVE_INFINITY : z - 4 - shift;
      double high = z == 7 ? Double.POSITIVE_INFINITY : z - 3 - shift;
      zones[z] =
          low > 0
              ? Normal.upperTail(low) - Normal.upperTail(high)
              : Normal.cdf(high) - Normal.cdf(low);
    }
    List<int[]> transitions = transitions();
    int states = transitions.size();
    double[] now = new double[states];
    now[0] = 1;
    double alive = 1;
    double sum = 0;
    double lastRatio = -1;
    int steady = 0;
    while (steady < 30 && alive > 1e-18 * sum) {
      sum += alive;
      double[] next = new double[states];
      double left = 0;
      for (int s = 0; s < states; s++) {
        int[] to = transitions.get(s);
        for (int z = 0; z < 8; z++) {
          if (to[z] >= 0) {
            double moved = now[s] * zones[z];
            next[to[z]] += moved;
            left += moved;
          }
        }
      }
      double ratio = left / alive;
      steady = Math.abs(ratio - lastRatio) < 1e-14 ? steady + 1 : 0;
      lastRatio = ratio;
      alive = left;
      now = next;
    }
    return sum + (steady < 30 ? alive : alive / (1 - lastRatio));
  }

  /** For each reachable state, where each zone leads; −1 where a test fires. */
  private List<int[]> transitions() {
    Map<State, Integer> number = new HashMap<>();
    List<State> states = new ArrayList<>();
    List<int[]> transitions = new ArrayList<>();
    State start = new State(0, 0, 0, 0, 0, 0, 0);
    number.put(start, 0);
    states.add(start);
    for (int s = 0; s < states.size(); s++) {
      int[] to = new int[8];
      Arrays.fill(to, -1);
      for (int z = 0; z < 8; z++) {
        State next = next(states.get(s), z);
        if (!fires(next, z)) {
          State kept = kept(next);
          Integer known = number.get(kept);
          if (known == null) {
            known = states.size();
            number.put(kept, known);
            states.add(kept);
          }
          to[z] = known;
        }
      }
      transitions.add(to);
    }
    return transitions;
  }

  private State next(State s, int zone) {
    boolean high = zone > 3;
    int side = high ? Math.max(0, s.side) + 1 : Math.min(0, s.side) - 1;
    boolean inner = zone == 3 || zone == 4;
    return new State(
        side,
        inner ? s.inner + 1 : 0,
        inner ? 0 : s.outside + 1,
        (s.high1 << 1 | (zone > 4 ? 1 : 0)) & 31,
        (s.low1 << 1 | (zone < 3 ? 1 : 0)) & 31,
        (s.high2 << 1 | (zone > 5 ? 1 : 0)) & 7,
        (s.low2 << 1 | (zone < 2 ? 1 : 0)) & 7);
  }

  private boolean fires(State s, int zone) {
    return (tests.contains(RunTest.BEYOND_LIMIT) && (zone == 0 || zone == 7))
        || (tests.contains(RunTest.NINE_ONE_SIDE) && Math.abs(s.side) >= lengths.oneSide())
        || (tests.contains(RunTest.TWO_OF_THREE_OUTER) && (many(s.high2, 2) || many(s.low2, 2)))
        || (tests.contains(RunTest.FOUR_OF_FIVE_MIDDLE) && (many(s.high1, 4) || many(s.low1, 4)))
        || (tests.contains(RunTest.FIFTEEN_INNER) && s.inner >= lengths.inner())
        || (tests.contains(RunTest.EIGHT_OUTSIDE_INNER) && s.outside >= lengths.outside());
  }

  private static boolean many(int pattern, int needed) {
    return (pattern & 1) == 1 && Integer.bitCount(pattern) >= needed;
  }

  private State kept(State s) {
    boolean outer = tests.contains(RunTest.TWO_OF_THREE_OUTER);
    boolean middle = tests.contains(RunTest.FOUR_OF_FIVE_MIDDLE);
    return new State(
        tests.contains(RunTest.NINE_ONE_SIDE) ? s.side : 0,
        tests.contains(RunTest.FIFTEEN_INNER) ? s.inner : 0,
        tests.contains(RunTest.EIGHT_OUTSIDE_INNER) ? s.outside : 0,
        middle ? s.high1 & 15 : 0,
        middle ? s.low1 & 15 : 0,
        outer ? s.high2 & 3 : 0,
        outer ? s.low2 & 3 : 0);
  }
}
