package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Setting;
import org.evenpour.control.Episode;
import org.junit.jupiter.api.Test;

/**
 * Made-up records in which it is known what a setting does. The settings' names mean nothing to the
 * linker.
 */
class LinkerTest {
  private static final int TURNS = 300;

  private static double[][] noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] z = new double[TURNS][Cells.MOLDS];
    for (double[] turn : z) {
      for (int m = 0; m < turn.length; m++) {
        turn[m] = random.nextGaussian();
      }
    }
    return z;
  }

  private static Finding of(List<Finding> findings, String name) {
    return findings.stream()
        .filter(
            f -> {
              Setting setting = f.setting();
              CastingEvent event = f.event();
              return setting != null
                  ? setting.name().equals(name)
                  : event != null && event.kind().equals(name);
            })
        .findFirst()
        .orElseThrow();
  }

  @Test
  void recoversAnEffectWithItsLagAndItsError() {
    int inside = 0;
    for (int seed = 0; seed < 60; seed++) {
      double[][] x = noise(seed);
      double[][] e = noise(1000 + seed);
      Cells cells =
          new Cells(TURNS, (t, m) -> 390 + m + e[t][m] + (t < 2 ? 0 : 0.5 * x[t - 2][m]))
              .setting("alpha", 2, (t, m) -> x[t][m]);
      TurnGrid grid = cells.grid();
      EffectSize effect =
          new Linker(grid, List.of())
              .effect(grid.record().characteristics().get(0), grid.record().settings().get(0))
              .molds();
      assertThat(effect.perUnit()).isCloseTo(0.5, within(0.08));
      if (Math.abs(effect.perUnit() - 0.5) < 1.96 * effect.error()) {
        inside++;
      }
    }
    // 95 % intervals: 57 of 60, give or take three standard errors.
    assertThat(inside).isBetween(52, 60);
  }

  /**
   * A coat builds up: 0.2 of the effect comes at once, 0.6 by what stays in the mold, of which 70 %
   * is kept. Asked is what a lasting change does, 0.8, mold against mold and turn against turn; by
   * one lag alone it would be found half as large.
   */
  @Test
  void countsWhatIsCarriedOverToLaterPours() {
    int inside = 0;
    int insideWheel = 0;
    for (int seed = 0; seed < 40; seed++) {
      double[][] own = noise(seed);
      SplittableRandom random = new SplittableRandom(seed);
      double[][] x = new double[TURNS][Cells.MOLDS];
      double[][] coat = new double[TURNS][Cells.MOLDS];
      double wheel = 0;
      for (int t = 0; t < TURNS; t++) {
        wheel = 0.9 * wheel + 0.3 * random.nextGaussian();
        for (int m = 0; m < Cells.MOLDS; m++) {
          x[t][m] = wheel + own[t][m];
          coat[t][m] = t == 0 ? x[t][m] : 0.7 * coat[t - 1][m] + 0.3 * x[t][m];
        }
      }
      double[][] e = noise(3000 + seed);
      Cells cells =
          new Cells(TURNS, (t, m) -> 390 + m + 0.2 * x[t][m] + 0.6 * coat[t][m] + e[t][m])
              .setting("alpha", 0, (t, m) -> x[t][m]);
      TurnGrid grid = cells.grid();
      EffectSize.Levels effect =
          new Linker(grid, List.of())
              .effect(grid.record().characteristics().get(0), grid.record().settings().get(0));
      inside += holds(effect.molds(), 0.8) ? 1 : 0;
      insideWheel += holds(effect.wheel(), 0.8) ? 1 : 0;
    }
    // 95 % intervals: 38 of 40, give or take three standard errors.
    assertThat(inside).isBetween(34, 40);
    assertThat(insideWheel).isBetween(34, 40);
  }

  private static boolean holds(EffectSize effect, double truth) {
    return Math.abs(effect.perUnit() - truth) < 1.96 * effect.error();
  }

  /**
   * What is set two turns before the pour goes along with what acts on the pour itself, because
   * both swing together: held as it stood then, the one that acts takes nothing from the other.
   */
  @Test
  void givesAnEarlierSettingNoPartOfWhatALaterOneDoes() {
    int inside = 0;
    for (int seed = 0; seed < 40; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] acts = new double[TURNS];
      double[] early = new double[TURNS];
      for (int t = 0; t < TURNS; t++) {
        acts[t] = t < 2 ? 0 : 1.6 * acts[t - 1] - 0.7 * acts[t - 2] + 0.3 * random.nextGaussian();
        early[t] = acts[t] + 0.7 * random.nextGaussian();
      }
      double[][] e = noise(2000 + seed);
      Cells cells =
          new Cells(TURNS, (t, m) -> 390 + e[t][m] + acts[t])
              .setting("early", 2, (t, m) -> early[t])
              .setting("acts", 0, (t, m) -> acts[t]);
      TurnGrid grid = cells.grid();
      EffectSize effect =
          new Linker(grid, List.of())
              .effect(grid.record().characteristics().get(0), grid.record().settings().get(0))
              .wheel();
      inside += Math.abs(effect.perUnit()) < 1.96 * effect.error() ? 1 : 0;
    }
    // 95 % intervals: 38 of 40, give or take three standard errors.
    assertThat(inside).isBetween(34, 40);
  }

  @Test
  void gradesStrongWhatMovedThenAndExplainsIt() {
    double[][] x = noise(1);
    double[][] e = noise(2);
    Cells.Value alpha = (t, m) -> x[t][m] + (m == 4 && t >= 200 && t <= 240 ? -6 : 0);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m] + 0.5 * alpha.at(t, m))
            .setting("alpha", 0, alpha)
            .setting("beta", 0, (t, m) -> noise(3)[t][m]);

    List<Finding> found = cells.examine(Cells.episode(Episode.Chart.MOLD, 4, 200, 240, -3));

    Finding cause = of(found, "alpha");
    assertThat(cause.movedBy()).isCloseTo(-6, within(0.7));
    assertThat(cause.share()).isCloseTo(1, within(0.3));
    assertThat(cause.shareLow()).isLessThan(1);
    assertThat(cause.shareHigh()).isGreaterThan(1);
    assertThat(cause.sinceTurn()).isBetween(1198, 1202);
    assertThat(cause.grade(cause.p())).isEqualTo(Finding.Grade.STRONG);
    assertThat(of(found, "beta").grade(1)).isEqualTo(Finding.Grade.NONE);
  }

  @Test
  void callsWhatMovedWithoutAnyEffectNoCause() {
    double[][] x = noise(4);
    double[][] e = noise(5);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m] + (m == 4 && t >= 200 ? -3 : 0))
            .setting("decoy", 0, (t, m) -> x[t][m] + (m == 4 && t >= 200 ? 5 : 0));

    Finding decoy = of(cells.examine(Cells.episode(Episode.Chart.MOLD, 4, 200, 299, -3)), "decoy");

    assertThat(decoy.p()).isLessThan(1e-6);
    assertThat(decoy.grade(decoy.p())).isEqualTo(Finding.Grade.NONE);
  }

  @Test
  void doesNotBlameTheWholeWheelsDriftForOneMold() {
    double[][] e = noise(6);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m] + (m == 4 && t >= 200 ? -3 : 0))
            .setting("common", 0, (t, m) -> t >= 200 ? 50 + e[t][0] : 20 + e[t][1]);

    Finding common =
        of(cells.examine(Cells.episode(Episode.Chart.MOLD, 4, 200, 299, -3)), "common");

    assertThat(common.movedBy()).isCloseTo(0, within(1e-9));
    assertThat(common.grade(common.p())).isEqualTo(Finding.Grade.NONE);
  }

  @Test
  void explainsTheWheelBySettingsOfTheWheel() {
    SplittableRandom random = new SplittableRandom(7);
    double[] s = new double[TURNS];
    for (int t = 1; t < TURNS; t++) {
      s[t] = 0.7 * s[t - 1] + random.nextGaussian();
    }
    double[][] e = noise(8);
    Cells.Value melt = (t, m) -> 1170 + s[t] + (t >= 150 && t < 180 ? 12 : 0);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m] + 0.4 * (melt.at(t, m) - 1170))
            .setting("gamma", 0, melt);

    Finding cause =
        of(cells.examine(Cells.episode(Episode.Chart.WHEEL, -1, 150, 179, 4.8)), "gamma");

    assertThat(cause.movedBy()).isCloseTo(12, within(1.5));
    assertThat(cause.share()).isCloseTo(1, within(0.35));
    assertThat(cause.grade(cause.p())).isEqualTo(Finding.Grade.STRONG);
  }

  /**
   * Two slow drifts always look related: a wandering setting must not count as moved by chance too
   * often.
   */
  @Test
  void isNotImpressedByWandering() {
    int impressed = 0;
    for (int seed = 0; seed < 200; seed++) {
      SplittableRandom random = new SplittableRandom(9000 + seed);
      double[] before = new double[120];
      double[] during = new double[40];
      double x = 3 * random.nextGaussian();
      for (int t = 0; t < 160; t++) {
        x = 0.9 * x + random.nextGaussian();
        if (t < 120) {
          before[t] = x;
        } else {
          during[t - 120] = x;
        }
      }
      if (Move.between(before, during).p() < 0.05) {
        impressed++;
      }
    }
    // 5 % are asked for; ignoring the autocorrelation of 0.9 would give some 60 %.
    assertThat(impressed).isLessThan(40);
  }

  @Test
  void tellsEventsAtTheMoldFromEventsElsewhere() {
    double[][] e = noise(10);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m])
            .event("mold_changed", 201, "5")
            .event("mold_changed", 200, "7")
            .event("mold_changed", 50, "5")
            .event("wash_batch", 100, "");

    List<Finding> found = cells.examine(Cells.episode(Episode.Chart.MOLD, 4, 200, 240, -3));

    assertThat(found).filteredOn(Finding::isNear).hasSize(1);
    Finding change = of(found, "mold_changed");
    assertThat(change.sinceTurn()).isEqualTo(1201);
    assertThat(change.timingFits()).isTrue();
    assertThat(change.grade(change.p())).isEqualTo(Finding.Grade.STRONG);
    assertThat(of(found, "wash_batch").grade(0)).isEqualTo(Finding.Grade.NONE);
  }

  @Test
  void takesAChangedCategoryForAnEvent() {
    double[][] e = noise(11);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m])
            .category("batch", (t, m) -> t < 201 ? 1 : 2)
            .category("shift", (t, m) -> t / 5);

    List<Finding> found = cells.examine(Cells.episode(Episode.Chart.WHEEL, -1, 200, 240, 3));

    assertThat(of(found, "batch").p()).isLessThan(0.05);
    assertThat(of(found, "shift").p()).isGreaterThan(0.1);
    assertThat(of(found, "batch").grade(0.001)).isEqualTo(Finding.Grade.MOVED);
  }

  @Test
  void saysNothingOfASettingThatNeverMoved() {
    double[][] e = noise(12);
    Cells cells =
        new Cells(TURNS, (t, m) -> 390 + e[t][m])
            .setting("fixed", 0, (t, m) -> 7)
            .setting("missing", 0, (t, m) -> Double.NaN);

    for (Finding finding : cells.examine(Cells.episode(Episode.Chart.MOLD, 4, 200, 240, -3))) {
      assertThat(finding.expected()).isNaN();
      assertThat(finding.grade(finding.p())).isEqualTo(Finding.Grade.NONE);
    }
  }
}
