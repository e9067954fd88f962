package org.evenpour.control;

import java.util.Arrays;
import java.util.List;
import org.evenpour.control.LimitProposal.Proposal;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.LimitsInForce.Wear;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.NormalScores;
import org.evenpour.stats.Robust;
import org.jspecify.annotations.Nullable;

/**
 * Limits where a turn has too few values to tell molds from turns, one to three: each mold is held
 * against its own past alone.
 *
 * <p>Model: {@code x = center + offset(mold) + series(mold, time)}: what befalls the whole wheel is
 * part of every mold's series, which is autocorrelated for it. Sigma, φ and the distribution are
 * pooled over the molds, one after the other; what they have in common makes them worth no more
 * than one of them, so that the errors of sigma and φ are those of a single mold's series.
 */
public final class OwnPastProposal {
  /** Values a mold that make a base period worth having; a choice. */
  public static final int LEAST_VALUES = 12;

  /** Of one mold's sigma: the smallest that is believed, a choice. */
  private static final double LEAST_SHARE = 1e-9;

  /** Charts that are never drawn. */
  private static final CusumPair NONE = new CusumPair(1, 1, 1, 1);

  private OwnPastProposal() {}

  /**
   * Limits from a base period; null where it is too short or has no scatter.
   *
   * @param base the base period
   * @param budget how many false alarms each chart may raise, those of turns, sides and scatter
   *     included, which are not drawn
   */
  public static @Nullable Proposal inFull(BaseRecord base, AlarmBudget budget) {
    int[][] rows = LimitProposal.rowsBy(base.mold(), base.molds());
    int known = molds(rows);
    if (!isLongEnough(base)) {
      return null;
    }
    double[] offset = new double[base.molds()];
    boolean[] normal = new boolean[base.size()];
    double[] series = new double[base.size()];
    int n = 0;
    for (int m = 0; m < rows.length; m++) {
      double[] values = Arrays.stream(rows[m]).mapToDouble(i -> base.value()[i]).toArray();
      // Each mold by itself: one that stepped must not cut the others' series.
      SeriesProposal own = SeriesProposal.of(values, 0, leastSigma(values));
      offset[m] = values.length == 0 ? Double.NaN : own.center();
      for (int k = 0; k < values.length; k++) {
        normal[rows[m][k]] = own.normal()[k];
        if (own.normal()[k]) {
          series[n++] = values[k] - own.center();
        }
      }
    }
    series = Arrays.copyOf(series, n);
    double least = leastSigma(series);
    if (!(least > 0)) {
      return null;
    }
    // One after the other, for one mold's φ is known badly; the few seams hardly count.
    SeriesProposal pooled = SeriesProposal.of(series, 0, least);
    return proposal(base, budget, offset, normal, known, pooled);
  }

  /** Whether molds have enough values, on average over those that have any. */
  public static boolean isLongEnough(BaseRecord base) {
    int known = molds(LimitProposal.rowsBy(base.mold(), base.molds()));
    return known > 0 && base.size() >= LEAST_VALUES * known;
  }

  private static int molds(int[][] rows) {
    return (int) Arrays.stream(rows).filter(its -> its.length > 0).count();
  }

  private static Proposal proposal(
      BaseRecord base,
      AlarmBudget budget,
      double[] offset,
      boolean[] normal,
      int known,
      SeriesProposal of) {
    double[] residual = new double[base.size()];
    double[] z = new double[base.size()];
    int n = 0;
    for (int i = 0; i < residual.length; i++) {
      residual[i] = base.value()[i] - offset[base.mold()[i]] - of.center();
      if (normal[i]) {
        z[n++] = residual[i] / of.sigma();
      }
    }
    NormalScores scores = NormalScores.of(Arrays.copyOf(z, n));
    // What befalls the wheel is in all of them: together they tell what one does.
    int points = Math.max(3, of.points() / known);
    SeriesProposal one =
        new SeriesProposal(
            0, of.sigma(), of.correlation(), 0, of.excess(), points, of.sigma(), new boolean[0]);
    AlarmBudget alone = budget.ofMoldsAlone();
    // Molds weigh the same, however many casts each has.
    double center = 0;
    for (int m = 0; m < offset.length; m++) {
      center += Double.isNaN(offset[m]) ? 0 : (offset[m] + of.center()) / known;
    }
    for (int m = 0; m < offset.length; m++) {
      offset[m] += of.center() - center;
    }
    SeriesLimits molds = one.limits(alone.moldShift(), 1.0 / points, one.logVarianceSd(), scores);
    double pourLimit =
        scores.isIdentity()
            ? one.pointLimit(alone.pour())
            : scores.limit(Math.max(1e-12, alone.pour())) * Math.sqrt(1 + 1.0 / points);
    SeriesLimits none = new SeriesLimits(center, of.sigma(), 0, 0, 1, NONE);
    LimitsInForce limits =
        new LimitsInForce(
            "proposed by this audit from its own record",
            base.turns(),
            center,
            offset,
            molds,
            pourLimit,
            none,
            pourLimit,
            of.movingRangeSigma(),
            List.of(),
            new SeriesLimits(0, 1, 0, 0, 1, NONE),
            Wear.NONE,
            true);
    boolean[] shifted = new boolean[normal.length];
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = !normal[i];
    }
    return new Proposal(
        limits, shifted, new boolean[normal.length], new boolean[base.turns()], residual);
  }

  private static double leastSigma(double[] values) {
    return values.length == 0 ? 0 : LEAST_SHARE * Robust.mad(values);
  }
}
