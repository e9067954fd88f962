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

  private double last;
  private int above;
  private int below;
  private int rising;
  private int falling;
  private int alternating;
  private int inner;
  private int outside;
  // the newest point is bit 0; a point beyond on that side is a 1
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
    if (!active || Double.isNaN(x)) {
      return 0;
    }
    above = x > center ? above + 1 : 0;
    below = x < center ? below + 1 : 0;
    step(x);
    boolean isHigh1 = x > upper1;
    boolean isLow1 = x < lower1;
    boolean isHigh2 = x > upper2;
    boolean isLow2 = x < lower2;
    inner = x < upper1 && x > lower1 ? inner + 1 : 0;
    outside = isHigh1 || isLow1 ? outside + 1 : 0;
    high1 = (high1 << 1 | (isHigh1 ? 1 : 0)) & 31;
    low1 = (low1 << 1 | (isLow1 ? 1 : 0)) & 31;
    high2 = (high2 << 1 | (isHigh2 ? 1 : 0)) & 7;
    low2 = (low2 << 1 | (isLow2 ? 1 : 0)) & 7;

    int done = x > upper3 || x < lower3 ? 1 : 0;
    done |= above >= lengths.oneSide() || below >= lengths.oneSide() ? 2 : 0;
    done |= rising >= lengths.trending() || falling >= lengths.trending() ? 4 : 0;
    done |= alternating >= lengths.alternating() ? 8 : 0;
    done |=
        (isHigh2 && Integer.bitCount(high2) >= 2) || (isLow2 && Integer.bitCount(low2) >= 2)
            ? 16
            : 0;
    done |=
        (isHigh1 && Integer.bitCount(high1) >= 4) || (isLow1 && Integer.bitCount(low1) >= 4)
            ? 32
            : 0;
    done |= inner >= lengths.inner() ? 64 : 0;
    done |= outside >= lengths.outside() ? 128 : 0;
    for (int rest = done; rest != 0; rest &= rest - 1) {
      counts[Integer.numberOfTrailingZeros(rest)]++;
    }
    return done;
  }

  /** Points, not steps, of the running trend and alternation. */
  private void step(double x) {
    if (x > last) {
      alternating = falling >= 2 ? alternating + 1 : 2;
      rising++;
      falling = 1;
    } else if (x < last) {
      alternating = rising >= 2 ? alternating + 1 : 2;
      falling++;
      rising = 1;
    } else {
      alternating = 1;
      rising = 1;
      falling = 1;
    }
    last = x;
  }

  /** How often a test has completed. */
  public long count(RunTest test) {
    return counts[test.bit()];
  }

  /** Forgets the points so far but keeps the counts, as where a new series begins. */
  public void restart() {
    last = Double.NaN;
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
