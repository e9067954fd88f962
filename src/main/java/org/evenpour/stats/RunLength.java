package org.evenpour.stats;

import java.util.Collection;
import java.util.function.DoubleUnaryOperator;

/**
 * Run lengths: how many points a chart takes to signal, the signalling one included, for
 * independent normal values with known mean and sigma.
 *
 * <p>Shifts and limits are in units of sigma of what is plotted; shift 0 is in control and a shift
 * is there from the first point on. Charts start at rest (zero state) unless a start is given. For
 * CUSUM, EWMA and moving ranges an integral equation is solved by Gauss–Legendre quadrature
 * (Nyström), whose nodes grow with the width of the chart, to some 8 digits. A plain double is the
 * average run length; {@link RunLengthDistribution} has the rest. Milliseconds each, up to some 0.3
 * s where a small λ widens long.
 */
public final class RunLength {
  private static final double NONE = Double.POSITIVE_INFINITY;

  private RunLength() {}

  /** Points beyond ± limit alone: 1/P. */
  public static double shewhart(double limit, double shift) {
    return 1 / (Normal.upperTail(limit - shift) + Normal.upperTail(limit + shift));
  }

  /** The limit, in sigmas, that gives this run length in control. */
  public static double shewhartLimit(double arl) {
    checkTarget(arl);
    return -Normal.quantile(0.5 / arl);
  }

  /**
   * A 3-sigma chart with any of the eight run tests. A tenth of a second, or one to two seconds
   * with trends or alternations.
   */
  public static double runTests(Collection<RunTest> tests, RunTest.Lengths lengths, double shift) {
    return runTestsDistribution(tests, lengths, shift).mean();
  }

  public static RunLengthDistribution runTestsDistribution(
      Collection<RunTest> tests, RunTest.Lengths lengths, double shift) {
    return new RunTestLength(tests, lengths).of(shift);
  }

  /**
   * Individual values beyond ± limit, or a moving range of two beyond rangeLimit, in sigma; a limit
   * may be infinite.
   */
  public static double individualsAndRanges(double limit, double rangeLimit, double shift) {
    return MovingRangeChain.of(limit, rangeLimit, shift).mean();
  }

  /**
   * Upper CUSUM alone.
   *
   * @param headStart where the sum starts, 0 to h
   */
  public static double cusumOneSided(double k, double h, double shift, double headStart) {
    return CusumChain.upper(k, h, NONE, shift, headStart).mean();
  }

  /** Upper and lower CUSUM together: 1/L = 1/L⁺ + 1/L⁻, exact without a head start. */
  public static double cusum(double k, double h, double shift) {
    return cusumAndPoints(k, h, NONE, shift, 0);
  }

  /** Both CUSUMs with the same head start s (Lucas and Crosier 1982). */
  public static double cusum(double k, double h, double shift, double headStart) {
    return cusumAndPoints(k, h, NONE, shift, headStart);
  }

  /**
   * Both CUSUMs, and single points beyond ± limit (Lucas 1982), from a head start of both sums.
   *
   * <p>With L⁺(s) and L⁻(s) the lengths of either side with its limit for points, L = (L⁺(s)L⁻(0) +
   * L⁻(s)L⁺(0) − L⁺(0)L⁻(0))/(L⁺(0) + L⁻(0)) (Lucas and Crosier 1982). That is exact while a side
   * that signals leaves the other at 0: with limit ≥ h − k. With a lower limit a point may signal
   * on one side while the other sum still stands; what that changes is far below the fourth digit.
   */
  public static double cusumAndPoints(
      double k, double h, double limit, double shift, double headStart) {
    double up0 = CusumChain.upper(k, h, limit, shift, 0).mean();
    double down0 = shift == 0 ? up0 : CusumChain.upper(k, h, limit, -shift, 0).mean();
    if (headStart == 0) {
      return 1 / (1 / up0 + 1 / down0);
    }
    double up = CusumChain.upper(k, h, limit, shift, headStart).mean();
    double down = CusumChain.upper(k, h, limit, -shift, headStart).mean();
    return (up * down0 + down * up0 - up0 * down0) / (up0 + down0);
  }

  /**
   * How the run length of both CUSUMs with a limit for points is distributed, the two sides taken
   * as independent; its mean is within two hundredths of {@link #cusumAndPoints}, which has none of
   * that error.
   */
  public static RunLengthDistribution cusumAndPointsDistribution(
      double k, double h, double limit, double shift, double headStart) {
    return CusumChain.upper(k, h, limit, shift, headStart)
        .distribution()
        .firstOf(CusumChain.upper(k, h, limit, -shift, headStart).distribution());
  }

  /** h of a two-sided CUSUM with this run length in control. */
  public static double cusumLimit(double k, double arl) {
    return cusumLimit(k, NONE, arl);
  }

  /**
   * h of a two-sided CUSUM that together with points beyond ± limit has this run length in control;
   * NaN where the points alone ring more often.
   */
  public static double cusumLimit(double k, double limit, double arl) {
    checkTarget(arl);
    if (limit != NONE && shewhart(limit, 0) <= arl) {
      return Double.NaN;
    }
    // Siegmund's approximation grows by exp(2kh)
    double guess = Math.max(0.2, Math.log1p(4 * k * k * arl) / (2 * k) - 1.166);
    return limit(h -> cusumAndPoints(k, h, limit, 0, 0), guess, arl);
  }

  /** EWMA with limits ± L·√(λ/(2 − λ)) from the start. */
  public static double ewma(double lambda, double width, double shift) {
    return EwmaChain.constant(lambda, width, NONE, shift, 0).mean();
  }

  /**
   * EWMA with limits ± L·√(λ/(2 − λ)), and single points beyond ± limit.
   *
   * @param start where the average starts, in sigma of the points
   */
  public static double ewmaAndPoints(
      double lambda, double width, double limit, double shift, double start) {
    return EwmaChain.constant(lambda, width, limit, shift, start).mean();
  }

  public static RunLengthDistribution ewmaAndPointsDistribution(
      double lambda, double width, double limit, double shift, double start) {
    return EwmaChain.constant(lambda, width, limit, shift, start).distribution();
  }

  /** EWMA with limits that widen, ± L·√(λ/(2 − λ)·(1 − (1 − λ)²ᵗ)), as {@link Ewma} has them. */
  public static double ewmaWidening(double lambda, double width, double shift) {
    return ewmaWideningDistribution(lambda, width, shift).mean();
  }

  public static RunLengthDistribution ewmaWideningDistribution(
      double lambda, double width, double shift) {
    return EwmaChain.widening(lambda, width, shift);
  }

  /** L of an EWMA with limits constant from the start and this run length in control. */
  public static double ewmaLimit(double lambda, double arl) {
    return ewmaLimit(lambda, NONE, arl);
  }

  /**
   * L of an EWMA with constant limits that together with points beyond ± limit has this run length
   * in control; NaN where the points alone ring more often.
   */
  public static double ewmaLimit(double lambda, double limit, double arl) {
    checkTarget(arl);
    if (limit != NONE && shewhart(limit, 0) <= arl) {
      return Double.NaN;
    }
    return limit(width -> ewmaAndPoints(lambda, width, limit, 0, 0), shewhartLimit(arl), arl);
  }

  /** L of an EWMA with limits that widen and this run length in control. */
  public static double ewmaWideningLimit(double lambda, double arl) {
    checkTarget(arl);
    return limit(width -> ewmaWidening(lambda, width, 0), shewhartLimit(arl), arl);
  }

  private static double limit(DoubleUnaryOperator runLength, double guess, double arl) {
    double target = Math.log(arl);
    return Root.ofIncreasing(
        x -> Math.log(runLength.applyAsDouble(x)) - target, guess, 0.1, 1e-6, 200);
  }

  private static void checkTarget(double arl) {
    if (!(arl > 1 && arl < 1e12)) {
      throw new IllegalArgumentException(
          "a run length to aim at lies above 1 and below 1e12 points, not at " + arl);
    }
  }
}
