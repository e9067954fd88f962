package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.evenpour.casting.Specification;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.CapabilityInFull.Part;
import org.evenpour.findings.CapabilityInFull.Source;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.stats.Moments;
import org.evenpour.stats.Normal;
import org.evenpour.stats.OneWayAnova;
import org.evenpour.stats.Robust;
import org.evenpour.stats.TwoWay;

/**
 * Where the spread of a characteristic comes from: molds, ladle sides, turns and pours, and what
 * would be left without each.
 */
final class SpreadParts {
  /** A mold belongs to a side that poured so many of its anodes: a choice. */
  private static final double MOSTLY = 0.9;

  /** Without a smaller share nothing would change that anybody could see: a choice. */
  private static final double LEAST = 0.01;

  private final WheelRecord record;
  private final TurnIndex turns;
  private final int[] mold;
  private final double[] value;
  private final TwoWay twoWay;
  private final double[] moldEffects;

  private SpreadParts(
      WheelRecord record, TurnIndex turns, int[] mold, double[] value, TwoWay twoWay) {
    this.record = record;
    this.turns = turns;
    this.mold = mold;
    this.value = value;
    this.twoWay = twoWay;
    moldEffects = twoWay.columnEffects();
  }

  /**
   * The parts of the variance, the largest first.
   *
   * <p>Mold, turn and pour by the two-way analysis. A side has a level and wanders. Its level is in
   * the mold offsets where each mold has a side of its own: the one-way component of offsets
   * between sides, times (S − 1)/S for S sides that are all there are, is taken out of the molds'
   * part. Its wandering is in the residuals: with g the mean residual of a side in a turn,
   * (Σn·g²/(cells − turns) − within)/(Σ(n_t − Σn²/n_t)/(cells − turns)), and what it adds to the
   * turns (Σn²/n_t² of it) is taken out of theirs. Parts below 0 are given as 0.
   */
  static List<Part> of(
      WheelRecord record, TurnIndex turns, int[] mold, double[] value, TwoWay twoWay) {
    if (!twoWay.isDefined() || twoWay.rowsUsed() < 2 || twoWay.columnsUsed() < 2) {
      return List.of();
    }
    double[] variances = new SpreadParts(record, turns, mold, value, twoWay).variances();
    double total = 0;
    for (double each : variances) {
      total += each;
    }
    List<Part> parts = new ArrayList<>();
    if (!(total > 0)) {
      return parts;
    }
    for (Source source : Source.values()) {
      double variance = variances[source.ordinal()];
      if (source != Source.SIDE || record.sides().size() > 1) {
        parts.add(new Part(source, variance, Math.sqrt(variance), variance / total));
      }
    }
    parts.sort(Comparator.comparingDouble(Part::share).reversed());
    return parts;
  }

  private double[] variances() {
    double[] variances = new double[Source.values().length];
    double molds = twoWay.componentColumns();
    double turnwise = twoWay.componentRows();
    double pour = twoWay.componentResidual();
    double level = 0;
    double wander = 0;
    if (record.sides().size() > 1) {
      // A part of the molds' component: by its own error it could come out larger.
      level = Math.min(molds, sideLevel());
      Wander its = wander();
      wander = its.variance();
      pour = Double.isNaN(its.within()) ? pour : its.within();
      turnwise = Math.max(0, turnwise - wander * its.inTurns());
    }
    variances[Source.MOLD.ordinal()] = molds - level;
    variances[Source.SIDE.ordinal()] = level + wander;
    variances[Source.TURN.ordinal()] = turnwise;
    variances[Source.POUR.ordinal()] = pour;
    return variances;
  }

  private double sideLevel() {
    int molds = moldEffects.length;
    int sides = record.sides().size();
    long[][] poured = new long[molds][sides];
    for (int i = 0; i < value.length; i++) {
      int side = record.side().get(i);
      if (side >= 0 && !Double.isNaN(value[i])) {
        poured[mold[i]][side]++;
      }
    }
    OneWayAnova bySide = new OneWayAnova(sides);
    for (int m = 0; m < molds; m++) {
      long all = 0;
      int most = 0;
      for (int s = 0; s < sides; s++) {
        all += poured[m][s];
        most = poured[m][s] > poured[m][most] ? s : most;
      }
      // The offset of a mold that several sides pour holds no one side's level.
      if (all > 0 && poured[m][most] < MOSTLY * all) {
        return 0;
      }
      if (all > 0 && !Double.isNaN(moldEffects[m])) {
        bySide.add(most, moldEffects[m]);
      }
    }
    double between = bySide.result().componentBetween();
    // These sides are all there are: their variance is about their own mean, over S.
    return between > 0 ? between * (sides - 1) / sides : 0;
  }

  /**
   * How sides wander against one another.
   *
   * @param within residual variance without it
   * @param inTurns how much of its variance is in the turn means
   */
  private record Wander(double variance, double within, double inTurns) {}

  private Wander wander() {
    int sides = record.sides().size();
    double[] rowEffects = twoWay.rowEffects();
    double[] sum = new double[turns.turns() * sides];
    int[] count = new int[sum.length];
    double squares = 0;
    for (int i = 0; i < value.length; i++) {
      int side = record.side().get(i);
      if (side < 0 || Double.isNaN(value[i])) {
        continue;
      }
      double e = value[i] - twoWay.center() - rowEffects[turns.ofRow()[i]] - moldEffects[mold[i]];
      sum[turns.ofRow()[i] * sides + side] += e;
      count[turns.ofRow()[i] * sides + side]++;
      squares += e * e;
    }
    double between = 0;
    double divisor = 0;
    double share = 0;
    long cells = 0;
    long used = 0;
    for (int t = 0; t < turns.turns(); t++) {
      double n = 0;
      double n2 = 0;
      for (int s = 0; s < sides; s++) {
        int c = count[t * sides + s];
        if (c > 0) {
          cells++;
          between += sum[t * sides + s] * sum[t * sides + s] / c;
        }
        n += c;
        n2 += (double) c * c;
      }
      if (n > 0) {
        used++;
        divisor += n - n2 / n;
        share += n2 / n / n;
      }
    }
    // Turn means are out of the residuals: a turn that c sides poured tells c − 1.
    long betweenDf = cells - used;
    long withinDf = twoWay.residualDf() - betweenDf;
    if (betweenDf < 1 || withinDf < 1) {
      return new Wander(0, Double.NaN, 0);
    }
    double within = Math.max(0, squares - between) / withinDf;
    double variance = Math.max(0, (between - betweenDf * within) / divisor);
    return variance == 0
        ? new Wander(0, Double.NaN, 0)
        : new Wander(variance, within, share / used);
  }

  /**
   * What would be left: the overall variance less a part's share of it. Without mold offsets the
   * mean is the median mold's.
   */
  static List<WhatIf> whatIf(
      List<Part> parts, Moments overall, TwoWay twoWay, Specification specification) {
    List<WhatIf> whatIfs = new ArrayList<>();
    double now = ppk(overall.mean(), overall.sd(), specification);
    if (!specification.hasLimits() || !Double.isFinite(now)) {
      return whatIfs;
    }
    for (Part part : parts) {
      double sd = overall.sd() * Math.sqrt(1 - without(parts, part.source()));
      double mean =
          part.source() == Source.MOLD
              ? twoWay.center() + Robust.median(known(twoWay.columnEffects()))
              : overall.mean();
      double ppk = ppk(mean, sd, specification);
      if (part.source() != Source.POUR && part.share() >= LEAST && Double.isFinite(ppk)) {
        whatIfs.add(
            new WhatIf(part.source(), mean, sd, ppk, now, outside(mean, sd, specification)));
      }
    }
    whatIfs.sort(Comparator.comparingDouble(WhatIf::ppk).reversed());
    return whatIfs;
  }

  private static double without(List<Part> parts, Source source) {
    return parts.stream().filter(p -> p.source() == source).mapToDouble(Part::share).sum();
  }

  private static double[] known(double[] effects) {
    return java.util.Arrays.stream(effects).filter(e -> !Double.isNaN(e)).toArray();
  }

  private static double ppk(double mean, double sd, Specification specification) {
    Double lower = specification.lower();
    Double upper = specification.upper();
    return Math.min(
            upper == null ? Double.POSITIVE_INFINITY : upper - mean,
            lower == null ? Double.POSITIVE_INFINITY : mean - lower)
        / (3 * sd);
  }

  private static double outside(double mean, double sd, Specification specification) {
    Double lower = specification.lower();
    Double upper = specification.upper();
    return (lower == null ? 0 : Normal.cdf((lower - mean) / sd))
        // Each tail by itself: 1 − Φ loses its digits far out.
        + (upper == null ? 0 : Normal.upperTail((upper - mean) / sd));
  }
}
