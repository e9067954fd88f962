package org.evenpour.control;

import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.evenpour.casting.WheelProfile;
import org.evenpour.stats.Cusum;
import org.evenpour.stats.RunLengthLimits;

/**
 * How soon a ladle side that is off is found, against the best that could be done, and how often
 * the side that is named is the one that moved.
 *
 * <p>Wheels as in {@link AlarmExperiment}, two sides with 13 molds each. After 40 quiet turns one
 * side moves. The best is the CUSUM designed for just that shift (k half of it) on the contrast
 * between the sides' means, which knows offsets and sigma and alarms as often as the sides' chart
 * may.
 */
public final class SideExperiment {
  private static final int MOLDS = 26;
  private static final double POUR_SIGMA = 2;
  private static final double TURN_SIGMA = 1.2;
  private static final double PHI = 0.55;
  private static final double OFFSET_SIGMA = 1.5;
  private static final long ANODE_MILLIS = 28_800;
  private static final double TURN_MINUTES = MOLDS * ANODE_MILLIS / 60_000.0;
  private static final double CONTRAST_SIGMA = POUR_SIGMA * Math.sqrt(4.0 / MOLDS);
  private static final int WARM = 40;
  private static final int LONGEST = 300;
  private static final int LATER = 60;

  /** How long the sides' chart is watched without a fault. */
  private static final int QUIET = 1_000;

  private SideExperiment() {}

  /** A wheel that goes on for ever. */
  private static final class Wheel {
    private final SplittableRandom random;
    private final double[] offset = new double[MOLDS];
    private double effect;

    Wheel(long seed) {
      random = new SplittableRandom(seed);
      for (int m = 0; m < MOLDS; m++) {
        offset[m] = OFFSET_SIGMA * random.nextGaussian();
      }
      effect = random.nextGaussian();
    }

    double[] turn(int side, double by) {
      effect = PHI * effect + Math.sqrt(1 - PHI * PHI) * random.nextGaussian();
      double[] x = new double[MOLDS];
      for (int m = 0; m < MOLDS; m++) {
        x[m] =
            390
                + offset[m]
                + TURN_SIGMA * effect
                + POUR_SIGMA * random.nextGaussian()
                + (m % 2 == side ? by : 0);
      }
      return x;
    }

    LimitsInForce limits(int turns, WheelProfile profile) {
      int n = turns * MOLDS;
      int[] turn = new int[n];
      int[] mold = new int[n];
      int[] side = new int[n];
      double[] value = new double[n];
      for (int t = 0; t < turns; t++) {
        double[] x = turn(-1, 0);
        for (int m = 0; m < MOLDS; m++) {
          int i = t * MOLDS + m;
          turn[i] = t;
          mold[i] = m;
          side[i] = m % 2;
          value[i] = x[m];
        }
      }
      return Objects.requireNonNull(
          LimitProposal.propose(
              new BaseRecord(turn, mold, side, value, turns, MOLDS, 2),
              AlarmBudget.of(profile, MOLDS, 2, 1, false, TURN_MINUTES)));
    }
  }

  private static CharacteristicMonitor monitor(LimitsInForce limits, WheelProfile profile) {
    return new CharacteristicMonitor(limits, profile, (t, at, x, anodes, startUp) -> {});
  }

  private static void accept(CharacteristicMonitor monitor, int t, double[] x) {
    for (int m = 0; m < MOLDS; m++) {
      monitor.accept(((long) t * MOLDS + m) * ANODE_MILLIS, t, m, m % 2, -1, x[m]);
    }
  }

  /**
   * Turns until the chart signals, until the best does, whether the right side was named then, and
   * 60 turns after the onset, and the probability that was said of it at first; empty where a false
   * alarm was under way.
   */
  private static double[] delay(Wheel wheel, LimitsInForce limits, double by, int side, double h) {
    CharacteristicMonitor monitor = monitor(limits, WheelOfNumbers.quietProfile(1));
    double shift = Math.abs(by) / CONTRAST_SIGMA;
    Cusum best = new Cusum(0, shift / 2, h);
    double[] row = new double[5];
    for (int t = 0; t < WARM + LONGEST; t++) {
      double[] x = wheel.turn(t < WARM ? -1 : side, by);
      accept(monitor, t, x);
      double contrast = 0;
      for (int m = 0; m < MOLDS; m++) {
        contrast += (m % 2 == 1 ? 2 : -2) * (x[m] - 390 - wheel.offset[m]) / MOLDS;
      }
      boolean signal = best.accept(contrast / CONTRAST_SIGMA);
      if (t < WARM) {
        if (signal) {
          best.restart(0);
        }
        continue;
      }
      int turns = t - WARM + 1;
      if (signal && row[1] == 0) {
        row[1] = turns;
      }
      if (row[0] == 0 || turns == LATER) {
        monitor.finish();
        for (Episode e : monitor.episodes()) {
          if (e.chart() == Episode.Chart.SIDE && e.open()) {
            if (e.firstTurn() < WARM) {
              return new double[0];
            }
            double right = e.index() == side && e.direction() == Math.signum(by) ? 1 : 0;
            if (row[0] == 0) {
              row[0] = turns;
              row[2] = right;
              row[4] = 1 - e.otherSide();
            }
            row[3] = turns <= LATER ? right : row[3];
          }
        }
      }
      if (row[0] > 0 && row[1] > 0 && turns >= LATER) {
        break;
      }
    }
    row[0] = row[0] == 0 ? LONGEST : row[0];
    row[1] = row[1] == 0 ? LONGEST : row[1];
    return row;
  }

  /** The sides' false alarms over those that they may raise. */
  private static double falseAlarms(int base, int wheels, double rate) {
    WheelProfile profile = WheelOfNumbers.quietProfile(1);
    long alarms =
        IntStream.range(0, wheels)
            .parallel()
            .mapToLong(
                w -> {
                  Wheel wheel = new Wheel(20_000 + w);
                  CharacteristicMonitor monitor = monitor(wheel.limits(base, profile), profile);
                  for (int t = 0; t < QUIET; t++) {
                    accept(monitor, t, wheel.turn(-1, 0));
                  }
                  monitor.finish();
                  return monitor.episodes().stream()
                      .filter(e -> e.chart() == Episode.Chart.SIDE)
                      .count();
                })
            .sum();
    return alarms / (rate * QUIET * wheels);
  }

  /**
   * Prints the table.
   *
   * @param args how many wheels for each line (default 200), five shifts each
   */
  public static void main(String[] args) {
    int wheels = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    WheelProfile profile = WheelOfNumbers.quietProfile(1);
    double rate = AlarmBudget.of(profile, MOLDS, 2, 1, false, TURN_MINUTES).sideShift();
    System.out.println(
        "| base turns | kg | turns until found | best | ratio | not in 300 | right side then | as said | after"
            + " 60 turns | false alarms over allowed |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (int base : new int[] {400, 160, 60}) {
      double alarms = falseAlarms(base, wheels, rate);
      for (double by : new double[] {0.8, 1.6}) {
        double h = RunLengthLimits.cusum(by / CONTRAST_SIGMA / 2, 1 / rate);
        double[][] rows =
            IntStream.range(0, wheels)
                .parallel()
                .boxed()
                .flatMap(
                    w -> {
                      Wheel wheel = new Wheel(4_000 + w);
                      LimitsInForce limits = wheel.limits(base, profile);
                      return IntStream.range(0, 5)
                          .mapToObj(q -> delay(wheel, limits, q % 3 == 0 ? -by : by, q % 2, h));
                    })
                .filter(row -> row.length > 0)
                .toArray(double[][]::new);
        double[] mean = new double[5];
        for (double[] row : rows) {
          for (int i = 0; i < mean.length; i++) {
            mean[i] += row[i] / rows.length;
          }
        }
        System.out.printf(
            Locale.ROOT,
            "| %d | %.1f | %.2f | %.2f | %.2f | %d of %d | %.0f %% | %.0f %% | %.0f %% | %.2f |%n",
            base,
            by,
            mean[0],
            mean[1],
            mean[0] / mean[1],
            Arrays.stream(rows).filter(row -> row[0] == LONGEST).count(),
            rows.length,
            100 * mean[2],
            100 * mean[4],
            100 * mean[3],
            alarms);
      }
    }
  }
}
