package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartConstantsTest {

  static Stream<Reference.Row> constants() {
    return Reference.rows("chart-constants.csv").stream();
  }

  /**
   * Exact values computed independently; printed ones from Walpole et al., Table A.22, and
   * Montgomery, App. VI, which were made from rounded constants and so may be 0.0015 off.
   */
  @ParameterizedTest
  @MethodSource("constants")
  void agreeWithExactAndPrintedTables(Reference.Row row) {
    int n = row.whole("n");
    double value = function(row.text("constant")).applyAsDouble(n);
    double exact = row.number("exact");
    assertThat(value).isCloseTo(exact, within(1e-12 * Math.abs(exact)));
    if (row.has("printed")) {
      // D1 and D2 carry three times the rounding of the printed d3, half a unit of 0.001
      boolean triple = row.text("constant").matches("D[12]");
      assertThat(value).isCloseTo(row.number("printed"), within(triple ? 0.002 : 0.0015));
    }
  }

  private static IntToDoubleFunction function(String name) {
    return switch (name) {
      case "A" -> ChartConstants::a;
      case "A2" -> ChartConstants::a2;
      case "A3" -> ChartConstants::a3;
      case "c4" -> ChartConstants::c4;
      case "B3" -> ChartConstants::b3;
      case "B4" -> ChartConstants::b4;
      case "B5" -> ChartConstants::b5;
      case "B6" -> ChartConstants::b6;
      case "d2" -> ChartConstants::d2;
      case "d3" -> ChartConstants::d3;
      case "D1" -> ChartConstants::bigD1;
      case "D2" -> ChartConstants::bigD2;
      case "D3" -> ChartConstants::bigD3;
      case "D4" -> ChartConstants::bigD4;
      case "E2" -> ChartConstants::e2;
      default -> throw new IllegalArgumentException(name);
    };
  }

  /** Closed forms: d3(2) = √(2 − 4/π), d3(3) = √(2 + 3√3/π − 9/π). */
  @Test
  void agreeWithClosedForms() {
    assertThat(ChartConstants.d2(2)).isCloseTo(2 / Math.sqrt(Math.PI), within(3e-15));
    assertThat(ChartConstants.d2(3)).isCloseTo(3 / Math.sqrt(Math.PI), within(3e-15));
    assertThat(ChartConstants.d3(2)).isCloseTo(Math.sqrt(2 - 4 / Math.PI), within(1e-13));
    assertThat(ChartConstants.d3(3))
        .isCloseTo(Math.sqrt(2 + (3 * Math.sqrt(3) - 9) / Math.PI), within(1e-13));
  }

  /** d2(100) and d3(100): 5.01519 and 0.60456 (Tippett 1925 and Pearson 1926, from memory). */
  @Test
  void reachSubgroupsOfAHundred() {
    assertThat(ChartConstants.d2(100)).isCloseTo(5.01519, within(1e-5));
    assertThat(ChartConstants.d3(100)).isCloseTo(0.605, within(1e-3));
  }

  /** c4 of real degrees of freedom meets c4(n) at whole ones, and so do the recurrence's ends. */
  @Test
  void c4IsOneFunctionByTwoWays() {
    for (int n : new int[] {2, 3, 7, 25, 100, 5000}) {
      assertThat(ChartConstants.c4OfDegrees(n - 1.0))
          .isCloseTo(ChartConstants.c4(n), within(1e-12));
    }
    assertThat(ChartConstants.c4(20_001)).isCloseTo(1 - 1 / (4.0 * 20_000), within(1e-9));
  }

  @Test
  void refuseSubgroupsTheyAreNotFor() {
    assertThatThrownBy(() -> ChartConstants.d2(1)).hasMessageContaining("2 to 100");
    assertThatThrownBy(() -> ChartConstants.d3(101)).hasMessageContaining("2 to 100");
    assertThatThrownBy(() -> ChartConstants.c4(1)).hasMessageContaining("at least 2");
  }
}
