package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.stats.Autocorrelation;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.Robust;
import org.jspecify.annotations.Nullable;

/**
 * Proposes limits from a base period that may itself hold faults.
 *
 * <p>Model: {@code x = center + offset(mold) + level(turn, side) + pour}. Offsets and levels are
 * first taken by medians in turn about (median polish, Tukey 1977), then by means over the
 * stretches in which each mold was in its normal state ({@link StableStretch}), far values left
 * out. The pour sigma is the s.d. of the residuals within three sigma, made consistent for the
 * normal distribution and for the degrees of freedom that offsets and levels take. The turn
 * effects' sigma is their overall s.d. in the normal state and not the moving range's, which
 * autocorrelation shrinks.
 */
public final class LimitProposal {
  /** Turns that make a base period worth having. */
  public static final int LEAST_TURNS = 8;

  /** A longer log is judged by its first turns. */
  public static final int BASE_TURNS = 1500;

  private static final int LEAST_MOLDS = 4;
  private static final int ROUNDS = 3;
  private static final double FAR = 4;
  private static final double TRIM = 3;

  /** Variance of a standard normal cut at ±3: 1 − 2·3·φ(3)/(2Φ(3) − 1). */
  private static final double TRIMMED_VARIANCE = 0.973_337;

  private final BaseRecord base;
  private final double[] offset;
  private final double[][] level;
  private final boolean[] normal;
  private final int[][] rowsOfMold;
  private final double[] residual;
  private double pourSigma;
  private double pourCorrelation;

  private LimitProposal(BaseRecord base) {
    this.base = base;
    offset = new double[base.molds()];
    level = new double[base.sides()][base.turns()];
    normal = new boolean[base.size()];
    Arrays.fill(normal, true);
    residual = new double[base.size()];
    rowsOfMold = rowsBy(base.mold(), base.molds());
  }

  /**
   * Limits from a base period; null where its molds and turns cannot be told apart: fewer than four
   * molds a turn, or too few turns, or no scatter at all.
   *
   * @param base the base period
   * @param detection how far each chart may stray
   */
  public static @Nullable LimitsInForce propose(BaseRecord base, Detection detection) {
    if (base.turnsWithValues() < LEAST_TURNS
        || base.size() < LEAST_MOLDS * base.turnsWithValues()) {
      return null;
    }
    LimitProposal proposal = new LimitProposal(base);
    proposal.polish();
    proposal.scale();
    for (int round = 0; round < ROUNDS && proposal.pourSigma > 0; round++) {
      proposal.findNormalStates();
      proposal.refine();
      proposal.scale();
    }
    return proposal.pourSigma > 0 ? proposal.limits(detection) : null;
  }

  private static int[][] rowsBy(int[] key, int keys) {
    int[] count = new int[keys];
    for (int k : key) {
      count[k]++;
    }
    int[][] rows = new int[keys][];
    for (int k = 0; k < keys; k++) {
      rows[k] = new int[count[k]];
    }
    Arrays.fill(count, 0);
    for (int i = 0; i < key.length; i++) {
      rows[key[i]][count[key[i]]++] = i;
    }
    return rows;
  }

  private void polish() {
    double all = Robust.median(base.value());
    for (int m = 0; m < offset.length; m++) {
      offset[m] = medianOver(rowsOfMold[m], i -> base.value()[i]) - all;
    }
    for (int round = 0; round < ROUNDS; round++) {
      levels();
      for (int m = 0; m < offset.length; m++) {
        offset[m] = medianOver(rowsOfMold[m], i -> base.value()[i] - levelOf(i));
      }
    }
    levels();
  }

  private double levelOf(int i) {
    return level[base.side()[i]][base.turn()[i]];
  }

  private double medianOver(int[] rows, java.util.function.IntToDoubleFunction f) {
    double[] some = new double[rows.length];
    int n = 0;
    for (int i : rows) {
      double v = f.applyAsDouble(i);
      if (!Double.isNaN(v)) {
        some[n++] = v;
      }
    }
    return n == 0 ? Double.NaN : Robust.median(Arrays.copyOf(some, n));
  }

  /**
   * The level of each turn and side: the mean of the deviations near their median, over molds in
   * their normal state.
   */
  private void levels() {
    for (double[] side : level) {
      Arrays.fill(side, Double.NaN);
    }
    int from = 0;
    double[] some = new double[64];
    while (from < base.size()) {
      int to = from;
      while (to < base.size() && base.turn()[to] == base.turn()[from]) {
        to++;
      }
      if (some.length < to - from) {
        some = new double[to - from];
      }
      for (int s = 0; s < base.sides(); s++) {
        int n = 0;
        for (int i = from; i < to; i++) {
          double deviation = base.value()[i] - offset[base.mold()[i]];
          if (base.side()[i] == s && normal[i] && !Double.isNaN(deviation)) {
            some[n++] = deviation;
          }
        }
        if (n >= CharacteristicMonitor.LEAST_MOLDS) {
          level[s][base.turn()[from]] = nearMean(Arrays.copyOf(some, n));
        }
      }
      from = to;
    }
  }

  private double nearMean(double[] x) {
    double median = Robust.median(x);
    if (pourSigma == 0) {
      return median;
    }
    double sum = 0;
    int n = 0;
    for (double v : x) {
      if (Math.abs(v - median) <= FAR * pourSigma) {
        sum += v;
        n++;
      }
    }
    return n == 0 ? median : sum / n;
  }

  private void residuals() {
    for (int i = 0; i < residual.length; i++) {
      residual[i] = base.value()[i] - offset[base.mold()[i]] - levelOf(i);
    }
  }

  private void findNormalStates() {
    double inflation = LimitsInForce.inflation(pourCorrelation);
    for (int[] rows : rowsOfMold) {
      int[] known = Arrays.stream(rows).filter(i -> !Double.isNaN(residual[i])).toArray();
      double[] z = new double[known.length];
      for (int i = 0; i < z.length; i++) {
        z[i] = residual[known[i]] / pourSigma;
      }
      boolean[] state = StableStretch.of(z, inflation, StableStretch.AMONG_MANY);
      for (int i = 0; i < z.length; i++) {
        normal[known[i]] = state[i];
      }
    }
  }

  private void refine() {
    for (int round = 0; round < ROUNDS; round++) {
      for (int m = 0; m < offset.length; m++) {
        double sum = 0;
        int n = 0;
        for (int i : rowsOfMold[m]) {
          double r = base.value()[i] - offset[m] - levelOf(i);
          if (normal[i] && Math.abs(r) <= FAR * pourSigma) {
            sum += r;
            n++;
          }
        }
        offset[m] += n == 0 ? 0 : sum / n;
      }
      levels();
    }
  }

  /**
   * Pour sigma and correlation from the residuals of normal states; first by the median absolute
   * deviation.
   */
  private void scale() {
    residuals();
    double[] some = new double[residual.length];
    int n = 0;
    for (int i = 0; i < residual.length; i++) {
      if (normal[i] && !Double.isNaN(residual[i])) {
        some[n++] = residual[i];
      }
    }
    if (n == 0) {
      pourSigma = 0;
      return;
    }
    double sigma = trimmedSd(Arrays.copyOf(some, n));
    int levels = 0;
    for (double[] side : level) {
      for (double each : side) {
        levels += Double.isNaN(each) ? 0 : 1;
      }
    }
    double freedom = Math.max(0.5, 1 - (levels + offset.length - 1.0) / n);
    pourSigma = sigma / Math.sqrt(freedom);
    pourCorrelation = moldCorrelation();
  }

  private double moldCorrelation() {
    double products = 0;
    double squares = 0;
    long pairs = 0;
    for (int[] rows : rowsOfMold) {
      for (int k = 1; k < rows.length; k++) {
        double a = residual[rows[k - 1]];
        double b = residual[rows[k]];
        boolean near = Math.abs(a) <= FAR * pourSigma && Math.abs(b) <= FAR * pourSigma;
        if (normal[rows[k - 1]] && normal[rows[k]] && near) {
          products += a * b;
          squares += 0.5 * (a * a + b * b);
          pairs++;
        }
      }
    }
    return pairs == 0 || squares == 0 ? 0 : products / squares;
  }

  private LimitsInForce limits(Detection detection) {
    double[] effect = new double[base.turns()];
    for (int t = 0; t < effect.length; t++) {
      double sum = 0;
      int n = 0;
      for (double[] side : level) {
        if (!Double.isNaN(side[t])) {
          sum += side[t];
          n++;
        }
      }
      effect[t] = n == 0 ? Double.NaN : sum / n;
    }
    double shift = meanOf(offset);
    double[] centered = new double[offset.length];
    for (int m = 0; m < centered.length; m++) {
      centered[m] = offset[m] - shift;
    }
    for (int t = 0; t < effect.length; t++) {
      effect[t] += shift;
    }
    SeriesLimits wheel = series(effect, pourSigma / Math.sqrt(base.molds()));
    List<SeriesLimits> sides = new ArrayList<>();
    int charts = Detection.sideCharts(base.sides());
    for (int c = 0; c < charts; c++) {
      double[] contrast = new double[base.turns()];
      for (int t = 0; t < contrast.length; t++) {
        double[] levels = new double[base.sides()];
        for (int s = 0; s < levels.length; s++) {
          levels[s] = level[s][t];
        }
        contrast[t] = CharacteristicMonitor.contrast(levels, c, charts);
      }
      sides.add(series(contrast, 2 * pourSigma / Math.sqrt(base.molds())));
    }
    return new LimitsInForce(
        "proposed by this audit from its own record",
        base.turns(),
        wheel.center(),
        centered,
        pourSigma,
        pourCorrelation,
        wheel,
        sides,
        series(scatter(), 0.1),
        detection);
  }

  /** The scatter within each turn; NaN where too few molds make one. */
  private double[] scatter() {
    double[] spread = new double[base.turns()];
    Arrays.fill(spread, Double.NaN);
    double[] sizes = new double[base.size()];
    int from = 0;
    while (from < base.size()) {
      int to = from;
      int n = 0;
      while (to < base.size() && base.turn()[to] == base.turn()[from]) {
        if (normal[to] && !Double.isNaN(residual[to])) {
          sizes[n++] = Math.abs(residual[to]);
        }
        to++;
      }
      spread[base.turn()[from]] = Scatter.of(sizes, n, pourSigma);
      from = to;
    }
    return spread;
  }

  /**
   * Center, sigma and correlation of a series in its normal state.
   *
   * @param x one per turn, NaN = missing
   * @param least the sigma that the scatter of pours alone would give: never less than half of it
   */
  private static SeriesLimits series(double[] x, double least) {
    double[] known = Arrays.stream(x).filter(v -> !Double.isNaN(v)).toArray();
    if (known.length < 2) {
      return new SeriesLimits(known.length == 0 ? 0 : known[0], least, 0, least);
    }
    // Differences are blind to a level that steps: Var(x₂−x₀)/Var(x₁−x₀) = 1 + φ for a first-order
    // autoregression.
    double one = trimmedSd(differences(known, 1));
    double two = trimmedSd(differences(known, 2));
    double fromDifferences = one > 0 ? Math.max(0, Math.min(0.9, two * two / (one * one) - 1)) : 0;
    double phi = fromDifferences;
    double sigma = Math.max(one / Math.sqrt(2 * (1 - phi)), least / 2);
    boolean[] normal = new boolean[0];
    double center = 0;
    for (int round = 0; round < ROUNDS; round++) {
      double[] z = new double[known.length];
      for (int i = 0; i < z.length; i++) {
        z[i] = known[i] / sigma;
      }
      normal =
          StableStretch.of(z, LimitsInForce.inflation(fromDifferences), StableStretch.AMONG_FEW);
      center = meanWhere(known, normal);
      double squares = 0;
      int within = 0;
      for (int i = 0; i < known.length; i++) {
        double d = known[i] - center;
        if (normal[i] && Math.abs(d) <= TRIM * sigma) {
          squares += d * d;
          within++;
        }
      }
      sigma =
          within < 2
              ? sigma
              : Math.max(least / 2, Math.sqrt(squares / (within - 1) / TRIMMED_VARIANCE));
      phi = unbiased(Autocorrelation.lag1(masked(known, normal)), within);
    }
    MovingRange ranges = new MovingRange();
    for (int i = 0; i < known.length; i++) {
      if (normal[i]) {
        ranges.add(known[i]);
      } else {
        ranges.breakHere();
      }
    }
    double classic = ranges.count() == 0 ? sigma : ranges.sigma();
    return new SeriesLimits(center, sigma, phi, classic);
  }

  /** The s.d. of values about 0 within three sigma, consistent for the normal distribution. */
  private static double trimmedSd(double[] x) {
    double sigma = Robust.mad(x);
    for (int round = 0; round < ROUNDS; round++) {
      double squares = 0;
      int within = 0;
      for (double v : x) {
        if (Math.abs(v) <= TRIM * sigma) {
          squares += v * v;
          within++;
        }
      }
      sigma = within == 0 ? 0 : Math.sqrt(squares / within / TRIMMED_VARIANCE);
    }
    return sigma;
  }

  private static double[] differences(double[] x, int lag) {
    double[] d = new double[Math.max(0, x.length - lag)];
    for (int i = 0; i < d.length; i++) {
      d[i] = x[i + lag] - x[i];
    }
    return d;
  }

  /** Lag-1 autocorrelation of n values is biased by about −(1 + 3φ)/n (Kendall 1954). */
  private static double unbiased(double phi, int n) {
    return Double.isNaN(phi)
        ? 0
        : Math.max(0, Math.min(0.95, phi + (1 + 3 * phi) / Math.max(8, n)));
  }

  private static double[] masked(double[] x, boolean[] keep) {
    double[] y = x.clone();
    for (int i = 0; i < y.length; i++) {
      y[i] = keep[i] ? y[i] : Double.NaN;
    }
    return y;
  }

  private static double meanWhere(double[] x, boolean[] keep) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < x.length; i++) {
      if (keep[i]) {
        sum += x[i];
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  private static double meanOf(double[] x) {
    double sum = 0;
    int n = 0;
    for (double v : x) {
      if (!Double.isNaN(v)) {
        sum += v;
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }
}
