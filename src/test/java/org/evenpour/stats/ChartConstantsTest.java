package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartConstantsTest {

  /**
   * Exact values computed independently; printed ones from Walpole et al., Table A.22, and
   * Montgomery, App. VI, which were made from rounded constants and so may be 0.0015 off.
   */
  @ParameterizedTest
  @MethodSource("constants")
  void agreeWithExactAndPrintedTables(Reference.Row row) {
    int n = row.whole("n");
    double value =
        row.text("constant").equals("d2")
            ? ChartConstants.d2(n)
            : ChartConstants.c4OfDegrees(n - 1.0);
    double exact = row.number("exact");
    assertThat(value).isCloseTo(exact, within(1e-12 * Math.abs(exact)));
    if (row.has("printed")) {
      assertThat(value).isCloseTo(row.number("printed"), within(0.0015));
    }
  }

  static Stream<Reference.Row> constants() {
    return Reference.rows("chart-constants.csv").stream();
  }

  /** Closed forms of d2(2) and d2(3). */
  @Test
  void agreeWithClosedForms() {
    assertThat(ChartConstants.d2(2)).isCloseTo(2 / Math.sqrt(Math.PI), within(3e-15));
    assertThat(ChartConstants.d2(3)).isCloseTo(3 / Math.sqrt(Math.PI), within(3e-15));
  }

  /** d2(100): 5.01519 (Tippett 1925, from memory). */
  @Test
  void reachSubgroupsOfAHundred() {
    assertThat(ChartConstants.d2(100)).isCloseTo(5.01519, within(1e-5));
  }

  /**
   * c4(n) by the recurrence of its gamma functions, g(n) = Γ(n/2)/Γ((n − 1)/2), g(n)·g(n − 1) = (n
   * − 2)/2; and its limit, 1 − 1/4n.
   */
  @Test
  void c4OfDegreesMeetsTheRecurrence() {
    double g = 1 / Math.sqrt(Math.PI);
    for (int n = 2; n <= 5000; n++) {
      assertThat(ChartConstants.c4OfDegrees(n - 1.0))
          .isCloseTo(Math.sqrt(2.0 / (n - 1)) * g, within(1e-12));
      g = 0.5 * (n - 1) / g;
    }
    assertThat(ChartConstants.c4OfDegrees(20_000)).isCloseTo(1 - 1 / (4.0 * 20_000), within(1e-9));
  }

  @Test
  void refuseSubgroupsTheyAreNotFor() {
    assertThatThrownBy(() -> ChartConstants.d2(1)).hasMessageContaining("2 to 100");
    assertThatThrownBy(() -> ChartConstants.d2(101)).hasMessageContaining("2 to 100");
  }
}
