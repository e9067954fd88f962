package org.evenpour.stats;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** Roots of increasing functions, to nearly full precision. */
final class Root {
  private Root() {}

  /**
   * The x where an increasing function crosses zero, by Brent's bracketing method from a guess; the
   * bracket is widened geometrically from the guess, inside the bounds. NaN if there is no
   * crossing, or if the function has no value where one is needed.
   */
  static double ofIncreasing(
      DoubleUnaryOperator f, double guess, double step, double lowest, double highest) {
    if (!(step > 0) || Double.isNaN(guess)) {
      return Double.NaN; // the bracket would never grow
    }
    double low = Math.max(lowest, guess - step);
    double high = Math.min(highest, guess + step);
    double width = step;
    while (f.applyAsDouble(low) > 0) {
      if (low <= lowest) {
        return Double.NaN;
      }
      high = low;
      width *= 2;
      low = Math.max(lowest, low - width);
    }
    while (f.applyAsDouble(high) < 0) {
      if (high >= highest) {
        return Double.NaN;
      }
      low = high;
      width *= 2;
      high = Math.min(highest, high + width);
    }
    double below = f.applyAsDouble(low);
    if (below == 0) {
      return low;
    }
    if (!(below < 0) || !(f.applyAsDouble(high) >= 0)) {
      return Double.NaN;
    }
    return new BracketingNthOrderBrentSolver(1e-14, 1e-300, 0, 5)
        .solve(500, f::applyAsDouble, low, high, 0.5 * (low + high));
  }
}
