package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules of quadrature against those of Hipparchus, and against what they must integrate. */
class QuadratureRulesTest {
  private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

  /** Theirs has the weight exp(−x²), ours the standard normal density: x = z/√2. */
  @Test
  void theNormalRuleIsThatOfHipparchus() {
    GaussIntegrator rule = RULES.hermite(Hermite.NODES);
    for (int i = 0; i < Hermite.NODES; i++) {
      // each has some units of the last place of its own
      assertThat(Hermite.node(i)).isCloseTo(Math.sqrt(2) * rule.getPoint(i), within(1e-14));
      assertThat(Hermite.weight(i) / (rule.getWeight(i) / Math.sqrt(Math.PI)))
          .isCloseTo(1, within(3e-14));
    }
  }

  /** The moments of a standard normal value: 0 where odd, else 1·3·5·…; exact to degree 13. */
  @Test
  void theNormalRuleHasTheMomentsOfANormalValue() {
    double expected = 1;
    for (int degree = 0; degree < 2 * Hermite.NODES; degree += 2) {
      double even = 0;
      double odd = 0;
      for (int i = 0; i < Hermite.NODES; i++) {
        even += Hermite.weight(i) * Math.pow(Hermite.node(i), degree);
        odd += Hermite.weight(i) * Math.pow(Hermite.node(i), degree + 1);
      }
      assertThat(even / expected).isCloseTo(1, within(1e-13));
      assertThat(odd / expected).isCloseTo(0, within(1e-13));
      expected *= degree + 1;
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 16, 24, 40, 60, 80, 120, 200})
  void theEvenRuleIsThatOfHipparchus(int points) {
    GaussIntegrator rule = RULES.legendre(points);
    GaussLegendre ours = GaussLegendre.on(-1, 1, points);
    for (int i = 0; i < points; i++) {
      assertThat(ours.node(i)).isCloseTo(rule.getPoint(i), within(2e-16));
      // what the rounding of a node near an end does to 1 − x²
      assertThat(ours.weight(i) / rule.getWeight(i))
          .isCloseTo(1, within(4e-16 * points * points + 1e-15));
    }
  }
}
