package org.evenpour.control;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.evenpour.control.AlarmWheel.Setup;
import org.evenpour.stats.Limits;
import org.evenpour.stats.MovingRange;

/** The individuals chart of each mold's raw masses, as handbooks have it, on the same wheels. */
final class ClassicAlarms {
  private ClassicAlarms() {}

  /**
   * Alarms a shift on sound wheels, and turns until a mold that shifts by one and by two sigma is
   * seen.
   *
   * @param eight whether all run tests count, or only the points beyond 3 sigma
   */
  static double[] of(Setup setup, boolean eight, int wheels, int shifts, long seed) {
    int turns = (int) Math.round(shifts * setup.turnsPerShift());
    double[][] rows =
        IntStream.range(0, wheels)
            .parallel()
            .mapToObj(
                w -> {
                  AlarmWheel wheel = new AlarmWheel(setup, seed + w);
                  ClassicCharts charts = classicCharts(wheel.base());
                  int alarms = 0;
                  for (int t = 0; t < turns; t++) {
                    double[] x = wheel.turn(-1, 0);
                    for (int m = 0; m < x.length; m++) {
                      int fired = Double.isNaN(x[m]) ? 0 : charts.accept(m, x[m]);
                      alarms += (eight ? fired : fired & 1) != 0 ? 1 : 0;
                    }
                  }
                  double[] row = new double[3];
                  row[0] = alarms / (turns / setup.turnsPerShift());
                  for (int s = 1; s <= 2; s++) {
                    int mold = setup.molds() / 3;
                    int t = 0;
                    boolean found = false;
                    while (!found && t < AlarmExperiment.LONGEST) {
                      double[] x = wheel.turn(mold, s);
                      t++;
                      int fired = Double.isNaN(x[mold]) ? 0 : charts.accept(mold, x[mold]);
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
        if (!Double.isNaN(x[m])) {
          range.add(x[m]);
        }
      }
      limits.add(range.limits());
    }
    return new ClassicCharts(limits);
  }
}
