package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Run lengths computed, and run lengths of the very charts that the engine uses, simulated. */
@Tag("slow")
class RunLengthTest {

  static Stream<Reference.Row> cusums() {
    return Reference.rows("run-lengths-cusum.csv").stream();
  }

  static Stream<Reference.Row> limits() {
    return Reference.rows("run-length-limits.csv").stream();
  }

  static Stream<Reference.Row> chains() {
    return Reference.rows("run-lengths-run-tests.csv").stream();
  }

  @ParameterizedTest
  @MethodSource("cusums")
  void cusumsAgree(Reference.Row row) {
    double k = row.number("k");
    double h = row.number("h");
    double shift = row.number("shift");
    check(RunLength.cusumOneSided(k, h, shift), row.number("one_sided"), 1e-8);
    check(RunLength.cusum(k, h, shift), row.number("two_sided"), 1e-8);
    // printed to three digits
    check(RunLength.cusum(k, h, shift), row.number("printed"), 0.005);
  }

  @ParameterizedTest
  @MethodSource("limits")
  void limitsAgree(Reference.Row row) {
    double limit = RunLengthLimits.cusum(row.number("k"), row.number("arl"));
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
        new RunTestLength(tests(tests), lengths(tests)).of(row.number("shift"));
    check(length.mean(), row.number("arl"), 1e-8);
    if (row.has("sdrl")) {
      check(length.sd(), row.number("sdrl"), 1e-7);
    }
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
    check(new RunTestLength(tests(test), lengths(test)).of(0).mean(), truth, 1e-8);
  }

  /** Six or seven points in a row each higher, or each lower, whatever the distribution. */
  @Test
  void longerTrendsAgree() {
    RunTest.Lengths seven = new RunTest.Lengths(9, 7, 14, 15, 8);
    RunTestLength trends = new RunTestLength(Set.of(RunTest.SIX_TRENDING), seven);
    check(trends.of(0).mean(), 2881.851877247, 1e-8);
    check(trends.of(1.3).mean(), 2881.851877247, 1e-8);
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

  @Test
  void wideChartsAreSolvedToo() {
    // a million points between false alarms, as a budget over many molds asks for
    double h = RunLengthLimits.cusum(0.5, 1e6);
    check(RunLength.cusum(0.5, h, 0), 1e6, 1e-8);
    // Siegmund (1985): (e^(2kb) − 2kb − 1)/(2k²)/2, b = h + 1.166, good to some per cent
    double b = h + 1.166;
    check((Math.exp(b) - b - 1) * 2 / 2, 1e6, 0.03);
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

  /** CUSUM k = 0.5, h = 4: 167.6837888 in control. */
  @Test
  void simulatedCusumsAgree() {
    simulated(
        () -> {
          Cusum cusum = new Cusum(388, 1, 8);
          return z -> cusum.accept(388 + 2 * z);
        },
        167.6837888);
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
