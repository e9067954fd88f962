package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.Specification;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.stats.AnalysisOfMeans;
import org.evenpour.stats.Autocorrelation;
import org.evenpour.stats.Capability;
import org.evenpour.stats.Limits;
import org.evenpour.stats.Moments;
import org.evenpour.stats.Robust;
import org.evenpour.stats.ShrunkMeans;
import org.evenpour.stats.StudentT;
import org.evenpour.stats.TwoWay;
import org.jspecify.annotations.Nullable;

/**
 * How every mold stands in one characteristic: offsets from the two-way analysis of turns by lives
 * of molds, so that turn effects are out and a changed mold is another column.
 */
final class MoldStandings {
  /** Fewer casts tell no autocorrelation and no trend, and judge no mold: a choice. */
  static final int FEWEST = 25;

  /** Chance that any mold stands out where none differs: a choice. */
  static final double ALPHA = 0.05;

  private final String name;
  private final double[] value;
  private final MoldLives lives;
  private final Specification specification;
  private final TwoWay twoWay;
  private final List<int[]> rows;
  private final double[] effective;

  private MoldStandings(String name, double[] value, MoldLives lives, Specification specification) {
    this.name = name;
    this.value = value;
    this.lives = lives;
    this.specification = specification;
    twoWay = TwoWay.fit(lives.turn(), lives.life(), value, value.length);
    rows = rowsOf(lives.life(), lives.lives());
    effective = new double[lives.lives()];
  }

  /**
   * One for each mold; null where it has no value.
   *
   * <p>With s² the residual mean square and n' the effective casts of a mold's residuals (lag-one
   * correlation, not below 0, of the mold itself from 2·{@link #FEWEST} casts on, else the molds'
   * median), an offset from the molds' weighted mean has the standard error s·√((N − n')/(N·n')).
   * Decision limits and shrinkage take the n' as counts. All are empty where turns cannot be told
   * from molds.
   *
   * @param value one for each row of {@code lives}; NaN = missing
   */
  static List<@Nullable Standing> of(
      String name, double[] value, MoldLives lives, Specification specification) {
    return new MoldStandings(name, value, lives, specification).all();
  }

  /** The rows of each life, in their order. */
  static List<int[]> rowsOf(int[] life, int lives) {
    int[] count = new int[lives];
    for (int each : life) {
      count[each]++;
    }
    List<int[]> rows = new ArrayList<>();
    for (int n : count) {
      rows.add(new int[n]);
    }
    Arrays.fill(count, 0);
    for (int i = 0; i < life.length; i++) {
      rows.get(life[i])[count[life[i]]++] = i;
    }
    return rows;
  }

  private List<@Nullable Standing> all() {
    int molds = lives.latest().length;
    List<@Nullable Standing> standings = new ArrayList<>();
    double s = Math.sqrt(twoWay.componentResidual());
    if (!twoWay.isDefined() || !(s > 0)) {
      for (int m = 0; m < molds; m++) {
        standings.add(null);
      }
      return standings;
    }
    double[] effects = twoWay.columnEffects();
    double[] turnEffects = twoWay.rowEffects();
    List<double[]> series = new ArrayList<>();
    for (int life = 0; life < lives.lives(); life++) {
      series.add(
          Arrays.stream(rows.get(life))
              .filter(i -> !Double.isNaN(value[i]))
              // Turns off, for they are in all molds alike and would pass for a mold's memory.
              .mapToDouble(i -> value[i] - turnEffects[lives.turn()[i]])
              .toArray());
    }
    effectiveCasts(series);
    double[] offset = new double[molds];
    long[] counts = new long[molds];
    double all = 0;
    double mean = 0;
    double casts = 0;
    int asked = 0;
    for (int m = 0; m < molds; m++) {
      int life = lives.latest()[m];
      if (life >= 0 && series.get(life).length > 0) {
        // Casts that hang together are worth fewer, and every error below goes by these.
        counts[m] = Math.max(1, Math.round(effective[life]));
        all += counts[m];
        mean += counts[m] * effects[life];
        casts += series.get(life).length;
        asked++;
      }
    }
    mean /= all;
    for (int m = 0; m < molds; m++) {
      offset[m] = counts[m] > 0 ? effects[lives.latest()[m]] - mean : 0;
    }
    // s² rests on the same residuals: it too is known from fewer values than there are.
    double freedom = Math.max(1, twoWay.residualDf() * Math.min(1, all / casts));
    Limits[] decision = AnalysisOfMeans.limits(ALPHA, counts, 0, s, freedom);
    ShrunkMeans shrunk = ShrunkMeans.of(offset, counts, s);
    double t = StudentT.quantile(0.975, freedom);
    for (int m = 0; m < molds; m++) {
      if (counts[m] == 0) {
        standings.add(null);
        continue;
      }
      int life = lives.latest()[m];
      // A mold is a part of the mean that it is held against.
      double half = t * s * Math.sqrt((all - counts[m]) / (all * counts[m]));
      ShrunkMeans.Shrunk drawn = shrunk.groups().get(m);
      double limit = decision[m].upper();
      double level = twoWay.center() + effects[life];
      Moments moments = moments(rows.get(life));
      standings.add(
          new Standing(
              name,
              series.get(life).length,
              effective[life],
              level,
              offset[m],
              offset[m] - half,
              offset[m] + half,
              known(drawn.mean()),
              known(drawn.low()),
              known(drawn.high()),
              known(limit),
              Math.abs(offset[m]) > limit,
              known(moments.sd()),
              room(level, moments.sd(), effective[life]),
              step(m, effects, series, s, t),
              MoldTrend.of(series.get(life), specification, asked)));
    }
    return standings;
  }

  private void effectiveCasts(List<double[]> series) {
    double[] phi = new double[effective.length];
    double[] known = new double[effective.length];
    int n = 0;
    for (int life = 0; life < phi.length; life++) {
      double lag = Autocorrelation.lag1(series.get(life));
      boolean enough = series.get(life).length >= 2 * FEWEST && !Double.isNaN(lag);
      // From 0, or casts would count for more than they are; below 1, or for nothing.
      phi[life] = enough ? Math.min(0.95, Math.max(0, lag)) : Double.NaN;
      if (enough) {
        known[n++] = phi[life];
      }
    }
    // φ of a short series is mostly chance: the other molds know it better.
    double usual = n == 0 ? 0 : Robust.median(Arrays.copyOf(known, n));
    for (int life = 0; life < phi.length; life++) {
      effective[life] =
          Autocorrelation.effectiveSampleSize(
              series.get(life).length, Double.isNaN(phi[life]) ? usual : phi[life]);
    }
  }

  private Moments moments(int[] its) {
    Moments moments = new Moments();
    for (int i : its) {
      if (!Double.isNaN(value[i])) {
        moments.add(value[i]);
      }
    }
    return moments;
  }

  /** The mold's Ppk, its casts counted as what they are worth. */
  private @Nullable Estimate room(double level, double sd, double casts) {
    if (!specification.hasLimits() || !(sd > 0)) {
      return null;
    }
    long n = Math.max(2, Math.round(casts));
    return estimate(
        Capability.of(
                n,
                level,
                sd,
                n - 1.0,
                sd,
                specification.lower(),
                specification.target(),
                specification.upper())
            .ppk());
  }

  private @Nullable Estimate step(
      int m, double[] effects, List<double[]> series, double s, double t) {
    int life = lives.latest()[m];
    int before = lives.before()[m];
    if (before < 0 || series.get(before).length < FEWEST) {
      return null;
    }
    double step = effects[life] - effects[before];
    // Two lives share no cast: their errors add in squares.
    double half = t * s * Math.sqrt(1 / effective[life] + 1 / effective[before]);
    return new Estimate(step, step - half, step + half);
  }

  private static @Nullable Estimate estimate(Capability.@Nullable Estimate e) {
    return e == null ? null : new Estimate(e.value(), known(e.low()), known(e.high()));
  }

  private static @Nullable Double known(double x) {
    return CharacteristicAudit.known(x);
  }
}
