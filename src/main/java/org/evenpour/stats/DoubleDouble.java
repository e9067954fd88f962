package org.evenpour.stats;

/**
 * An unevaluated sum of two doubles, {@code high + low}, good to about 32 digits.
 *
 * <p>The error-free transformations are TwoSum (Knuth, TAOCP 2, 4.2.2) and TwoProduct by fused
 * multiply-add; the operations follow Dekker (1971) and Hida, Li and Bailey (2001). Immutable.
 * Results are undefined (NaN) for infinities.
 */
record DoubleDouble(double high, double low) {
  static final DoubleDouble ZERO = new DoubleDouble(0, 0);

  static DoubleDouble of(double x) {
    return new DoubleDouble(x, 0);
  }

  /** a + b without error. */
  static DoubleDouble sum(double a, double b) {
    double s = a + b;
    double bb = s - a;
    return new DoubleDouble(s, (a - (s - bb)) + (b - bb));
  }

  /** a · b without error (short of underflow). */
  static DoubleDouble product(double a, double b) {
    double p = a * b;
    return new DoubleDouble(p, Math.fma(a, b, -p));
  }

  /** The same number with {@code |low|} at most half a unit in the last place of {@code high}. */
  private static DoubleDouble normal(double high, double low) {
    double s = high + low;
    return new DoubleDouble(s, low - (s - high));
  }

  DoubleDouble plus(DoubleDouble o) {
    // Both parts without error: where the high ones cancel, the low ones are the answer.
    DoubleDouble s = sum(high, o.high);
    DoubleDouble t = sum(low, o.low);
    DoubleDouble u = normal(s.high, s.low + t.high);
    return normal(u.high, u.low + t.low);
  }

  DoubleDouble minus(DoubleDouble o) {
    return plus(o.negate());
  }

  DoubleDouble negate() {
    return new DoubleDouble(-high, -low);
  }

  DoubleDouble times(DoubleDouble o) {
    DoubleDouble p = product(high, o.high);
    // low·low is below the last digit of the pair.
    return normal(p.high, p.low + (high * o.low + low * o.high));
  }

  DoubleDouble times(double x) {
    DoubleDouble p = product(high, x);
    return normal(p.high, p.low + low * x);
  }

  DoubleDouble squared() {
    return times(this);
  }

  DoubleDouble over(double x) {
    return over(of(x));
  }

  DoubleDouble over(DoubleDouble o) {
    // Long division: each quotient takes up what the ones before it left, three make 32 digits.
    double q1 = high / o.high;
    DoubleDouble r = minus(o.times(q1));
    double q2 = r.high / o.high;
    r = r.minus(o.times(q2));
    double q3 = r.high / o.high;
    return normal(q1, q2).plus(of(q3));
  }

  double value() {
    return high + low;
  }
}
