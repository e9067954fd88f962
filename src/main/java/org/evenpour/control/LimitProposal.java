package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.stats.Innovations;
import org.evenpour.stats.NormalScores;
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

  /** A longer log is judged by its first turns: a choice. */
  public static final int BASE_TURNS = 1500;

  private static final int LEAST_MOLDS = 4;
  private static final int ROUNDS = 3;
  private static final double FAR = 4;
  private static final double MOST_CORRELATION = 0.95;

  /**
   * √n times the s.d. with which an estimated distribution of n pours moves the logarithm of the
   * variance of long sums: a choice. With 1, 2 and 3 the rates measured on wheels differed by less
   * than their errors.
   */
  private static final double SHAPE_ERROR = 1;

  /** The smallest sigma of the scatter's logarithm that is believed. */
  private static final double LEAST_SPREAD = 0.05;

  private final BaseRecord base;
  private final double[] offset;
  private final double[][] level;
  private final boolean[] normal;
  private final int[][] rowsOfMold;
  private final double[] residual;
  private final int[][] near;
  private NormalScores scores = NormalScores.IDENTITY;
  private double pourSigma;
  private double pourCorrelation;
  private long pourPairs;
  private boolean[] turnIsNormal = new boolean[0];

  /**
   * Limits, and what they do not rest on.
   *
   * @param shifted whether each anode of the base was cast while its mold stood off its normal
   *     state
   * @param far whether each anode of the base was a pour far from what was expected of it
   * @param turnShifted whether in each turn the wheel was out of its normal state
   * @param residual what is left of each anode when its mold and turn are taken off; NaN where they
   *     are not known
   */
  @SuppressWarnings("ArrayRecordComponent") // made once, never changed
  public record Proposal(
      LimitsInForce limits,
      boolean[] shifted,
      boolean[] far,
      boolean[] turnShifted,
      double[] residual) {}

  private LimitProposal(BaseRecord base) {
    this.base = base;
    offset = new double[base.molds()];
    level = new double[base.sides()][base.turns()];
    near = new int[base.sides()][base.turns()];
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
   * @param budget how many false alarms each chart may raise
   */
  public static @Nullable LimitsInForce propose(BaseRecord base, AlarmBudget budget) {
    Proposal proposal = inFull(base, budget);
    return proposal == null ? null : proposal.limits();
  }

  /** As {@link #propose}, with what was left out. */
  public static @Nullable Proposal inFull(BaseRecord base, AlarmBudget budget) {
    if (base.turnsWithValues() < LEAST_TURNS
        || base.size() < LEAST_MOLDS * base.turnsWithValues()) {
      return null;
    }
    LimitProposal proposal = new LimitProposal(base);
    proposal.polish();
    proposal.scale();
    // Faults pull offsets along, and wrong offsets hide faults: each is taken anew by the other.
    for (int round = 0; round < ROUNDS && proposal.pourSigma > 0; round++) {
      proposal.findNormalStates();
      proposal.refine();
      proposal.scale();
      // Not before the first faults are out: they would be taken for a tail.
      proposal.scores();
    }
    if (proposal.pourSigma > 0) {
      proposal.center();
    }
    return proposal.pourSigma > 0 ? proposal.inFull(budget) : null;
  }

  private Proposal inFull(AlarmBudget budget) {
    LimitsInForce limits = limits(budget);
    boolean[] shifted = new boolean[base.size()];
    boolean[] far = new boolean[base.size()];
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = !normal[i];
      far[i] = normal[i] && Math.abs(residual[i]) > FAR * pourSigma;
    }
    boolean[] turnShifted = new boolean[base.turns()];
    for (int t = 0; t < turnShifted.length; t++) {
      turnShifted[t] = !turnIsNormal[t];
    }
    return new Proposal(limits, shifted, far, turnShifted, residual);
  }

  /** Why no limits can be proposed. */
  public enum Obstacle {
    /** Fewer than {@link #LEAST_TURNS} turns with values. */
    FEW_TURNS,
    /** Fewer than four molds a turn. */
    FEW_MOLDS,
    /** No ladle side ever has the three molds that make a level. */
    FEW_MOLDS_ON_SIDES,
    /** Every value is its mold's offset and its turn's level. */
    NO_SCATTER
  }

  /**
   * What stood in the way where {@link #propose} gave no limits.
   *
   * @param base from which no limits could be proposed
   */
  public static Obstacle obstacle(BaseRecord base) {
    if (base.turnsWithValues() < LEAST_TURNS) {
      return Obstacle.FEW_TURNS;
    }
    if (base.size() < LEAST_MOLDS * base.turnsWithValues()) {
      return Obstacle.FEW_MOLDS;
    }
    int[] anodes = new int[base.sides()];
    for (int i = 0; i < base.size(); i++) {
      if (i > 0 && base.turn()[i] != base.turn()[i - 1]) {
        Arrays.fill(anodes, 0);
      }
      if (++anodes[base.side()[i]] >= CharacteristicMonitor.LEAST_MOLDS) {
        return Obstacle.NO_SCATTER;
      }
    }
    return Obstacle.FEW_MOLDS_ON_SIDES;
  }

  /** The places of each key, in order. */
  static int[][] rowsBy(int[] key, int keys) {
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
    // Medians first: there is no sigma yet by which a fault could be left out.
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
          // A mold that is off would move the level, and so every other mold the other way.
          if (base.side()[i] == s && normal[i] && !Double.isNaN(deviation)) {
            some[n++] = deviation;
          }
        }
        if (n >= CharacteristicMonitor.LEAST_MOLDS) {
          level[s][base.turn()[from]] = nearMean(Arrays.copyOf(some, n));
          near[s][base.turn()[from]] = n;
        }
      }
      from = to;
    }
  }

  private double nearMean(double[] x) {
    double median = Robust.median(x);
    // Before the first sigma nothing can be called far.
    if (pourSigma == 0) {
      return median;
    }
    double sum = 0;
    int n = 0;
    for (double v : x) {
      // A mean, for a median of normal values has some half more variance.
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
    // Sums of what hangs together scatter more by this, and would be cut as steps.
    double inflation = (1 + pourCorrelation) / (1 - pourCorrelation);
    for (int[] rows : rowsOfMold) {
      int[] known = Arrays.stream(rows).filter(i -> !Double.isNaN(residual[i])).toArray();
      double[] z = new double[known.length];
      for (int i = 0; i < z.length; i++) {
        z[i] = score(known[i]);
      }
      boolean[] state = StableStretch.of(z, inflation, StableStretch.AMONG_MANY);
      for (int i = 0; i < z.length; i++) {
        normal[known[i]] = state[i];
      }
    }
  }

  /** The distribution of pours in their normal state, whatever it is. */
  private void scores() {
    if (!(pourSigma > 0)) {
      return; // hardly anything scatters, and there will be no limits
    }
    boolean[] scattered = scatteredTurns();
    double[] z = new double[residual.length];
    int n = 0;
    for (int i = 0; i < residual.length; i++) {
      if (normal[i] && !scattered[base.turn()[i]] && !Double.isNaN(residual[i])) {
        z[n++] = standardized(i);
      }
    }
    scores = NormalScores.of(Arrays.copyOf(z, n));
    // Sums are of scores, and so their φ must be that of scores.
    pourCorrelation = moldCorrelation();
  }

  /** Turns that scatter more than the normal state: their pours are no part of its tails. */
  private boolean[] scatteredTurns() {
    double[] spread = scatter();
    SeriesProposal usual = SeriesProposal.of(spread, 0, LEAST_SPREAD);
    boolean[] scattered = new boolean[spread.length];
    int known = 0;
    for (int t = 0; t < spread.length; t++) {
      if (!Double.isNaN(spread[t])) {
        double z = (spread[t] - usual.center()) / usual.sigma();
        // A stretch off its normal state may also scatter less; only what lies high goes.
        scattered[t] = z > CharacteristicMonitor.CLEARLY || !usual.normal()[known] && z > 1;
        known++;
      }
    }
    return scattered;
  }

  /**
   * A residual of the base over its own s.d.: the level that is taken off holds a part of the pour
   * itself, and so does the offset.
   */
  private double standardized(int i) {
    double inflation = (1 + pourCorrelation) / (1 - pourCorrelation);
    double kept =
        1
            - 1.0 / Math.max(2, near[base.side()[i]][base.turn()[i]])
            - inflation / Math.max(1, rowsOfMold[base.mold()[i]].length);
    // With few casts and φ near its bound the difference is no variance any more: a floor.
    return residual[i] / (pourSigma * Math.sqrt(Math.max(0.25, kept)));
  }

  private double score(int i) {
    return scores.of(standardized(i));
  }

  /**
   * Offsets where the mean score of each mold is zero: the estimate by normal scores (Hodges and
   * Lehmann 1963), which is as good as the mean for normal pours and better for all others.
   */
  private void center() {
    double slope = scores.slope();
    // Of normal pours the mean score is the mean, which the offsets have already.
    for (int round = 0; round < ROUNDS && !scores.isIdentity(); round++) {
      for (int m = 0; m < offset.length; m++) {
        double sum = 0;
        int n = 0;
        for (int i : rowsOfMold[m]) {
          if (normal[i] && !Double.isNaN(residual[i])) {
            sum += score(i);
            n++;
          }
        }
        // A step of Newton: a shift by δ moves the mean score by slope·δ/σ.
        offset[m] += n == 0 ? 0 : pourSigma * sum / n / slope;
      }
      levels();
      residuals();
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
        // With fewer than half near by the start was wrong, and their mean would keep it so.
        offset[m] +=
            2 * n < normalIn(rowsOfMold[m]) ? medianInNormalState(m) : n == 0 ? 0 : sum / n;
      }
      levels();
    }
  }

  /**
   * How far a mold stands off its offset in its normal state. A median over a record in whose
   * middle it stepped lies between both states, where a large step leaves no value near.
   */
  private double medianInNormalState(int m) {
    double off =
        medianOver(
            rowsOfMold[m], i -> normal[i] ? base.value()[i] - offset[m] - levelOf(i) : Double.NaN);
    return Double.isNaN(off) ? 0 : off;
  }

  private int normalIn(int[] rows) {
    int n = 0;
    for (int i : rows) {
      n += normal[i] && !Double.isNaN(levelOf(i)) && !Double.isNaN(base.value()[i]) ? 1 : 0;
    }
    return n;
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
    // Within three sigma: faults that are not found yet must not widen it.
    double sigma = SeriesProposal.trimmedSd(Arrays.copyOf(some, n));
    // Levels and offsets each take a degree of freedom, less one: a constant fits in either.
    int levels = 0;
    for (double[] side : level) {
      for (double each : side) {
        levels += Double.isNaN(each) ? 0 : 1;
      }
    }
    pourCorrelation = moldCorrelation();
    // An autocorrelated series gives more of its scatter away to its mean.
    double offsets = (offset.length - 1.0) * (1 + pourCorrelation) / (1 - pourCorrelation);
    // Where φ is high and casts are few the formula has nothing left, or less: a floor.
    double freedom = Math.max(0.5, 1 - (levels + offsets) / n);
    pourSigma = sigma / Math.sqrt(freedom);
  }

  /**
   * Lag-1 autocorrelation of the residuals of each mold, the variance of the offsets put back,
   * which were estimated from the same residuals.
   */
  private double moldCorrelation() {
    double products = 0;
    double squares = 0;
    pourPairs = 0;
    for (int[] rows : rowsOfMold) {
      double b = rows.length == 0 ? Double.NaN : score(rows[0]);
      for (int k = 1; k < rows.length; k++) {
        double a = b;
        b = score(rows[k]);
        // One wild pour makes the squares large and no product: φ would come out too small.
        boolean both = Math.abs(a) <= FAR && Math.abs(b) <= FAR;
        if (normal[rows[k - 1]] && normal[rows[k]] && both) {
          products += a * b;
          // Both ends of each pair, so that φ cannot pass 1: |ab| is at most (a² + b²)/2.
          squares += 0.5 * (a * a + b * b);
          pourPairs++;
        }
      }
    }
    if (pourPairs == 0 || squares == 0) {
      return 0;
    }
    // What an offset took from the squares depends on φ, which it changes: by turns.
    double perMold = (double) pourPairs / base.molds();
    double phi = 0;
    for (int i = 0; i < 2 * ROUNDS; i++) {
      // At most half, or a few casts with a high φ would put back ever more.
      double ofMean = Math.min(0.5, (1 + phi) / (1 - phi) / perMold) * squares;
      phi = Math.max(0, Math.min(MOST_CORRELATION, (products + ofMean) / (squares + ofMean)));
    }
    return phi;
  }

  private LimitsInForce limits(AlarmBudget budget) {
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
    // Offsets and levels share a constant; with mean 0 molds weigh the same in the center.
    double shift = meanOf(offset);
    double[] centered = new double[offset.length];
    for (int m = 0; m < centered.length; m++) {
      centered[m] = offset[m] - shift;
    }
    for (int t = 0; t < effect.length; t++) {
      effect[t] += shift;
    }
    // Pours that are correlated from turn to turn are so in their mean: only the rest is white.
    double white = pourSigma * pourSigma * (1 - pourCorrelation);
    double ofMean = white / base.molds();
    // Means scatter at least as their pours make them; half of that leaves room for chance.
    SeriesProposal wheel = SeriesProposal.of(effect, ofMean, Math.sqrt(ofMean) / 2);
    turnIsNormal = new boolean[base.turns()];
    int known = 0;
    for (int t = 0; t < effect.length; t++) {
      turnIsNormal[t] = Double.isNaN(effect[t]) || wheel.normal()[known++];
    }
    List<SeriesLimits> sides = new ArrayList<>();
    int charts = AlarmBudget.sideCharts(base.sides());
    for (int c = 0; c < charts; c++) {
      double[] contrast = new double[base.turns()];
      for (int t = 0; t < contrast.length; t++) {
        double[] levels = new double[base.sides()];
        for (int s = 0; s < levels.length; s++) {
          levels[s] = level[s][t];
        }
        contrast[t] = CharacteristicMonitor.contrast(levels, c, charts);
      }
      double ofContrast = white * contrastVariance(c, charts);
      sides.add(
          SeriesProposal.of(contrast, ofContrast, Math.sqrt(ofContrast) / 2)
              .limits(budget.sideShift()));
    }
    double perMold = pourPairs / (double) Math.max(1, base.molds());
    double gain = Innovations.gain(pourCorrelation, 0);
    return new LimitsInForce(
        "proposed by this audit from its own record",
        base.turns(),
        wheel.center(),
        centered,
        new SeriesProposal(
                0,
                pourSigma,
                pourCorrelation,
                0,
                pourExcess(),
                (int) perMold,
                pourSigma,
                new boolean[0])
            .limits(
                budget.moldShift(),
                // In the innovations' unit: φ widens an offset's error and shrinks a shift alike.
                1 / Math.max(1, perMold),
                Math.hypot(
                    2 / (1 - pourCorrelation) / Math.sqrt(Math.max(1, pourPairs)), shapeError()),
                scores),
        scores.isIdentity()
            ? SeriesProposal.pointLimit(
                budget.pour(),
                1 / (gain * gain) / Math.max(1, perMold),
                1 / Math.sqrt(2.0 * Math.max(1, pourPairs)))
            // A rate of 0 has no limit.
            : scores.limit(Math.max(1e-12, budget.pour()))
                * Math.sqrt(1 + 1 / (gain * gain) / Math.max(1, perMold)),
        wheel.limits(budget.wheelShift()),
        wheel.pointLimit(budget.wheelPoint()),
        wheel.movingRangeSigma(),
        sides,
        // Upward only: half the alarms of a chart that looks both ways.
        SeriesProposal.of(scatter(), 0, LEAST_SPREAD).limits(2 * budget.spreadShift()),
        WearProposal.of(
            base.turn(),
            rowsOfMold,
            i -> normal[i] ? score(i) : Double.NaN,
            // A small departure by σ/slope moves the mean score by one.
            pourSigma / scores.slope(),
            pourSigma,
            1 / (gain * gain),
            base.turns()),
        false);
  }

  /**
   * What not knowing the distribution adds to the s.d. of the logarithm of the variance of long
   * sums.
   */
  private double shapeError() {
    return scores.isIdentity() ? 0 : SHAPE_ERROR / Math.sqrt(scores.size());
  }

  /** What a first-order model leaves of a longer memory in the molds' residuals. */
  private double pourExcess() {
    Excess excess = new Excess(base.turns());
    for (int[] rows : rowsOfMold) {
      Innovations innovations = new Innovations(pourCorrelation, 0);
      // Sums across a gap, or from one mold to the next, tell of no memory.
      excess.breakHere();
      for (int i : rows) {
        double z = score(i);
        if (normal[i] && Math.abs(z) <= FAR) {
          excess.add(innovations.accept(z));
        } else {
          innovations.skip(1);
          excess.breakHere();
        }
      }
    }
    return excess.ratio();
  }

  /** Variance of a side's mean of pours less the mean of the others', for pours of variance 1. */
  private double contrastVariance(int chart, int charts) {
    int s = charts == 1 ? 1 : chart;
    double[] pours = new double[base.sides()];
    for (int each : base.side()) {
      pours[each]++;
    }
    double own = 0;
    double others = 0;
    for (int i = 0; i < pours.length; i++) {
      // One over its pours a turn, on average; finite for a side that never pours.
      double ofMean = base.turns() / Math.max(1, pours[i]);
      if (i == s) {
        own = ofMean;
      } else {
        others += ofMean;
      }
    }
    return own + others / Math.pow(base.sides() - 1.0, 2);
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
