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
 * Run length of a Shewhart chart with run tests, by the Markov chain of Champ and Woodall (1987):
 * what the tests remember, for the eight zones a point can fall into.
 *
 * <p>Trends and alternations compare values, which no finite chain of zones knows. With them a
 * state also holds the zone of the last point, and the steps up or down, and carries the density of
 * the last point within its zone. On the scale u = Φ(x − δ) that density is uniform for a new zone,
 * and a step within the zone only integrates it up to (or from) each u: a polynomial whose degree
 * is the number of steps, known by its values at Gauss–Legendre nodes. So only the steps that stay
 * in one zone cost accuracy, and with eight nodes little of that: some 10 digits.
 */
final class RunTestLength {
  private static final int ZONES = 8;
  private static final int NODES = 8;
  private static final int FIRES = -1;

  private final Set<RunTest> tests;
  private final RunTest.Lengths lengths;
  private final boolean ordered;

  RunTestLength(Collection<RunTest> tests, RunTest.Lengths lengths) {
    if (tests.isEmpty()) {
      throw new IllegalArgumentException("a run length needs at least one test");
    }
    this.tests = EnumSet.copyOf(tests);
    this.lengths = lengths;
    this.ordered =
        this.tests.contains(RunTest.SIX_TRENDING)
            || this.tests.contains(RunTest.FOURTEEN_ALTERNATING);
  }

  /**
   * What the tests remember; parts that no test asks for stay 0.
   *
   * @param zone of the last point, where its value matters, else −1
   * @param trend steps in a row in one direction, downward negative
   * @param swing steps in a row that each turn back, the first one included
   */
  private record State(
      int zone,
      int trend,
      int swing,
      int side,
      int inner,
      int outside,
      int high1,
      int low1,
      int high2,
      int low2) {}

  /** The states, and for each where a step down or up into each zone leads. */
  private record Moves(List<State> states, List<int[]> down, List<int[]> up) {}

  RunLengthDistribution of(double shift) {
    double[] zones = new double[ZONES];
    for (int z = 0; z < ZONES; z++) {
      // −∞ −3 −2 −1 0 1 2 3 ∞, taken in the tail where they are small
      double low = z == 0 ? Double.NEGATIVE_INFINITY : z - 4 - shift;
      double high = z == 7 ? Double.POSITIVE_INFINITY : z - 3 - shift;
      zones[z] =
          low > 0
              ? Normal.upperTail(low) - Normal.upperTail(high)
              : Normal.cdf(high) - Normal.cdf(low);
    }
    Moves moves = moves();
    Flow flow = new Flow(moves, zones, ordered ? NODES : 1);
    return RunLengthDistribution.of(flow::advance);
  }

  /** Probability as it moves between states; owned by the thread that advances it. */
  private static final class Flow {
    private final Moves moves;
    private final double[] zones;
    private final GaussLegendre rule;
    private final double[][] below;
    private double[][] density;

    Flow(Moves moves, double[] zones, int nodes) {
      this.moves = moves;
      this.zones = zones;
      this.rule = GaussLegendre.on(0, 1, nodes);
      this.below = below(nodes);
      this.density = new double[moves.states().size()][nodes];
      Arrays.fill(density[0], 1);
    }

    /** below[i][j]: weight of the density at node j in its integral from 0 to node i. */
    private static double[][] below(int nodes) {
      Panels zone = Panels.on(0, 1, 1, nodes);
      double[][] below = new double[nodes][nodes];
      for (int i = 0; i < nodes; i++) {
        zone.addIntegral(below[i], 0, 0, zone.node(i), u -> 1);
      }
      return below;
    }

    /** Takes one more point and gives the probability that no test has fired. */
    double advance() {
      int states = density.length;
      int nodes = rule.size();
      double[][] next = new double[states][nodes];
      double[] even = new double[states];
      for (int s = 0; s < states; s++) {
        double[] here = density[s];
        double mass = 0;
        for (int i = 0; i < nodes; i++) {
          mass += rule.weight(i) * here[i];
        }
        int at = moves.states().get(s).zone();
        int[] down = moves.down().get(s);
        int[] up = moves.up().get(s);
        for (int z = 0; z < ZONES; z++) {
          int to = z < at ? down[z] : up[z];
          if (z != at) {
            if (to != FIRES) {
              even[to] += mass * zones[z];
            }
          } else {
            for (int i = 0; i < nodes; i++) {
              double lower = SignalChain.dot(below[i], here);
              if (up[z] != FIRES) {
                next[up[z]][i] += zones[z] * lower;
              }
              if (down[z] != FIRES) {
                next[down[z]][i] += zones[z] * (mass - lower);
              }
            }
          }
        }
      }
      double alive = 0;
      for (int s = 0; s < states; s++) {
        alive += even[s];
        for (int i = 0; i < nodes; i++) {
          alive += rule.weight(i) * next[s][i];
          next[s][i] += even[s];
        }
      }
      density = next;
      return alive;
    }
  }

  private Moves moves() {
    Map<State, Integer> number = new HashMap<>();
    Moves moves = new Moves(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    State start = new State(-1, 0, 0, 0, 0, 0, 0, 0, 0, 0);
    number.put(start, 0);
    moves.states().add(start);
    for (int s = 0; s < moves.states().size(); s++) {
      State from = moves.states().get(s);
      int[] down = new int[ZONES];
      int[] up = new int[ZONES];
      for (int z = 0; z < ZONES; z++) {
        // without a last zone there is no direction: both are the same move
        down[z] = to(next(from, z, from.zone < 0 ? 0 : -1), z, number, moves.states());
        up[z] = to(next(from, z, from.zone < 0 ? 0 : 1), z, number, moves.states());
      }
      moves.down().add(down);
      moves.up().add(up);
    }
    return moves;
  }

  private int to(State next, int zone, Map<State, Integer> number, List<State> states) {
    if (fires(next, zone)) {
      return FIRES;
    }
    State kept = kept(next);
    Integer known = number.get(kept);
    if (known == null) {
      known = states.size();
      number.put(kept, known);
      states.add(kept);
    }
    return known;
  }

  private State next(State s, int zone, int direction) {
    boolean high = zone > 3;
    int side = high ? Math.max(0, s.side) + 1 : Math.min(0, s.side) - 1;
    boolean inner = zone == 3 || zone == 4;
    boolean onward = s.trend * direction > 0;
    boolean back = s.trend * direction < 0;
    return new State(
        zone,
        onward ? s.trend + direction : direction,
        back ? s.swing + 1 : Math.abs(direction),
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
        || (tests.contains(RunTest.SIX_TRENDING) && Math.abs(s.trend) >= lengths.trending() - 1)
        || (tests.contains(RunTest.FOURTEEN_ALTERNATING) && s.swing >= lengths.alternating() - 1)
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
    boolean trends = tests.contains(RunTest.SIX_TRENDING);
    return new State(
        ordered ? s.zone : -1,
        ordered ? (trends ? s.trend : Integer.signum(s.trend)) : 0,
        tests.contains(RunTest.FOURTEEN_ALTERNATING) ? s.swing : 0,
        tests.contains(RunTest.NINE_ONE_SIDE) ? s.side : 0,
        tests.contains(RunTest.FIFTEEN_INNER) ? s.inner : 0,
        tests.contains(RunTest.EIGHT_OUTSIDE_INNER) ? s.outside : 0,
        middle ? s.high1 & 15 : 0,
        middle ? s.low1 & 15 : 0,
        outer ? s.high2 & 3 : 0,
        outer ? s.low2 & 3 : 0);
  }
}
