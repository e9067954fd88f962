package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.evenpour.audit.LeftOver.Acting;
import org.evenpour.findings.BeyondSettings.Taken;
import org.junit.jupiter.api.Test;

class LeftOverTest {
  private static final double RATE = 1e-3;

  /** A congruential generator that any language repeats to the last bit. */
  private static final class Numbers {
    private long state;

    Numbers(long seed) {
      state = seed;
    }

    /** Nearly normal: twelve uniform numbers less six. */
    double next() {
      double sum = -6;
      for (int i = 0; i < 12; i++) {
        state = (state * 1_103_515_245L + 12_345) % (1L << 31);
        sum += state / (double) (1L << 31);
      }
      return sum;
    }
  }

  private static LeftOver left(double[] y, List<Acting> settings) {
    boolean[] all = new boolean[y.length];
    Arrays.fill(all, true);
    return Objects.requireNonNull(LeftOver.of(y, settings, all, new boolean[y.length], 0, RATE));
  }

  /**
   * Expected: generalized least squares with dense covariance matrices and the restricted
   * likelihood over a grid of φ and noise by 0.02 and 0.03, in NumPy 2.4.6, an independent
   * calculation on the same numbers: φ 0.50, noise 0, effects 0.26492 ± 0.01993 and −0.33287 ±
   * 0.03972, where 0.25 and −0.4 are true. Ordinary least squares would give −0.27038 for the
   * second.
   */
  @Test
  void takesOffTheEffectsThatGeneralizedLeastSquaresGives() {
    int n = 150;
    double[] launder = new double[n];
    double[] wash = new double[n];
    double[] y = new double[n];
    Numbers numbers = new Numbers(20261130);
    double w = 0;
    double e = 0;
    for (int t = 0; t < n; t++) {
      w = 0.9 * w + Math.sqrt(1 - 0.81) * numbers.next();
      e = 0.5 * e + Math.sqrt(0.75) * numbers.next();
      double s = numbers.next();
      launder[t] = 200 + 4 * w;
      wash[t] = 3 + s;
      y[t] = 390 + 0.25 * 4 * w - 0.4 * s + 0.6 * e;
    }
    List<Acting> settings = List.of(new Acting("launder_mm", launder), new Acting("wash", wash));
    LeftOver left = left(y, settings);
    assertThat(left.baseTurns()).isEqualTo(n);
    Taken first = left.taken().get(0);
    Taken second = left.taken().get(1);
    // our grid of φ is refined once: a tenth of the standard error
    assertThat(first.perUnit()).isCloseTo(0.26492, within(0.002));
    assertThat(second.perUnit()).isCloseTo(-0.33287, within(0.004));
    // ours is averaged over the grid and widened by Student's t, and so larger
    assertThat(first.error()).isBetween(0.0199, 0.0240);
    assertThat(second.error()).isBetween(0.0397, 0.0440);
    assertThat(first.mean()).isCloseTo(198.60948693, within(1e-7));
    double[] rest = LeftOver.left(y, left.taken(), settings);
    assertThat(rest[0])
        .isCloseTo(
            389.65337111
                - first.perUnit() * (197.06537884 - 198.60948693)
                - second.perUnit() * (wash[0] - 2.98806856),
            within(1e-6));
  }

  /**
   * y = 390 + x/4 + e where e is orthogonal to x and to a constant and turns its sign each turn:
   * the effect is 1/4 to the last digits, and what is left is 390 + e, whatever x does.
   */
  @Test
  void leavesWhatTheSettingDoesNotMake() {
    int n = 160;
    double[] x = new double[n];
    double[] y = new double[n];
    for (int t = 0; t < n; t++) {
      // Each value twice, and e of either sign at each.
      x[t] = (t / 2 * 7) % 80;
      y[t] = 390 + x[t] / 4 + (t % 2 == 0 ? 0.5 : -0.5);
    }
    List<Acting> settings = List.of(new Acting("x", x));
    LeftOver left = left(y, settings);
    assertThat(left.taken().get(0).perUnit()).isCloseTo(0.25, within(1e-9));
    double mean = Arrays.stream(x).average().orElseThrow();
    double[] rest = LeftOver.left(y, left.taken(), settings);
    for (int t = 0; t < n; t++) {
      assertThat(rest[t] - mean / 4).isCloseTo(390 + (t % 2 == 0 ? 0.5 : -0.5), within(1e-7));
    }
  }

  /** Spray acts by way of the mold's temperature alone: taken off once, and not twice. */
  @Test
  void whatActsByWayOfAnotherIsTakenOffOnce() {
    int n = 300;
    Numbers numbers = new Numbers(7);
    double[] spray = new double[n];
    double[] mold = new double[n];
    double[] y = new double[n];
    double[] own = new double[n];
    for (int t = 0; t < n; t++) {
      spray[t] = 120 + 5 * numbers.next();
      mold[t] = 180 - 0.8 * (spray[t] - 120) + 2 * numbers.next();
      own[t] = 0.5 * numbers.next();
      y[t] = 390 + 0.3 * (mold[t] - 180) + own[t];
    }
    List<Acting> settings = List.of(new Acting("spray", spray), new Acting("mold", mold));
    LeftOver left = left(y, settings);
    assertThat(left.taken()).extracting(Taken::setting).containsExactly("mold");
    assertThat(left.limits().sigma()).isCloseTo(sd(own), within(0.03));
  }

  private static double sd(double[] x) {
    double mean = Arrays.stream(x).average().orElseThrow();
    return Math.sqrt(Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum() / x.length);
  }

  @Test
  void aFaultInTheRecordIsNoPartOfTheBase() {
    int n = 300;
    Numbers numbers = new Numbers(11);
    double[] x = new double[n];
    double[] y = new double[n];
    double w = 0;
    for (int t = 0; t < n; t++) {
      w = 0.7 * w + Math.sqrt(1 - 0.49) * numbers.next();
      x[t] = w;
      y[t] = 2 * w + 0.6 * numbers.next() + (t >= 200 && t < 250 ? 1.5 : 0);
    }
    LeftOver left = left(y, List.of(new Acting("x", x)));
    assertThat(left.baseTurns()).isBetween(240, 255);
    assertThat(left.taken().get(0).perUnit()).isCloseTo(2, within(0.12));
    assertThat(left.limits().sigma()).isCloseTo(0.6, within(0.08));
  }

  @Test
  void nothingIsTakenOffWhereTurnsAreTooFew() {
    double[] y = new double[20];
    double[] x = new double[20];
    for (int t = 0; t < 20; t++) {
      x[t] = t % 7;
      y[t] = x[t] + t % 3;
    }
    boolean[] all = new boolean[20];
    Arrays.fill(all, true);
    assertThat(LeftOver.of(y, List.of(new Acting("x", x)), all, new boolean[20], 0, RATE)).isNull();
    assertThat(LeftOver.of(y, List.of(), all, new boolean[20], 0, RATE)).isNull();
  }
}
