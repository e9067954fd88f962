package org.evenpour.stats;

import java.util.Arrays;

/**
 * The eight run tests on one chart, point by point, in constant memory.
 *
 * <p>Thresholds are center ± k·sigma for k = 1, 2, 3, each computed once as written; every
 * comparison is strict: beyond means &gt; the upper or &lt; the lower threshold, within 1σ means
 * &gt; the lower and &lt; the upper, one side means &gt; or &lt; the center, a step is &gt; or &lt;
 * 0. A point on a threshold is neither beyond nor within; equal neighbours break trends and
 * alternations. Patterns may complete as soon as their points are there. A run that is longer than
 * its pattern counts at each further point. A NaN is a missing point: it is skipped and breaks
 * nothing. With a sigma of 0 or NaN, or a center of NaN, no test fires. Not thread-safe: owned by
 * the thread that accepts.
 */
public final class RunTests {
  // bit i tells whether the pattern of beyond-points with the binary form i is enough; the newest
  // point is the lowest bit and has to be among them
  private static final int TWO_OF_THREE = enough(3, 2);
  private static final int FOUR_OF_FIVE = enough(5, 4);

  private final RunTest.Lengths lengths;
  private final double center;
  private final boolean active;
  private final double lower1;
  private final double upper1;
  private final double lower2;
  private final double upper2;
  private final double lower3;
  private final double upper3;
  private final long[] counts = new long[8];

  // runs count points; up and down tell the last step
  private boolean started;
  private double last;
  private int up;
  private int down;
  private int above;
  private int below;
  private int rising;
  private int falling;
  private int alternating;
  private int inner;
  private int outside;
  private int high2;
  private int low2;
  private int high1;
  private int low1;

  public RunTests(double center, double sigma) {
    this(center, sigma, RunTest.Lengths.STANDARD);
  }

  public RunTests(double center, double sigma, RunTest.Lengths lengths) {
    this.lengths = lengths;
    this.center = center;
    this.active = sigma > 0 && sigma <= Double.MAX_VALUE && Math.abs(center) <= Double.MAX_VALUE;
    this.lower1 = center - sigma;
    this.upper1 = center + sigma;
    this.lower2 = center - 2 * sigma;
    this.upper2 = center + 2 * sigma;
    this.lower3 = center - 3 * sigma;
    this.upper3 = center + 3 * sigma;
    reset();
  }

  /** Takes the next point and tells the tests it completes, each as {@link RunTest#mask()}. */
  public int accept(double x) {
    if (!active || !(Math.abs(x) <= Double.MAX_VALUE)) {
      return 0;
    }
    if (!started) {
      started = true;
      last = x;
    }
    // Without branches, which random points would mispredict: exceeds() is 1 or 0, and -1 or -0 as
    // a mask keeps a run or ends it.
    above = (above + 1) & -exceeds(x, center);
    below = (below + 1) & -exceeds(center, x);

    int rises = exceeds(x, last);
    int falls = exceeds(last, x);
    int turns = (rises & down) | (falls & up);
    rising = 1 + (rising & -rises);
    falling = 1 + (falling & -falls);
    // A step that turns nothing begins anew with its own two points, an equal neighbor with one.
    alternating = 1 + (alternating & -turns) + ((rises | falls) & ~turns);
    up = rises;
    down = falls;
    last = x;

    int isHigh1 = exceeds(x, upper1);
    int isLow1 = exceeds(lower1, x);
    outside = (outside + 1) & -(isHigh1 | isLow1);
    inner = (inner + 1) & -(exceeds(upper1, x) & exceeds(x, lower1));
    high1 = (high1 << 1 | isHigh1) & 31;
    low1 = (low1 << 1 | isLow1) & 31;
    high2 = (high2 << 1 | exceeds(x, upper2)) & 7;
    low2 = (low2 << 1 | exceeds(lower2, x)) & 7;

    int done =
        (exceeds(x, upper3) | exceeds(lower3, x))
            | reaches(Math.max(above, below), lengths.oneSide()) << 1
            | reaches(Math.max(rising, falling), lengths.trending()) << 2
            | reaches(alternating, lengths.alternating()) << 3
            | ((TWO_OF_THREE >>> high2 | TWO_OF_THREE >>> low2) & 1) << 4
            | ((FOUR_OF_FIVE >>> high1 | FOUR_OF_FIVE >>> low1) & 1) << 5
            | reaches(inner, lengths.inner()) << 6
            | reaches(outside, lengths.outside()) << 7;
    // Most points complete nothing, and so cost nothing here.
    for (int rest = done; rest != 0; rest &= rest - 1) {
      counts[Integer.numberOfTrailingZeros(rest)]++;
    }
    return done;
  }

  /**
   * 1 if a &gt; b, else 0: the sign of b − a, which is never rounded to 0 unless a = b. Adding 0
   * turns −0 into 0.
   */
  private static int exceeds(double a, double b) {
    return (int) (Double.doubleToRawLongBits(b - a + 0.0) >>> 63);
  }

  private static int reaches(int run, int length) {
    return (length - 1 - run) >>> 31;
  }

  private static int enough(int of, int needed) {
    int set = 0;
    for (int pattern = 0; pattern < 1 << of; pattern++) {
      if ((pattern & 1) == 1 && Integer.bitCount(pattern) >= needed) {
        set |= 1 << pattern;
      }
    }
    return set;
  }

  /** How often a test has completed. */
  public long count(RunTest test) {
    return counts[test.bit()];
  }

  /** Forgets the points so far but keeps the counts, as where a new series begins. */
  public void restart() {
    started = false;
    up = 0;
    down = 0;
    above = 0;
    below = 0;
    rising = 0;
    falling = 0;
    alternating = 0;
    inner = 0;
    outside = 0;
    high1 = 0;
    low1 = 0;
    high2 = 0;
    low2 = 0;
  }

  /** Forgets the points and the counts. */
  public void reset() {
    restart();
    Arrays.fill(counts, 0);
  }
}
