package org.evenpour.stats;

/**
 * The standard normal distribution, accurate in both tails.
 *
 * <p>Φ by the rational Chebyshev approximations of erf and erfc of Cody (1969), about 1e-15
 * relative; the quantile by Wichura's AS 241 (1988), about 1e-15 relative, from 1e-300 on.
 *
 * <p>Own, as {@code OwnDistributionsTest} shows: Hipparchus loses three digits of Φ far out, and
 * its quantile is infinite below 1e-16.
 */
public final class Normal {
  private static final double[] A = {
    0.18577770618460315,
    3.1611237438705655,
    113.86415415105016,
    377.485237685302,
    3209.3775891384694
  };
  private static final double[] B = {
    1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171
  };
  private static final double[] C = {
    2.1531153547440383e-08, 0.5641884969886701, 8.883149794388377, 66.11919063714163,
    298.6351381974001, 881.952221241769, 1712.0476126340707, 2051.0783778260716,
    1230.3393547979972
  };
  private static final double[] D = {
    1,
    15.744926110709835,
    117.6939508913125,
    537.1811018620099,
    1621.3895745666903,
    3290.7992357334597,
    4362.619090143247,
    3439.3676741437216,
    1230.3393548037495
  };
  private static final double[] P = {
    0.016315387137302097,
    0.30532663496123236,
    0.36034489994980445,
    0.12578172611122926,
    0.016083785148742275,
    0.0006587491615298378
  };
  private static final double[] Q = {
    1,
    2.568520192289822,
    1.8729528499234673,
    0.5279051029514285,
    0.06051834131244132,
    0.0023352049762686918
  };
  private static final double[] CENTER_ABOVE = {
    2509.0809287301227, 33430.57558358813, 67265.7709270087,
    45921.95393154987, 13731.69376550946, 1971.5909503065513,
    133.14166789178438, 3.3871328727963665
  };
  private static final double[] CENTER_BELOW = {
    5226.495278852854, 28729.085735721943, 39307.89580009271,
    21213.794301586597, 5394.196021424751, 687.1870074920579,
    42.31333070160091, 1
  };
  private static final double[] NEAR_ABOVE = {
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506,
    1.2704582524523684, 3.6478483247632045, 5.769497221460691,
    4.630337846156546, 1.4234371107496835
  };
  private static final double[] NEAR_BELOW = {
    1.0507500716444169e-09, 0.0005475938084995345, 0.015198666563616457,
    0.14810397642748008, 0.6897673349851, 1.6763848301838038,
    2.053191626637759, 1
  };
  private static final double[] FAR_ABOVE = {
    2.0103343992922881e-07, 2.7115555687434876e-05, 0.0012426609473880784,
    0.026532189526576124, 0.29656057182850487, 1.7848265399172913,
    5.463784911164114, 6.657904643501103
  };
  private static final double[] FAR_BELOW = {
    2.0442631033899397e-15, 1.421511758316446e-07, 1.8463183175100548e-05,
    0.0007868691311456133, 0.014875361290850615, 0.1369298809227358,
    0.599832206555888, 1
  };
  private static final double SQRT_HALF = Math.sqrt(0.5);
  private static final double INVERSE_SQRT_PI = 0.5641895835477563;
  private static final double INVERSE_SQRT_TWO_PI = 0.3989422804014327;

  private Normal() {}

  /** φ(z). */
  public static double density(double z) {
    return INVERSE_SQRT_TWO_PI * Math.exp(-0.5 * z * z);
  }

  /** Φ(z), the probability of a value at most z. */
  public static double cdf(double z) {
    return upperTail(-z);
  }

  /** 1 − Φ(z), without loss far out. */
  public static double upperTail(double z) {
    double x = Math.abs(z) * SQRT_HALF;
    if (x <= 0.46875) {
      return 0.5 - 0.5 * Math.copySign(smallErf(x), z);
    }
    // The smaller tail is computed and the other one taken from 1, never the other way.
    double tail = 0.5 * gaussian(Math.abs(z)) * scaledErfc(x);
    return z > 0 ? tail : 1 - tail;
  }

  /** ln Φ(z), finite for every finite z. */
  public static double logCdf(double z) {
    double x = Math.abs(z) * SQRT_HALF;
    if (x <= 0.46875) {
      return Math.log(0.5 + 0.5 * Math.copySign(smallErf(x), z));
    }
    double scaled = 0.5 * scaledErfc(x);
    // A sum of logarithms, for the tail itself underflows from z = −38.6 on.
    return z < 0 ? -0.5 * z * z + Math.log(scaled) : Math.log1p(-gaussian(Math.abs(z)) * scaled);
  }

  /**
   * ln Φ(z) and ln(1 − Φ(z)) by one evaluation of the tail; what the Anderson–Darling sum asks for
   * every value.
   *
   * @param logs into which
   */
  static void logs(double z, double[] logs) {
    double x = Math.abs(z) * SQRT_HALF;
    if (x <= 0.46875) {
      double half = 0.5 * Math.copySign(smallErf(x), z);
      logs[0] = Math.log(0.5 + half);
      logs[1] = Math.log(0.5 - half);
      return;
    }
    double scaled = 0.5 * scaledErfc(x);
    double square = 0.5 * z * z;
    // Not by gaussian(): the tail goes into ln(1 − tail) alone, where its last digits don't count.
    double tail = Math.exp(-square) * scaled;
    double logTail = Math.log(scaled) - square;
    // log1p in elementary terms (Kahan): several times faster than the library's
    double rest = 1 - tail;
    double logRest = rest == 1 ? -tail : Math.log(rest) * (tail / (1 - rest));
    logs[0] = z > 0 ? logRest : logTail;
    logs[1] = z > 0 ? logTail : logRest;
  }

  /** The z with Φ(z) = p. Plus or minus infinity at 1 and 0, NaN outside 0…1. */
  public static double quantile(double p) {
    double q = p - 0.5;
    if (Math.abs(q) <= 0.425) {
      double r = 0.180625 - q * q;
      return q * polynomial(CENTER_ABOVE, r) / polynomial(CENTER_BELOW, r);
    }
    // 1 − p is exact from p = 0.5 on
    double tail = q < 0 ? p : 1 - p;
    if (!(tail > 0)) {
      return tail == 0 ? Math.copySign(Double.POSITIVE_INFINITY, q) : Double.NaN;
    }
    double r = Math.sqrt(-Math.log(tail));
    double z =
        r <= 5
            ? polynomial(NEAR_ABOVE, r - 1.6) / polynomial(NEAR_BELOW, r - 1.6)
            : polynomial(FAR_ABOVE, r - 5) / polynomial(FAR_BELOW, r - 5);
    return Math.copySign(z, q);
  }

  private static double smallErf(double x) {
    double y = x * x;
    return x * polynomial(A, y) / polynomial(B, y);
  }

  /** exp(x²)·erfc(x) for x above 0.46875. */
  private static double scaledErfc(double x) {
    if (x <= 4) {
      return polynomial(C, x) / polynomial(D, x);
    }
    double y = 1 / (x * x);
    return (INVERSE_SQRT_PI - y * polynomial(P, y) / polynomial(Q, y)) / x;
  }

  /** exp(−z²/2), split so that the rounding of z² isn't magnified. */
  private static double gaussian(double z) {
    // A sixteenth has so few bits that its square is exact; 1e6, for an int must hold it.
    double coarse = (int) (Math.min(z, 1e6) * 16) / 16.0;
    return Math.exp(-0.5 * coarse * coarse) * Math.exp(-0.5 * (z - coarse) * (z + coarse));
  }

  private static double polynomial(double[] coefficients, double x) {
    double sum = coefficients[0];
    for (int i = 1; i < coefficients.length; i++) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }
}
