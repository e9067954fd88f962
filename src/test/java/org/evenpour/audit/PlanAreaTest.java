package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The arithmetic of a published plan and density: 960 × 920 mm at 8.9 g/cm³ is 7.86 kg a mm, so
 * that 2 kg is 0.25 mm and 5 kg is 0.64 mm, to every digit.
 */
class PlanAreaTest {
  private static final double AREA = 0.960 * 0.920;

  @Test
  void takesSevenPointEightSixKilogramsForAMillimeter() {
    assertThat(PlanArea.kgPerMm(AREA)).isCloseTo(7.86, within(0.005));
  }

  @Test
  void makesTwoKilogramsAQuarterOfAMillimeterAndFivePointSixFour() {
    assertThat(2 / PlanArea.kgPerMm(AREA)).isCloseTo(0.25, within(0.005));
    assertThat(5 / PlanArea.kgPerMm(AREA)).isCloseTo(0.64, within(0.005));
  }

  @Test
  void givesThePlanBackFromMassAndThickness() {
    double mass = PlanArea.kgPerMm(AREA) * 45;
    assertThat(PlanArea.squareMeters(mass, 45)).isCloseTo(AREA, within(1e-12));
    // the pour: mass and thickness rise together and the area stays
    assertThat(PlanArea.squareMeters(mass + 2, 45 + 2 / PlanArea.kgPerMm(AREA)))
        .isCloseTo(AREA, within(1e-12));
    // the cavity: thickness rises at constant mass and the area falls
    assertThat(PlanArea.squareMeters(mass, 46)).isLessThan(AREA * 0.98);
  }
}
