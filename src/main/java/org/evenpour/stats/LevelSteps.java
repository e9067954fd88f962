package org.evenpour.stats;

import java.util.Arrays;

/**
 * Where the level of an autocorrelated series steps, judged by what is left when the step is taken
 * out.
 *
 * <p>A lasting step in a series reads as autocorrelation, and autocorrelation makes steps that are
 * none. So each candidate is judged by the likelihood of a first-order autoregression seen through
 * white noise of known variance about piecewise constant levels, in which φ and the variance are
 * estimated anew with the candidate's levels taken off and without:
 *
 * <pre>ratio = n·ln(Σe² without / Σe² with),  e = one-step-ahead prediction errors at the best φ
 * </pre>
 *
 * <p>The stretch that gains most is cut out if its ratio passes {@link #threshold}, then the next
 * one in the pieces, all pieces sharing φ (in the manner of circular binary segmentation, Olshen
 * and others 2004). Several passing faults hide one another, for each that stays reads as
 * autocorrelation: so up to {@value #AHEAD} stretches are tried together, and believed if they pass
 * {@value #TOGETHER} of the threshold on average. Candidates come from the
 * generalized-least-squares gain of a stretch at a few values of φ, in steps of 1/128 of the piece
 * first and of one point then; only these are judged in full. Wild points are drawn in towards the
 * median of five around them, and errors beyond 3 s.d. count as 3: a wild point is no step.
 *
 * <p>The threshold is from simulation ({@code StepExperiment}): of series without a step some 2 %
 * are cut, φ = 0 to 0.8, 60 to 1,500 points, normal or t with five degrees of freedom.
 *
 * <p>O(n) for each judged candidate; some 2 ms for 1,500 points without a step.
 *
 * @param cuts 0, the first index of each later piece in order, and the number of points
 * @param correlation φ of what is left
 * @param variance of what is left
 */
@SuppressWarnings("ArrayRecordComponent") // made once, never changed
public record LevelSteps(int[] cuts, double correlation, double variance) {
  /** The shortest stretch that can be cut out or left. A choice. */
  private static final int SHORTEST = 5;

  /** Parts of a piece in whose steps candidates are looked for first. */
  private static final int COARSE = 128;

  /** Points are drawn in to this many robust sigma around the median of five. A choice. */
  private static final double FAR_POINT = 4;

  private static final int WINDOW = 5;

  /** Share of a normal distribution within one sigma: the quantile of |x| that is a sigma. */
  private static final double WITHIN_SIGMA = 0.6827;

  /** Errors count for no more than this many s.d. A choice. */
  private static final double FAR_ERROR = 3;

  private static final int ROUNDS = 2;

  /** The most that the known noise counts for, as part of the variance. A choice. */
  private static final double MOST_NOISE = 0.5;

  private static final double MOST_CORRELATION = 0.97;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** They leave φ within 0.01 of its best. */
  private static final int GOLDEN_STEPS = 10;

  private static final int MOST_PIECES = 25;

  /**
   * The part of the threshold that several stretches must pass on average. By simulation some half
   * a per cent more of the series without a step are cut for it, and passing faults that come again
   * are found.
   */
  private static final double TOGETHER = 0.9;

  /** So many stretches are tried together. A choice. */
  private static final int AHEAD = 4;

  /** Values of φ at which candidates are looked for. */
  private static final double[] LIKELY = {0, 0.3, 0.6, 0.85};

  /**
   * Finds the steps.
   *
   * @param x the series; no NaN
   * @param noiseVariance of white noise in each point; 0 = not known. It counts for no more than
   *     half of the variance
   */
  public static LevelSteps of(double[] x, double noiseVariance) {
    Search search = new Search(tamed(x), noiseVariance);
    int[] cuts = {0, x.length};
    Fit now = search.fit(cuts);
    // Not believed one by one: each of several faults hides behind the others.
    int[] ahead = cuts;
    Fit then = now;
    int taken = 0;
    while (ahead.length < MOST_PIECES && taken < AHEAD) {
      int[] best = ahead;
      Fit found = null;
      for (double phi : LIKELY) {
        int[] more = search.candidate(ahead, phi);
        Fit fit = more == ahead ? null : search.fit(more);
        if (fit != null && (found == null || fit.logLikelihood() > found.logLikelihood())) {
          found = fit;
          best = more;
        }
      }
      if (found == null) {
        break;
      }
      ahead = best;
      then = found;
      taken++;
      double ratio = 2 * (then.logLikelihood() - now.logLikelihood());
      // A series without scatter has no ratio: NaN is never believed.
      double each = threshold(x.length, 0.5 * (now.phi() + then.phi()));
      if (ratio > (taken == 1 ? 1 : taken * TOGETHER) * each) {
        cuts = ahead;
        now = then;
        taken = 0;
      }
    }
    return new LevelSteps(cuts, now.phi(), now.variance());
  }

  /**
   * The ratio at which a step is believed, from simulation: the largest of all stretches grows with
   * the number of points and, more so in short series, with φ.
   *
   * @param points of the series
   * @param phi mean of the estimates with and without the step, for the one is too small where
   *     there is no step and the other too large where there is one
   */
  static double threshold(int points, double phi) {
    return 8.6 + 2 * Math.log(points) + (5 + 450.0 / points) * phi;
  }

  /** Draws in points that stand far off the median of the five around them. */
  private static double[] tamed(double[] x) {
    int n = x.length;
    if (n < 2 * WINDOW) {
      return x.clone();
    }
    double[] middle = new double[n];
    double[] off = new double[n];
    double[] window = new double[WINDOW];
    for (int i = 0; i < n; i++) {
      int from = Math.max(0, Math.min(n - WINDOW, i - WINDOW / 2));
      System.arraycopy(x, from, window, 0, WINDOW);
      Arrays.sort(window);
      middle[i] = window[WINDOW / 2];
      off[i] = Math.abs(x[i] - middle[i]);
    }
    double[] ascending = off.clone();
    Arrays.sort(ascending);
    double far = FAR_POINT * ascending[(int) (WITHIN_SIGMA * n)];
    double[] tamed = x.clone();
    for (int i = 0; i < n && far > 0; i++) {
      if (off[i] > far) {
        tamed[i] = middle[i] + Math.copySign(far, x[i] - middle[i]);
      }
    }
    return tamed;
  }

  private record Fit(double logLikelihood, double phi, double variance) {}

  /** One series, with room to work in. Owned by one thread. */
  private static final class Search {
    private final double[] x;
    private final int n;
    private final double noiseVariance;

    /** What is left of the series when the levels of its pieces are taken off. */
    private final double[] left;

    private final double[] squared;
    private final double[] fresh;
    private final double[] sums;

    private double top;
    private int topStart;
    private int topEnd;

    Search(double[] x, double noiseVariance) {
      this.x = x;
      this.noiseVariance = noiseVariance;
      n = x.length;
      left = new double[n];
      squared = new double[n];
      fresh = new double[n];
      sums = new double[n + 1];
    }

    /** The best φ for these cuts, by golden section. */
    Fit fit(int[] cuts) {
      double variance = takeLevelsOff(cuts) / Math.max(1, n);
      // Of what is left: a step still in there would make the noise look like a smaller part.
      double share = variance > 0 ? Math.min(MOST_NOISE, noiseVariance / variance) : 0;
      double low = 0;
      double high = MOST_CORRELATION;
      double a = high - GOLDEN * (high - low);
      double b = low + GOLDEN * (high - low);
      double atA = logLikelihood(a, share);
      double atB = logLikelihood(b, share);
      for (int i = 0; i < GOLDEN_STEPS; i++) {
        if (atA > atB) {
          high = b;
          b = a;
          atB = atA;
          a = high - GOLDEN * (high - low);
          atA = logLikelihood(a, share);
        } else {
          low = a;
          a = b;
          atA = atB;
          b = low + GOLDEN * (high - low);
          atB = logLikelihood(b, share);
        }
      }
      // Golden section never quite reaches 0, which is what a series of mere noise has.
      double independent = logLikelihood(0, share);
      if (independent >= Math.max(atA, atB)) {
        return new Fit(independent, 0, variance);
      }
      return atA > atB ? new Fit(atA, a, variance) : new Fit(atB, b, variance);
    }

    private double takeLevelsOff(int[] cuts) {
      double squares = 0;
      for (int c = 0; c + 1 < cuts.length; c++) {
        double sum = 0;
        for (int i = cuts[c]; i < cuts[c + 1]; i++) {
          sum += x[i];
        }
        double mean = sum / (cuts[c + 1] - cuts[c]);
        for (int i = cuts[c]; i < cuts[c + 1]; i++) {
          left[i] = x[i] - mean;
          squares += left[i] * left[i];
        }
      }
      return squares;
    }

    /**
     * Of what is left, the first point given and the variance at its best: −(n/2)·ln Σe². Its
     * predictions are those of the Kalman filter in its steady state.
     */
    private double logLikelihood(double phi, double share) {
      // The predictions' variance P solves P = φ²·P·s/(P + s) + (1 − φ²)(1 − s).
      // in the steady state all errors have one variance, which Σe² takes in: no determinant is
      // left to pay, and one pass will do
      double q = (1 - phi * phi) * (1 - share);
      double half = 0.5 * (share * (1 - phi * phi) - q);
      double predictions = Math.sqrt(half * half + q * share) - half;
      double weight = predictions / (predictions + share);
      double keep = phi * (1 - weight);
      double take = phi * weight;
      double squares = 0;
      double predicted = n == 0 ? 0 : take * left[0];
      for (int i = 1; i < n; i++) {
        double error = left[i] - predicted;
        squared[i] = error * error;
        squares += squared[i];
        predicted = take * left[i] + keep * predicted;
      }
      for (int round = 0; round < ROUNDS; round++) {
        // Twice, for the first s.d. is itself drawn out by the errors that are too far.
        double far = FAR_ERROR * FAR_ERROR * squares / (n - 1);
        squares = 0;
        for (int i = 1; i < n; i++) {
          squares += Math.min(far, squared[i]);
        }
      }
      return -0.5 * n * Math.log(squares);
    }

    /**
     * These cuts and those of the stretch that gains most at this φ; the same array where there is
     * none.
     */
    int[] candidate(int[] cuts, double phi) {
      takeLevelsOff(cuts);
      for (int i = 0; i < n; i++) {
        // Running sums: each stretch's gain then costs the same, however long it is.
        fresh[i] = i == 0 ? 0 : left[i] - phi * left[i - 1];
        sums[i + 1] = sums[i] + fresh[i];
      }
      top = 0;
      for (int c = 0; c + 1 < cuts.length; c++) {
        int from = cuts[c];
        int to = cuts[c + 1];
        int stride = Math.max(1, (to - from) / COARSE);
        double before = top;
        search(from, to, from, to, from, to, stride, phi);
        if (stride > 1 && top > before) {
          int start = topStart;
          int end = topEnd;
          search(from, to, start - stride, start + stride, end - stride, end + stride, 1, phi);
        }
      }
      if (top == 0) {
        return cuts;
      }
      int[] more = Arrays.copyOf(cuts, cuts.length + 2);
      more[cuts.length] = topStart;
      more[cuts.length + 1] = topEnd;
      return Arrays.stream(more).sorted().distinct().toArray();
    }

    /** Stretches of the piece {@code from..to} whose ends lie where it is told. */
    private void search(
        int from,
        int to,
        int startFrom,
        int startTo,
        int endFrom,
        int endTo,
        int stride,
        double phi) {
      for (int start = Math.max(from, startFrom); start <= Math.min(to, startTo); start += stride) {
        // What is left in front is empty or long enough to have a level itself.
        boolean isStartFree = start == from || start >= from + SHORTEST;
        int end = Math.max(start + SHORTEST, endFrom);
        while (isStartFree && end <= Math.min(to - SHORTEST, endTo)) {
          judge(from, to, start, end, phi);
          end += stride;
        }
        // To the very end of the piece, whatever the stride.
        if (isStartFree && start > from && start + SHORTEST <= to && to <= endTo) {
          judge(from, to, start, to, phi);
        }
      }
    }

    /**
     * The gain of a level of its own for a stretch, by generalized least squares: in the errors it
     * stands as 1 at its first point, 1 − φ within and −φ at the point behind it; what the level of
     * the piece takes of that is taken off.
     */
    private void judge(int from, int to, int start, int end, double phi) {
      double within = 1 - phi;
      double part = within * (end - start) / (to - from);
      double sum = within * (sums[end] - sums[start + 1]) - part * (sums[to] - sums[from]);
      double norm = within * within * (end - start - 1) - part * within * (end - start);
      if (start > 0) {
        sum += fresh[start];
        norm += 1;
      }
      if (end < n) {
        sum -= phi * fresh[end];
        norm += phi * phi;
      }
      if (norm > 0 && sum * sum > top * norm) {
        top = sum * sum / norm;
        topStart = start;
        topEnd = end;
      }
    }
  }
}
