package org.evenpour.control;

import java.util.List;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.Innovations;
import org.evenpour.stats.NormalScores;
import org.evenpour.stats.RunLength;

/**
 * What one characteristic of one wheel is judged by: fixed while it is in force.
 *
 * @param source where it comes from, in words
 * @param baseTurns how many turns it rests on
 * @param center mean of the wheel, molds weighing the same
 * @param offsets of the molds from the center, by mold index; NaN where a mold was not in the base
 *     period
 * @param pour from pour to pour, molds and turns taken out: center 0, sigma, and how far a mold's
 *     chart may stray
 * @param pourLimit a single pour whose normal score is beyond this is a signal
 * @param wheel the wheel's chart of turn effects
 * @param wheelPointLimit a single turn whose normal score is beyond this is a signal
 * @param movingRangeSigma the turn effects' s.d. by the moving range, for the classic chart
 * @param sides one chart for each contrast of a ladle side against the others; one alone for two
 *     sides
 * @param spread the chart of scatter within a turn
 * @param wear how molds drift
 * @param ownPast whether each mold is held against its own past alone, because turns have too few
 *     values to tell molds from turns: then only the charts of molds and pours are drawn
 */
@SuppressWarnings("ArrayRecordComponent") // frozen by its one maker
public record LimitsInForce(
    String source,
    int baseTurns,
    double center,
    double[] offsets,
    SeriesLimits pour,
    double pourLimit,
    SeriesLimits wheel,
    double wheelPointLimit,
    double movingRangeSigma,
    List<SeriesLimits> sides,
    SeriesLimits spread,
    Wear wear,
    boolean ownPast) {
  /** A rate that is known to within this factor is told by a base: a choice. */
  private static final double TOLD = 4;

  /** Molds that keep their level. */
  public LimitsInForce(
      String source,
      int baseTurns,
      double center,
      double[] offsets,
      SeriesLimits pour,
      double pourLimit,
      SeriesLimits wheel,
      double wheelPointLimit,
      double movingRangeSigma,
      List<SeriesLimits> sides,
      SeriesLimits spread) {
    this(
        source,
        baseTurns,
        center,
        offsets,
        pour,
        pourLimit,
        wheel,
        wheelPointLimit,
        movingRangeSigma,
        sides,
        spread,
        Wear.NONE,
        false);
  }

  /**
   * How far a single pour may stand off what is expected of it, in the unit.
   *
   * @param direction +1 above, −1 below
   */
  public double pourReach(int direction) {
    return pourAt(direction * pourLimit);
  }

  /** How far a pour of some normal score stands off what is expected of it, in the unit. */
  public double pourAt(double score) {
    return pour.scores().value(score) * pour.sigma();
  }

  /** Whether the base has too few pours to tell their distribution. */
  public boolean takesPoursAsNormal() {
    return pour.scores().isIdentity();
  }

  /** How many pours their distribution rests on; 0 where they are taken to be normal. */
  public int poursInDistribution() {
    return pour.scores().size();
  }

  /** One pour in so many is to signal falsely. */
  public double pourRarity() {
    return 1 / pour.scores().expectedRate(pourLimit);
  }

  /**
   * One pour in so many is the rarest that the base tells of, to within a factor of four; infinite
   * where pours are taken to be normal.
   */
  public double rarestTold() {
    return 1 / pour.scores().leastRate(Math.log(TOLD));
  }

  /**
   * The slow drift of molds against one another in the base period, as wear makes it. It is part of
   * their level: what departs from it is a signal. Offsets are those of the middle of the base.
   *
   * @param perTurn by mold index, in the unit; empty where molds keep their level
   * @param variance of each of them, in units of the pour variance
   */
  public record Wear(List<Double> perTurn, double variance) {
    /** Molds keep their level. */
    public static final Wear NONE = new Wear(List.of(), 0);

    /** Copies the list. */
    public Wear {
      perTurn = List.copyOf(perTurn);
    }
  }

  /** The same for the turns of the base itself, about whose middle offsets stand. */
  public LimitsInForce withoutWear() {
    return wear.perTurn().isEmpty()
        ? this
        : new LimitsInForce(
            source,
            baseTurns,
            center,
            offsets,
            pour,
            pourLimit,
            wheel,
            wheelPointLimit,
            movingRangeSigma,
            sides,
            spread);
  }

  /**
   * A series in time that may be autocorrelated, and the chart of it.
   *
   * @param center its mean
   * @param sigma its s.d., by overall scatter in the base period
   * @param correlation φ of the first-order autoregression in it
   * @param noise share of its variance that is white, on top of the autoregression
   * @param excess by how much long sums of its innovations scatter more than the model says, as a
   *     ratio of variances; innovations are charted over its square root
   * @param decision how far the sums of its innovations may go
   * @param scores what makes its standardized values normal, before any sum
   */
  public record SeriesLimits(
      double center,
      double sigma,
      double correlation,
      double noise,
      double excess,
      CusumPair decision,
      NormalScores scores) {

    /** A series whose values are taken to be normal. */
    public SeriesLimits(
        double center,
        double sigma,
        double correlation,
        double noise,
        double excess,
        CusumPair decision) {
      this(center, sigma, correlation, noise, excess, decision, NormalScores.IDENTITY);
    }

    /** What a lasting shift by one sigma leaves in each charted innovation. */
    public double gain() {
      return Innovations.gain(correlation, noise) / Math.sqrt(excess);
    }

    /**
     * How many points a lasting shift takes to be found, on average, from rest: by the quicker one
     * of the two sums, so that it is rather a little sooner.
     *
     * @param shift in the series' unit
     */
    public double turnsToFind(double shift) {
      double seen = Math.abs(shift) / sigma * scores.slope() * gain();
      return Math.min(
          RunLength.cusumOneSided(decision.k(), decision.h(), seen),
          RunLength.cusumOneSided(decision.k2(), decision.h2(), seen));
    }
  }
}
