package org.evenpour.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
      MovingRange ranges = new MovingRange();
      Arrays.stream(one).forEach(ranges::add);
      Moments ofOne = Moments.of(one);
      double itsSd = ofOne.sd();
      Capability its =
          Capability.of(
              turns,
              ofOne.mean(),
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
   * Prints the table of {@code docs/methods}, with standard errors over records.
   *
   * @param args how many records for each line (default 400), the first seed (default 1946, the
   *     same for all lines), and what the names of lines must begin with (default: all)
   */
  @SuppressWarnings("SystemOut")
  public static void main(String[] args) {
    int trials = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1946;
    String wanted = args.length > 2 ? args[2] : "";
    System.out.println(trials + " records a line, seed " + seed + "; intervals that hold, percent");
    StringBuilder head = new StringBuilder("| record");
    for (Index index : Index.values()) {
      head.append(" | ").append(index.name().toLowerCase(Locale.ROOT));
    }
    System.out.println(head + " |\n" + "|---".repeat(Index.values().length + 1) + "|");
    for (int turns : new int[] {60, 260, 1000}) {
      List<Setting> lines = new ArrayList<>();
      for (double turnSd : new double[] {0.3, 0.6, 1}) {
        for (double phi : new double[] {0, 0.3, 0.5, 0.7}) {
          lines.add(new Setting(turns, 26, 1, turnSd, phi, 0));
        }
      }
      lines.add(new Setting(turns, 26, 1, 0.6, 0.5, 0.4));
      lines.add(new Setting(turns, 26, 0, 0, 0, 0));
      lines.add(new Setting(turns, 26, 2, 0.6, 0.5, 0));
      lines.add(new Setting(turns, 6, 1, 0.6, 0.5, 0));
      lines.stream()
          .filter(line -> name(line).startsWith(wanted))
          .forEach(line -> print(line, trials, seed));
    }
  }

  private static String name(Setting s) {
    return String.format(
        Locale.ROOT,
        "phi%.1f-%dturns-%dmolds-turn%.1f-offsets%.0f-pourphi%.1f",
        s.phi(),
        s.turns(),
        s.molds(),
        s.turnSd(),
        s.offsets(),
        s.pourPhi());
  }

  @SuppressWarnings("SystemOut")
  private static void print(Setting s, int trials, long seed) {
    for (boolean independent : new boolean[] {true, false}) {
      StringBuilder line = new StringBuilder("| " + name(s) + (independent ? ", before" : ""));
      for (double held : coverage(s, trials, seed, independent)) {
        double error = Math.sqrt(held * (1 - held) / Math.max(1, trials - 1));
        line.append(String.format(Locale.ROOT, " | %.1f ± %.1f", 100 * held, 100 * error));
      }
      System.out.println(line + " |");
    }
  }
}
