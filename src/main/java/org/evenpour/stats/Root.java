package org.evenpour.stats;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathIllegalStateException;

/** Roots of increasing functions, to nearly full precision. */
final class Root {
  private static final int HALVINGS = 200;

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
    // Doubled each time: a guess that is far off costs the logarithm of the distance.
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
    try {
      // No value of f is small enough to stop at: f may be flat, and x is what counts.
      return new BracketingNthOrderBrentSolver(1e-14, 1e-300, 0, 5)
          .solve(500, f::applyAsDouble, low, high, 0.5 * (low + high));
    } catch (MathIllegalStateException e) {
      return halved(f, low, high);
    }
  }

  /** By halving, which no function that is flat or steep misleads: to 2⁻²⁰⁰ of the bracket. */
  private static double halved(DoubleUnaryOperator f, double below, double above) {
    double low = below;
    double high = above;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = low + 0.5 * (high - low);
      if (middle <= low || middle >= high) {
        break;
      }
      if (f.applyAsDouble(middle) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low + 0.5 * (high - low);
  }
}
