package org.evenpour.stats;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * How often the intervals of capability hold the true index, on tables of numbers whose turns
 * resemble each other; written apart from the formulas that it tries.
 */
final class CapabilityExperiment {
  private CapabilityExperiment() {}

  /**
   * Turns by molds: x = offset of the mold + turn effect + pour, with pours of s.d. 1.
   *
   * @param offsets s.d. of the molds' offsets, the same in every trial
   * @param turnSd of the turn effects
   * @param phi of the turn effects
   * @param pourPhi of the pours of one mold
   */
  record Setting(int turns, int molds, double offsets, double turnSd, double phi, double pourPhi) {
    double overall() {
      return Math.sqrt(offsets * offsets + turnSd * turnSd + 1);
    }

    double ofMold() {
      return Math.sqrt(turnSd * turnSd + 1);
    }

    /** What a mean moving range comes to: half the variance of a difference. */
    double within() {
      return Math.sqrt(turnSd * turnSd * (1 - phi) + 1 - pourPhi);
    }
  }

  /** The indices that are tried, each of all values and of the first mold. */
  enum Index {
    PP,
    PPK,
    CP,
    CPK,
    CPU,
    CPM,
    MOLD_PP,
    MOLD_PPK,
    MOLD_CPK
  }

  /**
   * Shares of the trials whose interval held the true index.
   *
   * @param independent take the values for independent, as was done before
   */
  static double[] coverage(Setting setting, int trials, long seed, boolean independent) {
    Random random = new Random(seed);
    int turns = setting.turns();
    int molds = setting.molds();
    int n = turns * molds;
    int[] row = new int[n];
    int[] column = new int[n];
    for (int i = 0; i < n; i++) {
      row[i] = i / molds;
      column[i] = i % molds;
    }
    double[] offset = offsets(setting);
    double upper = 4 * setting.overall();
    double lower = -5 * setting.overall();
    double[] held = new double[Index.values().length];
    for (int trial = 0; trial < trials; trial++) {
      double[] x = table(setting, offset, random);
      TwoWay fit = TwoWay.fit(row, column, x, n);
      Resemblance resemblance =
          independent ? Resemblance.NONE : Resemblance.of(fit, row, column, x);
      Moments all = Moments.of(x);
      double range = 0;
      for (int i = molds; i < n; i++) {
        range += Math.abs(x[i] - x[i - molds]) / (n - molds);
      }
      Capability c =
          Capability.of(
              n,
              all.mean(),
              range / ChartConstants.d2(2),
              molds * MovingRange.degreesOfFreedom(turns),
              all.sd(),
              lower,
              0.0,
              upper,
              resemblance.of(n, turns, all.sd()));
      double s = setting.overall();
      double w = setting.within();
      count(held, Index.PP, c.pp(), (upper - lower) / 6 / s);
      count(held, Index.PPK, c.ppk(), upper / 3 / s);
      count(held, Index.CP, c.cp(), (upper - lower) / 6 / w);
      count(held, Index.CPK, c.cpk(), upper / 3 / w);
      count(held, Index.CPU, c.cpu(), upper / 3 / w);
      count(held, Index.CPM, c.cpm(), (upper - lower) / 6 / s);
      double[] one = new double[turns];
      for (int t = 0; t < turns; t++) {
        one[t] = x[t * molds];
      }
      MovingRange ranges = MovingRange.of(one);
      double itsSd = ranges.values().sd();
      Capability its =
          Capability.of(
              turns,
              ranges.values().mean(),
              ranges.sigma(),
              ranges.degreesOfFreedom(),
              itsSd,
              lower,
              null,
              upper,
              resemblance.ofColumn(0, turns, itsSd));
      double nearer = Math.min(upper - offset[0], offset[0] - lower) / 3;
      count(held, Index.MOLD_PP, its.pp(), (upper - lower) / 6 / setting.ofMold());
      count(held, Index.MOLD_PPK, its.ppk(), nearer / setting.ofMold());
      count(held, Index.MOLD_CPK, its.cpk(), nearer / w);
    }
    return Arrays.stream(held).map(h -> h / trials).toArray();
  }

  private static void count(
      double[] held, Index index, Capability.@Nullable Estimate estimate, double truth) {
    if (estimate != null && estimate.low() <= truth && truth <= estimate.high()) {
      held[index.ordinal()]++;
    }
  }

  /** Evenly spaced, with the s.d. that is asked for. */
  private static double[] offsets(Setting setting) {
    int molds = setting.molds();
    double[] offset = new double[molds];
    double evenly = Math.sqrt((molds * molds - 1.0) / 12);
    for (int m = 0; m < molds && molds > 1; m++) {
      // 7 has no factor in common with the numbers of molds that are tried: neighbors differ
      offset[m] = setting.offsets() * ((7 * m % molds) - (molds - 1) / 2.0) / evenly;
    }
    return offset;
  }

  private static double[] table(Setting setting, double[] offset, Random random) {
    int molds = offset.length;
    double[] x = new double[setting.turns() * molds];
    double[] pour = new double[molds];
    double turn = 0;
    for (int t = 0; t < setting.turns(); t++) {
      turn = next(turn, setting.phi(), t == 0, random);
      for (int m = 0; m < molds; m++) {
        pour[m] = next(pour[m], setting.pourPhi(), t == 0, random);
        x[t * molds + m] = offset[m] + setting.turnSd() * turn + pour[m];
      }
    }
    return x;
  }

  private static double next(double before, double phi, boolean isFirst, Random random) {
    double z = random.nextGaussian();
    return isFirst ? z : phi * before + Math.sqrt(1 - phi * phi) * z;
  }

  /**
   * Prints the table of {@code docs/methods}. Arguments: how many records for each line; of how
   * many turns, where not of 60, 260 and 1,000.
   */
  @SuppressWarnings("SystemOut")
  public static void main(String[] args) {
    int trials = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    StringBuilder head = new StringBuilder("turns molds offsets turn/pour  phi pour_phi");
    for (Index index : Index.values()) {
      head.append(String.format(Locale.ROOT, " %9s", index.name().toLowerCase(Locale.ROOT)));
    }
    System.out.println(head);
    int[] lengths =
        args.length > 1 ? new int[] {Integer.parseInt(args[1])} : new int[] {60, 260, 1000};
    for (int turns : lengths) {
      for (double turnSd : new double[] {0.3, 0.6, 1}) {
        for (double phi : new double[] {0, 0.3, 0.5, 0.7}) {
          print(new Setting(turns, 26, 1, turnSd, phi, 0), trials);
        }
      }
      print(new Setting(turns, 26, 1, 0.6, 0.5, 0.4), trials);
      print(new Setting(turns, 26, 0, 0, 0, 0), trials);
      print(new Setting(turns, 26, 2, 0.6, 0.5, 0), trials);
      print(new Setting(turns, 6, 1, 0.6, 0.5, 0), trials);
    }
  }

  @SuppressWarnings("SystemOut")
  private static void print(Setting s, int trials) {
    for (boolean independent : new boolean[] {true, false}) {
      StringBuilder line =
          new StringBuilder(
              String.format(
                  Locale.ROOT,
                  "%5d %5d %7.1f %9.1f %4.1f %8.1f",
                  s.turns(),
                  s.molds(),
                  s.offsets(),
                  s.turnSd(),
                  s.phi(),
                  s.pourPhi()));
      for (double each : coverage(s, trials, 1946, independent)) {
        line.append(String.format(Locale.ROOT, " %9.1f", 100 * each));
      }
      System.out.println(line + (independent ? "  before" : ""));
    }
  }
}
