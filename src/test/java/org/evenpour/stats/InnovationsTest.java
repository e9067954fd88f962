package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Checked against the closed form of a first-order autoregression and against simulation. */
class InnovationsTest {
  /**
   * Box, Jenkins and Reinsel: a first-order autoregression's innovations are (z − φz₋₁)/√(1 − φ²).
   */
  @Test
  void areThePredictionErrorsOfAnAutoregression() {
    Innovations innovations = new Innovations(0.6, 0);
    double[] z = {0.3, -1.2, 0.8, 1.9};

    assertThat(innovations.accept(z[0])).isCloseTo(0.3, within(1e-15));
    for (int i = 1; i < z.length; i++) {
      assertThat(innovations.accept(z[i])).isCloseTo((z[i] - 0.6 * z[i - 1]) / 0.8, within(1e-12));
    }
  }

  @Test
  void expectLessOfWhatLiesFurtherBack() {
    Innovations innovations = new Innovations(0.6, 0);
    innovations.accept(2);
    innovations.skip(2);

    double phi = 0.6 * 0.6 * 0.6;
    assertThat(innovations.accept(1))
        .isCloseTo((1 - phi * 2) / Math.sqrt(1 - phi * phi), within(1e-12));
  }

  /** 400,000 values; tolerances are four standard errors. */
  @Test
  void areWhiteWithUnitVarianceUnderNoise() {
    SplittableRandom random = new SplittableRandom(3);
    Innovations innovations = new Innovations(0.7, 0.3);
    double b = 0;
    double squares = 0;
    double products = 0;
    double before = 0;
    int n = 400_000;
    for (int i = 0; i < n; i++) {
      b = 0.7 * b + Math.sqrt(0.7 * (1 - 0.49)) * random.nextGaussian();
      double u = innovations.accept(b + Math.sqrt(0.3) * random.nextGaussian());
      squares += u * u;
      products += u * before;
      before = u;
    }

    assertThat(squares / n).isCloseTo(1, within(0.009));
    assertThat(products / n).isCloseTo(0, within(0.0064));
  }

  @Test
  void keepOfAShiftWhatTheGainSays() {
    for (double noise : new double[] {0, 0.25}) {
      Innovations sound = new Innovations(0.7, noise);
      Innovations shifted = new Innovations(0.7, noise);
      for (int i = 0; i < 200; i++) {
        sound.accept(0);
        shifted.accept(0);
      }
      double first = shifted.accept(1) - sound.accept(0);
      double last = 0;
      for (int i = 0; i < 200; i++) {
        last = shifted.accept(1) - sound.accept(0);
      }
      assertThat(last).isCloseTo(Innovations.gain(0.7, noise), within(1e-9));
      assertThat(first / last).isCloseTo(Innovations.first(0.7, noise), within(1e-9));
    }
    assertThat(Innovations.gain(0.7, 0)).isCloseTo(Math.sqrt(0.3 / 1.7), within(1e-12));
    assertThat(Innovations.first(0.7, 0)).isCloseTo(1 / 0.3, within(1e-12));
  }
}
