package org.evenpour.stats;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Group means drawn towards their center by as much as chance made them differ: empirical Bayes, or
 * best linear unbiased prediction with estimated variances.
 *
 * <p>Group mean yᵢ = center + effectᵢ + error, with variances τ² between groups and vᵢ = s²/nᵢ of
 * the error. A group with few values is drawn further in, so it doesn't lead a list by luck.
 *
 * @param center weighted mean of the groups, weights 1/(τ² + vᵢ)
 * @param between τ², variance between groups; 0 where the groups differ no more than by chance
 * @param groups in the order given; NaN throughout for a group without values
 */
public record ShrunkMeans(double center, double between, List<Shrunk> groups) {

  /**
   * One group.
   *
   * @param mean center + (1 − shrinkage)·(own mean − center)
   * @param low 95 % limit of the group's true mean
   * @param high 95 % limit of the group's true mean
   * @param shrinkage vᵢ/(τ² + vᵢ), from 0 (own mean kept) to 1 (center taken)
   */
  public record Shrunk(double mean, double low, double high, double shrinkage) {
    private static final Shrunk UNDEFINED =
        new Shrunk(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
  }

  public ShrunkMeans {
    groups = List.copyOf(groups);
  }

  /**
   * Shrinks.
   *
   * <p>τ² by Paule and Mandel (1982): the τ² for which Σ (yᵢ − center)²/(τ² + vᵢ) = k − 1, 0 where
   * that sum is below k − 1 already. For groups of one size it is the ANOVA estimate (MSb − MSw)/n.
   * Mean squared error of a shrunk mean by Prasad and Rao (1990): τ²·B + B²·Var(center) + 2·vᵢ²/(τ²
   * + vᵢ)³·Var(τ²), with B = shrinkage and, for this estimate, Var(τ²) = 2k/(Σ 1/(τ² + vⱼ))²
   * (Datta, Rao and Smith 2005, whose small correction for unequal sizes is left out); the interval
   * is ± t of its root, t with k − 1 degrees of freedom as τ² has them (a choice: with 1.96 it
   * covered 93.8 % in the test's simulation); s² is taken as known. O(k) for each of some ten
   * steps.
   *
   * <p>With fewer than two groups that have values, or s that is not above 0, the center is the
   * plain mean of all, τ² NaN, and every group undefined.
   *
   * @param means group means; those of groups without values are not looked at
   * @param counts values in each group
   * @param s sigma within groups
   */
  public static ShrunkMeans of(double[] means, long[] counts, double s) {
    int[] used = IntStream.range(0, means.length).filter(i -> counts[i] > 0).toArray();
    double[] y = Arrays.stream(used).mapToDouble(i -> means[i]).toArray();
    double[] v = Arrays.stream(used).mapToDouble(i -> s * s / (double) counts[i]).toArray();
    Shrunk[] groups = new Shrunk[means.length];
    Arrays.fill(groups, Shrunk.UNDEFINED);
    if (used.length < 2 || !(s > 0)) {
      double total = Arrays.stream(used).mapToDouble(i -> (double) counts[i]).sum();
      double sum = Arrays.stream(used).mapToDouble(i -> (double) counts[i] * means[i]).sum();
      return new ShrunkMeans(sum / total, Double.NaN, List.of(groups));
    }
    double between = between(y, v);
    double center = center(y, v, between);
    double weights = 0;
    for (double vi : v) {
      weights += 1 / (between + vi);
    }
    double varianceOfBetween = 2 * y.length / (weights * weights);
    // k groups tell τ² no better than k − 1 degrees of freedom.
    double t = StudentT.quantile(0.975, y.length - 1.0);
    for (int i = 0; i < y.length; i++) {
      double total = between + v[i];
      double shrinkage = v[i] / total;
      double mean = center + (1 - shrinkage) * (y[i] - center);
      double error =
          // The last term twice: it is there, and the first, with τ² estimated, is too small by it.
          between * shrinkage
              + shrinkage * shrinkage / weights
              + 2 * shrinkage * shrinkage / total * varianceOfBetween;
      double half = t * Math.sqrt(error);
      groups[used[i]] = new Shrunk(mean, mean - half, mean + half, shrinkage);
    }
    return new ShrunkMeans(center, between, List.of(groups));
  }

  private static double between(double[] y, double[] v) {
    // The sum falls as τ² grows: there is no root above 0.
    if (excess(y, v, 0) <= 0) {
      return 0;
    }
    double spread = Moments.of(y).variance();
    return Root.ofIncreasing(t -> -excess(y, v, t), spread, 0.1 * spread, 0, Double.MAX_VALUE);
  }

  private static double excess(double[] y, double[] v, double between) {
    double center = center(y, v, between);
    double sum = 0;
    for (int i = 0; i < y.length; i++) {
      sum += (y[i] - center) * (y[i] - center) / (between + v[i]);
    }
    return sum - (y.length - 1);
  }

  private static double center(double[] y, double[] v, double between) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < y.length; i++) {
      sum += y[i] / (between + v[i]);
      weights += 1 / (between + v[i]);
    }
    return sum / weights;
  }
}
