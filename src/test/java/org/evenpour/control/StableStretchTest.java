package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Series of s.d. 1 about levels that are known, far enough apart to leave no doubt. */
class StableStretchTest {

  /** A level and how many points it lasts, in turn. */
  private static double[] series(double... levelsAndPoints) {
    SplittableRandom random = new SplittableRandom(7);
    int n = 0;
    for (int i = 1; i < levelsAndPoints.length; i += 2) {
      n += (int) levelsAndPoints[i];
    }
    double[] z = new double[n];
    int at = 0;
    for (int i = 0; i < levelsAndPoints.length; i += 2) {
      for (int k = 0; k < levelsAndPoints[i + 1]; k++) {
        z[at++] = levelsAndPoints[i] + random.nextGaussian();
      }
    }
    return z;
  }

  private static double shareNormal(double[] z, int from, int to) {
    boolean[] normal = StableStretch.of(z, 1, StableStretch.AMONG_MANY);
    int count = 0;
    for (int i = from; i < to; i++) {
      count += normal[i] ? 1 : 0;
    }
    return (double) count / (to - from);
  }

  @Test
  void takesTheEarliestLongStateForNormal() {
    double[] z = series(0, 100, 3, 200);

    // The cut may lie a point or two off.
    assertThat(shareNormal(z, 0, 100)).isGreaterThan(0.97);
    assertThat(shareNormal(z, 100, 300)).isLessThan(0.02);
  }

  @Test
  void knowsTheLevelToWhichTheSeriesComesBack() {
    double[] z = series(0, 20, 3, 80, 0, 120);

    assertThat(shareNormal(z, 0, 20)).isGreaterThan(0.85);
    assertThat(shareNormal(z, 20, 100)).isLessThan(0.04);
    assertThat(shareNormal(z, 100, 220)).isGreaterThan(0.97);
  }

  /** A mold that changes for good must not be told as one that was off before. */
  @Test
  void letsAFewFirstPointsSayNothingOfALaterLevel() {
    double[] z = series(4, 6, 0, 100, 4, 200);

    assertThat(shareNormal(z, 6, 106)).isGreaterThan(0.97);
    assertThat(shareNormal(z, 106, 306)).isLessThan(0.02);
  }
}
