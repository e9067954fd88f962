package org.evenpour.control;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.evenpour.control.PlantWatch.Mean;
import org.evenpour.control.PlantWatch.Watched;
import org.evenpour.stats.Cusum;
import org.evenpour.stats.RunLengthLimits;

/** How soon a mold or a ladle side that shifts is named: see PlantTrial. */
final class PlantDelays {
  private static final int BASE = 400;
  private static final int WARM = PlantFaults.WARM;
  private static final int LONGEST = 300;

  /** From here on the report says that the other side may have moved. */
  private static final double UNSURE = 0.1;

  /** Shifts that each wheel is given, one after the other. */
  private static final int EACH = 5;

  private PlantDelays() {}

  /** What the best possible chart says of a turn: +1 or −1 where it signals, else 0. */
  interface Best {
    int accept(double[] x);

    void restart();
  }

  /** A shift to be found: who is to be named, in which direction, and by what. */
  private record Sought(Episode.Chart chart, int index, int direction) {

    /** A mold is named by its chart or by a pour that it threw. */
    boolean named(Episode e) {
      boolean kind =
          e.chart() == chart || chart == Episode.Chart.MOLD && e.chart() == Episode.Chart.POUR;
      return kind && e.index() == index;
    }

    /** The same contrast, where the episode says that it may as well be this side that moved. */
    boolean toldWithDoubt(Episode e) {
      return chart == Episode.Chart.SIDE
          && e.chart() == chart
          && e.index() != index
          && e.direction() == -direction
          && e.otherSide() >= UNSURE;
    }

    /** Another side, or the wheel, is blamed. */
    boolean elsewhere(Episode e) {
      return chart == Episode.Chart.SIDE
          && (e.chart() == Episode.Chart.WHEEL
              || e.chart() == Episode.Chart.SIDE && e.index() != index && !toldWithDoubt(e));
    }
  }

  /**
   * One trial: turns until we and the best name it (LONGEST where it is missed), whether each
   * missed it, and whether another was blamed first, wheel and side. Empty where a false alarm of
   * just that mold or side was under way, which is no fair start: as AlarmExperiment does it.
   */
  private static double[] trial(
      Watched watched, LimitsInForce limits, PlantWheel wheel, Sought sought, Best best) {
    CharacteristicMonitor monitor = watched.monitor(limits);
    int from = wheel.next() + WARM; // when the shift begins
    int ours = 0;
    int its = 0;
    boolean wheelFirst = false;
    boolean sideFirst = false;
    while (wheel.next() < from + LONGEST && (ours == 0 || its == 0)) {
      PlantWheel.Turn turn = wheel.turn();
      watched.accept(monitor, turn);
      int signal = best.accept(turn.value());
      int after = turn.index() - from + 1;
      if (after <= 0) {
        if (signal != 0) {
          best.restart();
        }
        continue;
      }
      boolean right = sought.chart() == Episode.Chart.MOLD || signal == sought.direction();
      if (its == 0 && signal != 0 && right) {
        its = after;
      }
      if (ours > 0) {
        continue;
      }
      monitor.finish(); // looking closes the turn under way
      for (Episode e : monitor.episodes()) {
        boolean named = sought.named(e) && e.direction() == sought.direction();
        if ((named || sought.toldWithDoubt(e)) && e.firstTurn() >= from) {
          ours = after;
        } else if (sought.named(e) && e.chart() == sought.chart() && e.open()) {
          return new double[0];
        }
      }
      for (Episode e : monitor.episodes()) {
        if (ours == 0 && sought.elsewhere(e) && e.firstTurn() >= from) {
          wheelFirst |= e.chart() == Episode.Chart.WHEEL && e.direction() == sought.direction();
          sideFirst |= e.chart() == Episode.Chart.SIDE;
        }
      }
    }
    return new double[] {
      ours == 0 ? LONGEST : ours,
      its == 0 ? LONGEST : its,
      ours == 0 ? 1 : 0,
      its == 0 ? 1 : 0,
      wheelFirst ? 1 : 0,
      sideFirst ? 1 : 0
    };
  }

  /** Means over a wheel's trials, and how many there were; NaN where none was fair. */
  private static double[] meanOf(double[][] trials) {
    double[] mean = new double[7];
    int n = 0;
    for (double[] row : trials) {
      if (row.length > 0) {
        n++;
        for (int i = 0; i < row.length; i++) {
          mean[i] += row[i];
        }
      }
    }
    for (int i = 0; i < 6; i++) {
      mean[i] = n == 0 ? Double.NaN : mean[i] / n;
    }
    mean[6] = n;
    return mean;
  }

  /**
   * AlarmExperiment's best: knows the offsets and sigma, is made for this shift, has all budget.
   */
  private static final class BestOfMold implements Best {
    private final PlantWheel wheel;
    private final int mold;
    private final Cusum cusum;

    BestOfMold(PlantWheel wheel, int mold, double k, double h) {
      this.wheel = wheel;
      this.mold = mold;
      cusum = new Cusum(0, k, h);
    }

    @Override
    public int accept(double[] x) {
      double mean = 0;
      for (int m = 0; m < x.length; m++) {
        mean += (x[m] - PlantWheel.CENTER - wheel.offset(m)) / x.length;
      }
      double z = x[mold] - PlantWheel.CENTER - wheel.offset(mold) - mean;
      boolean rings = cusum.accept(z / (PlantWheel.POUR_SIGMA * Math.sqrt(1 - 1.0 / x.length)));
      return !rings ? 0 : cusum.signalsHigh() ? 1 : -1;
    }

    @Override
    public void restart() {
      cusum.restart(0);
    }
  }

  private static double[][] moldRows(PlantWheel.Plant plant, double sigma, int wheels, long seed) {
    Watched watched = new Watched(plant);
    int molds = plant.molds();
    double k = Math.abs(sigma) * Math.sqrt(1 - 1.0 / molds) / 2;
    double h = RunLengthLimits.cusum(k, plant.turnsPerShift() * molds);
    int mold = molds / 3;
    return PlantWatch.each(
        wheels,
        seed,
        s -> {
          PlantWheel wheel = new PlantWheel(plant, s);
          LimitsInForce limits = watched.limits(wheel.turns(BASE));
          double[][] trials = new double[EACH][];
          for (int i = 0; i < EACH; i++) {
            wheel.withoutFaults();
            int from = wheel.next() + WARM;
            wheel.shiftMold(mold, from, Integer.MAX_VALUE, sigma * PlantWheel.POUR_SIGMA);
            Sought sought = new Sought(Episode.Chart.MOLD, mold, sigma > 0 ? 1 : -1);
            trials[i] = trial(watched, limits, wheel, sought, new BestOfMold(wheel, mold, k, h));
          }
          return meanOf(trials);
        });
  }

  /**
   * A mold that shifts.
   *
   * @return turns of ours, of the best, their ratio, and ours over ours with normal pours
   */
  static String mold(PlantWheel.Plant plant, double sigma, int wheels, long seed) {
    double[][] rows = moldRows(plant, sigma, wheels, seed);
    String text =
        Mean.of(rows, 0).text(1)
            + " | "
            + Mean.of(rows, 1).text(1)
            + " | "
            + Mean.ratio(rows, 0, 1).text(2);
    if (plant.shape() == PourShape.NORMAL) {
      return text + " | 1";
    }
    double[][] normal = moldRows(PlantWheel.Plant.plain(PourShape.NORMAL), sigma, wheels, seed);
    double[][] both = new double[wheels][];
    for (int i = 0; i < wheels; i++) {
      both[i] = new double[] {rows[i][0], normal[i][0]};
    }
    return text + " | " + Mean.ratio(both, 0, 1).text(2);
  }

  /**
   * The CUSUM of the contrast between the sides' means that knows every parameter: the contrast is
   * a wander of first order seen through the pours' scatter, so its one-step-ahead errors (Kalman
   * 1960) are independent, and a step of δ ends as δ(1 − φ)/(1 − φ + φK) in each of them.
   */
  static final class BestOfSides implements Best {
    private final PlantWheel wheel;
    private final double gain;
    private final double errorSigma;
    private final Cusum cusum;
    private double expected;

    BestOfSides(PlantWheel wheel, double kg, double rate) {
      this.wheel = wheel;
      double phi = PlantWheel.SIDE_PHI;
      double wander = 2 * PlantWheel.SIDE_SIGMA * PlantWheel.SIDE_SIGMA;
      int molds = wheel.plant().molds();
      int even = (molds + 1) / 2;
      double seen =
          PlantWheel.POUR_SIGMA * PlantWheel.POUR_SIGMA * (1.0 / even + 1.0 / (molds - even));
      double ahead = wander;
      for (int i = 0; i < 1000; i++) {
        ahead = phi * phi * ahead * seen / (ahead + seen) + wander * (1 - phi * phi);
      }
      gain = ahead / (ahead + seen);
      errorSigma = Math.sqrt(ahead + seen);
      double k = kg * (1 - phi) / (1 - phi + phi * gain) / errorSigma / 2;
      cusum = new Cusum(0, k, RunLengthLimits.cusum(k, 1 / rate));
    }

    @Override
    public int accept(double[] x) {
      double[] sum = new double[2];
      int[] n = new int[2];
      for (int m = 0; m < x.length; m++) {
        sum[m % 2] += x[m] - PlantWheel.CENTER - wheel.offset(m);
        n[m % 2]++;
      }
      double error = sum[1] / n[1] - sum[0] / n[0] - expected;
      expected = PlantWheel.SIDE_PHI * (expected + gain * error);
      boolean rings = cusum.accept(error / errorSigma);
      return !rings ? 0 : cusum.signalsHigh() ? 1 : -1;
    }

    @Override
    public void restart() {
      cusum.restart(0);
    }
  }

  /**
   * A ladle side that goes off.
   *
   * @return turns of ours, of the best, their ratio, missed of ours and of the best, trials, and in
   *     which share the wheel or the other side was blamed before
   */
  static String side(double kg, int wheels, long seed) {
    PlantWheel.Plant plant = PlantWheel.Plant.plain(PourShape.NORMAL).withTwoSides();
    Watched watched = new Watched(plant);
    double rate = watched.shared().sideShift();
    double[][] rows =
        PlantWatch.each(
            wheels,
            seed,
            s -> {
              SplittableRandom random = new SplittableRandom(s ^ 0x5DEECE66DL);
              PlantWheel wheel = new PlantWheel(plant, s);
              LimitsInForce limits = watched.limits(wheel.turns(BASE));
              double[][] trials = new double[EACH][];
              for (int i = 0; i < EACH; i++) {
                int side = random.nextInt(2);
                int sign = random.nextBoolean() ? 1 : -1;
                wheel.withoutFaults();
                wheel.shiftSide(side, wheel.next() + WARM, Integer.MAX_VALUE, sign * kg);
                BestOfSides contrast = new BestOfSides(wheel, kg, rate);
                trials[i] =
                    trial(
                        watched,
                        limits,
                        wheel,
                        new Sought(Episode.Chart.SIDE, side, sign),
                        side == 1 ? contrast : turnedOver(contrast));
              }
              return meanOf(trials);
            });
    double trials = Arrays.stream(rows).mapToDouble(r -> r[6]).sum();
    return Mean.of(rows, 0).text(1)
        + " | "
        + Mean.of(rows, 1).text(1)
        + " | "
        + Mean.ratio(rows, 0, 1).text(2)
        + " | "
        + Mean.of(rows, 2).times(50).text(1)
        + " | "
        + Mean.of(rows, 3).times(50).text(1)
        + " | "
        + Mean.of(rows, 4).text(2)
        + " | "
        + Mean.of(rows, 5).text(2)
        + " | "
        + (int) trials;
  }

  /** The contrast as the first side sees it. */
  private static Best turnedOver(Best best) {
    return new Best() {
      @Override
      public int accept(double[] x) {
        return -best.accept(x);
      }

      @Override
      public void restart() {
        best.restart();
      }
    };
  }
}
