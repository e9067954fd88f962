package org.evenpour.stats;

/**
 * Shares of batches that differ by more than chance from one to the next: the standardized shares
 * are themselves charted as individuals, and their moving-range sigma widens the limits (Laney
 * 2002, Improved control charts for attributes, Quality Engineering 14, 531–537).
 *
 * @param share of all batches together
 * @param sigmaZ of the standardized shares, by their mean moving range over d₂ = 1.128; 1 where
 *     chance alone makes them differ; NaN for fewer than two batches
 */
public record DispersedShares(double share, double sigmaZ) {

  /** d₂ of two values: 2/√π. */
  private static final double D2 = 2 / Math.sqrt(Math.PI);

  /**
   * Of batches in the order of time; those without trials are passed over.
   *
   * @param successes of each batch
   * @param trials of each batch
   */
  public static DispersedShares of(int[] successes, int[] trials) {
    double good = 0;
    double all = 0;
    for (int i = 0; i < trials.length; i++) {
      good += successes[i];
      all += trials[i];
    }
    double share = good / all;
    double before = Double.NaN;
    double ranges = 0;
    int n = 0;
    for (int i = 0; i < trials.length; i++) {
      if (trials[i] == 0) {
        continue;
      }
      double z = (successes[i] - trials[i] * share) / Math.sqrt(trials[i] * share * (1 - share));
      if (!Double.isNaN(before)) {
        ranges += Math.abs(z - before);
        n++;
      }
      before = z;
    }
    return new DispersedShares(share, n == 0 ? Double.NaN : ranges / n / D2);
  }

  /** Standard deviation of the share of a batch of so many trials. */
  public double sigma(int trials) {
    return sigmaZ * Math.sqrt(share * (1 - share) / trials);
  }

  /** Upper limit of three sigma, at most 1. */
  public double upper(int trials) {
    return Math.min(1, share + 3 * sigma(trials));
  }

  /** Lower limit of three sigma, at least 0. */
  public double lower(int trials) {
    return Math.max(0, share - 3 * sigma(trials));
  }

  /**
   * Variance of the batches' shares over what chance makes of them. At least 1: shares that differ
   * by less than chance are no reason to be sharper.
   */
  public double dispersion() {
    return Double.isNaN(sigmaZ) ? 1 : Math.max(1, sigmaZ * sigmaZ);
  }

  /**
   * By how much the batches' own shares vary, as a squared coefficient of variation: Var z = 1 +
   * κ·mean.
   *
   * @param mean successes that a batch has on average
   */
  public double kappa(double mean) {
    return (dispersion() - 1) / mean;
  }
}
