package org.evenpour.stats;

/**
 * Count, mean, standard deviation and range of a stream of values, one pass, constant memory.
 *
 * <p>Mean = Σx/n, variance = Σ(x − mean)²/(n − 1). What is computed: Σ(x − a) and Σ(x − a)² with a
 * = the first value, both in double-double arithmetic (TwoSum, TwoProduct by fused multiply-add),
 * combined in double-double at the end, so that the result is that of exact arithmetic on the given
 * doubles, rounded once, unless a/sd or the range of magnitudes passes some 1e15.
 *
 * <p>NaN stands for a missing value and is skipped; an infinite value is refused. Differences of
 * more than 1e150 overflow: the sd is then NaN. With no value, mean, minimum and maximum are NaN;
 * with fewer than two, variance and sd are NaN. A few nanoseconds a value. Not thread-safe: owned
 * by the thread that adds.
 */
public final class Moments {
  private long count;
  private double shift = Double.NaN;
  private double sumHigh;
  private double sumLow;
  private double squareHigh;
  private double squareLow;
  private double minimum = Double.POSITIVE_INFINITY;
  private double maximum = Double.NEGATIVE_INFINITY;

  /** The moments of all values of x that are not NaN. */
  public static Moments of(double... x) {
    Moments moments = new Moments();
    for (double value : x) {
      moments.add(value);
    }
    return moments;
  }

  public void add(double x) {
    // One comparison for missing and infinite: all other values pass at once.
    if (!(Math.abs(x) <= Double.MAX_VALUE)) {
      if (Double.isNaN(x)) {
        return;
      }
      throw new IllegalArgumentException("an infinite value has no place in a mean: " + x);
    }
    if (count++ == 0) {
      shift = x;
    }
    if (x < minimum) {
      minimum = x;
    }
    if (x > maximum) {
      maximum = x;
    }
    double d = x - shift;
    double back = d - x;
    // x − shift rounds where one is far larger than the other; e is what that lost.
    double e = (x - (d - back)) - (shift + back);
    double s = sumHigh + d;
    double t = s - sumHigh;
    sumLow += (sumHigh - (s - t)) + (d - t) + e;
    sumHigh = s;
    // (d + e)² = d² + 2de, and e² is below the last digit
    double p = d * d;
    double q = squareHigh + p;
    double u = q - squareHigh;
    squareLow += (squareHigh - (q - u)) + (p - u) + (Math.fma(d, d, -p) + 2 * d * e);
    squareHigh = q;
  }

  /**
   * Adds all values of another accumulator. The result is that of adding its values one by one, to
   * the rounding of double-double arithmetic, and depends on the order of merging in no more.
   */
  public void addAll(Moments other) {
    if (other.count == 0) {
      return;
    }
    if (count == 0) {
      shift = other.shift;
    }
    // The other's sums were about its own first value: moved to this one's without error.
    DoubleDouble step = DoubleDouble.sum(other.shift, -shift);
    DoubleDouble n = DoubleDouble.of((double) other.count);
    DoubleDouble sum = sum().plus(other.sum()).plus(step.times(n));
    DoubleDouble square =
        square()
            .plus(other.square())
            .plus(step.times(other.sum()).times(2))
            .plus(step.squared().times(n));
    count += other.count;
    sumHigh = sum.high();
    sumLow = sum.low();
    squareHigh = square.high();
    squareLow = square.low();
    minimum = Math.min(minimum, other.minimum);
    maximum = Math.max(maximum, other.maximum);
  }

  public long count() {
    return count;
  }

  public double mean() {
    return count == 0 ? Double.NaN : exactMean().value();
  }

  public double variance() {
    return count < 2 ? Double.NaN : Math.max(0, sumOfSquares().over(count - 1.0).value());
  }

  public double sd() {
    return Math.sqrt(variance());
  }

  public double minimum() {
    return count == 0 ? Double.NaN : minimum;
  }

  public double maximum() {
    return count == 0 ? Double.NaN : maximum;
  }

  /** The mean in double-double; only with at least one value. */
  DoubleDouble exactMean() {
    return sum().over((double) count).plus(DoubleDouble.of(shift));
  }

  /** Σ(x − mean)² in double-double; only with at least one value. */
  DoubleDouble sumOfSquares() {
    DoubleDouble sum = sum();
    // Cancels only as far as the first value lies off the mean, in s.d.: there are digits for that.
    return square().minus(sum.squared().over((double) count));
  }

  private DoubleDouble sum() {
    return DoubleDouble.sum(sumHigh, sumLow);
  }

  private DoubleDouble square() {
    return DoubleDouble.sum(squareHigh, squareLow);
  }
}
