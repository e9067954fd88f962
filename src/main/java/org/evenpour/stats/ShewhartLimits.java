package org.evenpour.stats;

import java.util.Arrays;

/**
 * Three-sigma limits for individuals, means, ranges and standard deviations, from the data or from
 * summary figures, with exact constants (ISO 7870-2).
 */
public final class ShewhartLimits {
  private ShewhartLimits() {}

  /**
   * Individuals: mean ± 3·(mean moving range)/d2, d2 exact. NaN are skipped; undefined with fewer
   * than two values.
   */
  public static Limits individuals(double[] x) {
    return MovingRange.of(x).limits();
  }

  /** Individuals with another d2, to compare with work printed with 1.128. */
  public static Limits individuals(double[] x, double d2) {
    MovingRange ranges = MovingRange.of(x);
    return Limits.around(ranges.values().mean(), ranges.sigma(d2), 3);
  }

  /** The moving ranges of individuals: 0 … D4·(mean moving range). */
  public static Limits movingRange(double[] x) {
    return MovingRange.of(x).rangeLimits();
  }

  /** Means of subgroups of one size, sigma from their ranges. */
  public static Limits xbarR(double[][] subgroups) {
    return fromRanges(subgroups).mean(oneSize(subgroups));
  }

  /** Ranges of subgroups of one size. */
  public static Limits rangeLimits(double[][] subgroups) {
    return fromRanges(subgroups).range(oneSize(subgroups));
  }

  /** Means of subgroups of one size, sigma from their standard deviations. */
  public static Limits xbarS(double[][] subgroups) {
    return fromSds(subgroups).mean(oneSize(subgroups));
  }

  /** Standard deviations of subgroups of one size. */
  public static Limits sLimits(double[][] subgroups) {
    return fromSds(subgroups).sd(oneSize(subgroups));
  }

  /**
   * Subgroups of any sizes from 2, sigma from their ranges: Σ w R/d2 / Σ w with w = d2²/d3², the
   * unbiased combination of least variance (Burr 1976); mean range / d2 where sizes are equal.
   * Subgroups of one value count for the center only. NaN are skipped.
   */
  public static Subgroups fromRanges(double[][] subgroups) {
    double sum = 0;
    double weights = 0;
    Moments all = new Moments();
    for (double[] subgroup : subgroups) {
      Moments moments = Moments.of(subgroup);
      all.addAll(moments);
      int n = (int) moments.count();
      if (n > 1) {
        double d2 = ChartConstants.d2(n);
        double d3 = ChartConstants.d3(n);
        double weight = d2 * d2 / (d3 * d3);
        sum += weight * (moments.maximum() - moments.minimum()) / d2;
        weights += weight;
      }
    }
    return new Subgroups(all.mean(), sum / weights);
  }

  /**
   * Subgroups of any sizes from 2, sigma from their standard deviations: Σ w s/c4 / Σ w with w =
   * c4²/(1 − c4²) (Burr 1976); mean s / c4 where sizes are equal.
   */
  public static Subgroups fromSds(double[][] subgroups) {
    double sum = 0;
    double weights = 0;
    Moments all = new Moments();
    for (double[] subgroup : subgroups) {
      Moments moments = Moments.of(subgroup);
      all.addAll(moments);
      int n = (int) moments.count();
      if (n > 1) {
        double c4 = ChartConstants.c4(n);
        double weight = c4 * c4 / ((1 - c4) * (1 + c4));
        sum += weight * moments.sd() / c4;
        weights += weight;
      }
    }
    return new Subgroups(all.mean(), sum / weights);
  }

  /** Subgroups of any sizes from 2, sigma the root of the pooled variance. */
  public static Subgroups fromPooledVariance(double[][] subgroups) {
    Moments all = new Moments();
    double squares = 0;
    long df = 0;
    for (double[] subgroup : subgroups) {
      Moments moments = Moments.of(subgroup);
      all.addAll(moments);
      if (moments.count() > 1) {
        squares += moments.sumOfSquares().value();
        df += moments.count() - 1;
      }
    }
    return new Subgroups(all.mean(), Math.sqrt(squares / df));
  }

  /** From a printed summary: grand mean and mean range of subgroups of n. */
  public static Subgroups fromMeanRange(double grandMean, double meanRange, int n) {
    return new Subgroups(grandMean, meanRange / ChartConstants.d2(n));
  }

  /** From a printed summary: grand mean and mean standard deviation of subgroups of n. */
  public static Subgroups fromMeanSd(double grandMean, double meanSd, int n) {
    return new Subgroups(grandMean, meanSd / ChartConstants.c4(n));
  }

  private static int oneSize(double[][] subgroups) {
    int size = subgroups.length == 0 ? 0 : subgroups[0].length;
    if (!Arrays.stream(subgroups).allMatch(s -> s.length == size)) {
      throw new IllegalArgumentException(
          "the subgroups differ in size, so each size has its own limits: see fromRanges, fromSds");
    }
    return size;
  }

  /**
   * Center and sigma of single values, from which the limits for any subgroup size follow.
   *
   * @param center mean of all values
   * @param sigma standard deviation within subgroups; NaN where none has two values
   */
  public record Subgroups(double center, double sigma) {
    /** Limits for the mean of n values. */
    public Limits mean(int n) {
      return Limits.around(center, sigma / Math.sqrt(n), 3);
    }

    /** Limits for the range of n values. */
    public Limits range(int n) {
      return new Limits(
          ChartConstants.d2(n) * sigma,
          ChartConstants.bigD1(n) * sigma,
          ChartConstants.bigD2(n) * sigma,
          ChartConstants.d3(n) * sigma);
    }

    /** Limits for the standard deviation of n values. */
    public Limits sd(int n) {
      double c4 = ChartConstants.c4(n);
      return new Limits(
          c4 * sigma,
          ChartConstants.b5(n) * sigma,
          ChartConstants.b6(n) * sigma,
          Math.sqrt((1 - c4) * (1 + c4)) * sigma);
    }
  }
}
