package org.evenpour.stats;

/**
 * The standard normal distribution, accurate in both tails.
 *
 * <p>Φ by the rational Chebyshev approximations of erf and erfc of Cody (1969), about 1e-15
 * relative; the quantile by Wichura's AS 241 (1988), about 1e-15 relative, from 1e-300 on.
 */
public final class Normal {
  private static final double[] A = {
    1.85777706184603153e-1,
    3.16112374387056560e0,
    1.13864154151050156e2,
    3.77485237685302021e2,
    3.20937758913846947e3
  };
  private static final double[] B = {
    1, 2.36012909523441209e1, 2.44024637934444173e2, 1.28261652607737228e3, 2.84423683343917062e3
  };
  private static final double[] C = {
    2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594e0, 6.61191906371416295e1,
    2.98635138197400131e2, 8.81952221241769090e2, 1.71204761263407058e3, 2.05107837782607147e3,
    1.23033935479799725e3
  };
  private static final double[] D = {
    1,
    1.57449261107098347e1,
    1.17693950891312499e2,
    5.37181101862009858e2,
    1.62138957456669019e3,
    3.29079923573345963e3,
    4.36261909014324716e3,
    3.43936767414372164e3,
    1.23033935480374942e3
  };
  private static final double[] P = {
    1.63153871373020978e-2,
    3.05326634961232344e-1,
    3.60344899949804439e-1,
    1.25781726111229246e-1,
    1.60837851487422766e-2,
    6.58749161529837803e-4
  };
  private static final double[] Q = {
    1,
    2.56852019228982242e0,
    1.87295284992346725e0,
    5.27905102951428412e-1,
    6.05183413124413191e-2,
    2.33520497626869185e-3
  };
  private static final double[] CENTER_ABOVE = {
    2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4,
    4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3,
    1.3314166789178437745e2, 3.3871328727963666080e0
  };
  private static final double[] CENTER_BELOW = {
    5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4,
    2.1213794301586595867e4, 5.3941960214247511077e3, 6.8718700749205790830e2,
    4.2313330701600911252e1, 1
  };
  private static final double[] NEAR_ABOVE = {
    7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1,
    1.27045825245236838258e0, 3.64784832476320460504e0, 5.76949722146069140550e0,
    4.63033784615654529590e0, 1.42343711074968357734e0
  };
  private static final double[] NEAR_BELOW = {
    1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2,
    1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940e0,
    2.05319162663775882187e0, 1
  };
  private static final double[] FAR_ABOVE = {
    2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3,
    2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580e0,
    5.46378491116411436990e0, 6.65790464350110377720e0
  };
  private static final double[] FAR_BELOW = {
    2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5,
    7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1,
    5.99832206555887937690e-1, 1
  };
  private static final double SQRT_HALF = Math.sqrt(0.5);
  private static final double INVERSE_SQRT_PI = 0.56418958354775628695;
  private static final double INVERSE_SQRT_TWO_PI = 0.39894228040143267794;

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
    double tail = 0.5 * gaussian(x) * scaledErfc(x);
    return z > 0 ? tail : 1 - tail;
  }

  /** ln Φ(z), finite for every finite z. */
  public static double logCdf(double z) {
    double x = Math.abs(z) * SQRT_HALF;
    if (x <= 0.46875) {
      return Math.log(0.5 + 0.5 * Math.copySign(smallErf(x), z));
    }
    double scaled = 0.5 * scaledErfc(x);
    return z < 0 ? -0.5 * z * z + Math.log(scaled) : Math.log1p(-gaussian(x) * scaled);
  }

  /**
   * w₁·ln Φ(z) + w₂·ln(1 − Φ(z)) by one evaluation of the tail; what the Anderson–Darling sum asks
   * for every value.
   */
  static double weightedLogs(double z, double w1, double w2) {
    double x = Math.abs(z) * SQRT_HALF;
    if (x <= 0.46875) {
      double half = 0.5 * Math.copySign(smallErf(x), z);
      return w1 * Math.log(0.5 + half) + w2 * Math.log(0.5 - half);
    }
    double scaled = 0.5 * scaledErfc(x);
    double square = 0.5 * z * z;
    double tail = Math.exp(-square) * scaled;
    double logTail = Math.log(scaled) - square;
    // log1p in elementary terms (Kahan): several times faster than the library's
    double rest = 1 - tail;
    double logRest = rest == 1 ? -tail : Math.log(rest) * (tail / (1 - rest));
    return z > 0 ? w1 * logRest + w2 * logTail : w1 * logTail + w2 * logRest;
  }

  /** The z with Φ(z) = p. Plus or minus infinity at 1 and 0, NaN outside 0…1. */
  public static double quantile(double p) {
    double q = p - 0.5;
    if (Math.abs(q) <= 0.425) {
      double r = 0.180625 - q * q;
      return q * polynomial(CENTER_ABOVE, r) / polynomial(CENTER_BELOW, r);
    }
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

  /** exp(−x²), split so that the rounding of x² isn't magnified. */
  private static double gaussian(double x) {
    double coarse = (int) (Math.min(x, 40) * 16) / 16.0;
    return Math.exp(-coarse * coarse) * Math.exp(-(x - coarse) * (x + coarse));
  }

  private static double polynomial(double[] coefficients, double x) {
    double sum = coefficients[0];
    for (int i = 1; i < coefficients.length; i++) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }
}
