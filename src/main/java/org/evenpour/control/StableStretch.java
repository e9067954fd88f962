package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which part of a series is its normal state, so that a fault within the base period neither moves
 * nor widens limits.
 *
 * <p>The series is cut where its mean steps (circular binary segmentation, Olshen and others 2004).
 * The normal state is the earliest piece that is long enough, and every other piece that lies near
 * it. The threshold and what is "long enough" and "near" are our choices: a step must be so clear
 * that among some hundred stable series hardly one is cut.
 */
final class StableStretch {
  /** Twice the log-likelihood ratio at which a stretch is believed to differ. */
  private static final double BELIEVED = 20;

  private static final int SHORTEST_PIECE = 5;
  private static final int LEAST_POINTS = 20;
  private static final double LEAST_SHARE = 0.2;
  private static final double NEAR_SIGMA = 0.75;
  private static final double CLIP = 4;

  private StableStretch() {}

  /**
   * Marks the points that belong to the normal state.
   *
   * @param z the series, in sigma about any level
   * @param inflation of the variance of long sums by autocorrelation
   */
  static boolean[] of(double[] z, double inflation) {
    int n = z.length;
    double[] sums = new double[n + 1];
    double center = median(z);
    for (int i = 0; i < n; i++) {
      sums[i + 1] = sums[i] + Math.max(-CLIP, Math.min(CLIP, z[i] - center));
    }
    List<Integer> cuts = new ArrayList<>();
    cut(sums, 0, n, inflation, cuts);
    cuts.add(n);
    cuts.sort(null);

    int long1 = Math.max(Math.min(LEAST_POINTS, n / 2), (int) Math.ceil(LEAST_SHARE * n));
    int from = 0;
    int chosenFrom = 0;
    int chosenTo = 0;
    for (int to : cuts) {
      if (to - from >= long1) {
        chosenFrom = from;
        chosenTo = to;
        break;
      }
      if (to - from > chosenTo - chosenFrom) {
        chosenFrom = from;
        chosenTo = to;
      }
      from = to;
    }
    double level = mean(sums, chosenFrom, chosenTo);
    boolean[] normal = new boolean[n];
    from = 0;
    for (int to : cuts) {
      if (Math.abs(mean(sums, from, to) - level) < NEAR_SIGMA) {
        Arrays.fill(normal, from, to, true);
      }
      from = to;
    }
    return normal;
  }

  /**
   * Cuts out the stretch that differs most from what is left of {@code from..to}, if it differs
   * clearly, and goes on with the pieces: a passing fault is found as well as a lasting one.
   */
  private static void cut(double[] sums, int from, int to, double inflation, List<Integer> cuts) {
    int n = to - from;
    double total = sums[to] - sums[from];
    double best = BELIEVED * inflation;
    int start = -1;
    int end = -1;
    for (int i = from; i <= to - SHORTEST_PIECE; i++) {
      for (int j = i + SHORTEST_PIECE; j <= to; j++) {
        int inside = j - i;
        int outside = n - inside;
        if (outside < SHORTEST_PIECE) {
          break;
        }
        double sum = sums[j] - sums[i] - total * inside / n;
        // The likelihood ratio of two means: (mean in − mean out)²·in·out/n, written with one sum.
        double ratio = sum * sum * n / ((double) inside * outside);
        if (ratio > best) {
          best = ratio;
          start = i;
          end = j;
        }
      }
    }
    if (start >= 0) {
      if (start > from) {
        cuts.add(start);
        cut(sums, from, start, inflation, cuts);
      }
      cut(sums, start, end, inflation, cuts);
      if (end < to) {
        cuts.add(end);
        cut(sums, end, to, inflation, cuts);
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
