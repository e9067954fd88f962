package org.evenpour.stats;

/**
 * What is new in each value of an autocorrelated series: one-step-ahead prediction errors, which
 * are independent and have s.d. 1 where the model holds.
 *
 * <p>Model: {@code z = b + e} with {@code b} a first-order autoregression of coefficient φ and
 * {@code e} white, together of variance 1, of which {@code e} has the share {@code noise}: the
 * level of a process seen through the mean of a few measurements. Predictions by the Kalman filter
 * (Kalman 1960; Box, Jenkins and Reinsel), which starts from the stationary state. Far values are
 * clipped before they are learned from, so that one wild value is not expected to come again.
 *
 * <p>Constant memory and time. Owned by one thread.
 */
public final class Innovations {
  /** No innovation counts for more: one wild pour is no shift. */
  private static final double CLIP = 4;

  private final double phi;
  private final double noise;
  private double predicted;
  private double variance;

  // What follows from the variance, which soon stays what it is where no value is missing.
  private double known = Double.NaN;
  private double scale;
  private double weight;

  /**
   * @param phi coefficient, 0 to below 1
   * @param noise share of the variance that is white, 0 to below 1
   */
  public Innovations(double phi, double noise) {
    this.phi = phi;
    this.noise = noise;
    restart();
  }

  /** Forgets all values. */
  public void restart() {
    predicted = 0;
    variance = 1 - noise;
  }

  /** The next value's innovation; s.d. 1, clipped at ±4. */
  public double accept(double z) {
    if (variance != known) {
      known = variance;
      double total = variance + noise;
      scale = Math.sqrt(total);
      weight = variance / total;
    }
    double u = Math.max(-CLIP, Math.min(CLIP, (z - predicted) / scale));
    // By the clipped value: a wild one is not expected to come again.
    predicted += weight * u * scale;
    variance *= 1 - weight;
    skip(1);
    return u;
  }

  /**
   * Lets values pass unseen.
   *
   * @param values how many are missing before the next one
   */
  public void skip(int values) {
    double fade = values == 1 ? phi : Math.pow(phi, values);
    predicted *= fade;
    // What is not seen goes back to the stationary state, as far as φ forgets.
    variance = fade * fade * variance + (1 - fade * fade) * (1 - noise);
  }

  /**
   * What is left, in the long run, of a lasting shift by 1 in the innovations: its square over 1 is
   * what autocorrelation makes of the evidence in each value; {@code √((1 − φ)/(1 + φ))} without
   * white noise.
   */
  public static double gain(double phi, double noise) {
    double total = total(phi, noise);
    // In the long run the prediction follows a shift up to φ·weight/(1 − φ(1 − weight)) of it;
    // what is left of it comes anew in each innovation.
    double weight = 1 - noise / total;
    return (1 - phi) / ((1 - phi * (1 - weight)) * Math.sqrt(total));
  }

  /**
   * How many times as large a step shows in its first innovation as in the later ones: {@code 1/(1
   * − φ)} without white noise.
   */
  public static double first(double phi, double noise) {
    return 1 / Math.sqrt(total(phi, noise)) / gain(phi, noise);
  }

  /** Variance of the prediction errors in the long run. */
  private static double total(double phi, double noise) {
    double variance = 1 - noise;
    // Each step leaves (φ(1 − weight))² of the distance: slow only for a φ near 1 under much noise.
    for (int i = 0; i < 500; i++) {
      double left = variance * noise / (variance + noise);
      variance = phi * phi * left + (1 - phi * phi) * (1 - noise);
    }
    return variance + noise;
  }
}
