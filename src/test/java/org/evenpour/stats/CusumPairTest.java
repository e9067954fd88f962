package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Checked against the integral equation of one CUSUM and against simulation. */
@Tag("slow")
class CusumPairTest {
  /** With the second sum out of reach the pair is one CUSUM, whose run length is known exactly. */
  @Test
  void isOneCusumWhereTheOtherSumIsOutOfReach() {
    for (double shift : new double[] {0, 0.5, 1, 2}) {
      assertThat(CusumPairRunLength.of(new CusumPair(0.5, 5, 1, 12), shift))
          .isCloseTo(RunLength.cusum(0.5, 5, shift), Percentage.withPercentage(0.6));
    }
    assertThat(CusumPairRunLength.of(new CusumPair(0.5, 20, 1, 2.5), 1))
        .isCloseTo(RunLength.cusum(1, 2.5, 1), Percentage.withPercentage(1.5));
  }

  /** 4,000 runs each; tolerance three standard errors and half a per cent for the grid. */
  @Test
  void hasTheRunLengthOfItsSimulation() {
    CusumPair pair = CusumPair.of(0.5, 1 / 200.0, 0, 0);
    SplittableRandom random = new SplittableRandom(11);
    for (double shift : new double[] {0, 1, 2}) {
      double sum = 0;
      double squares = 0;
      int runs = 4000;
      for (int run = 0; run < runs; run++) {
        double[] s = new double[4];
        int n = 0;
        boolean silent = true;
        while (silent) {
          double z = shift + random.nextGaussian();
          n++;
          s[0] = Math.max(0, s[0] + z - pair.k());
          s[1] = Math.max(0, s[1] - z - pair.k());
          s[2] = Math.max(0, s[2] + z - pair.k2());
          s[3] = Math.max(0, s[3] - z - pair.k2());
          silent = Math.max(s[0], s[1]) <= pair.h() && Math.max(s[2], s[3]) <= pair.h2();
        }
        sum += n;
        squares += (double) n * n;
      }
      double mean = sum / runs;
      double error = Math.sqrt((squares / runs - mean * mean) / runs);
      assertThat(mean)
          .isCloseTo(CusumPairRunLength.of(pair, shift), within(3 * error + 0.005 * mean));
    }
  }

  /** The table of how often two sums alarm together is what the run lengths say, to 3 %. */
  @Test
  void keepsToItsRate() {
    for (double k : new double[] {0.3, 0.5}) {
      for (double rate : new double[] {1e-2, 1e-3, 2e-4}) {
        assertThat(1 / CusumPairRunLength.of(CusumPair.of(k, rate, 0, 0), 0))
            .isCloseTo(rate, Percentage.withPercentage(3));
      }
    }
  }

  @Test
  void standsFurtherOffWhereLessIsKnown() {
    CusumPair known = CusumPair.of(0.5, 1e-3, 0, 0);
    CusumPair many = CusumPair.of(0.5, 1e-3, 1 / 400.0, 0);
    CusumPair few = CusumPair.of(0.5, 1e-3, 1 / 60.0, 0.2);

    assertThat(many.h()).isBetween(known.h() + 0.05, known.h() + 0.4);
    assertThat(few.h()).isGreaterThan(many.h() + 0.4);
    assertThat(few.h2()).isGreaterThan(many.h2());
  }

  /** A limit that is NaN never signals. */
  @Test
  void hasALimitHoweverLargeTheDoubt() {
    for (double k : new double[] {0.05, 0.125, 0.25, 0.5, 0.75}) {
      for (double rate : new double[] {1e-9, 1e-5, 1e-3, 0.05}) {
        for (double doubt : new double[] {0, 0.5, 2, 10}) {
          CusumPair pair = CusumPair.of(k, rate, 1 / 20.0, doubt);

          // Siegmund: h = ln(8k²·1e10)/2k at most, the second sum with 2k and twice the length.
          double most = Math.log(8 * k * k * 1e10 + 30) / (2 * k);
          assertThat(pair.h()).isGreaterThan(0).isLessThan(most);
          assertThat(pair.h2()).isGreaterThan(0).isLessThan(most);
        }
      }
    }
  }
}
