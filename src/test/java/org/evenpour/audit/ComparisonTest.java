package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.findings.ComparisonReport.What;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two stretches of simulated wheels of which is known what differs. */
class ComparisonTest {
  private static final int TURNS = 60;

  @TempDir
  @SuppressWarnings("NullAway.Init") // made before each test
  Path folder;

  private CastingRecord read(List<String> lines) throws Exception {
    Path file = folder.resolve("log.csv");
    Files.write(file, lines, StandardCharsets.UTF_8);
    return LogReader.read(
        List.of(file), Profiles.NONE, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
  }

  /** The log cut in two, each half audited as if the other were not there. */
  private ComparisonReport halves(CharSequence log, @Nullable String mold) throws Exception {
    List<String> lines = log.toString().lines().toList();
    int half = 1 + TURNS * WanderingWheel.MOLDS;
    List<String> later = new ArrayList<>(List.of(lines.get(0)));
    later.addAll(lines.subList(half, lines.size()));
    CastingRecord first = read(lines.subList(0, half));
    CastingRecord second = read(later);
    return Comparison.of(
        new Comparison.Part(first, Audit.run(first)),
        new Comparison.Part(second, Audit.run(second)),
        mold);
  }

  private static Compared level(ComparisonReport report) {
    return report.all().stream().filter(one -> one.what() == What.LEVEL).findFirst().orElseThrow();
  }

  /**
   * Turns that hang together (AR(1), φ = 0.7, half as wide as a pour) and nothing that differs: of
   * 30 wheels one or two may have anything called real, all molds considered; 30 trials at 5 % give
   * more than 5 in 3 of 1,000 (binomial). The wheel's own level by itself is one question, with the
   * same bound: as if its turns were independent it would be called real in a third of them.
   */
  @Test
  void whereNothingDiffersHardlyAnythingIsCalledReal() throws Exception {
    int families = 0;
    int levels = 0;
    for (int seed = 1; seed <= 30; seed++) {
      WanderingWheel wheel = new WanderingWheel(0, 0.9, 1, 0.7, false);
      ComparisonReport report = halves(wheel.log(seed, 2 * TURNS, turn -> 0), null);
      assertThat(report.molds()).isEqualTo(WanderingWheel.MOLDS);
      families += report.all().stream().anyMatch(Compared::isReal) ? 1 : 0;
      levels += level(report).p() < ComparisonReport.LEVEL ? 1 : 0;
    }
    assertThat(families).isLessThanOrEqualTo(5);
    assertThat(levels).isLessThanOrEqualTo(5);
  }

  /** 1.5 kg on the whole wheel, by turns of 0.3 kg: real, of that size, and of no mold alone. */
  @Test
  void aStepOfTheWheelIsRealAndNoMolds() throws Exception {
    WanderingWheel wheel = new WanderingWheel(0, 0.9, 0.3, 0.3, false);
    ComparisonReport report = halves(wheel.log(7, 2 * TURNS, t -> t < TURNS ? 0 : 1.5), null);
    Compared its = level(report);
    assertThat(its.isReal()).isTrue();
    assertThat(Objects.requireNonNull(its.difference().low())).isLessThan(1.5);
    assertThat(Objects.requireNonNull(its.difference().high())).isGreaterThan(1.5);
    assertThat(its.difference().value()).isCloseTo(1.5, within(0.4));
    assertThat(report.all().stream().filter(Compared::isReal)).containsExactly(its);
  }

  /** Mold 14 sits 2 kg lower and scatters as before, once it was leveled: asked or not asked. */
  @Test
  void whatWasDoneToAMoldIsAnsweredForThatMold() throws Exception {
    String log = moldStep(new SplittableRandom(11), "14", -2);
    ComparisonReport asked = halves(log, "14");
    assertThat(asked.asked(true)).hasSize(1);
    Compared its = asked.asked(true).get(0);
    assertThat(its.isReal()).isTrue();
    assertThat(its.difference().value()).isCloseTo(-2, within(0.8));
    assertThat(its.corrected()).isEqualTo(its.p());
    assertThat(asked.asked(false).stream().filter(Compared::isReal)).isEmpty();

    ComparisonReport among = halves(log, null);
    Compared same =
        among.all().stream().filter(one -> "14".equals(one.mold())).findFirst().orElseThrow();
    assertThat(same.p()).isEqualTo(its.p());
    assertThat(same.corrected()).isGreaterThan(its.corrected());
  }

  private static String moldStep(SplittableRandom random, String mold, double by) {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg\n");
    java.time.Instant begin = java.time.Instant.parse("2026-03-02T06:00:00Z");
    for (int t = 0; t < 2 * TURNS; t++) {
      for (int m = 1; m <= WanderingWheel.MOLDS; m++) {
        double moved = t >= TURNS && mold.equals(String.valueOf(m)) ? by : 0;
        double mass = 390 + moved + 1.2 * random.nextGaussian();
        long at = (long) (t * WanderingWheel.MOLDS + m) * 28_800L;
        log.append(begin.plusMillis(at)).append(',').append(t + 1).append(',').append(m);
        log.append(',').append(String.format(java.util.Locale.ROOT, "%.3f", mass)).append('\n');
      }
    }
    return log.toString();
  }

  /** Marriott and Pope (1954), Kendall (1954): a short series shows too little of its memory. */
  @Test
  void theMemoryOfShortSeriesIsPutBack() {
    SplittableRandom random = new SplittableRandom(3);
    double sum = 0;
    int trials = 4000;
    for (int trial = 0; trial < trials; trial++) {
      sum += Comparison.memory(wander(random, 40, 0.5), wander(random, 40, 0.5));
    }
    // Plain lag-one correlations average 0.5 − 3/40 = 0.43.
    assertThat(sum / trials).isCloseTo(0.5, within(0.02));
  }

  private static double[] wander(SplittableRandom random, int n, double phi) {
    double[] x = new double[n];
    double at = random.nextGaussian();
    for (int i = 0; i < n; i++) {
      x[i] = at;
      at = phi * at + Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    return x;
  }
}
