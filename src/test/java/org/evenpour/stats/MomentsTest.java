package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MomentsTest {

  /**
   * NIST StRD univariate sets. The bar for the sd is 0.3 digits below what exact arithmetic on the
   * double-precision data reaches, the bar for the mean 14.7 of 15 digits.
   */
  @ParameterizedTest
  @CsvSource({"Lottery,15", "Lew,15", "Mavro,13.1", "Michelso,13.8", "NumAcc1,15"})
  void reachesWhatTheDataOfNistAllow(String dataset, double digitsOfSd) {
    double[] y =
        Reference.rows("strd-univariate.csv", "dataset", dataset).stream()
            .mapToDouble(r -> r.number("y"))
            .toArray();
    checkAgainstNist(Moments.of(y), dataset, digitsOfSd);
  }

  /** The constructed NIST sets: 1.2, then 1.1 and 1.3 alternating, 1001 values, on a base. */
  @ParameterizedTest
  @CsvSource({
    "NumAcc2,1.2,1.1,1.3,15",
    "NumAcc3,1000000.2,1000000.1,1000000.3,9.5",
    "NumAcc4,10000000.2,10000000.1,10000000.3,8.2"
  })
  void reachesWhatTheConstructedSetsOfNistAllow(
      String dataset, double first, double low, double high, double digitsOfSd) {
    Moments moments = Moments.of(first);
    for (int i = 0; i < 500; i++) {
      moments.add(low);
      moments.add(high);
    }
    checkAgainstNist(moments, dataset, digitsOfSd);
  }

  private static void checkAgainstNist(Moments moments, String dataset, double digitsOfSd) {
    assertThat(Reference.digits(moments.mean(), Reference.certified(dataset, "Mean")))
        .isGreaterThanOrEqualTo(14.7);
    assertThat(Reference.digits(moments.sd(), Reference.certified(dataset, "Standard Deviation")))
        .isGreaterThanOrEqualTo(digitsOfSd - 0.3);
  }

  @Test
  void isUndefinedWhereThereIsTooLittle() {
    Moments none = new Moments();
    assertThat(none.count()).isZero();
    assertThat(new double[] {none.mean(), none.sd(), none.minimum(), none.maximum()})
        .containsOnly(Double.NaN);
    Moments one = Moments.of(388);
    assertThat(one.mean()).isEqualTo(388);
    assertThat(one.sd()).isNaN();
  }

  @Test
  void skipsMissingValuesAndRefusesInfiniteOnes() {
    assertThat(Moments.of(Double.NaN, 1, Double.NaN, 3).mean()).isEqualTo(2);
    assertThatThrownBy(() -> Moments.of(1, Double.POSITIVE_INFINITY))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("infinite");
  }

  @Test
  void hasNoSpreadWhereAllValuesAreTheSame() {
    Moments moments = new Moments();
    for (int i = 0; i < 1000; i++) {
      moments.add(0.1);
    }
    assertThat(moments.sd()).isZero();
    assertThat(moments.mean()).isEqualTo(0.1);
    assertThat(moments.minimum()).isEqualTo(moments.maximum()).isEqualTo(0.1);
  }

  @Test
  void survivesAFirstValueFarFromTheRest() {
    Moments moments = Moments.of(1e12, 1, 2, 3, 4);
    // exact: mean (1e12+10)/5; the sum of squares from the exact rational
    assertThat(moments.mean()).isEqualTo(200000000002.0);
    double truth = Math.sqrt((0.8 * 1e24 - 4e12 + 30 - 20) / 4);
    assertThat(moments.sd()).isCloseTo(truth, within(truth * 1e-15));
  }

  @Property(tries = 200)
  void mergingIsASinglePass(
      @ForAll @Size(min = 2, max = 60) double[] x, @ForAll @IntRange(max = 60) int cutAt) {
    double[] values = Arrays.stream(x).map(v -> Math.IEEEremainder(v, 1e9)).toArray();
    int cut = Math.min(cutAt, values.length);
    Moments merged = Moments.of(Arrays.copyOfRange(values, 0, cut));
    merged.addAll(Moments.of(Arrays.copyOfRange(values, cut, values.length)));
    Moments whole = Moments.of(values);
    assertThat(merged.count()).isEqualTo(whole.count());
    assertThat(merged.minimum()).isEqualTo(whole.minimum());
    assertThat(merged.maximum()).isEqualTo(whole.maximum());
    assertThat(merged.mean())
        .isCloseTo(whole.mean(), within(1e-15 * Math.abs(whole.mean()) + 1e-22));
    assertThat(merged.sd()).isCloseTo(whole.sd(), within(4e-16 * whole.sd()));
  }

  @Property(tries = 200)
  void shiftsAndScalesWithTheData(
      @ForAll @Size(min = 2, max = 40) List<@IntRange(min = -1000, max = 1000) Integer> x,
      @ForAll @IntRange(min = -100000, max = 100000) int shift,
      @ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
    // whole numbers, so that shifted data are exact
    double[] base = x.stream().mapToDouble(Integer::doubleValue).toArray();
    Moments plain = Moments.of(base);
    Moments shifted = Moments.of(Arrays.stream(base).map(v -> v + shift).toArray());
    Moments scaled = Moments.of(Arrays.stream(base).map(v -> v * factor).toArray());
    assertThat(shifted.sd()).isEqualTo(plain.sd());
    assertThat(shifted.mean()).isCloseTo(plain.mean() + shift, within(1e-10));
    assertThat(scaled.sd())
        .isCloseTo(factor * plain.sd(), within(1e-12 * factor * (plain.sd() + 1000)));
  }

  @Property(tries = 100)
  void doesNotDependOnTheOrder(@ForAll @Size(min = 2, max = 50) float[] x) {
    double[] ascending = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      ascending[i] = Math.IEEEremainder(x[i], 1e6);
    }
    double[] asGiven = ascending.clone();
    Arrays.sort(ascending);
    Moments a = Moments.of(asGiven);
    Moments b = Moments.of(ascending);
    assertThat(a.sd()).isCloseTo(b.sd(), within(1e-15 * (b.sd() + 1e-300)));
    assertThat(a.mean()).isCloseTo(b.mean(), within(1e-15 * Math.abs(b.mean()) + 1e-22));
  }
}
