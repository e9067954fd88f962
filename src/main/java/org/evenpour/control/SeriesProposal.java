package org.evenpour.control;

import java.util.Arrays;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.Innovations;
import org.evenpour.stats.LevelSteps;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.Normal;
import org.evenpour.stats.NormalScores;
import org.evenpour.stats.Robust;

/**
 * Center, sigma and correlation of one series in time in its normal state, and how far its chart
 * may stray for a given rate of false alarms.
 *
 * <p>The series is an autoregression of first order seen through white noise whose variance is
 * known, because each point is the mean of a known number of pours. Autocovariances about a mean
 * that was itself estimated are too small by the variance of that mean; this is put back. Steps of
 * the level are taken out first, judged by what they leave ({@link LevelSteps}): a step reads as
 * autocorrelation, and widened limits would hide it.
 *
 * @param center mean over the normal state
 * @param sigma s.d. over the normal state
 * @param correlation φ
 * @param noise share of the variance that is white; 1 = it is nothing but the known noise
 * @param excess by how much the variance of long sums of its innovations exceeds what independence
 *     allows; 1 unless clearly more
 * @param points how many made the estimates
 * @param movingRangeSigma s.d. by the moving range
 * @param normal whether each value that is known lies in the normal state
 */
@SuppressWarnings("ArrayRecordComponent") // made once, never changed
record SeriesProposal(
    double center,
    double sigma,
    double correlation,
    double noise,
    double excess,
    int points,
    double movingRangeSigma,
    boolean[] normal) {
  private static final int ROUNDS = 3;
  private static final double TRIM = 3;
  private static final double MOST_CORRELATION = 0.95;

  /** Lag-1 autocorrelations below this over √n may be chance. */
  private static final double CLEAR = 2;

  /** φ from a short series scatters more than its asymptotic error says: by simulation. */
  private static final double SHORT = 1.2;

  /** No more than this share of the variance is taken to be white noise: a choice. */
  private static final double MOST_NOISE = 0.5;

  /**
   * The first sum's reference value is at least this many standard errors of the center, or they
   * would swamp it; but no more than {@link #ENOUGH}.
   */
  private static final double LEAST_REFERENCE = 3;

  private static final double ENOUGH = 0.25;

  /** Instead of a share: there is nothing but noise. */
  private static final double ALL_NOISE = 1;

  /**
   * A variance within this many standard errors of the known noise's is that noise's. A choice: by
   * simulation the chart of a series that is nothing but noise then keeps to its rate, instead of
   * half of it.
   */
  private static final double MORE = 1.5;

  /** The sums aim at shifts of one and of two sigma of the series. */
  private static final double SHIFT = 1;

  /** Variance of a standard normal cut at ±3: 1 − 2·3·φ(3)/(2Φ(3) − 1). */
  private static final double TRIMMED_VARIANCE = 0.973_337;

  /**
   * Estimates.
   *
   * @param x one per turn, NaN = missing
   * @param noiseVariance of the scatter of pours in each point; 0 = not known
   * @param least the smallest sigma that is believed
   */
  static SeriesProposal of(double[] x, double noiseVariance, double least) {
    double[] known = Arrays.stream(x).filter(v -> !Double.isNaN(v)).toArray();
    if (known.length < 3) {
      return new SeriesProposal(
          known.length == 0 ? 0 : known[0],
          least,
          0,
          0,
          1,
          Math.max(1, known.length),
          least,
          all(known.length));
    }
    LevelSteps steps = LevelSteps.of(known, noiseVariance);
    double phi = bounded(steps.correlation());
    double variance = Math.max(steps.variance(), square(least));
    double white = Math.min(noiseVariance, MOST_NOISE * variance);
    double gain = Innovations.gain(phi, share(white, variance));
    // 1/gain² is what φ multiplies the variance of long sums by, white noise allowed for.
    boolean[] normal = StableStretch.of(known, steps, 1 / (gain * gain));
    double center = 0;
    int points = known.length;
    for (int round = 0; round < ROUNDS; round++) {
      double sigma = Math.sqrt(variance);
      center = meanWhere(known, normal);
      double zero = 0;
      double lagged = 0;
      int pairs = 0;
      points = 0;
      for (int i = 0; i < known.length; i++) {
        double d = known[i] - center;
        if (normal[i] && Math.abs(d) <= TRIM * sigma) {
          zero += d * d;
          points++;
          // A value beside a stretch that was cut out has no neighbor.
          double before = i == 0 || !normal[i - 1] ? Double.NaN : known[i - 1] - center;
          if (Math.abs(before) <= TRIM * sigma) {
            lagged += d * before;
            pairs++;
          }
        }
      }
      if (points < 3 || pairs < 3) {
        break;
      }
      // What was cut at three sigma is put back, as a normal distribution has it.
      zero /= points * TRIMMED_VARIANCE;
      lagged /= pairs * TRIMMED_VARIANCE;
      double ofMean = 0;
      for (int i = 0; i < 2 * ROUNDS; i++) {
        variance = Math.max(zero + ofMean, square(least));
        // Where the series is hardly correlated, nobody can tell white noise from what is not.
        boolean isCorrelated = lagged + ofMean > CLEAR / Math.sqrt(points) * variance;
        white = isCorrelated ? Math.min(noiseVariance, MOST_NOISE * variance) : 0;
        // The rest of the bias of a lag-1 autocorrelation, −2φ/n (Kendall 1954).
        phi = bounded((lagged + ofMean) / (variance - white) * (1 + 2.0 / points));
        ofMean = ((variance - white) * (1 + phi) / (1 - phi) + white) / points;
        // At most a quarter, a choice: the more is put back, the larger φ, and the more again.
        ofMean = Math.min(ofMean, variance / 4);
      }
    }
    // Then φ is not estimated, and no doubt about it widens the limits.
    boolean nothingElse = isNothingBut(noiseVariance, variance, phi, points);
    if (nothingElse) {
      phi = 0;
      white = 0;
    }
    MovingRange ranges = new MovingRange();
    for (int i = 0; i < known.length; i++) {
      if (normal[i]) {
        ranges.add(known[i]);
      } else {
        // A range across a cut would hold the step.
        ranges.breakHere();
      }
    }
    double sigma = Math.sqrt(variance);
    return new SeriesProposal(
        center,
        sigma,
        phi,
        nothingElse ? ALL_NOISE : share(white, variance),
        excess(known, normal, center, sigma, phi, share(white, variance)),
        points,
        ranges.count() == 0 ? sigma : ranges.sigma(),
        normal);
  }

  /**
   * Whether the known noise explains the whole series: neither is it clearly correlated, nor does
   * it scatter clearly more.
   */
  private static boolean isNothingBut(
      double noiseVariance, double variance, double phi, int points) {
    // √(2/n) is the relative error of a variance of n normal values.
    return variance <= noiseVariance * (1 + MORE * Math.sqrt(2.0 / points))
        && phi <= CLEAR / Math.sqrt(points);
  }

  private static boolean[] all(int count) {
    boolean[] all = new boolean[count];
    Arrays.fill(all, true);
    return all;
  }

  /**
   * The chart that raises this many false alarms.
   *
   * @param rate for each point, high and low together; for a chart that looks one way only, twice
   *     its own rate
   */
  SeriesLimits limits(double rate) {
    return limits(rate, 1.0 / points, logVarianceSd(), NormalScores.IDENTITY);
  }

  /**
   * S.d. of the logarithm of the estimated variance of long sums, over their length: {@code S = v +
   * P(1 + φ)/(1 − φ)} with the noise v known, P = γ₀ − v and φ = γ₁/P; by the delta method from the
   * errors of γ₀ and γ₁ (Bartlett 1946). Known noise tells part of S: with half of the variance
   * noise, half of the doubt.
   */
  double logVarianceSd() {
    if (noise == ALL_NOISE) {
      return Math.sqrt(2.0 / points);
    }
    // In units of the series' variance: γ₀ = 1, and γ of lag k is own·φ^k.
    double own = 1 - noise;
    double first = own * correlation;
    double squared = square(correlation);
    // Bartlett's sums over all lags, in closed form: the squares from lag 1 on, both ways.
    double tail = 2 * square(first) / (1 - squared);
    double varianceOfZero = 2 * (1 + tail);
    double around = square(first) + 2 * first * correlation + tail * squared;
    double varianceOfFirst = 1 + tail + around;
    double covariance = 2 * (2 * first + tail * correlation);
    double less = square(1 - correlation);
    // Slopes of P(P + γ₁)/(P − γ₁), which is P(1 + φ)/(1 − φ), by P and by γ₁.
    double byZero = (1 - 2 * correlation - squared) / less;
    double byFirst = 2 / less;
    double sums = noise + own * (1 + correlation) / (1 - correlation);
    double variance =
        (square(byZero) * varianceOfZero
                + square(byFirst) * varianceOfFirst
                + 2 * byZero * byFirst * covariance)
            / square(sums);
    // Two is what the scale alone brings; the rest is doubt about φ.
    return Math.sqrt((2 + square(SHORT) * Math.max(0, variance - 2)) / points);
  }

  /**
   * The chart that raises this many false alarms.
   *
   * @param centerVariance of the estimated center in the innovations' unit
   * @param logVarianceSd s.d. of the logarithm of the estimated variance of long sums
   * @param scores what makes the standardized values normal
   */
  SeriesLimits limits(
      double rate, double centerVariance, double logVarianceSd, NormalScores scores) {
    double least = Math.min(ENOUGH, LEAST_REFERENCE * Math.sqrt(centerVariance));
    double gain = Innovations.gain(correlation, noise) / Math.sqrt(excess);
    double k = Math.max(least, 0.5 * SHIFT * gain);
    return new SeriesLimits(
        center,
        sigma,
        correlation,
        noise == ALL_NOISE ? 0 : noise,
        excess,
        CusumPair.of(k, rate, centerVariance, logVarianceSd),
        scores);
  }

  /**
   * How many sigma a single point may stray for this rate of false alarms, allowing for the errors
   * of center and sigma.
   */
  double pointLimit(double rate) {
    double phi = correlation * (1 - noise);
    double ofCenter = square(1 / Innovations.gain(correlation, noise)) / points;
    // Squares of an autoregression are worth n(1 − φ²)/(1 + φ²) values (Bartlett 1946).
    double ofSigma = Math.sqrt((1 + phi * phi) / (1 - phi * phi) / (2.0 * points));
    return pointLimit(rate, ofCenter, ofSigma);
  }

  /**
   * How many sigma a single value may stray.
   *
   * @param rate for each value, high and low together
   * @param centerVariance of the estimated center, in units of the values' variance
   * @param sigmaError relative s.d. of the estimated sigma
   */
  static double pointLimit(double rate, double centerVariance, double sigmaError) {
    // A rate of 0 has no quantile.
    double bounded = Math.min(0.02, Math.max(1e-12, rate));
    double exact = -Normal.quantile(bounded / 2);
    // To first order in the errors' variances: the tail's mean over them grows by half its second
    // derivative times the variance; widening by this much takes it back.
    double wide = exact * Math.sqrt(1 + centerVariance);
    return wide + 0.5 * square(sigmaError) * exact * (exact * exact - 2);
  }

  private static double excess(
      double[] x, boolean[] normal, double center, double sigma, double phi, double noise) {
    Innovations innovations = new Innovations(phi, noise);
    Excess excess = new Excess(x.length);
    for (int i = 0; i < x.length; i++) {
      if (normal[i]) {
        excess.add(innovations.accept((x[i] - center) / sigma));
      } else {
        innovations.skip(1);
        excess.breakHere();
      }
    }
    return excess.ratio();
  }

  private static double share(double white, double variance) {
    return Math.min(MOST_NOISE, white / variance);
  }

  private static double bounded(double phi) {
    return Double.isNaN(phi) ? 0 : Math.max(0, Math.min(MOST_CORRELATION, phi));
  }

  private static double square(double x) {
    return x * x;
  }

  /** The s.d. of values about 0 within three sigma, consistent for the normal distribution. */
  static double trimmedSd(double[] x) {
    // From the median deviation, which faults in less than half of the values cannot carry off.
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
}
