package org.evenpour.stats;

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
    return replay(deviations, 0, Double.POSITIVE_INFINITY);
  }

  /** After every point the set-point is moved by minus its deviation. */
  public static Funnel compensateAlways(double[] deviations) {
    return replay(deviations, 1, 0);
  }

  /**
   * Where the EWMA forecast of the next deviation lies at or beyond ± limit, the set-point is moved
   * by minus the forecast; the forecast, from 0 at the beginning, is then 0.
   *
   * @param lambda weight of the newest point, 0 to 1
   * @param limit L, in the unit; 0 to follow every forecast
   */
  public static Funnel deadband(double[] deviations, double lambda, double limit) {
    if (!(lambda >= 0 && lambda <= 1) || !(limit >= 0)) {
      throw new IllegalArgumentException(
          "a deadband needs a lambda from 0 to 1 and a limit of 0 or more, not "
              + lambda
              + " and "
              + limit);
    }
    return replay(deviations, lambda, limit);
  }

  private static Funnel replay(double[] deviations, double lambda, double limit) {
    double moved = 0;
    double forecast = 0;
    long adjustments = 0;
    Moments off = new Moments();
    Moments squares = new Moments();
    for (double x : deviations) {
      if (Double.isNaN(x)) {
        continue;
      }
      double y = x + moved;
      off.add(y);
      squares.add(y * y);
      forecast += lambda * (y - forecast);
      if (forecast != 0 && Math.abs(forecast) >= limit) {
        moved -= forecast;
        forecast = 0;
        adjustments++;
      }
    }
    return new Funnel(squares.mean(), off.mean(), off.sd(), adjustments);
  }
}
