package org.evenpour.control;

/**
 * The offset of a mold that drifts along a straight line: the line of its base period, carried on
 * and made sharper by each later anode (recursive least squares; Plackett 1950). A line that is
 * known from a whole base and held against it is no forgetting: what departs from it is found as
 * late as some twentieth more.
 *
 * <p>Owned by the monitor's thread.
 */
final class DriftingOffset {
  /** An anode further off than this many sigma teaches no more than one so far off. */
  private static final double FAR = 3;

  private final double sigma;
  private final double noise;
  private double level;
  private double perTurn;
  private double levelVariance;
  private double covariance;
  private double slopeVariance;

  /**
   * @param limits with wear
   * @param mold index
   * @param fromMiddle turns from the middle of the base to the first one that is judged
   */
  DriftingOffset(LimitsInForce limits, int mold, double fromMiddle) {
    double gain = limits.pour().gain();
    sigma = limits.pour().sigma();
    // Autocorrelated pours teach as many fewer.
    noise = 1 / (gain * gain);
    perTurn = limits.wear().perTurn().get(mold);
    slopeVariance = limits.wear().variance();
    // About the middle of its base a line's level and slope err independently.
    level = limits.offsets()[mold] + perTurn * fromMiddle;
    levelVariance =
        noise / Math.max(1, limits.baseTurns()) + slopeVariance * fromMiddle * fromMiddle;
    covariance = slopeVariance * fromMiddle;
  }

  double offset() {
    return level;
  }

  void pass(int turns) {
    level += perTurn * turns;
    // In this order: the level's doubt grows by the covariance as it was.
    levelVariance += turns * (2 * covariance + turns * slopeVariance);
    covariance += turns * slopeVariance;
  }

  /** An anode stood off the level by this much. */
  void learn(double residual) {
    double seen = Math.max(-FAR * sigma, Math.min(FAR * sigma, residual));
    double total = levelVariance + noise;
    double toLevel = levelVariance / total;
    double toSlope = covariance / total;
    level += toLevel * seen;
    perTurn += toSlope * seen;
    // In this order: all three take the covariance from before this anode.
    slopeVariance -= toSlope * covariance;
    covariance -= toLevel * covariance;
    levelVariance -= toLevel * levelVariance;
  }
}
