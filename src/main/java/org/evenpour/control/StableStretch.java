package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.stats.LevelSteps;

/**
 * Which part of a series is its normal state, so that a fault within the base period neither moves
 * nor widens limits.
 *
 * <p>The series is cut where its mean steps (circular binary segmentation, Olshen and others 2004).
 * Pieces that lie near one another are one state, and the normal one is that which began first of
 * those that last long enough. The threshold and what is "long enough" and "near" are our choices:
 * a step must be so clear that among some hundred stable series hardly one is cut.
 */
final class StableStretch {
  /**
   * Twice the log-likelihood ratio at which a stretch is believed to differ, where some hundred
   * series are cut. The few series in time are cut by {@link LevelSteps}.
   */
  static final double AMONG_MANY = 20;

  private static final int SHORTEST_PIECE = 5;

  /** A long series is searched in steps of this part of it first. */
  private static final int COARSE = 256;

  private static final int LEAST_POINTS = 20;
  private static final double LEAST_SHARE = 0.2;
  private static final double NEAR_SIGMA = 0.75;

  /** A shorter piece may stand anywhere by chance: it says of no later level that it was there. */
  private static final int LEAST_TO_COME_BACK = 10;

  /** A piece within this many standard errors of its mean may be near. */
  private static final double CHANCE = 2;

  private static final double CLIP = 4;

  private StableStretch() {}

  /**
   * Marks the points that belong to the normal state.
   *
   * @param z the series, in sigma about any level
   * @param inflation of the variance of long sums by autocorrelation
   * @param believed twice the log-likelihood ratio at which a stretch is believed to differ
   */
  static boolean[] of(double[] z, double inflation, double believed) {
    int n = z.length;
    double[] sums = new double[n + 1];
    double center = median(z);
    for (int i = 0; i < n; i++) {
      // Clipped, for one wild pour is no step of the level.
      sums[i + 1] = sums[i] + Math.max(-CLIP, Math.min(CLIP, z[i] - center));
    }
    List<Integer> cuts = new ArrayList<>();
    cut(sums, 0, n, believed * inflation, cuts);
    cuts.add(n);
    cuts.sort(null);

    return normal(cuts.stream().mapToInt(Integer::intValue).toArray(), sums, inflation);
  }

  /**
   * Marks the points that belong to the normal state, where it is known where the level steps.
   *
   * @param x the series
   * @param steps what is left of it when its steps are taken out
   * @param inflation of the variance of long sums by autocorrelation
   */
  static boolean[] of(double[] x, LevelSteps steps, double inflation) {
    double sigma = Math.sqrt(steps.variance());
    double[] sums = new double[x.length + 1];
    for (int i = 0; i < x.length; i++) {
      // In sigma, as levels are near or far; not clipped, for the cuts are known already.
      sums[i + 1] = sums[i] + (sigma > 0 ? x[i] / sigma : 0);
    }
    int[] cuts = steps.cuts();
    return normal(
        Arrays.copyOfRange(cuts, Math.min(1, cuts.length - 1), cuts.length), sums, inflation);
  }

  /**
   * The normal state is the earliest piece that is long enough, with all that lies near it. A piece
   * that is too short stands for the level to which the series comes back, if that is long enough
   * together; what it is off that level by chance says nothing.
   */
  private static boolean[] normal(int[] ends, double[] sums, double inflation) {
    int n = sums.length - 1;
    int longEnough = Math.max(Math.min(LEAST_POINTS, n / 2), (int) Math.ceil(LEAST_SHARE * n));
    int chosen = -1;
    int longest = 0;
    for (int p = 0; p < ends.length && chosen < 0; p++) {
      int length = length(ends, p);
      if (length > length(ends, longest)) {
        longest = p;
      }
      // A short piece may lie off its own level by chance, the more so where φ is high.
      double near = Math.max(NEAR_SIGMA, CHANCE * Math.sqrt(inflation / Math.max(1, length)));
      int together = 0;
      int like = p;
      for (int q = p; q < ends.length; q++) {
        if (Math.abs(mean(sums, ends, q) - mean(sums, ends, p)) < near) {
          together += length(ends, q);
          like = length(ends, q) > length(ends, like) ? q : like;
        }
      }
      boolean comesBack = length >= LEAST_TO_COME_BACK && together >= longEnough;
      chosen = length >= longEnough ? p : comesBack ? like : -1;
    }
    double level = mean(sums, ends, chosen < 0 ? longest : chosen);
    boolean[] normal = new boolean[n];
    for (int p = 0; p < ends.length; p++) {
      // Cuts are believed or not; a step too small to matter still gives its points to the base.
      boolean isNear = Math.abs(mean(sums, ends, p) - level) < NEAR_SIGMA;
      Arrays.fill(normal, ends[p] - length(ends, p), ends[p], isNear);
    }
    return normal;
  }

  private static int length(int[] ends, int piece) {
    return ends[piece] - (piece == 0 ? 0 : ends[piece - 1]);
  }

  private static double mean(double[] sums, int[] ends, int piece) {
    return mean(sums, ends[piece] - length(ends, piece), ends[piece]);
  }

  /**
   * Cuts out the stretch that differs most from what is left of {@code from..to}, if it differs
   * clearly, and goes on with the pieces: a passing fault is found as well as a lasting one.
   */
  private static void cut(double[] sums, int from, int to, double least, List<Integer> cuts) {
    Best best = new Best(sums, from, to, least);
    // All pairs of ends would be n²/2: coarsely first, then each one about the best.
    int stride = Math.max(1, (to - from) / COARSE);
    best.search(from, to, from, to, stride);
    if (stride > 1 && best.start >= 0) {
      int start = best.start;
      int end = best.end;
      best.search(start - stride, start + stride, end - stride, end + stride, 1);
    }
    int start = best.start;
    int end = best.end;
    if (start >= 0) {
      if (start > from) {
        cuts.add(start);
        cut(sums, from, start, least, cuts);
      }
      cut(sums, start, end, least, cuts);
      if (end < to) {
        cuts.add(end);
        cut(sums, end, to, least, cuts);
      }
    }
  }

  /** The stretch that differs most so far. */
  private static final class Best {
    private final double[] sums;
    private final int from;
    private final int to;
    private double ratio;
    private int start = -1;
    private int end = -1;

    Best(double[] sums, int from, int to, double least) {
      this.sums = sums;
      this.from = from;
      this.to = to;
      ratio = least;
    }

    void search(int startFrom, int startTo, int endFrom, int endTo, int stride) {
      int n = to - from;
      double total = sums[to] - sums[from];
      for (int i = Math.max(from, startFrom); i <= Math.min(to, startTo); i += stride) {
        for (int j = Math.max(i + SHORTEST_PIECE, endFrom); j <= Math.min(to, endTo); j += stride) {
          int inside = j - i;
          int outside = n - inside;
          // What lies before and after is one level, so that both together must be long enough.
          if (outside < SHORTEST_PIECE) {
            break;
          }
          double sum = sums[j] - sums[i] - total * inside / n;
          // The likelihood ratio of two means: (mean in − mean out)²·in·out/n, written with one
          // sum.
          double found = sum * sum * n / ((double) inside * outside);
          if (found > ratio) {
            ratio = found;
            start = i;
            end = j;
          }
        }
      }
    }
  }

  private static double mean(double[] sums, int from, int to) {
    return to == from ? 0 : (sums[to] - sums[from]) / (to - from);
  }

  private static double median(double[] z) {
    return z.length == 0 ? 0 : org.evenpour.stats.Robust.median(z);
  }
}
