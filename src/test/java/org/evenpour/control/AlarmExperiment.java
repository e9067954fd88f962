package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.evenpour.casting.WheelProfile;
import org.evenpour.control.AlarmWheel.Casting;
import org.evenpour.control.AlarmWheel.Setup;
import org.evenpour.control.PlantWatch.Mean;
import org.evenpour.stats.Cusum;
import org.evenpour.stats.RunLengthLimits;

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
  private static final int DELAY_WARM = 40;
  static final int LONGEST = 300;

  /** How long each wheel is watched after its base. */
  private static final int SHIFTS = 10;

  /**
   * Wheels whose molds wear shift once, right after their base, for a fresh monitor knows the wear
   * from the base only; so many times as many wheels are taken.
   */
  private static final int TIMES = 3;

  private static final long ALARM_SEED = 1_000;
  private static final long ONE_SEED = 500_000;
  private static final long TWO_SEED = 900_000;

  private AlarmExperiment() {}

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
        d.clockwise(),
        d.setPointMoveCosts(),
        d.settingsAlarmShare());
  }

  private static LimitsInForce limits(Setup setup, double[][] x, WheelProfile profile) {
    int molds = setup.molds();
    int most = x.length * molds;
    int[] turn = new int[most];
    int[] mold = new int[most];
    int[] side = new int[most];
    double[] value = new double[most];
    int n = 0;
    for (int i = 0; i < most; i++) {
      double one = x[i / molds][i % molds];
      if (!Double.isNaN(one)) {
        turn[n] = i / molds;
        mold[n] = i % molds;
        side[n] = setup.side(mold[n]);
        value[n] = one;
        n++;
      }
    }
    int sides = setup.casting().sides();
    return Objects.requireNonNull(
        LimitProposal.propose(
            new BaseRecord(
                Arrays.copyOf(turn, n),
                Arrays.copyOf(mold, n),
                Arrays.copyOf(side, n),
                Arrays.copyOf(value, n),
                x.length,
                molds,
                sides),
            AlarmBudget.of(profile, molds, sides, 1, false, setup.turnMinutes())));
  }

  /** Gives a monitor the turn that a wheel cast last. */
  private static void accept(
      CharacteristicMonitor monitor, Setup setup, AlarmWheel wheel, double[] x) {
    int turn = wheel.next() - 1;
    long turnMillis = (long) (x.length * AlarmWheel.SECONDS * 1000);
    for (int m = 0; m < x.length; m++) {
      long at = turn * turnMillis + (long) (m * AlarmWheel.SECONDS * 1000);
      int side = setup.casting().twoSides() ? setup.side(m) : -1;
      monitor.accept(at, turn, m, side, -1, x[m]);
    }
  }

  /** False alarms a shift on sound wheels: all of them, and by scope. */
  private static List<Mean> falseAlarms(Setup setup, int wheels, int shifts, long seed) {
    WheelProfile profile = profile(setup, 1);
    int turns = (int) Math.round(shifts * setup.turnsPerShift());
    double[][] counts =
        IntStream.range(0, wheels)
            .parallel()
            .mapToObj(
                w -> {
                  AlarmWheel wheel = new AlarmWheel(setup, seed + w);
                  LimitsInForce limits = limits(setup, wheel.base(), profile);
                  CharacteristicMonitor monitor =
                      new CharacteristicMonitor(limits, profile, (t, at, v, n, s) -> {});
                  for (int t = 0; t <= turns; t++) {
                    accept(monitor, setup, wheel, wheel.turn(-1, 0));
                  }
                  monitor.finish();
                  return PlantWatch.byScope(monitor.episodes());
                })
            .toArray(double[][]::new);
    double perShift = setup.turnsPerShift() / turns;
    return IntStream.range(0, counts[0].length)
        .mapToObj(i -> Mean.of(counts, i).times(perShift))
        .toList();
  }

  /**
   * Each wheel's mean turns until a shifted mold is named: ours and the best; NaN = no fair start.
   */
  private static double[][] delays(Setup setup, double shift, int wheels, int each, long seed) {
    WheelProfile profile = profile(setup, 1);
    int molds = setup.molds();
    double seen = Math.sqrt(1 - 1.0 / molds);
    double rate = 1 / setup.turnsPerShift() / molds;
    double g = Math.sqrt((1 - setup.pourPhi()) / (1 + setup.pourPhi()));
    double k = shift * seen * g / 2;
    double h = RunLengthLimits.cusum(k, 1 / rate);
    return IntStream.range(0, wheels)
        .parallel()
        .mapToObj(
            w -> {
              AlarmWheel wheel = new AlarmWheel(setup, seed + w);
              LimitsInForce limits = limits(setup, wheel.base(), profile);
              List<double[]> rows = new ArrayList<>();
              for (int i = 0; i < each; i++) {
                double[] row = delay(setup, wheel, limits, profile, shift, k, h, seen);
                if (row.length > 0) {
                  rows.add(row);
                }
              }
              return new double[] {
                rows.stream().mapToDouble(row -> row[0]).average().orElse(Double.NaN),
                rows.stream().mapToDouble(row -> row[1]).average().orElse(Double.NaN)
              };
            })
        .toArray(double[][]::new);
  }

  private static double[] delay(
      Setup setup,
      AlarmWheel wheel,
      LimitsInForce limits,
      WheelProfile profile,
      double shift,
      double k,
      double h,
      double seen) {
    int mold = setup.molds() / 3;
    int from = wheel.next() + DELAY_WARM;
    CharacteristicMonitor monitor =
        new CharacteristicMonitor(limits, profile, (t, at, v, n, s) -> {});
    Cusum best = new Cusum(0, k, h);
    double q = setup.pourPhi();
    double before = 0;
    int ours = 0;
    int its = 0;
    for (int t = 0; t < DELAY_WARM + LONGEST && (ours == 0 || its == 0); t++) {
      double[] x = wheel.turn(mold, t < DELAY_WARM ? 0 : shift);
      accept(monitor, setup, wheel, x);
      double deviation = 0;
      int weighed = 0;
      for (int m = 0; m < x.length; m++) {
        if (!Double.isNaN(x[m])) {
          deviation -= x[m] - AlarmWheel.CENTER - wheel.offset(m);
          weighed++;
        }
      }
      deviation /= weighed;
      double z =
          (x[mold] - AlarmWheel.CENTER - wheel.offset(mold) + deviation)
              / (AlarmWheel.POUR_SIGMA * seen);
      boolean signal = false;
      if (!Double.isNaN(z)) {
        signal = best.accept(t == 0 ? z : (z - q * before) / Math.sqrt(1 - q * q));
        before = z;
      }
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
          boolean named = e.index() == mold && e.chart() != Episode.Chart.SIDE;
          if (named && e.direction() > 0 && e.firstTurn() >= from) {
            ours = t - DELAY_WARM + 1;
            break;
          }
          if (named && e.chart() == Episode.Chart.MOLD && e.open()) {
            return new double[0]; // a false alarm of this mold is under way: no fair start
          }
        }
      }
    }
    return new double[] {ours == 0 ? LONGEST : ours, its == 0 ? LONGEST : its};
  }

  /** Wheels of normal pours, and what they cost by handbooks' charts. */
  private static void wanders(List<Setup> setups, int wheels) {
    System.out.println(
        "| molds | φ turns | φ pours | base turns | false alarms a shift | of them: pours, molds, wheel,"
            + " scatter | 1σ: turns, best, ratio | 2σ: turns, best, ratio | classic 3σ: alarms, 1σ, 2σ"
            + " | 3σ and eight tests: alarms, 1σ, 2σ |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (Setup s : setups) {
      List<Mean> alarms = falseAlarms(s, wheels, SHIFTS, ALARM_SEED);
      double[] three = ClassicAlarms.of(s, false, wheels, SHIFTS, ALARM_SEED);
      double[] eight = ClassicAlarms.of(s, true, wheels, SHIFTS, ALARM_SEED);
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.2f | %d | %s | %s | %s | %s | %.1f, %.0f, %.0f | %.0f, %.0f, %.0f |%n",
          s.molds(),
          s.turnPhi(),
          s.pourPhi(),
          s.baseTurns(),
          alarms.get(0).text(2),
          scopes(
              alarms,
              Episode.Chart.POUR,
              Episode.Chart.MOLD,
              Episode.Chart.WHEEL,
              Episode.Chart.SPREAD),
          overBest(delays(s, 1, wheels, 10, ONE_SEED)),
          overBest(delays(s, 2, wheels, 10, TWO_SEED)),
          three[0],
          three[1],
          three[2],
          eight[0],
          eight[1],
          eight[2]);
    }
  }

  private static String scopes(List<Mean> alarms, Episode.Chart... which) {
    return Arrays.stream(which)
        .map(scope -> String.format(Locale.ROOT, "%.2f", alarms.get(1 + scope.ordinal()).value()))
        .collect(Collectors.joining(" "));
  }

  private static String overBest(double[][] found) {
    Mean ours = Mean.of(found, 0);
    double best = Mean.of(found, 1).value();
    return String.format(Locale.ROOT, "%.1f, %.1f, ", ours.value(), best)
        + ours.times(1 / best).text(2);
  }

  /** Wheels as plants have them, beside one of normal pours with the same luck. */
  private static void castings(int wheels) {
    System.out.println(
        "| pours, weights, molds | false alarms a shift | of them: pours, molds, sides, wheel, scatter |"
            + " 1σ: turns, over those of normal pours | 2σ: turns, over those of normal pours |"
            + " classic 3σ: alarms | 3σ and eight tests: alarms |");
    System.out.println("|---|---|---|---|---|---|---|");
    Setup normal = castingSetup(Casting.NORMAL);
    double[][] one = delays(normal, 1, TIMES * wheels, 1, ONE_SEED);
    double[][] two = delays(normal, 2, TIMES * wheels, 1, TWO_SEED);
    castings()
        .forEach(
            (name, casting) -> {
              Setup s = castingSetup(casting);
              List<Mean> alarms = falseAlarms(s, wheels, SHIFTS, ALARM_SEED);
              System.out.printf(
                  Locale.ROOT,
                  "| %s | %s | %s | %s | %s | %.1f | %.0f |%n",
                  name,
                  alarms.get(0).text(2),
                  scopes(
                      alarms,
                      Episode.Chart.POUR,
                      Episode.Chart.MOLD,
                      Episode.Chart.SIDE,
                      Episode.Chart.WHEEL,
                      Episode.Chart.SPREAD),
                  overOther(delays(s, 1, TIMES * wheels, 1, ONE_SEED), one),
                  overOther(delays(s, 2, TIMES * wheels, 1, TWO_SEED), two),
                  ClassicAlarms.of(s, false, wheels, SHIFTS, ALARM_SEED)[0],
                  ClassicAlarms.of(s, true, wheels, SHIFTS, ALARM_SEED)[0]);
            });
  }

  private static Setup castingSetup(Casting casting) {
    return new Setup(26, 0.35, 0, 400, casting);
  }

  private static Map<String, Casting> castings() {
    Casting normal = Casting.NORMAL;
    Map<String, Casting> lines = new LinkedHashMap<>();
    lines.put("normal", normal);
    lines.put("skewness 0.5 (gamma)", Casting.of(PourShape.gamma(16, false)));
    lines.put("skewness 1", Casting.of(PourShape.gamma(4, false)));
    lines.put("skewness −1", Casting.of(PourShape.gamma(4, true)));
    lines.put("t, 10 d.f.", Casting.of(PourShape.student(10)));
    lines.put("t, 5 d.f.", Casting.of(PourShape.student(5)));
    lines.put("normal, to 0.1 kg", normal.roundedTo(0.1));
    lines.put("normal, to 0.5 kg", normal.roundedTo(0.5));
    lines.put("normal, to 1 kg", normal.roundedTo(1));
    lines.put("normal, 2 % missing", normal.missing(0.02));
    lines.put("normal, two sides", normal.withTwoSides());
    lines.put("normal, wear", normal.worn(0.85));
    Casting all = normal.roundedTo(0.5).missing(0.02).withTwoSides().worn(0.85);
    lines.put("all of it, skewness 1", all.shaped(PourShape.gamma(4, false)));
    lines.put("all of it, t, 5 d.f.", all.shaped(PourShape.student(5)));
    return lines;
  }

  /** Turns, and their ratio to those of the same wheels otherwise. */
  private static String overOther(double[][] found, double[][] other) {
    double[][] pairs =
        IntStream.range(0, found.length)
            .mapToObj(w -> new double[] {found[w][0], other[w][0]})
            .toArray(double[][]::new);
    return String.format(Locale.ROOT, "%.1f, ", Mean.of(pairs, 0).value())
        + Mean.ratio(pairs, 0, 1).text(2);
  }

  /**
   * Prints the tables.
   *
   * @param args how many wheels for each line (default 200); then, to try one thing, {@code
   *     molds,turnPhi,pourPhi,baseTurns}, or {@code plants} for the second table alone
   */
  public static void main(String[] args) {
    int wheels = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    String only = args.length > 1 ? args[1] : "";
    List<Setup> setups = new ArrayList<>();
    if (only.contains(",")) {
      String[] p = only.split(",", -1);
      setups.add(
          new Setup(
              Integer.parseInt(p[0]),
              Double.parseDouble(p[1]),
              Double.parseDouble(p[2]),
              Integer.parseInt(p[3]),
              Casting.NORMAL));
    } else {
      for (int baseTurns : new int[] {400, 60}) {
        for (int molds : new int[] {16, 26, 36}) {
          for (double turnPhi : new double[] {0, 0.35, 0.7}) {
            setups.add(new Setup(molds, turnPhi, 0, baseTurns, Casting.NORMAL));
          }
          setups.add(new Setup(molds, 0.7, 0.35, baseTurns, Casting.NORMAL));
          setups.add(new Setup(molds, 0.7, 0.7, baseTurns, Casting.NORMAL));
        }
      }
    }
    if (!only.equals("plants")) {
      wanders(setups, wheels);
      System.out.println();
    }
    if (!only.contains(",")) {
      castings(wheels);
    }
  }
}
