package org.evenpour.stats;

import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Adjusting a level that wanders only when its forecast has left a deadband (Box and Jenkins 1963;
 * Box and Luceño 1997).
 *
 * <p>Model: the disturbance is an IMA(0,1,1), a random walk with steps λa seen through noise, a ~
 * N(0, σ²); its best forecast is the EWMA with weight λ. When the forecast of the next deviation
 * lies at or beyond ± L, the set-point is moved by minus the forecast, all of it, and the move acts
 * on the next point. With Λ = L/(λσ), the forecast between adjustments is a random walk from 0 with
 * unit steps, stopped outside ± Λ.
 *
 * @param halfWidth Λ, from 0: adjust after every point
 * @param interval mean number of points between adjustments
 * @param inflation g: the mean squared deviation is σ²·(1 + λ²g)
 */
public record BoundedAdjustment(double halfWidth, double interval, double inflation) {
  private static final double WIDEST = 60;

  /**
   * N(z) = 1 + ∫ N(y) φ(y − z) dy and S(z) = z² + ∫ S(y) φ(y − z) dy over |y| &lt; Λ; the interval
   * is N(0) and g = S(0)/N(0). By Gauss–Legendre quadrature (Nyström), some 10 digits;
   * milliseconds.
   *
   * @param halfWidth Λ, from 0 to 60
   */
  public static BoundedAdjustment of(double halfWidth) {
    if (!(halfWidth >= 0 && halfWidth <= WIDEST)) {
      throw new IllegalArgumentException(
          "a deadband lies from 0 to " + WIDEST + " times lambda sigma, not at " + halfWidth);
    }
    if (halfWidth == 0) {
      return new BoundedAdjustment(0, 1, 0);
    }
    // both functions are even: half the interval will do
    GaussLegendre rule = GaussLegendre.on(0, halfWidth, 16 + (int) Math.ceil(6 * halfWidth));
    int n = rule.size();
    double[][] next = new double[n][n];
    double[] first = new double[n];
    double[] squares = new double[n];
    for (int j = 0; j < n; j++) {
      double y = rule.node(j);
      squares[j] = y * y;
      first[j] = 2 * rule.weight(j) * Normal.density(y);
      for (int i = 0; i < n; i++) {
        double z = rule.node(i);
        next[i][j] = rule.weight(j) * (Normal.density(y - z) + Normal.density(y + z));
      }
    }
    double interval = 1 + SignalChain.dot(first, SignalChain.solve(next, SignalChain.ones(n)));
    double sum = SignalChain.dot(first, SignalChain.solve(next, squares));
    return new BoundedAdjustment(halfWidth, interval, sum / interval);
  }

  /**
   * The deadband with the least mean cost a point, (cost of being off)·λ²σ²·g + (cost of an
   * adjustment)/interval; what λ can't change is left out.
   *
   * <p>Golden-section search on ln Λ; the cost has one minimum. Without a cost of adjusting, or
   * with one too small to matter, Λ is 0: adjust after every point. With λσ = 0, or a cost so high
   * that Λ would pass 60, there is nothing to adjust: null. Some hundred milliseconds.
   *
   * @param offCost of one squared unit off target, for one point; above 0
   * @param adjustmentCost of one adjustment, 0 or more, in the same money
   * @param lambdaSigma λσ, the s.d. of the steps of the level, in the unit
   */
  public static @Nullable BoundedAdjustment cheapest(
      double offCost, double adjustmentCost, double lambdaSigma) {
    if (!(offCost > 0) || !(adjustmentCost >= 0) || !(lambdaSigma >= 0)) {
      throw new IllegalArgumentException(
          "being off target has a cost above 0, an adjustment one of 0 or more, not "
              + offCost
              + " and "
              + adjustmentCost);
    }
    // In units of λ²σ² there is one cost left, and the width depends on it alone.
    double relative = adjustmentCost / (offCost * lambdaSigma * lambdaSigma);
    if (adjustmentCost == 0) {
      return of(0);
    }
    DoubleUnaryOperator cost =
        logWidth -> {
          BoundedAdjustment b = of(Math.exp(logWidth));
          return b.inflation + relative / b.interval;
        };
    // far out g ~ Λ²/6 and the interval ~ Λ², so that Λ⁴ is at most some 6 times the relative cost
    if (!(relative < Math.pow(WIDEST, 4) / 12)) {
      return null;
    }
    // On the logarithm: the cheapest width goes as a root of the cost, over orders of magnitude.
    double low = Math.log(0.02);
    double high = Math.log(WIDEST);
    double golden = 0.5 * (Math.sqrt(5) - 1);
    double a = high - golden * (high - low);
    double b = low + golden * (high - low);
    double costA = cost.applyAsDouble(a);
    double costB = cost.applyAsDouble(b);
    while (high - low > 1e-5) {
      // One of the two inner costs is kept: each is a system of equations.
      if (costA <= costB) {
        high = b;
        b = a;
        costB = costA;
        a = high - golden * (high - low);
        costA = cost.applyAsDouble(a);
      } else {
        low = a;
        a = b;
        costA = costB;
        b = low + golden * (high - low);
        costB = cost.applyAsDouble(b);
      }
    }
    // nearly no deadband is no deadband
    return low <= Math.log(0.021) ? of(0) : of(Math.exp(0.5 * (low + high)));
  }

  /** L for a process with this λσ, in its unit. */
  public double limit(double lambdaSigma) {
    return halfWidth * lambdaSigma;
  }

  /** Mean squared deviation from target for this λ and σ. */
  public double meanSquare(double lambda, double sigma) {
    return sigma * sigma * (1 + lambda * lambda * inflation);
  }
}
