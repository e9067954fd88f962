package org.evenpour.stats;

import org.jspecify.annotations.Nullable;

/**
 * What a rule of adjusting would have done to a record: leave alone, compensate after every point,
 * or adjust where the forecast leaves a deadband. Deming's funnel (Out of the Crisis, 1986), on the
 * plant's own record.
 *
 * <p>The record is of deviations from target as they would be without the rule; the rule's moves
 * add up and act from the next point on. Compensating after every point, the deviation becomes x −
 * the one before: twice the variance where the record is pure noise. NaN is a missing point: it
 * moves nothing.
 *
 * @param meanSquare mean squared deviation from target; NaN without points
 * @param mean mean deviation
 * @param sd s.d. of the deviations; NaN with fewer than two points
 * @param adjustments how often the set-point was moved
 */
public record Funnel(double meanSquare, double mean, double sd, long adjustments) {

  public static Funnel leaveAlone(double[] deviations) {
    return replay(deviations, 0, Double.POSITIVE_INFINITY, null);
  }

  /** After every point the set-point is moved by minus its deviation. */
  public static Funnel compensateAlways(double[] deviations) {
    return replay(deviations, 1, 0, null);
  }

  /**
   * Where the EWMA forecast of the next deviation lies at or beyond ± limit, the set-point is moved
   * by minus the forecast; the forecast, from 0 at the beginning, is then 0.
   *
   * @param lambda weight of the newest point, 0 to 1
   * @param limit L, in the unit; 0 to follow every forecast
   */
  public static Funnel deadband(double[] deviations, double lambda, double limit) {
    check(lambda, limit);
    return replay(deviations, lambda, limit, null);
  }

  /**
   * The deviations themselves as {@link #deadband} would have left them; λ = 1 with limit 0 is
   * compensating after every point. NaN stays NaN.
   */
  public static double[] deviations(double[] deviations, double lambda, double limit) {
    check(lambda, limit);
    double[] left = new double[deviations.length];
    replay(deviations, lambda, limit, left);
    return left;
  }

  private static void check(double lambda, double limit) {
    if (!(lambda >= 0 && lambda <= 1) || !(limit >= 0)) {
      throw new IllegalArgumentException(
          "a deadband needs a lambda from 0 to 1 and a limit of 0 or more, not "
              + lambda
              + " and "
              + limit);
    }
  }

  private static Funnel replay(
      double[] deviations, double lambda, double limit, double @Nullable [] left) {
    double moved = 0;
    double forecast = 0;
    long adjustments = 0;
    Moments off = new Moments();
    Moments squares = new Moments();
    for (int i = 0; i < deviations.length; i++) {
      double y = deviations[i] + moved;
      if (left != null) {
        left[i] = y;
      }
      if (Double.isNaN(y)) {
        continue;
      }
      // Judged before it is answered: a rule sees a point only once it is cast.
      off.add(y);
      squares.add(y * y);
      forecast += lambda * (y - forecast);
      // A forecast of 0 asks for no move, not even without a deadband.
      if (forecast != 0 && Math.abs(forecast) >= limit) {
        moved -= forecast;
        // The move takes out all that was forecast; the level is expected on target from here on.
        forecast = 0;
        adjustments++;
      }
    }
    return new Funnel(squares.mean(), off.mean(), off.sd(), adjustments);
  }
}
