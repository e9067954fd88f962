package org.evenpour.stats;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.RandomAccess;

/**
 * A monotone transform that makes standardized values of any distribution normal: {@code s =
 * Φ⁻¹(F(z))}, with {@code F} estimated from a sample.
 *
 * <p>The middle of {@code F} is the sample's own: its quantiles at {@value #KNOTS} evenly spaced
 * scores (plotting positions of Blom 1958), straight between them. Beyond the outermost knots each
 * tail is a generalized Pareto distribution, {@code (1 + ξ y/β)^(−1/ξ)} for an excess {@code y}
 * (Balkema and de Haan 1974, Pickands 1975), its parameters by probability weighted moments
 * (Hosking and Wallis 1987), ξ drawn towards zero, where the tails of normal, gamma and lognormal
 * values lie in the end, by as much as a shape of s.d. {@value #SHAPE_SD} would be (a choice).
 * Equal quantiles, as rounded values have them, share one knot with the mean of their scores.
 *
 * <p>The largest few values are left out of their tail where they are no part of it.
 *
 * <p>Infinite values have the scores ±{@value #FARTHEST}, as has everything that far out; NaN has
 * NaN. Making it sorts: O(n log n); a score costs a binary search, in the tails a normal quantile.
 *
 * @param values knots, strictly ascending; none = values are taken to be normal already
 * @param scores of the knots, strictly ascending
 * @param low tail below the first knot
 * @param high tail above the last one
 * @param size of the sample; 0 = none
 */
public record NormalScores(
    List<Double> values, List<Double> scores, Tail low, Tail high, int size) {
  /** Fewer values say too little of a distribution: a choice. */
  public static final int LEAST = 500;

  /** No score is farther out. */
  static final double FARTHEST = 8;

  private static final int KNOTS = 41;

  /** The part of the sample that makes each tail, where that is enough. */
  private static final double TAIL = 0.025;

  private static final int LEAST_IN_TAIL = 50;
  private static final double MOST_IN_TAIL = 0.1;

  /** How far shapes of tails lie about zero before anything is known of one: a choice. */
  private static final double SHAPE_SD = 0.15;

  /** So many values of a tail may be faults and no part of it: a choice. */
  private static final int MOST_WILD = 10;

  /** A value is, where one as far out is expected in fewer samples than this: a choice. */
  private static final double WILD = 0.01;

  /** n times the variance of ξ by weighted moments, near ξ = 0 (Hosking and Wallis 1987). */
  private static final double SHAPE_VARIANCE = 1.5;

  /** Values that are normal already. */
  public static final NormalScores IDENTITY =
      new NormalScores(List.of(), List.of(), Tail.NONE, Tail.NONE, 0);

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException if knots do not ascend
   */
  public NormalScores {
    values = Knots.of(values);
    scores = Knots.of(scores);
    if (values.size() != scores.size() || !ascend(values) || !ascend(scores)) {
      throw new IllegalArgumentException("knots must ascend: " + values + ", " + scores);
    }
  }

  /** Numbers that are looked up without unwrapping each, once for every anode. Never changed. */
  private static final class Knots extends AbstractList<Double> implements RandomAccess {
    private final double[] at;

    private Knots(double[] at) {
      this.at = at;
    }

    static Knots of(List<Double> list) {
      return new Knots(list.stream().mapToDouble(each -> each).toArray());
    }

    @Override
    public Double get(int index) {
      return at[index];
    }

    @Override
    public int size() {
      return at.length;
    }
  }

  private static double[] at(List<Double> knots) {
    return ((Knots) knots).at;
  }

  private static boolean ascend(List<Double> x) {
    for (int i = 1; i < x.size(); i++) {
      if (!(x.get(i - 1) < x.get(i))) {
        return false;
      }
    }
    return true;
  }

  /**
   * A generalized Pareto tail.
   *
   * @param scale β, in the values' unit
   * @param shape ξ; below 0 the tail ends at β/−ξ, above 0 it is a power's
   * @param count how many values of the sample it rests on
   */
  public record Tail(double scale, double shape, int count) {
    static final Tail NONE = new Tail(1, 0, 0);

    /**
     * By excesses over a threshold, without those that are no part of it: where the largest few lie
     * so far out that the tail of the others would hardly ever reach them, they are faults.
     */
    static Tail of(double[] excess, double least) {
      double[] y = excess.clone();
      Arrays.sort(y);
      // From the most down: faults of one kind hide one another, for those left in widen the tail.
      for (int wild = Math.min(MOST_WILD, y.length / 10); wild > 0; wild--) {
        Tail rest = of(y, y.length - wild, least);
        // The nearest of them counts: where it is in reach, it is an ordinary value.
        if (y.length * rest.expectedBeyond(y[y.length - wild]) < WILD) {
          return rest;
        }
      }
      return of(y, y.length, least);
    }

    private static Tail of(double[] y, int n, double least) {
      double first = 0;
      double second = 0;
      for (int i = 0; i < n; i++) {
        first += y[i] / n;
        second += y[i] * (n - 1 - i) / (n - 1) / n;
      }
      // Moments weighted by rank, for a likelihood may have no maximum where values are few.
      double own = 2 - first / (first - 2 * second);
      double shape = Double.isFinite(own) ? own * trust(n) : 0;
      // Given ξ, β by the mean, which is β/(1 − ξ).
      return new Tail(Math.max(least, first * (1 - shape)), shape, n);
    }

    private static double trust(int n) {
      double prior = SHAPE_SD * SHAPE_SD;
      return prior / (prior + SHAPE_VARIANCE / n);
    }

    /** The part of the tail beyond an excess. */
    double beyond(double y) {
      return beyond(y, scale, shape);
    }

    private static double beyond(double y, double scale, double shape) {
      if (Math.abs(shape) < 1e-9) {
        return Math.exp(-y / scale);
      }
      double a = 1 + shape * y / scale;
      return a <= 0 ? 0 : Math.pow(a, -1 / shape);
    }

    /**
     * The part of the tail that later values may be expected to have beyond an excess: averaged
     * over the errors of ξ and of the tail's mean by Gauss–Hermite sums.
     */
    double expectedBeyond(double y) {
      double sum = 0;
      double mean = scale / (1 - shape);
      for (int i = 0; i < Hermite.NODES; i++) {
        // From ξ = 1 on a tail has no mean to hold its scale by.
        double its = Math.min(0.9, shape + shapeError() * Hermite.node(i));
        for (int j = 0; j < Hermite.NODES; j++) {
          // An exponential tail's mean is known to 1/√count of itself; so taken it stays above 0.
          double itsMean = mean * Math.exp(Hermite.node(j) / Math.sqrt(count));
          sum += Hermite.weight(i) * Hermite.weight(j) * beyond(y, itsMean * (1 - its), its);
        }
      }
      return sum;
    }

    private double shapeError() {
      return Math.sqrt(trust(count) * SHAPE_VARIANCE / count);
    }

    /** The excess beyond which a part of the tail lies. */
    double excess(double part) {
      double log = -Math.log(part);
      return Math.abs(shape) < 1e-9 ? scale * log : scale * Math.expm1(shape * log) / shape;
    }

    /**
     * S.d. of the logarithm of the rate with which an estimated quantile is passed, to first order
     * in the errors of ξ and of the tail's mean.
     *
     * @param part of the tail beyond that quantile
     */
    double logRateError(double part) {
      double t = Math.max(0, -Math.log(part));
      return Math.hypot(t / Math.sqrt(count), shapeError() * (t * t / 2 - t));
    }
  }

  /**
   * From a sample.
   *
   * @param z standardized values, in any order; those that are not finite are left out
   * @return {@link #IDENTITY} where there are fewer than {@link #LEAST} or they are all alike
   */
  public static NormalScores of(double[] z) {
    double[] x = Robust.ascending(Arrays.stream(z).filter(Double::isFinite).toArray());
    int n = x.length;
    if (n < LEAST || !(x[0] < x[n - 1])) {
      return IDENTITY;
    }
    double tail = Math.min(MOST_IN_TAIL, Math.max(TAIL, (double) LEAST_IN_TAIL / n));
    double edge = -Normal.quantile(tail);
    double[] value = new double[KNOTS];
    double[] score = new double[KNOTS];
    int knots = 0;
    for (int i = 0; i < KNOTS; ) {
      double at = quantile(x, edge * (2.0 * i / (KNOTS - 1) - 1));
      int same = i + 1;
      while (same < KNOTS && quantile(x, edge * (2.0 * same / (KNOTS - 1) - 1)) <= at) {
        same++;
      }
      value[knots] = at;
      score[knots++] = edge * ((i + same - 1.0) / (KNOTS - 1) - 1);
      i = same;
    }
    if (knots < 3) {
      return IDENTITY;
    }
    // Rounded values may leave a tail all alike, and a scale of 0 would end it there.
    double least = 1e-3 * (value[knots - 1] - value[0]);
    double first = value[0];
    double last = value[knots - 1];
    return new NormalScores(
        Arrays.stream(value, 0, knots).boxed().toList(),
        Arrays.stream(score, 0, knots).boxed().toList(),
        Tail.of(Arrays.stream(x).filter(v -> v < first).map(v -> first - v).toArray(), least),
        Tail.of(Arrays.stream(x).filter(v -> v > last).map(v -> v - last).toArray(), least),
        n);
  }

  /** The sample's quantile at a score, straight between Blom's plotting positions. */
  private static double quantile(double[] x, double score) {
    double place = Normal.cdf(score) * (x.length + 0.25) + 0.375 - 1;
    double bounded = Math.max(0, Math.min(x.length - 1.0, place));
    int i = (int) Math.min(x.length - 2.0, bounded);
    return x[i] + (bounded - i) * (x[i + 1] - x[i]);
  }

  /** Whether values are taken as they are. */
  public boolean isIdentity() {
    return values.isEmpty();
  }

  /** The normal score of a value. */
  public double of(double z) {
    double[] value = at(values);
    double[] score = at(scores);
    int n = value.length;
    if (n == 0 || Double.isNaN(z)) {
      return z;
    }
    if (z < value[0]) {
      return -outward(Normal.cdf(score[0]) * low.beyond(value[0] - z));
    }
    if (z > value[n - 1]) {
      return outward(Normal.upperTail(score[n - 1]) * high.beyond(z - value[n - 1]));
    }
    int from = 0;
    int to = n - 1;
    while (to - from > 1) {
      int middle = (from + to) >>> 1;
      if (value[middle] <= z) {
        from = middle;
      } else {
        to = middle;
      }
    }
    double part = (z - value[from]) / (value[to] - value[from]);
    return score[from] + part * (score[to] - score[from]);
  }

  /** Whether a value's score lies farther out than a limit, on either side. */
  public boolean isBeyond(double z, double limit) {
    double[] value = at(values);
    double[] score = at(scores);
    int n = value.length;
    // Nearly all values lie between the outermost knots, and then so do their scores.
    boolean isWithin =
        n > 0 && limit > Math.max(-score[0], score[n - 1]) && z >= value[0] && z <= value[n - 1];
    return !isWithin && Math.abs(of(z)) > limit;
  }

  private static double outward(double beyond) {
    return Math.min(FARTHEST, -Normal.quantile(Math.max(1e-300, beyond)));
  }

  /** The value that has a score: the inverse. */
  public double value(double score) {
    int n = values.size();
    if (n == 0) {
      return score;
    }
    double first = scores.get(0);
    double last = scores.get(n - 1);
    if (score < first) {
      return values.get(0) - low.excess(Normal.cdf(score) / Normal.cdf(first));
    }
    if (score > last) {
      return values.get(n - 1) + high.excess(Normal.upperTail(score) / Normal.upperTail(last));
    }
    int to = 1;
    while (scores.get(to) < score) {
      to++;
    }
    double part = (score - scores.get(to - 1)) / (scores.get(to) - scores.get(to - 1));
    return values.get(to - 1) + part * (values.get(to) - values.get(to - 1));
  }

  /**
   * By how much the mean score moves where all values move by one, for small moves: {@code ∫ s′(z)
   * dF}. 1 for normal values, more for others of s.d. 1: their middle is denser.
   */
  public double slope() {
    if (isIdentity()) {
      return 1;
    }
    double step = 0.05;
    double sum = 0;
    for (int i = -80; i < 80; i++) {
      double wide = value((i + 1) * step) - value(i * step);
      sum += wide > 0 ? step * step * Normal.density((i + 0.5) * step) / wide : 0;
    }
    return sum;
  }

  /**
   * How far out a single value's score must lie, on either side, to be passed at a given rate by
   * values that come later: the rate is averaged over the errors of the tails.
   *
   * @param rate for each value, low and high together; below 0.02
   */
  public double limit(double rate) {
    double near = 1;
    double far = FARTHEST;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (near + far);
      if (expectedRate(middle) > rate) {
        near = middle;
      } else {
        far = middle;
      }
    }
    return 0.5 * (near + far);
  }

  /**
   * The rate with which later values pass a score on either side, averaged over the errors of the
   * tails.
   *
   * @param limit above 0
   */
  public double expectedRate(double limit) {
    double beyond = Normal.upperTail(limit);
    // Between the knots scores are normal by construction; only tails are in doubt.
    if (isIdentity() || limit < -scores.get(0)) {
      return 2 * beyond;
    }
    double edge = Normal.cdf(scores.get(0));
    double top = Normal.upperTail(scores.get(scores.size() - 1));
    return edge * low.expectedBeyond(low.excess(beyond / edge))
        + top * high.expectedBeyond(high.excess(beyond / top));
  }

  /**
   * The smallest rate, low and high together, that the sample tells of: beyond it, the s.d. of the
   * logarithm of an estimated rate is above a number. 0 where values are taken to be normal.
   *
   * @param logError such as ln 4, for a factor of four either way
   */
  public double leastRate(double logError) {
    if (isIdentity()) {
      return 0;
    }
    // Within the knots the sample tells all; the doubt grows outward from there.
    double near = Math.max(-scores.get(0), scores.get(scores.size() - 1));
    double far = FARTHEST;
    for (int i = 0; i < 50; i++) {
      double middle = 0.5 * (near + far);
      if (logRateError(middle) > logError) {
        far = middle;
      } else {
        near = middle;
      }
    }
    return 2 * Normal.upperTail(near);
  }

  /**
   * S.d. of the logarithm of the rate with which values come beyond a score: by its tail's errors,
   * the worse one's; 0 where values are taken to be normal.
   */
  public double logRateError(double score) {
    double beyond = Normal.upperTail(Math.abs(score));
    return isIdentity()
        ? 0
        : Math.max(
            low.logRateError(Math.min(1, beyond / Normal.cdf(scores.get(0)))),
            high.logRateError(
                Math.min(1, beyond / Normal.upperTail(scores.get(scores.size() - 1)))));
  }
}
