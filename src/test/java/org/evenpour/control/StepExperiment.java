package org.evenpour.control;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.evenpour.casting.WheelProfile;
import org.evenpour.stats.LevelSteps;

/**
 * How often a fault that lies within the record from which limits are proposed is found in that
 * same record, and how often a record without a fault raises an alarm of the wheel.
 *
 * <p>Wheels as in {@link AlarmExperiment}: 26 molds with offsets (s.d. 1.5 kg), pours of s.d. 2 kg,
 * turn effects of s.d. 1.2 kg that are a first-order autoregression, and an anode every 28.8
 * seconds, one false alarm a shift. The fault lifts all molds by so many s.d. of the turn effects
 * for 40 to 85 turns, up or down, anywhere but in the first 15 turns. It counts as found where an
 * episode of the wheel in its direction overlaps it and has its onset within ten turns of it.
 *
 * <p>Before that, how many series without a step {@link LevelSteps} cuts, in per cent.
 */
public final class StepExperiment {
  private static final int MOLDS = 26;
  private static final double POUR_SIGMA = 2;
  private static final double TURN_SIGMA = 1.2;
  private static final double OFFSET_SIGMA = 1.5;
  private static final long ANODE_MILLIS = 28_800;
  private static final int EARLIEST = 15;
  private static final int ONSET = 10;

  private StepExperiment() {}

  private record Setup(int turns, double phi, double size, int shortest, int longest) {}

  /** What one record gave: episodes of the wheel, whether the fault was found, φ that was taken. */
  private record Outcome(int wheelEpisodes, boolean found, boolean foundOnset, double phi) {}

  private static Outcome run(Setup setup, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int turns = setup.turns();
    double[] offset = new double[MOLDS];
    for (int m = 0; m < MOLDS; m++) {
      offset[m] = OFFSET_SIGMA * random.nextGaussian();
    }
    int length = setup.shortest() + random.nextInt(setup.longest() - setup.shortest() + 1);
    int from = EARLIEST + random.nextInt(turns - EARLIEST - length + 1);
    double step = (random.nextBoolean() ? 1 : -1) * setup.size() * TURN_SIGMA;
    double effect = random.nextGaussian();
    double p = setup.phi();
    int n = turns * MOLDS;
    int[] turn = new int[n];
    int[] mold = new int[n];
    double[] value = new double[n];
    for (int t = 0; t < turns; t++) {
      effect = p * effect + Math.sqrt(1 - p * p) * random.nextGaussian();
      double level = 390 + TURN_SIGMA * effect + (t >= from && t < from + length ? step : 0);
      for (int m = 0; m < MOLDS; m++) {
        int i = t * MOLDS + m;
        turn[i] = t;
        mold[i] = m;
        value[i] = level + offset[m] + POUR_SIGMA * random.nextGaussian();
      }
    }
    WheelProfile profile = WheelOfNumbers.quietProfile(1);
    LimitsInForce limits =
        LimitProposal.propose(
            new BaseRecord(turn, mold, new int[n], value, turns, MOLDS, 1),
            AlarmBudget.of(profile, MOLDS, 1, 1, false, MOLDS * ANODE_MILLIS / 60_000.0));
    if (limits == null) {
      throw new AssertionError("no limits were proposed");
    }
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, profile, (at, millis, x, anodes, startUp) -> {});
    for (int i = 0; i < n; i++) {
      monitor.accept(i * ANODE_MILLIS, turn[i], mold[i], -1, -1, value[i]);
    }
    monitor.finish();
    List<Episode> wheel =
        monitor.episodes().stream().filter(e -> e.chart() == Episode.Chart.WHEEL).toList();
    int end = from + length - 1;
    boolean found = false;
    boolean onset = false;
    for (Episode e : wheel) {
      boolean overlaps =
          e.direction() == Math.signum(step) && e.firstTurn() <= end && e.lastTurn() >= from;
      found |= overlaps;
      onset |= overlaps && Math.abs(e.sinceTurn() - from) <= ONSET;
    }
    return new Outcome(wheel.size(), found, onset, limits.wheel().correlation());
  }

  /**
   * Prints the table.
   *
   * @param args how many records for each line (default 200); how many series for each line of
   *     those without a step (default 2000)
   */
  public static void main(String[] args) {
    int records = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    printCut(args.length > 1 ? Integer.parseInt(args[1]) : 2_000);
    System.out.println(
        "| turns | φ | fault, s.d. | turns of it | found | with its onset | wheel episodes a record | φ taken |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    Setup[] setups = {
      new Setup(260, 0.55, 2, 40, 85),
      new Setup(260, 0.55, 3, 40, 85),
      new Setup(260, 0.55, 4, 40, 85),
      new Setup(160, 0.55, 2, 40, 85),
      new Setup(160, 0.55, 3, 40, 85),
      new Setup(160, 0.55, 4, 40, 85),
      new Setup(60, 0, 0, 0, 0),
      new Setup(60, 0.7, 0, 0, 0),
      new Setup(160, 0.55, 0, 0, 0),
      new Setup(260, 0, 0, 0, 0),
      new Setup(260, 0.55, 0, 0, 0),
      new Setup(260, 0.8, 0, 0, 0),
      new Setup(1500, 0.55, 0, 0, 0)
    };
    for (Setup s : setups) {
      Outcome[] all =
          IntStream.range(0, records)
              .parallel()
              .mapToObj(r -> run(s, 70_000 + r))
              .toArray(Outcome[]::new);
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.0f | %d–%d | %s | %s | %.3f | %.2f |%n",
          s.turns(),
          s.phi(),
          s.size(),
          s.shortest(),
          s.longest(),
          s.size() == 0 ? "" : percent(all, true),
          s.size() == 0 ? "" : percent(all, false),
          Arrays.stream(all).mapToInt(Outcome::wheelEpisodes).average().orElseThrow(),
          Arrays.stream(all).mapToDouble(Outcome::phi).average().orElseThrow());
    }
  }

  private static void printCut(int series) {
    System.out.println(
        "| points | φ | normal | normal, 30 % white | t, 5 d.f. | t, 30 % white | ms a series |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (int points : new int[] {60, 120, 260, 600, 1500}) {
      for (double phi : new double[] {0, 0.3, 0.55, 0.8}) {
        StringBuilder line = new StringBuilder();
        long begun = System.nanoTime();
        for (int kind = 0; kind < 4; kind++) {
          int cut = 0;
          double white = kind % 2 == 0 ? 0 : 0.3;
          for (int s = 0; s < series; s++) {
            double[] x = series(new SplittableRandom(9_000 + s), points, phi, white, kind > 1);
            cut += LevelSteps.of(x, white).cuts().length > 2 ? 1 : 0;
          }
          line.append(String.format(Locale.ROOT, " %.1f |", 100.0 * cut / series));
        }
        double millis = (System.nanoTime() - begun) / 4e6 / series;
        System.out.printf(Locale.ROOT, "| %d | %.2f |%s %.1f |%n", points, phi, line, millis);
      }
    }
  }

  /**
   * An autoregression of variance {@code 1 − white}, whose innovations may be t, and white noise.
   */
  private static double[] series(
      SplittableRandom random, int points, double phi, double white, boolean heavy) {
    double[] x = new double[points];
    double effect = random.nextGaussian();
    for (int i = 0; i < points; i++) {
      double fresh = random.nextGaussian();
      if (heavy) {
        double squares = 0;
        for (int k = 0; k < 5; k++) {
          double g = random.nextGaussian();
          squares += g * g;
        }
        fresh /= Math.sqrt(squares / 3);
      }
      effect = phi * effect + Math.sqrt(1 - phi * phi) * fresh;
      x[i] = Math.sqrt(1 - white) * effect + Math.sqrt(white) * random.nextGaussian();
    }
    return x;
  }

  private static String percent(Outcome[] all, boolean anywhere) {
    long found = Arrays.stream(all).filter(o -> anywhere ? o.found() : o.foundOnset()).count();
    return String.format(Locale.ROOT, "%.1f %%", 100.0 * found / all.length);
  }
}
