package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.BigRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalReaderTest {

  /** Exact decimal arithmetic is the outside check: no neighbouring double lies nearer. */
  @Property(tries = 5000)
  void readsTheNearestDouble(@ForAll("decimals") String text) {
    double value = read(text, false);
    BigDecimal exact = new BigDecimal(text);
    BigDecimal distance = new BigDecimal(value).subtract(exact).abs();
    assertThat(distance)
        .isLessThanOrEqualTo(new BigDecimal(Math.nextUp(value)).subtract(exact).abs())
        .isLessThanOrEqualTo(new BigDecimal(Math.nextDown(value)).subtract(exact).abs());
    assertThat(value).isEqualTo(Double.parseDouble(text));
  }

  @Provide
  Arbitrary<String> decimals() {
    Arbitrary<String> digits = Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(21);
    Arbitrary<String> fraction =
        Arbitraries.strings().numeric().ofMaxLength(21).map(d -> d.isEmpty() ? "" : "." + d);
    Arbitrary<String> exponent =
        Arbitraries.integers().between(-280, 260).map(e -> "e" + e).injectNull(0.7);
    return Combinators.combine(Arbitraries.of("", "-", "+"), digits, fraction, exponent)
        .as((sign, d, f, e) -> sign + d + f + (e == null ? "" : e));
  }

  @Property
  void readsBackEveryDoubleThatJavaWrites(
      @ForAll @BigRange(min = "-1e300", max = "1e300") BigDecimal number) {
    double value = number.doubleValue();
    assertThat(read(Double.toString(value), false)).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource({
    "388,388",
    "-2,-2",
    "+7.5,7.5",
    ".5,0.5",
    "5.,5",
    "1e12,1e12",
    "1E+3,1000",
    "1.7976931348623157e308,1.7976931348623157e308",
    "9007199254740993,9007199254740992", // halfway: to even (IEEE 754)
    "00012.50,12.5"
  })
  void readsPlainNumbers(String text, double value) {
    assertThat(read(text, false)).isEqualTo(value);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "NaN",
        "Infinity",
        "-Infinity",
        "inf",
        "1e400",
        "-1e400",
        "1e99999999999",
        "abc",
        "12kg",
        "12 5",
        "1.2.3",
        "--1",
        "+",
        "-",
        ".",
        "e5",
        "1e",
        "1e+",
        "0x1p3",
        "1d",
        "1f",
        "1,5",
        "1.000,5",
        "１２",
        "1_000",
        "'5"
      })
  void takesNothingElseForANumber(String text) {
    assertThat(read(text, false)).isEqualTo(DecimalReader.UNREADABLE);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "388,5|388.5",
        "388.5|388.5",
        "-0,25|-0.25",
        "1,5e2|150",
        "0,12345678901234567890|0.12345678901234568"
      })
  void readsDecimalCommasWhereTheyMayStand(String text, double value) {
    assertThat(read(text, true)).isEqualTo(value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.000,5", "1,000.5", "1,0,5"})
  void takesNoSeparatorOfThousands(String text) {
    assertThat(read(text, true)).isEqualTo(DecimalReader.UNREADABLE);
  }

  @org.junit.jupiter.api.Test
  void tellsMissingFromUnreadable() {
    assertThat(read("", false)).isNaN();
  }

  private static double read(String text, boolean comma) {
    byte[] bytes = ("x" + text + "9").getBytes(StandardCharsets.UTF_8);
    return DecimalReader.read(bytes, 1, bytes.length - 1, comma);
  }
}
