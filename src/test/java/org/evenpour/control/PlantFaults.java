package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.evenpour.control.PlantWatch.Mean;
import org.evenpour.control.PlantWatch.Watched;

/** What the engine makes of faults that are in the record itself, or of scatter: see PlantTrial. */
final class PlantFaults {
  /** Quiet turns between the base and what is put on the wheel. */
  static final int WARM = 40;

  private static final int BASE = 400;
  private static final int ONSET_WITHIN = 10;
  private static final int GROSS_WITHIN = 3;
  private static final int GROSS_TURNS = 300;
  private static final int SCATTER_TURNS = 100;

  private PlantFaults() {}

  /** Draws for a fault, apart from the wheel's own. */
  private static SplittableRandom fault(long seed) {
    return new SplittableRandom(seed ^ 0x5DEECE66DL);
  }

  /**
   * A lasting fault of the whole wheel in the record that is its own base.
   *
   * @return found (share), other episodes a record: all and by scope
   */
  static String wheelFault(
      PlantWheel.Plant plant, int turns, int after, int least, int most, int wheels, long seed) {
    Watched watched = new Watched(plant);
    double[][] rows =
        PlantWatch.each(
            wheels,
            seed,
            s -> {
              SplittableRandom random = fault(s);
              int length = random.nextInt(least, most + 1);
              int from = random.nextInt(after, turns - length + 1);
              int to = from + length;
              int sign = random.nextBoolean() ? 1 : -1;
              double kg = sign * PlantWheel.TURN_SIGMA * (2 + 2 * random.nextDouble());
              PlantWheel wheel = new PlantWheel(plant, s).shiftWheel(from, to, kg);
              List<Episode> others = new ArrayList<>();
              double found = 0;
              for (Episode e : watched.audit(wheel.turns(turns))) {
                if (isOf(e, sign, from, to)) {
                  found = 1;
                } else {
                  others.add(e);
                }
              }
              return withFirst(found, PlantWatch.byScope(others));
            });
    return Mean.of(rows, 0).text(2) + " | " + scopesAfter(rows, 1);
  }

  private static boolean isOf(Episode e, int sign, int from, int to) {
    if (e.chart() != Episode.Chart.WHEEL || e.direction() != sign) {
      return false;
    }
    int common = Math.min(e.lastTurn() + 1, to) - Math.max(e.sinceTurn(), from);
    return 2 * common >= to - from || Math.abs(e.sinceTurn() - from) <= ONSET_WITHIN;
  }

  /**
   * Pours that scatter more for some turns after the base.
   *
   * @return episodes that begin meanwhile, all and by scope, and wheels without one of scatter
   */
  static String scatter(PlantWheel.Plant plant, double factor, int wheels, long seed) {
    Watched watched = new Watched(plant);
    int from = BASE + WARM;
    int to = from + SCATTER_TURNS;
    double[][] rows =
        PlantWatch.each(
            wheels,
            seed,
            s -> {
              PlantWheel wheel = new PlantWheel(plant, s).scatter(from, to, factor);
              CharacteristicMonitor monitor = watched.monitor(watched.limits(wheel.turns(BASE)));
              for (PlantWheel.Turn t : wheel.turns(WARM + SCATTER_TURNS + 20)) {
                watched.accept(monitor, t);
              }
              monitor.finish();
              List<Episode> during = new ArrayList<>();
              double without = 1;
              for (Episode e : monitor.episodes()) {
                if (e.firstTurn() >= from && e.firstTurn() < to) {
                  during.add(e);
                }
                if (e.chart() == Episode.Chart.SPREAD
                    && e.lastTurn() >= from
                    && e.firstTurn() < to) {
                  without = 0;
                }
              }
              return withFirst(without, PlantWatch.byScope(during));
            });
    return scopesAfter(rows, 1) + " | " + Mean.of(rows, 0).times(wheels).text(1);
  }

  /**
   * Gross steps of some molds in the middle of a record that is its own base.
   *
   * @param bothSigns each mold high or low by chance; else all high
   * @return share of the molds told; share of wheels whose wheel episode tells the step; episodes
   *     before the step; sound molds told as shifted by it
   */
  static String gross(
      PlantWheel.Plant plant, int faulty, boolean bothSigns, int wheels, long seed) {
    Watched watched = new Watched(plant);
    int molds = plant.molds();
    int step = GROSS_TURNS / 2;
    double[][] rows =
        PlantWatch.each(
            wheels,
            seed,
            s -> {
              SplittableRandom random = fault(s);
              int[] sign = new int[molds];
              PlantWheel wheel = new PlantWheel(plant, s);
              for (int left = faulty; left > 0; ) {
                int m = random.nextInt(molds);
                if (sign[m] == 0) {
                  sign[m] = bothSigns && random.nextBoolean() ? -1 : 1;
                  double sigma = 8 + 7 * random.nextDouble();
                  wheel.shiftMold(m, step, GROSS_TURNS, sign[m] * sigma * PlantWheel.POUR_SIGMA);
                  left--;
                }
              }
              boolean[] told = new boolean[molds];
              boolean[] sound = new boolean[molds];
              double ofWheel = 0;
              double before = 0;
              for (Episode e : watched.audit(wheel.turns(GROSS_TURNS))) {
                if (e.sinceTurn() < step - GROSS_WITHIN) {
                  before++;
                } else if (e.sinceTurn() <= step + GROSS_WITHIN) {
                  if (e.chart() == Episode.Chart.MOLD) {
                    told[e.index()] |= e.direction() == sign[e.index()];
                    sound[e.index()] |= sign[e.index()] == 0;
                  } else if (e.chart() == Episode.Chart.WHEEL && e.direction() > 0) {
                    ofWheel = 1;
                  }
                }
              }
              return new double[] {count(told), ofWheel, before, count(sound)};
            });
    return Mean.of(rows, 0).text(2)
        + " of "
        + faulty
        + " | "
        + Mean.of(rows, 1).text(2)
        + " | "
        + Mean.of(rows, 2).text(2)
        + " | "
        + Mean.of(rows, 3).text(2);
  }

  private static int count(boolean[] flags) {
    int n = 0;
    for (boolean flag : flags) {
      n += flag ? 1 : 0;
    }
    return n;
  }

  private static double[] withFirst(double first, double[] rest) {
    double[] row = new double[rest.length + 1];
    row[0] = first;
    System.arraycopy(rest, 0, row, 1, rest.length);
    return row;
  }

  private static String scopesAfter(double[][] rows, int skipped) {
    double[][] cut = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      cut[i] = Arrays.copyOfRange(rows[i], skipped, rows[i].length);
    }
    return PlantWatch.scopes(cut, 1);
  }
}
