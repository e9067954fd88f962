package org.evenpour.simulate;

/**
 * How one pour scatters about its mold and turn, with mean 0 and s.d. 1: the skew and the tails
 * that a ladle gives.
 *
 * <pre>
 * pour = a·normal + r·(E − 1) + mishap − its mean
 * </pre>
 *
 * <p>E is exponential with mean 1: after the cut-off some metal always runs on (r above 0: skewed
 * to the heavy side), or stays behind on a lip that sculls over (r below 0: skewed to the light
 * side). A mishap is a ladle that is cut late or short; it is rare, and exponential as well. a is
 * what is left to an s.d. of 1. That pours have such tails is common practice, no source; their
 * sizes are choices.
 *
 * @param runOn r, above −1 and below 1
 * @param mishaps share of pours that are cut late or short, from 0
 * @param mishapSize mean of a mishap, in s.d. of a pour
 * @param lateShare share of the mishaps that are late, and so heavy
 */
record PourScatter(double runOn, double mishaps, double mishapSize, double lateShare) {
  /** Normal pours. */
  static final PourScatter NORMAL = new PourScatter(0, 0, 0, 0.5);

  /** Refuses what leaves no room for the ordinary scatter. */
  PourScatter {
    double mean = mishaps * (2 * lateShare - 1) * mishapSize;
    if (!(runOn * runOn + 2 * mishaps * mishapSize * mishapSize - mean * mean < 1)) {
      throw new IllegalArgumentException("what runs on and what goes wrong are all of a pour");
    }
  }

  private double mishapMean() {
    return mishaps * (2 * lateShare - 1) * mishapSize;
  }

  /** Skewness, from the third moments of the parts. */
  double skewness() {
    double m = mishapMean();
    double second = 2 * mishaps * mishapSize * mishapSize;
    double third = 6 * mishaps * (2 * lateShare - 1) * mishapSize * mishapSize * mishapSize;
    return 2 * runOn * runOn * runOn + third - 3 * m * second + 2 * m * m * m;
  }

  /**
   * One pour. Normal pours draw nothing but the normal number.
   *
   * @param usual gives the normal number
   * @param ladle gives the rest
   */
  double draw(Noise usual, Noise ladle) {
    double normal = usual.normal(1);
    if (runOn == 0 && mishaps == 0) {
      return normal;
    }
    double mean = mishapMean();
    double variance = runOn * runOn + 2 * mishaps * mishapSize * mishapSize - mean * mean;
    double pour =
        StrictMath.sqrt(1 - variance) * normal + runOn * (ladle.exponential(1) - 1) - mean;
    // Drawn for every pour, so that the next one's luck does not hang on this one's.
    boolean isMishap = ladle.happens(mishaps);
    boolean isLate = ladle.happens(lateShare);
    double size = ladle.exponential(mishapSize);
    return isMishap ? pour + (isLate ? size : -size) : pour;
  }
}
