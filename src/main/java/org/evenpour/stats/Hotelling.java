package org.evenpour.stats;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * Hotelling's T² of several characteristics together: the distance of a point from the mean of a
 * base period in units of its covariance (divisor count − 1). Not changed once made.
 */
public final class Hotelling {
  private final int count;
  private final double[] mean;
  private final double[][] precision;

  private Hotelling(int count, double[] mean, double[][] precision) {
    this.count = count;
    this.mean = mean;
    this.precision = precision;
  }

  /**
   * From a base period, one row a point.
   *
   * @throws IllegalArgumentException if points are too few, or a characteristic doesn't vary or
   *     follows from the others
   */
  public static Hotelling of(double[][] points) {
    int m = points.length;
    int p = m == 0 ? 0 : points[0].length;
    if (m <= p + 1) {
      throw new IllegalArgumentException(
          m + " points are too few for a T² of " + p + " characteristics");
    }
    double[] mean = new double[p];
    for (int i = 0; i < p; i++) {
      Moments moments = new Moments();
      for (double[] point : points) {
        moments.add(point[i]);
      }
      mean[i] = moments.mean();
    }
    double[][] covariance = new double[p][p];
    for (double[] point : points) {
      for (int i = 0; i < p; i++) {
        for (int j = 0; j < p; j++) {
          covariance[i][j] += (point[i] - mean[i]) * (point[j] - mean[j]) / (m - 1);
        }
      }
    }
    // scaled to correlations, so that the test for dependence has no units
    double[] scale = new double[p];
    for (int i = 0; i < p; i++) {
      scale[i] = Math.sqrt(covariance[i][i]);
    }
    double[][] correlation = new double[p][p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        correlation[i][j] = i == j ? 1 : covariance[i][j] / (scale[i] * scale[j]);
        if (Double.isNaN(correlation[i][j])
            || (i != j && Math.abs(correlation[i][j]) > 1 - 1e-12)) {
          throw new IllegalArgumentException(
              "characteristics " + (i + 1) + " and " + (j + 1) + " don't vary independently");
        }
      }
    }
    double[][] inverse =
        new CholeskyDecomposition(new Array2DRowRealMatrix(correlation, false), 1e-10, 1e-12)
            .getSolver()
            .getInverse()
            .getData();
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        inverse[i][j] /= scale[i] * scale[j];
      }
    }
    return new Hotelling(m, mean, inverse);
  }

  /** (x − mean)ᵀ S⁻¹ (x − mean). */
  public double tSquared(double... x) {
    double sum = 0;
    for (int i = 0; i < mean.length; i++) {
      for (int j = 0; j < mean.length; j++) {
        sum += (x[i] - mean[i]) * precision[i][j] * (x[j] - mean[j]);
      }
    }
    return sum;
  }

  /** The limit for points of the base period itself. */
  public double phaseOneLimit(double alpha) {
    return phaseOneLimit(mean.length, count, alpha);
  }

  /** The limit for later points. */
  public double phaseTwoLimit(double alpha) {
    return phaseTwoLimit(mean.length, count, alpha);
  }

  /**
   * (m−1)²/m · Beta quantile(1 − α; p/2, (m−p−1)/2): a point of the base period is part of its own
   * mean and covariance (Tracy, Young and Mason 1992).
   */
  public static double phaseOneLimit(int p, int m, double alpha) {
    double f = FRatio.quantile(1 - alpha, p, m - p - 1.0);
    double ratio = p * f / (m - p - 1.0);
    return (m - 1.0) * (m - 1.0) / m * (ratio / (1 + ratio));
  }

  /** p(m+1)(m−1)/(m² − mp) · F quantile(1 − α; p, m − p) (NIST/SEMATECH e-Handbook 6.5.4.3). */
  public static double phaseTwoLimit(int p, int m, double alpha) {
    double scale = p * (m + 1.0) * (m - 1.0) / ((double) m * m - (double) m * p);
    return scale * FRatio.quantile(1 - alpha, p, (double) m - p);
  }
}
