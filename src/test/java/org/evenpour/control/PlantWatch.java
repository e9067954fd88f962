package org.evenpour.control;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.LongFunction;
import java.util.stream.IntStream;
import org.evenpour.casting.WheelProfile;

/** Limits and watch of a {@link PlantWheel}, by the engine's public entry points alone. */
final class PlantWatch {
  private PlantWatch() {}

  /**
   * A plant, the false alarms a shift that its crew stands, and how many characteristics share
   * them.
   */
  record Watched(PlantWheel.Plant plant, double budget, int characteristics) {

    Watched(PlantWheel.Plant plant) {
      this(plant, 1, 1);
    }

    WheelProfile profile() {
      WheelProfile d = WheelProfile.DEFAULT;
      return new WheelProfile(
          null,
          plant.molds(),
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

    AlarmBudget shared() {
      return AlarmBudget.of(
          profile(), plant.molds(), plant.sides(), characteristics, false, plant.turnMinutes());
    }

    /** Limits from these turns, start-up and missing weights left out. */
    LimitsInForce limits(List<PlantWheel.Turn> base) {
      int most = base.size() * plant.molds();
      int[] turn = new int[most];
      int[] mold = new int[most];
      int[] side = new int[most];
      double[] value = new double[most];
      int n = 0;
      for (PlantWheel.Turn t : base) {
        for (int m = 0; m < plant.molds() && !t.startUp(); m++) {
          if (!Double.isNaN(t.value()[m])) {
            turn[n] = t.index() - base.get(0).index();
            mold[n] = m;
            side[n] = plant.twoSides() ? m % 2 : 0;
            value[n] = t.value()[m];
            n++;
          }
        }
      }
      BaseRecord record =
          new BaseRecord(
              Arrays.copyOf(turn, n),
              Arrays.copyOf(mold, n),
              Arrays.copyOf(side, n),
              Arrays.copyOf(value, n),
              base.size(),
              plant.molds(),
              plant.sides());
      return Objects.requireNonNull(LimitProposal.propose(record, shared()));
    }

    CharacteristicMonitor monitor(LimitsInForce limits) {
      return new CharacteristicMonitor(limits, profile(), (t, at, v, n, s) -> {});
    }

    void accept(CharacteristicMonitor monitor, PlantWheel.Turn t) {
      for (int m = 0; m < plant.molds(); m++) {
        long at = t.atMillis() + (long) (m * PlantWheel.SECONDS * 1000);
        int side = plant.twoSides() ? m % 2 : -1;
        monitor.accept(at, t.index(), m, side, -1, t.value()[m]);
      }
    }

    /** The record judged by limits from itself, as an audit without approved limits does. */
    List<Episode> audit(List<PlantWheel.Turn> record) {
      CharacteristicMonitor monitor = monitor(limits(record));
      for (PlantWheel.Turn t : record) {
        accept(monitor, t);
      }
      monitor.finish();
      return monitor.episodes();
    }
  }

  /** A mean and its standard error, over wheels. */
  record Mean(double value, double error) {

    /** Of one column; rows where it is NaN are left out. */
    static Mean of(double[][] rows, int column) {
      return ratio(rows, column, -1);
    }

    /**
     * Of the sum of one column over that of another; its error by the residuals of the ratio
     * (Cochran 1977, Sampling Techniques, 6.4, from memory). Rows where either is NaN are left out.
     *
     * @param over −1 = over their number
     */
    static Mean ratio(double[][] rows, int column, int over) {
      double sum = 0;
      double by = 0;
      int n = 0;
      for (double[] row : rows) {
        double below = over < 0 ? 1 : row[over];
        if (!Double.isNaN(row[column]) && !Double.isNaN(below)) {
          sum += row[column];
          by += below;
          n++;
        }
      }
      double ratio = sum / by;
      double squares = 0;
      for (double[] row : rows) {
        double below = over < 0 ? 1 : row[over];
        if (!Double.isNaN(row[column]) && !Double.isNaN(below)) {
          double left = row[column] - ratio * below;
          squares += left * left;
        }
      }
      return new Mean(ratio, Math.sqrt(squares / (n - 1.0) * n) / by);
    }

    Mean times(double factor) {
      return new Mean(value * factor, error * factor);
    }

    String text(int digits) {
      String one = "%." + digits + "f";
      return String.format(Locale.ROOT, one + " ± " + one, value, error);
    }
  }

  /** One row of figures for each wheel, in the order of their seeds, whatever the threads. */
  static double[][] each(int wheels, long seed, LongFunction<double[]> figures) {
    return IntStream.range(0, wheels)
        .parallel()
        .mapToObj(w -> figures.apply(seed + w))
        .toArray(double[][]::new);
  }

  /** Episodes by scope, after their sum. */
  static double[] byScope(List<Episode> episodes) {
    double[] row = new double[1 + Episode.Chart.values().length];
    for (Episode e : episodes) {
      row[0]++;
      row[1 + e.chart().ordinal()]++;
    }
    return row;
  }

  /** {@code total | pour | mold | side | wheel | scatter}. */
  static String scopes(double[][] rows, double factor) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i <= Episode.Chart.values().length; i++) {
      text.append(i == 0 ? "" : " | ").append(Mean.of(rows, i).times(factor).text(2));
    }
    return text.toString();
  }
}
