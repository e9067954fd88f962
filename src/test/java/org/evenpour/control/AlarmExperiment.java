package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.evenpour.casting.WheelProfile;
import org.evenpour.stats.Cusum;
import org.evenpour.stats.Limits;
import org.evenpour.stats.MovingRange;
import org.evenpour.stats.RunLength;

/**
 * What the alarm costs and how fast it is, on simulated wheels: realized false alarms against the
 * budget, and the delay until a shift of one mold is found against the best that could be done.
 *
 * <p>Each wheel has fixed offsets, turn effects and pours that are first-order autoregressions, and
 * an anode every 28.8 seconds. Limits are proposed from its first turns and judge all later ones.
 * The measure of delay is the CUSUM designed for just the shift that comes, which knows offsets and
 * sigma and may spend the whole budget on the molds' charts. It is stopped at its first signal of
 * the shifted mold after the shift, and so is ours.
 */
public final class AlarmExperiment {
  private static final double SECONDS = 28.8;
  private static final double POUR_SIGMA = 2;
  private static final double TURN_SIGMA = 1.2;
  private static final double OFFSET_SIGMA = 1.5;
  private static final int DELAY_WARM = 40;
  private static final int LONGEST = 300;

  /** How long each wheel is watched after its base. */
  private static final int SHIFTS = 10;

  private AlarmExperiment() {}

  /** One line of the table. */
  private record Setup(int molds, double turnPhi, double pourPhi, int baseTurns) {
    double turnMinutes() {
      return molds * SECONDS / 60;
    }

    double turnsPerShift() {
      return 480 / turnMinutes();
    }
  }

  /** A wheel that goes on for ever. */
  private static final class Wheel {
    private final Setup setup;
    private final SplittableRandom random;
    private final double[] offset;
    private final double[] pour;
    private double effect;

    Wheel(Setup setup, long seed) {
      this.setup = setup;
      random = new SplittableRandom(seed);
      offset = new double[setup.molds()];
      pour = new double[setup.molds()];
      for (int m = 0; m < offset.length; m++) {
        offset[m] = OFFSET_SIGMA * random.nextGaussian();
        pour[m] = random.nextGaussian();
      }
      effect = random.nextGaussian();
    }

    /** The next turn's masses; one mold may stand {@code shift} sigma of a pour off. */
    double[] turn(int mold, double shift) {
      double p = setup.turnPhi();
      effect = p * effect + Math.sqrt(1 - p * p) * random.nextGaussian();
      double[] x = new double[offset.length];
      double q = setup.pourPhi();
      for (int m = 0; m < x.length; m++) {
        pour[m] = q * pour[m] + Math.sqrt(1 - q * q) * random.nextGaussian();
        x[m] =
            390
                + offset[m]
                + TURN_SIGMA * effect
                + POUR_SIGMA * (pour[m] + (m == mold ? shift : 0));
      }
      return x;
    }
  }

  private static WheelProfile profile(Setup setup, double budget) {
    WheelProfile d = WheelProfile.DEFAULT;
    return new WheelProfile(
        null,
        setup.molds(),
        d.zone(),
        d.characteristics(),
        d.settings(),
        d.headings(),
        d.backwardsSeconds(),
        d.stopMinutes(),
        budget,
        d.shiftHours(),
        d.pouringPlace(),
        d.clockwise());
  }

  private static double[][] base(Wheel wheel, int turns) {
    double[][] x = new double[turns][];
    for (int t = 0; t < turns; t++) {
      x[t] = wheel.turn(-1, 0);
    }
    return x;
  }

  private static LimitsInForce limits(Setup setup, double[][] x, WheelProfile profile) {
    int molds = setup.molds();
    int n = x.length * molds;
    int[] turn = new int[n];
    int[] mold = new int[n];
    double[] value = new double[n];
    for (int i = 0; i < n; i++) {
      turn[i] = i / molds;
      mold[i] = i % molds;
      value[i] = x[turn[i]][mold[i]];
    }
    return Objects.requireNonNull(
        LimitProposal.propose(
            new BaseRecord(turn, mold, new int[n], value, x.length, molds, 1),
            AlarmBudget.of(profile, molds, 1, 1, setup.turnMinutes())));
  }

  private static void accept(CharacteristicMonitor monitor, int turn, double[] x) {
    long turnMillis = (long) (x.length * SECONDS * 1000);
    for (int m = 0; m < x.length; m++) {
      monitor.accept(turn * turnMillis + (long) (m * SECONDS * 1000), turn, m, -1, -1, x[m]);
    }
  }

  /** False alarms a shift on sound wheels: all of them, and by scope. */
  private static double[] falseAlarms(Setup setup, int wheels, int shifts, long seed) {
    WheelProfile profile = profile(setup, 1);
    int turns = (int) Math.round(shifts * setup.turnsPerShift());
    double[][] counts =
        IntStream.range(0, wheels)
            .parallel()
            .mapToObj(
                w -> {
                  Wheel wheel = new Wheel(setup, seed + w);
                  LimitsInForce limits = limits(setup, base(wheel, setup.baseTurns()), profile);
                  CharacteristicMonitor monitor =
                      new CharacteristicMonitor(limits, profile, (t, at, v, n, s) -> {});
                  for (int t = 0; t <= turns; t++) {
                    accept(monitor, t, wheel.turn(-1, 0));
                  }
                  monitor.finish();
                  Map<Episode.Scope, Integer> by = new EnumMap<>(Episode.Scope.class);
                  for (Episode e : monitor.episodes()) {
                    by.merge(e.scope(), 1, Integer::sum);
                  }
                  double[] row = new double[Episode.Scope.values().length + 1];
                  for (Map.Entry<Episode.Scope, Integer> e : by.entrySet()) {
                    row[1 + e.getKey().ordinal()] = e.getValue();
                    row[0] += e.getValue();
                  }
                  return row;
                })
            .toArray(double[][]::new);
    double[] mean = new double[counts[0].length + 1];
    double squares = 0;
    double done = wheels * turns / setup.turnsPerShift();
    for (double[] row : counts) {
      for (int i = 0; i < row.length; i++) {
        mean[i] += row[i] / done;
      }
      squares += row[0] * row[0];
    }
    double perWheel = mean[0] * done / wheels;
    mean[mean.length - 1] =
        Math.sqrt((squares / wheels - perWheel * perWheel) / wheels) * wheels / done;
    return mean;
  }

  /**
   * Mean turns until a shifted mold is named: ours and the best, and the standard error of ours.
   */
  private static double[] delays(Setup setup, double shift, int wheels, int each, long seed) {
    WheelProfile profile = profile(setup, 1);
    int molds = setup.molds();
    double seen = Math.sqrt(1 - 1.0 / molds);
    double rate = 1 / setup.turnsPerShift() / molds;
    double g = Math.sqrt((1 - setup.pourPhi()) / (1 + setup.pourPhi()));
    double k = shift * seen * g / 2;
    double h = RunLength.cusumLimit(k, 1 / rate);
    double[][] found =
        IntStream.range(0, wheels)
            .parallel()
            .mapToObj(
                w -> {
                  Wheel wheel = new Wheel(setup, seed + w);
                  LimitsInForce limits = limits(setup, base(wheel, setup.baseTurns()), profile);
                  List<double[]> rows = new ArrayList<>();
                  for (int i = 0; i < each; i++) {
                    double[] row = delay(setup, wheel, limits, profile, shift, k, h, seen);
                    if (row.length > 0) {
                      rows.add(row);
                    }
                  }
                  double[] mean = new double[2];
                  for (double[] row : rows) {
                    mean[0] += row[0] / rows.size();
                    mean[1] += row[1] / rows.size();
                  }
                  return mean;
                })
            .toArray(double[][]::new);
    double ours = Arrays.stream(found).mapToDouble(r -> r[0]).average().orElseThrow();
    double best = Arrays.stream(found).mapToDouble(r -> r[1]).average().orElseThrow();
    double var =
        Arrays.stream(found).mapToDouble(r -> (r[0] - ours) * (r[0] - ours)).sum() / (wheels - 1.0);
    return new double[] {ours, best, Math.sqrt(var / wheels)};
  }

  private static double[] delay(
      Setup setup,
      Wheel wheel,
      LimitsInForce limits,
      WheelProfile profile,
      double shift,
      double k,
      double h,
      double seen) {
    int mold = setup.molds() / 3;
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, profile, (t, at, v, n, s) -> {});
    Cusum best = new Cusum(0, k, h);
    double q = setup.pourPhi();
    double before = 0;
    int ours = 0;
    int its = 0;
    for (int t = 0; t < DELAY_WARM + LONGEST && (ours == 0 || its == 0); t++) {
      double[] x = wheel.turn(mold, t < DELAY_WARM ? 0 : shift);
      accept(monitor, t, x);
      double deviation = 0;
      for (int m = 0; m < x.length; m++) {
        deviation -= (x[m] - 390 - wheel.offset[m]) / x.length;
      }
      double z = (x[mold] - 390 - wheel.offset[mold] + deviation) / (POUR_SIGMA * seen);
      boolean signal = best.accept(t == 0 ? z : (z - q * before) / Math.sqrt(1 - q * q));
      before = z;
      if (t < DELAY_WARM) {
        if (signal) {
          best.restart(0);
        }
        continue;
      }
      if (its == 0 && signal) {
        its = t - DELAY_WARM + 1;
      }
      if (ours == 0) {
        // The turn is closed when the next one begins; looking closes it here.
        monitor.finish();
        for (Episode e : monitor.episodes()) {
          boolean named = e.index() == mold && e.scope() != Episode.Scope.SIDE;
          if (named && e.direction() > 0 && e.firstTurn() >= DELAY_WARM) {
            ours = t - DELAY_WARM + 1;
            break;
          }
          if (named && e.scope() == Episode.Scope.MOLD && e.open()) {
            return new double[0]; // a false alarm of this mold is under way: no fair start
          }
        }
      }
    }
    return new double[] {ours == 0 ? LONGEST : ours, its == 0 ? LONGEST : its};
  }

  /** The individuals chart of each mold's raw masses, as handbooks have it. */
  private static double[] classic(Setup setup, boolean eight, int wheels, int shifts, long seed) {
    int turns = (int) Math.round(shifts * setup.turnsPerShift());
    double[][] rows =
        IntStream.range(0, wheels)
            .parallel()
            .mapToObj(
                w -> {
                  Wheel wheel = new Wheel(setup, seed + w);
                  ClassicCharts charts = classicCharts(base(wheel, setup.baseTurns()));
                  int alarms = 0;
                  for (int t = 0; t < turns; t++) {
                    double[] x = wheel.turn(-1, 0);
                    for (int m = 0; m < x.length; m++) {
                      int fired = charts.accept(m, x[m]);
                      alarms += (eight ? fired : fired & 1) != 0 ? 1 : 0;
                    }
                  }
                  double[] row = new double[3];
                  row[0] = alarms / (turns / setup.turnsPerShift());
                  for (int s = 1; s <= 2; s++) {
                    int mold = setup.molds() / 3;
                    int t = 0;
                    boolean found = false;
                    while (!found && t < LONGEST) {
                      double[] x = wheel.turn(mold, s);
                      t++;
                      int fired = charts.accept(mold, x[mold]);
                      found = (eight ? fired : fired & 1) != 0;
                    }
                    row[s] = t;
                  }
                  return row;
                })
            .toArray(double[][]::new);
    double[] mean = new double[3];
    for (double[] row : rows) {
      for (int i = 0; i < 3; i++) {
        mean[i] += row[i] / wheels;
      }
    }
    return mean;
  }

  private static ClassicCharts classicCharts(double[][] base) {
    List<Limits> limits = new ArrayList<>();
    for (int m = 0; m < base[0].length; m++) {
      MovingRange range = new MovingRange();
      for (double[] x : base) {
        range.add(x[m]);
      }
      limits.add(range.limits());
    }
    return new ClassicCharts(limits);
  }

  /**
   * Prints the tables.
   *
   * @param args how many wheels for each line (default 200); then, to try one thing, {@code
   *     molds,turnPhi,pourPhi,baseTurns}
   */
  public static void main(String[] args) {
    int wheels = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    List<Setup> setups = new ArrayList<>();
    if (args.length > 1) {
      String[] p = args[1].split(",", -1);
      setups.add(
          new Setup(
              Integer.parseInt(p[0]),
              Double.parseDouble(p[1]),
              Double.parseDouble(p[2]),
              Integer.parseInt(p[3])));
    } else {
      for (int baseTurns : new int[] {400, 60}) {
        for (int molds : new int[] {16, 26, 36}) {
          for (double turnPhi : new double[] {0, 0.35, 0.7}) {
            setups.add(new Setup(molds, turnPhi, 0, baseTurns));
          }
          setups.add(new Setup(molds, 0.7, 0.35, baseTurns));
          setups.add(new Setup(molds, 0.7, 0.7, baseTurns));
        }
      }
    }
    System.out.println(
        "| molds | φ turns | φ pours | base turns | false alarms a shift | of them: pours, molds, wheel,"
            + " scatter | 1σ: turns, best, ratio | 2σ: turns, best, ratio | classic 3σ: alarms, 1σ, 2σ"
            + " | 3σ and eight tests: alarms, 1σ, 2σ |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (Setup s : setups) {
      double[] alarms = falseAlarms(s, wheels, SHIFTS, 1_000);
      double[] one = delays(s, 1, wheels, 10, 500_000);
      double[] two = delays(s, 2, wheels, 10, 900_000);
      double[] three = classic(s, false, wheels, SHIFTS, 1_000);
      double[] eight = classic(s, true, wheels, SHIFTS, 1_000);
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.2f | %d | %.2f ± %.2f | %.2f %.2f %.2f %.2f | %.1f, %.1f, %.2f ± %.2f |"
              + " %.1f, %.1f, %.2f ± %.2f | %.1f, %.0f, %.0f | %.0f, %.0f, %.0f |%n",
          s.molds(),
          s.turnPhi(),
          s.pourPhi(),
          s.baseTurns(),
          alarms[0],
          alarms[alarms.length - 1],
          alarms[1 + Episode.Scope.POUR.ordinal()],
          alarms[1 + Episode.Scope.MOLD.ordinal()],
          alarms[1 + Episode.Scope.WHEEL.ordinal()],
          alarms[1 + Episode.Scope.SPREAD.ordinal()],
          one[0],
          one[1],
          one[0] / one[1],
          one[2] / one[1],
          two[0],
          two[1],
          two[0] / two[1],
          two[2] / two[1],
          three[0],
          three[1],
          three[2],
          eight[0],
          eight[1],
          eight[2]);
    }
  }
}
