package org.evenpour.link;

import java.util.Arrays;
import org.evenpour.stats.SeriesRegression;
import org.evenpour.stats.StudentT;
import org.jspecify.annotations.Nullable;

/**
 * How a setting wanders from turn to turn when nobody touches it, and whether it stepped out of
 * that: a step is no wandering, however slowly the setting wanders, for it comes in one turn.
 *
 * @param phi coefficient of its autoregression
 * @param noise share of its variance that is white
 * @param sd of its wandering
 */
record Wander(double phi, double noise, double sd) {
  /** Degrees of freedom that allow for jumps which are its habit: a choice. */
  private static final double FREEDOM = 20;

  private static final int LEAST = 30;
  private static final int LEAST_OF_PIECE = 5;

  /** So much of a record must be left where it is cut; a choice. */
  private static final double LEFT = 0.3;

  private static final double[] PHI = {0.2, 0.4, 0.55, 0.7, 0.8, 0.88, 0.94, 0.97};
  private static final double[] NOISE = {0, 0.1, 0.25, 0.5, 0.75, 0.9};

  /**
   * A step or a ramp that was found.
   *
   * @param at index in the series
   * @param ratio of its size to its standard error, signed
   * @param p probability of one as clear by wandering, at any of the places that were looked at
   */
  record Step(int at, double ratio, double p) {
    static final Step NONE = new Step(-1, 0, 1);
  }

  /**
   * Learns from some series of the setting, such as several molds', each cut into pieces that have
   * levels of their own: a setting that was put elsewhere and stayed there scatters no more for
   * that. How slowly it wanders is learned from the series as they are, for pieces are too short to
   * show it; how far, with that, from the pieces. Where little is left between the cuts, all is
   * learned from the series as they are.
   *
   * @param series values turn by turn; NaN = missing
   * @param pieces a number for each value that changes at a cut; below 0 = left out
   * @return null where it never moves or is hardly known
   */
  static @Nullable Wander of(double[][] series, int[][] pieces) {
    Pieces whole = Pieces.of(series, new int[series.length][]);
    if (whole.values().length < LEAST || whole.isStill()) {
      return null;
    }
    // Memory by the whole: a piece about its own mean looks short of memory.
    Wander uncut = whole.learned();
    Pieces cut = Pieces.of(series, pieces);
    boolean isEnough = cut.values().length >= Math.max(LEAST, LEFT * whole.values().length);
    return isEnough && !cut.isStill() ? cut.fit(uncut.phi(), uncut.noise()).wander() : uncut;
  }

  /**
   * Values of all pieces, each about its own mean.
   *
   * @param scale the largest of the values
   */
  @SuppressWarnings("ArrayRecordComponent") // lives within one estimate
  private record Pieces(double[] values, int[] time, int[] piece, int count, double scale) {

    static Pieces of(double[][] series, int[][] pieces) {
      int most = Arrays.stream(series).mapToInt(one -> one.length).sum();
      double[] values = new double[most];
      int[] time = new int[most];
      int[] piece = new int[most];
      int n = 0;
      int count = 0;
      double scale = 0;
      for (int k = 0; k < series.length; k++) {
        for (int t = 0; t < series[k].length; ) {
          int its = pieceAt(pieces[k], t);
          int begin = n;
          double sum = 0;
          for (; t < series[k].length && pieceAt(pieces[k], t) == its; t++) {
            if (!Double.isNaN(series[k][t])) {
              values[n] = series[k][t];
              time[n] = t;
              sum += values[n];
              scale = Math.max(scale, Math.abs(values[n]));
              piece[n++] = count;
            }
          }
          if (its < 0 || n - begin < LEAST_OF_PIECE) {
            n = begin;
          } else {
            for (int i = begin; i < n; i++) {
              values[i] -= sum / (n - begin);
            }
            count++;
          }
        }
      }
      return new Pieces(
          Arrays.copyOf(values, n), Arrays.copyOf(time, n), Arrays.copyOf(piece, n), count, scale);
    }

    private static int pieceAt(int @Nullable [] pieces, int turn) {
      return pieces == null ? 0 : pieces[turn];
    }

    /** What is left of a setting that never moves is rounding. */
    boolean isStill() {
      return dot(values, values) <= 1e-18 * scale * scale * values.length;
    }

    /** By the largest restricted likelihood on a grid, refined once. */
    Wander learned() {
      Fit best = fit(0, 0);
      for (double phi : PHI) {
        for (double noise : NOISE) {
          best = best.orBetter(fit(phi, noise));
        }
      }
      double phi = best.wander().phi();
      double noise = best.wander().noise();
      for (double nearPhi : new double[] {phi - 0.06, phi - 0.03, phi, phi + 0.015, phi + 0.06}) {
        for (double nearNoise : new double[] {noise - 0.06, noise, noise + 0.06}) {
          if (phi > 0 && nearPhi > 0 && nearPhi < 0.985 && nearNoise >= 0 && nearNoise < 0.96) {
            best = best.orBetter(fit(nearPhi, nearNoise));
          }
        }
      }
      return best.wander();
    }

    /**
     * Levels of pieces that begin anew are orthogonal once they are white, and so each is taken out
     * by itself.
     */
    Fit fit(double phi, double noise) {
      SeriesRegression.Whitening whitening =
          new SeriesRegression.Whitening(time, piece, phi, noise);
      double[] level = whitening.of(SeriesRegression.between(values.length, 0, values.length));
      double[] white = whitening.of(values);
      double squares = 0;
      double logDet = whitening.logVariance();
      for (int i = 0; i < values.length; ) {
        int its = piece[i];
        double ll = 0;
        double lx = 0;
        for (; i < values.length && piece[i] == its; i++) {
          ll += level[i] * level[i];
          lx += level[i] * white[i];
          squares += white[i] * white[i];
        }
        // By generalised least squares: the plain mean isn't the level where values hang together.
        squares -= lx * lx / ll;
        logDet += Math.log(ll);
      }
      // n less levels, and ln ll above: what the levels took from the likelihood is put back.
      int free = values.length - count;
      double variance = Math.max(Double.MIN_NORMAL, squares / free);
      return new Fit(
          new Wander(phi, noise, Math.sqrt(variance)), free * Math.log(variance) + logDet);
    }
  }

  /**
   * One point of the grid.
   *
   * @param criterion −2 log of the restricted likelihood, but for a constant
   */
  private record Fit(Wander wander, double criterion) {
    Fit orBetter(Fit other) {
      return other.criterion < criterion ? other : this;
    }
  }

  /**
   * The clearest step of a series that begins at one of some places; where asked for, the clearest
   * ramp as well. Generalised least squares with the wandering known.
   *
   * @param x values turn by turn; NaN = missing
   * @param from first index at which it may begin
   * @param to index after the last
   * @param ramps whether it may grow instead of stepping
   */
  Step clearest(double[] x, int from, int to, boolean ramps) {
    int n = 0;
    int[] time = new int[x.length];
    double[] known = new double[x.length];
    for (int t = 0; t < x.length; t++) {
      if (!Double.isNaN(x[t])) {
        time[n] = t;
        known[n++] = x[t];
      }
    }
    if (n < 4) {
      return Step.NONE;
    }
    double[] values = Arrays.copyOf(known, n);
    SeriesRegression.Whitening whitening =
        new SeriesRegression.Whitening(Arrays.copyOf(time, n), new int[n], phi, noise);
    double[] level = whitening.of(SeriesRegression.between(n, 0, n));
    double[] white = whitening.of(values);
    double ll = dot(level, level);
    double lx = dot(level, white);
    Step best = Step.NONE;
    int looks = 0;
    for (int ramp = 0; ramp < (ramps ? 2 : 1); ramp++) {
      int last = -1;
      for (int begin = Math.max(1, from); begin < to; begin++) {
        int first = 0;
        while (first < n && time[first] < begin) {
          first++;
        }
        // No value on one side of it, or the same look again from within a gap.
        if (first == 0 || first == n || first == last) {
          continue;
        }
        last = first;
        double[] shape = SeriesRegression.between(n, first, n);
        for (int i = first; ramp == 1 && i < n; i++) {
          shape[i] = time[i] - begin + 1;
        }
        double[] s = whitening.of(shape, first);
        // The level before is fitted too: a step is held against it, and not against 0.
        double ls = dot(level, s, first);
        double ss = dot(s, s, first) - ls * ls / ll;
        looks++;
        double ratio = ss <= 0 ? 0 : (dot(s, white, first) - ls * lx / ll) / Math.sqrt(ss) / sd;
        if (Math.abs(ratio) > Math.abs(best.ratio())) {
          best = new Step(begin, ratio, 1);
        }
      }
    }
    // Times all looks: cautious, for neighboring places see nearly the same.
    double p = StudentT.twoSided(Math.abs(best.ratio()), FREEDOM) * Math.max(1, looks);
    return new Step(best.at(), best.ratio(), Math.min(1, p));
  }

  private static double dot(double[] a, double[] b) {
    return dot(a, b, 0);
  }

  private static double dot(double[] a, double[] b, int from) {
    double sum = 0;
    for (int i = from; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
