package org.evenpour.stats;

import java.util.Arrays;
import java.util.Locale;

/**
 * A gauge study: every operator measures every part, each as often, and the spread is split into
 * parts, operators, their interaction and repeats (crossed two-way random effects).
 *
 * <p>With p parts, o operators, r repeats and mean squares P, O, I (interaction), E: repeatability
 * = E, interaction = (I − E)/r, operators = (O − I)/pr, parts = (P − I)/or; a component below 0 is
 * given as 0. Where the interaction is not significant it may be pooled with the repeats; then E is
 * the pooled mean square, in the place of I too. All values are variances.
 *
 * <p>95 % intervals: repeatability exact by χ²; the gauge and the total by the modified
 * large-sample method for sums (Graybill and Wang 1980), components by that for differences (Ting
 * and others 1990), as Burdick, Borror and Montgomery (2005) recommend for gauge studies. With two
 * or three operators those of the operators and the gauge reach very far up: that is what the data
 * say.
 *
 * @param parts mean square, with its degrees of freedom; its F is over the interaction
 * @param operators mean square
 * @param interaction mean square; of no degree of freedom where pooled
 * @param repeats mean square, pooled where the interaction was pooled
 * @param interactionP probability of an interaction as large by chance
 * @param repeatability variance of repeats by one operator on one part
 * @param reproducibility variance between operators, with the interaction
 * @param betweenOperators variance between operators alone
 * @param operatorByPart variance of the interaction; 0 where pooled
 * @param gauge repeatability + reproducibility
 * @param betweenParts variance of the parts themselves
 * @param total gauge + parts
 */
public record GaugeStudy(
    MeanSquare parts,
    MeanSquare operators,
    MeanSquare interaction,
    MeanSquare repeats,
    double interactionP,
    MeanSquare.Combination repeatability,
    double reproducibility,
    MeanSquare.Combination betweenOperators,
    MeanSquare.Combination operatorByPart,
    MeanSquare.Combination gauge,
    MeanSquare.Combination betweenParts,
    MeanSquare.Combination total) {
  private static final double CONFIDENCE = 0.95;

  /**
   * The interaction is pooled with the repeats where its p is above this; 0.25 is the usual choice
   * in pooling (Bancroft 1964).
   */
  public static final double POOL_ABOVE = 0.25;

  /** Pooled where p of the interaction is above {@link #POOL_ABOVE}. */
  public static GaugeStudy of(double[][][] measured) {
    GaugeStudy full = of(measured, false);
    return full.interactionP > POOL_ABOVE ? of(measured, true) : full;
  }

  /**
   * @param measured by part, operator, repeat: at least 2 of each, all there and finite
   * @param pool whether the interaction is pooled with the repeats
   */
  public static GaugeStudy of(double[][][] measured, boolean pool) {
    check(measured);
    int p = measured.length;
    int o = measured[0].length;
    int r = measured[0][0].length;
    Moments all = new Moments();
    Moments[] byPart = moments(p);
    Moments[] byOperator = moments(o);
    double cells = 0;
    double within = 0;
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < o; j++) {
        // Cell by cell: parts and operators drop out before anything is squared.
        Moments cell = Moments.of(measured[i][j]);
        within += cell.variance() * (r - 1);
        all.addAll(cell);
        byPart[i].addAll(cell);
        byOperator[j].addAll(cell);
      }
    }
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < o; j++) {
        // A second pass, for squares of sums less squares of sums would cancel.
        double left =
            Moments.of(measured[i][j]).mean()
                - byPart[i].mean()
                - byOperator[j].mean()
                + all.mean();
        cells += r * left * left;
      }
    }
    double dfI = (p - 1.0) * (o - 1.0);
    double dfE = p * o * (r - 1.0);
    MeanSquare ofParts = new MeanSquare(squares(byPart, all, o * r) / (p - 1), p - 1.0);
    MeanSquare ofOperators = new MeanSquare(squares(byOperator, all, p * r) / (o - 1), o - 1.0);
    MeanSquare ofCells = new MeanSquare(cells / dfI, dfI);
    MeanSquare ofRepeats = new MeanSquare(within / dfE, dfE);
    double chance = FRatio.upperTail(ofCells.value() / ofRepeats.value(), dfI, dfE);
    // An interaction that isn't there is one more estimate of the repeats.
    MeanSquare repeats =
        pool ? new MeanSquare((cells + within) / (dfI + dfE), dfI + dfE) : ofRepeats;
    MeanSquare interaction = pool ? new MeanSquare(Double.NaN, 0) : ofCells;
    return split(ofParts, ofOperators, interaction, repeats, chance, p, o, r);
  }

  private static GaugeStudy split(
      MeanSquare parts,
      MeanSquare operators,
      MeanSquare interaction,
      MeanSquare repeats,
      double chance,
      int p,
      int o,
      int r) {
    boolean pooled = interaction.df() == 0;
    // Parts and operators have the interaction in them as well: that is what they must exceed.
    MeanSquare base = pooled ? repeats : interaction;
    double pr = (double) p * r;
    double por = pr * o;
    MeanSquare.Combination repeatability = MeanSquare.exact(1, repeats, CONFIDENCE);
    MeanSquare.Combination byOperator = MeanSquare.difference(1 / pr, operators, base, CONFIDENCE);
    MeanSquare.Combination byCell =
        pooled
            ? new MeanSquare.Combination(0, 0, 0)
            : MeanSquare.difference(1.0 / r, interaction, repeats, CONFIDENCE);
    MeanSquare.Combination byPart =
        MeanSquare.difference(1.0 / (o * (double) r), parts, base, CONFIDENCE);
    // Written as one sum in which each mean square has a coefficient above 0: the method for sums
    // needs that.
    MeanSquare.Combination gauge =
        pooled
            ? sum(new double[] {1 / pr, 1 - 1 / pr}, operators, repeats)
            : sum(
                new double[] {1 / pr, (p - 1) / pr, (r - 1.0) / r},
                operators,
                interaction,
                repeats);
    MeanSquare.Combination total =
        pooled
            ? sum(new double[] {p / por, o / por, 1 - (p + o) / por}, parts, operators, repeats)
            : sum(
                new double[] {p / por, o / por, (p * (double) o - p - o) / por, (r - 1.0) / r},
                parts,
                operators,
                interaction,
                repeats);
    double reproducibility = byOperator.value() + byCell.value();
    // with components raised to 0 the sums are those of what is shown
    double gaugeValue = repeatability.value() + reproducibility;
    return new GaugeStudy(
        parts,
        operators,
        interaction,
        repeats,
        chance,
        repeatability,
        reproducibility,
        byOperator,
        byCell,
        new MeanSquare.Combination(gaugeValue, gauge.low(), gauge.high()),
        byPart,
        new MeanSquare.Combination(gaugeValue + byPart.value(), total.low(), total.high()));
  }

  /** The share of the observed spread that is the gauge's: σ gauge/σ total, 0 to 1. */
  public double shareOfSpread() {
    return Math.sqrt(gauge.value() / total.value());
  }

  /** The share of the tolerance that the gauge takes: 6·σ gauge/(upper − lower). */
  public double shareOfTolerance(double lower, double upper) {
    return 6 * Math.sqrt(gauge.value()) / (upper - lower);
  }

  private static MeanSquare.Combination sum(double[] c, MeanSquare... m) {
    return MeanSquare.sum(c, m, CONFIDENCE);
  }

  private static double squares(Moments[] groups, Moments all, double size) {
    double sum = 0;
    for (Moments g : groups) {
      double d = g.mean() - all.mean();
      sum += size * d * d;
    }
    return sum;
  }

  private static Moments[] moments(int n) {
    Moments[] moments = new Moments[n];
    Arrays.setAll(moments, i -> new Moments());
    return moments;
  }

  private static void check(double[][][] measured) {
    int o = measured.length == 0 ? 0 : measured[0].length;
    int r = o == 0 ? 0 : measured[0][0].length;
    boolean whole = measured.length > 1 && o > 1 && r > 1;
    for (double[][] part : measured) {
      whole &= part.length == o;
      for (double[] cell : part) {
        whole &= cell.length == r;
        for (double x : cell) {
          whole &= Math.abs(x) <= Double.MAX_VALUE;
        }
      }
    }
    if (!whole) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a gauge study needs at least 2 parts, 2 operators and 2 repeats, each part measured"
                  + " as often by each operator; the first cell has %d repeats of %d operators and"
                  + " %d parts",
              r,
              o,
              measured.length));
    }
  }
}
