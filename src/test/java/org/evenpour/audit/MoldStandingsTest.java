package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.evenpour.casting.Specification;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.stats.AnalysisOfMeans;
import org.evenpour.stats.ShrunkMeans;
import org.evenpour.stats.TwoWay;
import org.junit.jupiter.api.Test;

class MoldStandingsTest {
  private static final Specification MM = new Specification(43.0, 45.0, 47.0);

  /** A wheel of molds by turns; the last mold casts only in the first few turns. */
  private static MoldLives wheel(int molds, int turns, int castsOfLast) {
    int rows = (molds - 1) * turns + castsOfLast;
    int[] turn = new int[rows];
    int[] life = new int[rows];
    int i = 0;
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < molds; m++) {
        if (m < molds - 1 || t < castsOfLast) {
          turn[i] = t;
          life[i++] = m;
        }
      }
    }
    int[] latest = new int[molds];
    int[] before = new int[molds];
    for (int m = 0; m < molds; m++) {
      latest[m] = m;
      before[m] = -1;
    }
    return new MoldLives(0, turn, life, molds, latest, before, new long[molds], new long[molds]);
  }

  private static double[] values(MoldLives lives, double[] offsets, long seed) {
    Random random = new Random(seed);
    double[] value = new double[lives.life().length];
    double[] turn = new double[value.length];
    for (int t = 0; t < turn.length; t++) {
      turn[t] = 0.5 * random.nextGaussian();
    }
    for (int i = 0; i < value.length; i++) {
      value[i] =
          45 + turn[lives.turn()[i]] + offsets[lives.life()[i]] + 0.3 * random.nextGaussian();
    }
    return value;
  }

  /** The same figures as the statistics give that are proven elsewhere. */
  @Test
  void takesLimitsAndShrinkageFromTheEffectiveCasts() {
    MoldLives lives = wheel(8, 60, 4);
    double[] offsets = {0, 0, 0, 0, 0, 0, 0.4, 0.4};
    double[] value = values(lives, offsets, 3);
    List<Standing> all =
        MoldStandings.of("thickness", value, lives, MM).stream()
            .map(Objects::requireNonNull)
            .toList();
    TwoWay twoWay = TwoWay.fit(lives.turn(), lives.life(), value, value.length);
    double s = Math.sqrt(twoWay.componentResidual());
    long[] counts =
        all.stream().mapToLong(one -> Math.max(1, Math.round(one.effectiveCasts()))).toArray();
    double casts = all.stream().mapToDouble(Standing::casts).sum();
    double effective = java.util.Arrays.stream(counts).sum();
    double[] off = all.stream().mapToDouble(Standing::offset).toArray();
    double nu = twoWay.residualDf() * Math.min(1, effective / casts);
    var limits = AnalysisOfMeans.limits(0.05, counts, 0, s, nu);
    var shrunk = ShrunkMeans.of(off, counts, s);
    for (int m = 0; m < all.size(); m++) {
      assertThat(all.get(m).decisionLimit()).isEqualTo((Double) limits[m].upper());
      assertThat(all.get(m).shrunk()).isEqualTo((Double) shrunk.groups().get(m).mean());
    }
  }

  @Test
  void letsNoMoldOfFourCastsTopTheTable() {
    MoldLives lives = wheel(8, 60, 4);
    double[] offsets = {0, 0, 0, 0, 0, 0, 0.4, 0.4};
    List<Standing> all =
        MoldStandings.of("thickness", values(lives, offsets, 3), lives, MM).stream()
            .map(Objects::requireNonNull)
            .toList();
    Standing known = all.get(6);
    Standing few = all.get(7);
    assertThat(known.standsOut()).isTrue();
    assertThat(Objects.requireNonNull(few.decisionLimit()))
        .isGreaterThan(2 * Objects.requireNonNull(known.decisionLimit()));
    assertThat(Math.abs(Objects.requireNonNull(few.shrunk()))).isLessThan(Math.abs(few.offset()));
    assertThat(few.trend()).isNull();
  }

  /** One wheel in twenty without differences may have a mold that stands out. */
  @Test
  void keepsTheErrorRateOfAllMoldsTogether() {
    MoldLives lives = wheel(13, 40, 40);
    int wrong = 0;
    int wheels = 200;
    for (int w = 0; w < wheels; w++) {
      wrong +=
          MoldStandings.of("thickness", values(lives, new double[13], w), lives, MM).stream()
                  .map(Objects::requireNonNull)
                  .anyMatch(Standing::standsOut)
              ? 1
              : 0;
    }
    assertThat((double) wrong / wheels).isLessThan(0.1);
  }

  @Test
  void takesTurnsOutOfTheOffset() {
    MoldLives lives = wheel(8, 60, 60);
    double[] offsets = {0.7, 0, 0, 0, 0, 0, 0, -0.7};
    Standing first =
        Objects.requireNonNull(
            MoldStandings.of("thickness", values(lives, offsets, 9), lives, MM).get(0));
    assertThat(first.offset()).isCloseTo(0.7, within(0.12));
    assertThat(first.offsetLow()).isLessThan(0.7);
    assertThat(first.offsetHigh()).isGreaterThan(0.7);
  }
}
