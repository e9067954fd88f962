package org.evenpour.stats;

/**
 * The eight run tests of Nelson (1984) on one chart, also printed in ISO 7870-2; σ-zones lie about
 * the center line. A test counts at each point that completes its pattern.
 */
public enum RunTest {
  /** One point further than 3σ from the center. */
  BEYOND_LIMIT(0, "beyond-limit"),
  /** Nine points in a row on one side of the center; a point on it breaks the run. */
  NINE_ONE_SIDE(1, "nine-one-side"),
  /** Six points in a row, each higher (each lower) than the one before: five steps. */
  SIX_TRENDING(2, "six-trending"),
  /** Fourteen points in a row alternating up and down: thirteen steps. */
  FOURTEEN_ALTERNATING(3, "fourteen-alternating"),
  /** Two of three points further than 2σ on one side, the last of them among the two. */
  TWO_OF_THREE_OUTER(4, "two-of-three-outer"),
  /** Four of five points further than 1σ on one side, the last of them among the four. */
  FOUR_OF_FIVE_MIDDLE(5, "four-of-five-middle"),
  /** Fifteen points in a row nearer than 1σ. */
  FIFTEEN_INNER(6, "fifteen-inner"),
  /** Eight points in a row further than 1σ, on either side. */
  EIGHT_OUTSIDE_INNER(7, "eight-outside-inner");

  private static final RunTest[] ALL = values();

  private final int bit;
  private final String id;

  RunTest(int bit, String id) {
    this.bit = bit;
    this.id = id;
  }

  /** The name used in reports. */
  public String id() {
    return id;
  }

  /** This test's bit in the answer of {@link RunTests#accept}. */
  public int mask() {
    return 1 << bit;
  }

  int bit() {
    return bit;
  }

  /** The test with this id. */
  public static RunTest of(String id) {
    for (RunTest test : ALL) {
      if (test.id.equals(id)) {
        return test;
      }
    }
    throw new IllegalArgumentException("no run test is called " + id);
  }

  /**
   * How long each pattern is. The counts in the names above are Nelson's; a plant may choose
   * others.
   *
   * @param oneSide points in a row on one side
   * @param trending points in a row each higher or each lower than the one before
   * @param alternating points in a row going up and down
   * @param inner points in a row within 1σ
   * @param outside points in a row beyond 1σ
   */
  public record Lengths(int oneSide, int trending, int alternating, int inner, int outside) {
    public static final Lengths STANDARD = new Lengths(9, 6, 14, 15, 8);

    public Lengths {
      if (Math.min(Math.min(oneSide, inner), outside) < 1 || Math.min(trending, alternating) < 2) {
        throw new IllegalArgumentException("a pattern of a run test has at least one point");
      }
    }
  }
}
