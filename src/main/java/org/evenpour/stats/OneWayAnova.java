package org.evenpour.stats;

import java.util.Arrays;

/**
 * One-way analysis of variance of values in groups, one pass, memory by the number of groups.
 *
 * <p>SS between = Σ n_g (mean_g − mean)², SS within = ΣΣ (x − mean_g)², F = (SSb/df1)/(SSw/df2).
 * The sums are those of {@link Moments} and are combined in double-double, so that F is that of
 * exact arithmetic on the doubles even where the data carry 13 constant leading digits (NIST StRD
 * SmLs07–09). Groups without a value don't count. NaN is skipped. Not thread-safe: owned by the
 * thread that adds.
 */
public final class OneWayAnova {
  private Moments[] groups;

  /** Starts with room for this many groups; more are made as they are named. */
  public OneWayAnova(int groups) {
    this.groups = new Moments[groups];
    Arrays.setAll(this.groups, g -> new Moments());
  }

  /** Of groups that are filled elsewhere. */
  public OneWayAnova(Moments[] groups) {
    this.groups = groups;
  }

  /** Adds a value to the group with this index, from 0. */
  public void add(int group, double x) {
    if (group >= groups.length) {
      grow(group + 1);
    }
    groups[group].add(x);
  }

  /** The moments of one group; live, not a copy. */
  public Moments group(int group) {
    return groups[group];
  }

  private void grow(int size) {
    int old = groups.length;
    if (size > old) {
      groups = Arrays.copyOf(groups, Math.max(size, old + old / 2));
      for (int g = old; g < groups.length; g++) {
        groups[g] = new Moments();
      }
    }
  }

  /** The analysis of what has been added so far. */
  public Result result() {
    double n = 0;
    int used = 0;
    double sumSquaredCounts = 0;
    DoubleDouble within = DoubleDouble.ZERO;
    DoubleDouble total = DoubleDouble.ZERO;
    // Group means are measured from one of them, so that their common leading digits drop out.
    DoubleDouble origin = DoubleDouble.ZERO;
    for (Moments g : groups) {
      if (g.count() > 0) {
        if (used == 0) {
          origin = g.exactMean();
        }
        used++;
        n += g.count();
        sumSquaredCounts += (double) g.count() * g.count();
        within = within.plus(g.sumOfSquares());
        total = total.plus(g.exactMean().minus(origin).times((double) g.count()));
      }
    }
    DoubleDouble between = DoubleDouble.ZERO;
    for (Moments g : groups) {
      if (g.count() > 0) {
        // Deviations before squares: Σn·mean² − N·mean² would cancel.
        DoubleDouble deviation = g.exactMean().minus(origin).minus(total.over(n));
        between = between.plus(deviation.squared().times((double) g.count()));
      }
    }
    return Result.of(between, within, used, n, sumSquaredCounts);
  }

  /**
   * The table of a one-way analysis of variance with its variance components.
   *
   * @param ssBetween sum of squares between groups
   * @param ssWithin sum of squares within groups
   * @param df1 groups with values − 1
   * @param df2 values − groups with values
   * @param f ratio of mean squares; NaN where a degree of freedom is missing, infinite where groups
   *     differ and nothing varies within them
   * @param p probability of an F as large by chance
   * @param componentBetween variance component between groups by the method of moments, (MSb −
   *     MSw)/n₀ with n₀ = (N − Σn²/N)/(k − 1) (Searle, Casella and McCulloch 1992, 3.6), not below
   *     0
   * @param rawComponentBetween the same before it is raised to 0
   * @param componentWithin MS within
   */
  public record Result(
      double ssBetween,
      double ssWithin,
      long df1,
      long df2,
      double f,
      double p,
      double componentBetween,
      double rawComponentBetween,
      double componentWithin) {

    private static Result of(
        DoubleDouble between, DoubleDouble within, int used, double n, double sumSquaredCounts) {
      int df1 = Math.max(0, used - 1);
      double df2 = n - used;
      DoubleDouble msBetween = df1 > 0 ? between.over(df1) : DoubleDouble.of(Double.NaN);
      DoubleDouble msWithin = df2 > 0 ? within.over(df2) : DoubleDouble.of(Double.NaN);
      double f = msWithin.value() == 0 ? ratio(msBetween) : msBetween.over(msWithin).value();
      // n₀, the size that groups of one size would have for the same expected mean square.
      double groupSize = (n - sumSquaredCounts / n) / df1;
      double raw = msBetween.minus(msWithin).over(groupSize).value();
      return new Result(
          between.value(),
          within.value(),
          df1,
          (long) df2,
          f,
          Double.isNaN(f) ? Double.NaN : FRatio.upperTail(f, df1, df2),
          raw < 0 ? 0 : raw,
          raw,
          msWithin.value());
    }

    private static double ratio(DoubleDouble msBetween) {
      return msBetween.value() > 0 ? Double.POSITIVE_INFINITY : Double.NaN;
    }
  }
}
