package org.evenpour.control;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.RealDistribution;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * How the pours of a made-up wheel scatter: a distribution of mean 0 and s.d. 1, drawn as a
 * function of normal scores, so that pours of any shape can be correlated and differ only in shape
 * where wheels have the same seed.
 *
 * <p>A score z becomes {@code Q(Φ(z))}, Q the distribution's quantile (Hipparchus, an
 * implementation that is not ours), read from a table by linear interpolation; beyond ±7.5 the
 * table's last slope goes on, which one pour in 10¹³ meets. The error of interpolation is below
 * 1e-4 of a sigma.
 */
final class PourShape {
  static final PourShape NORMAL = new PourShape(z -> z);

  private static final double REACH = 7.5;
  private static final int STEPS_PER_UNIT = 200;
  private static final NormalDistribution SCORES = new NormalDistribution(0, 1);

  private final double[] table;

  private PourShape(DoubleUnaryOperator ofScore) {
    table = new double[(int) (2 * REACH * STEPS_PER_UNIT) + 1];
    for (int i = 0; i < table.length; i++) {
      table[i] = ofScore.applyAsDouble((double) i / STEPS_PER_UNIT - REACH);
    }
  }

  /** Gamma of a shape, standardized: skewness 2/√shape; turned over where that is asked. */
  static PourShape gamma(double shape, boolean tailBelow) {
    GammaDistribution gamma = new GammaDistribution(shape, 1);
    int sign = tailBelow ? -1 : 1;
    return new PourShape(z -> sign * (quantile(gamma, sign * z) - shape) / Math.sqrt(shape));
  }

  /** Student's t, standardized to s.d. 1. */
  static PourShape student(double degreesOfFreedom) {
    TDistribution t = new TDistribution(degreesOfFreedom);
    double sd = Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2));
    // by the lower tail, where probabilities keep their digits
    return new PourShape(z -> -Math.signum(z) * quantile(t, -Math.abs(z)) / sd);
  }

  /**
   * Standard normal pours of which a share is wild, with {@code times} the s.d.; not standardized,
   * for it is the good pours that keep their scatter.
   */
  static PourShape wild(double share, double times) {
    return new PourShape(
        z -> {
          double below = SCORES.cumulativeProbability(-Math.abs(z));
          double from = -60 * times;
          double to = 0;
          for (int i = 0; i < 100; i++) {
            double x = (from + to) / 2;
            double at =
                (1 - share) * SCORES.cumulativeProbability(x)
                    + share * SCORES.cumulativeProbability(x / times);
            if (at < below) {
              from = x;
            } else {
              to = x;
            }
          }
          return -Math.signum(z) * to;
        });
  }

  private static double quantile(RealDistribution of, double score) {
    return of.inverseCumulativeProbability(SCORES.cumulativeProbability(score));
  }

  /** The pour that a normal score becomes. */
  double of(double score) {
    double place = (score + REACH) * STEPS_PER_UNIT;
    int i = Math.max(0, Math.min(table.length - 2, (int) Math.floor(place)));
    return table[i] + (place - i) * (table[i + 1] - table[i]);
  }
}
