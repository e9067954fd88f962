package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Run lengths computed, and run lengths of the very charts that the engine uses, simulated. */
class RunLengthTest {

  static Stream<Reference.Row> cusums() {
    return Reference.rows("run-lengths-cusum.csv").stream();
  }

  static Stream<Reference.Row> ewmas() {
    return Reference.rows("run-lengths-ewma.csv").stream();
  }

  static Stream<Reference.Row> limits() {
    return Reference.rows("run-length-limits.csv").stream();
  }

  static Stream<Reference.Row> chains() {
    return Reference.rows("run-lengths-run-tests.csv").stream();
  }

  static Stream<Reference.Row> individuals() {
    return Reference.rows("run-lengths-individuals.csv").stream();
  }

  @ParameterizedTest
  @MethodSource("cusums")
  void cusumsAgree(Reference.Row row) {
    double k = row.number("k");
    double h = row.number("h");
    double shift = row.number("shift");
    check(RunLength.cusumOneSided(k, h, shift, 0), row.number("one_sided"), 1e-8);
    check(RunLength.cusum(k, h, shift), row.number("two_sided"), 1e-8);
    check(RunLength.cusum(k, h, shift, h / 2), row.number("two_sided_head_start"), 1e-8);
    // printed to three digits
    check(RunLength.cusum(k, h, shift), row.number("printed"), 0.005);
  }

  /** The printed values are of a discretised chart and may be half a per cent off, or 0.05. */
  @ParameterizedTest
  @MethodSource("ewmas")
  void ewmasAgree(Reference.Row row) {
    double arl = RunLength.ewma(row.number("lambda"), row.number("width"), row.number("shift"));
    check(arl, row.number("constant_limits"), 1e-8);
    double widening =
        RunLength.ewmaWidening(row.number("lambda"), row.number("width"), row.number("shift"));
    // with λ = 1 nothing widens
    boolean widens = row.has("widening_limits");
    check(widening, row.number(widens ? "widening_limits" : "constant_limits"), 1e-8);
    if (row.has("printed")) {
      assertThat(arl)
          .isCloseTo(row.number("printed"), within(Math.max(0.051, 0.005 * row.number("printed"))));
    }
  }

  @ParameterizedTest
  @MethodSource("limits")
  void limitsAgree(Reference.Row row) {
    double parameter = row.number("parameter");
    double arl = row.number("arl");
    double limit =
        switch (row.text("chart")) {
          case "cusum" -> RunLength.cusumLimit(parameter, arl);
          case "ewma" -> RunLength.ewmaLimit(parameter, arl);
          default -> RunLength.ewmaWideningLimit(parameter, arl);
        };
    assertThat(limit).isCloseTo(row.number("limit"), within(1e-6));
    if (row.has("printed")) {
      assertThat(limit).isCloseTo(row.number("printed"), within(0.006));
    }
  }

  /** Champ and Woodall (1987) and its extensions, all eight tests included. */
  @ParameterizedTest
  @MethodSource("chains")
  void runTestsAgree(Reference.Row row) {
    String tests = row.text("tests");
    RunLengthDistribution length =
        RunLength.runTestsDistribution(tests(tests), lengths(tests), row.number("shift"));
    check(length.mean(), row.number("arl"), 1e-8);
    if (row.has("sdrl")) {
      check(length.sd(), row.number("sdrl"), 1e-7);
    }
  }

  /** Crowder (1987): a value alone, its moving range alone, and both. */
  @ParameterizedTest
  @MethodSource("individuals")
  void individualsAndRangesAgree(Reference.Row row) {
    double arl =
        RunLength.individualsAndRanges(
            row.has("limit") ? row.number("limit") : Double.POSITIVE_INFINITY,
            row.has("range_limit") ? row.number("range_limit") : Double.POSITIVE_INFINITY,
            row.number("shift"));
    check(arl, row.number("arl"), 1e-8);
  }

  /** Tests alone, in control: exact values, and 2⁹ − 1, 2⁸ − 1, 2⁷ − 1 for runs on one side. */
  @ParameterizedTest
  @CsvSource({
    "1,370.3983473",
    "2,511",
    "2/8,255",
    "2/7,127",
    "3,421.598626031",
    "4,601.007804022",
    "3+4,248.801630482",
    "5,510.688514447",
    "6,291.319248009",
    "7,963.271544139",
    "8,14251.366622334"
  })
  void singleRunTestsAgree(String test, double truth) {
    check(RunLength.runTests(tests(test), lengths(test), 0), truth, 1e-8);
  }

  /** Six or seven points in a row each higher, or each lower, whatever the distribution. */
  @Test
  void longerTrendsAgree() {
    RunTest.Lengths seven = new RunTest.Lengths(9, 7, 14, 15, 8);
    check(RunLength.runTests(Set.of(RunTest.SIX_TRENDING), seven, 0), 2881.851877247, 1e-8);
    check(RunLength.runTests(Set.of(RunTest.SIX_TRENDING), seven, 1.3), 2881.851877247, 1e-8);
  }

  private static void check(double value, double truth, double tolerance) {
    assertThat(value).isCloseTo(truth, within(tolerance * truth));
  }

  private static RunTest.Lengths lengths(String numbers) {
    int oneSide = numbers.contains("2/8") ? 8 : numbers.contains("2/7") ? 7 : 9;
    return new RunTest.Lengths(oneSide, 6, 14, 15, 8);
  }

  private static Set<RunTest> tests(String numbers) {
    Set<RunTest> tests = EnumSet.noneOf(RunTest.class);
    for (RunTest test : RunTest.values()) {
      // Nelson's numbers are one above the bit
      if (numbers.replaceAll("/.", "").contains(Integer.toString(test.bit() + 1))) {
        tests.add(test);
      }
    }
    return tests;
  }

  /** NIST/SEMATECH e-Handbook 6.3.2: once in 371 points, printed for 370.4. */
  @Test
  void shewhartAloneIsOneOverItsProbability() {
    check(RunLength.shewhart(3, 0), 370.3983473, 1e-9);
    check(RunLength.shewhart(3, 1), 43.8946817, 1e-8);
    assertThat(RunLength.shewhartLimit(RunLength.shewhart(3.7, 0))).isCloseTo(3.7, within(1e-12));
  }

  @Test
  void wideChartsAreSolvedToo() {
    // a million points between false alarms, as a budget over many molds asks for
    double h = RunLength.cusumLimit(0.5, 1e6);
    check(RunLength.cusum(0.5, h, 0), 1e6, 1e-8);
    // Siegmund (1985): (e^(2kb) − 2kb − 1)/(2k²)/2, b = h + 1.166, good to some per cent
    double b = h + 1.166;
    check((Math.exp(b) - b - 1) * 2 / 2, 1e6, 0.03);
    double width = RunLength.ewmaLimit(0.1, 1e6);
    check(RunLength.ewma(0.1, width, 0), 1e6, 1e-8);
    assertThat(width).isLessThan(RunLength.shewhartLimit(1e6));
  }

  @Test
  void refusesWhatIsNotComputed() {
    assertThatThrownBy(() -> RunLength.cusumLimit(0.5, 1)).hasMessageContaining("above 1");
    assertThatThrownBy(() -> RunLength.runTests(List.of(), RunTest.Lengths.STANDARD, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** The very tests that the engine runs, all eight together too: 73.4799516 in control. */
  @ParameterizedTest
  @CsvSource({"0,1+2+3+4+5+6+7+8", "1,1+2+3+4+5+6+7+8", "0,1+2+3+4", "0.4,1+2+3+4+5+6"})
  void simulatedRunTestsAgree(double shift, String numbers) {
    double truth =
        Reference.rows("run-lengths-run-tests.csv", "tests", numbers).stream()
            .filter(r -> r.number("shift") == shift)
            .findFirst()
            .orElseThrow()
            .number("arl");
    int mask = tests(numbers).stream().mapToInt(RunTest::mask).sum();
    simulated(
        () -> {
          RunTests tests = new RunTests(388, 2);
          return z -> (tests.accept(388 + 2 * (z + shift)) & mask) != 0;
        },
        truth);
  }

  /**
   * CUSUM k = 0.5, h = 4: 167.6837888 in control; with head start 2 and a shift of 1 5.286886215.
   */
  @Test
  void simulatedCusumsAgree() {
    simulated(
        () -> {
          Cusum cusum = new Cusum(388, 1, 8);
          return z -> cusum.accept(388 + 2 * z);
        },
        167.6837888);
    simulated(
        () -> {
          Cusum cusum = new Cusum(0, 0.5, 4);
          cusum.restart(2);
          return z -> cusum.accept(z + 1);
        },
        5.286886215);
  }

  /** EWMA with limits that widen, λ = 0.2, L = 2.962: 494.38565 in control, 9.5544919 at 1. */
  @ParameterizedTest
  @CsvSource({"0,494.38565", "1,9.5544919"})
  void simulatedEwmasAgree(double shift, double truth) {
    simulated(
        () -> {
          Ewma ewma = new Ewma(0.2, 2.962, 0, 1);
          return z -> ewma.accept(z + shift);
        },
        truth);
  }

  /** Mean of 6000 seeded runs, within three standard errors. */
  private static void simulated(Supplier<DoublePredicate> charts, double truth) {
    Random random = new Random(20260101);
    Moments lengths = new Moments();
    for (int run = 0; run < 6000; run++) {
      DoublePredicate chart = charts.get();
      int length = 1;
      while (!chart.test(random.nextGaussian())) {
        length++;
      }
      lengths.add(length);
    }
    assertThat(lengths.mean()).isCloseTo(truth, within(3 * lengths.sd() / Math.sqrt(6000)));
  }
}
