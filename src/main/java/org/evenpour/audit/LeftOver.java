package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.TurnSeries;
import org.evenpour.findings.BeyondSettings.Taken;
import org.evenpour.stats.Normal;
import org.evenpour.stats.SeriesRegression;
import org.evenpour.stats.StudentT;
import org.jspecify.annotations.Nullable;

/**
 * What is left of the wheel's turns when the effects of settings are taken off (cause-selecting
 * charts: Mandel 1969, Hawkins 1991).
 *
 * <pre>left = y − Σ bⱼ(xⱼ − x̄ⱼ)
 * </pre>
 *
 * <p>b by one regression of all the settings, as they act, with errors that wander ({@link
 * SeriesRegression}). One regression and not the sum of what each does by itself: where a setting
 * acts by way of another, as spray by the mold's temperature, their effects one by one would be
 * taken off twice; and one whose effect the turns themselves do not show beside the others is left
 * in. It rests on the turns outside known signals first, then on those in which what is left is in
 * its normal state; x̄ and the limits of what is left likewise.
 *
 * @param limits of what is left
 * @param baseTurns how many turns it rests on
 */
record LeftOver(List<Taken> taken, SeriesLimits limits, int baseTurns) {
  static final double Z = Normal.quantile(0.975);

  private static final int ROUNDS = 3;

  /** Standard errors that the effect of a setting must have beside the others: a choice. */
  private static final double CLEAR = 2;

  /** More rows than coefficients by so many make a regression. */
  private static final int LEAST_ROWS = 24;

  /** Copies the list. */
  LeftOver {
    taken = List.copyOf(taken);
  }

  /**
   * A setting as it acts on the wheel.
   *
   * @param x by turn; NaN = missing
   */
  @SuppressWarnings("ArrayRecordComponent") // lives within one audit
  record Acting(String setting, double[] x) {}

  /**
   * Takes the effects off; null where too few turns are left, or nothing can be told.
   *
   * @param y turn effects; NaN = missing
   * @param settings the surest first: what is a combination of the others is dropped from the end
   * @param usable turns that effects and limits may rest on
   * @param signalled turns within known signals
   * @param noiseVariance of the scatter of pours in each turn effect
   * @param rate false alarms a turn
   */
  static @Nullable LeftOver of(
      double[] y,
      List<Acting> settings,
      boolean[] usable,
      boolean[] signalled,
      double noiseVariance,
      double rate) {
    boolean[] base = usable.clone();
    for (int t = 0; t < base.length; t++) {
      // Effects that are fitted over a fault take some of it off.
      base[t] &= !signalled[t];
    }
    List<Taken> taken = List.of();
    List<Acting> still = settings;
    for (int round = 0; round < ROUNDS; round++) {
      taken = fit(y, still, base);
      List<String> names = taken.stream().map(Taken::setting).toList();
      // What was dropped stays out, or rounds could go to and fro.
      still = still.stream().filter(one -> names.contains(one.setting())).toList();
      if (taken.isEmpty()) {
        return null;
      }
      // By what is left from now on: a signal of the plain chart may be the settings' doing.
      base = TurnSeries.normal(only(usable, left(y, taken, settings)), noiseVariance);
    }
    double[] left = only(usable, left(y, taken, settings));
    TurnSeries.Proposal proposal = TurnSeries.propose(left, noiseVariance, rate);
    int turns = 0;
    for (boolean each : proposal.normal()) {
      turns += each ? 1 : 0;
    }
    return new LeftOver(taken, proposal.limits(), turns);
  }

  private static double[] only(boolean[] usable, double[] left) {
    double[] some = left.clone();
    for (int t = 0; t < some.length; t++) {
      some[t] = usable[t] ? some[t] : Double.NaN;
    }
    return some;
  }

  /**
   * What is left, turn by turn; NaN where it cannot be told.
   *
   * @param settings those that are taken off, and perhaps more
   */
  static double[] left(double[] y, List<Taken> taken, List<Acting> settings) {
    double[] left = y.clone();
    for (Taken one : taken) {
      double[] x = of(one, settings);
      for (int t = 0; t < left.length; t++) {
        left[t] -= one.perUnit() * (x[t] - one.mean());
      }
    }
    return left;
  }

  /** Where a setting that is taken off stood, by turn. */
  static double[] of(Taken taken, List<Acting> settings) {
    return settings.stream()
        .filter(one -> one.setting().equals(taken.setting()))
        .findFirst()
        .orElseThrow()
        .x();
  }

  /** S.d. of what is left by the errors of the effects, where settings stand so far off. */
  static double effectError(List<Taken> taken, double[] off) {
    double squares = 0;
    for (int j = 0; j < off.length; j++) {
      double error = taken.get(j).error() * off[j];
      squares += error * error;
    }
    return Math.sqrt(squares);
  }

  /** The effects over some turns; empty where they are too few. */
  private static List<Taken> fit(double[] y, List<Acting> settings, boolean[] base) {
    int p = settings.size();
    int[] at = new int[y.length];
    int[] stretch = new int[y.length];
    int n = 0;
    int stretches = 0;
    for (int t = 0; t < y.length; t++) {
      // A sum is NaN where any of its parts is.
      double all = y[t];
      for (int j = 0; j < p; j++) {
        all += settings.get(j).x()[t];
      }
      // After a stop, as after turns that are left out for long, the errors begin anew.
      stretches += Double.isNaN(y[t]) ? 1 : 0;
      if (base[t] && !Double.isNaN(all)) {
        at[n] = t;
        stretch[n++] = stretches;
      }
    }
    if (p == 0 || n < p + 1 + LEAST_ROWS) {
      return List.of();
    }
    double[][] columns = new double[p + 1][n];
    double[] values = new double[n];
    double[] mean = new double[p];
    for (int i = 0; i < n; i++) {
      values[i] = y[at[i]];
      columns[p][i] = 1;
      for (int j = 0; j < p; j++) {
        mean[j] += settings.get(j).x()[at[i]] / n;
      }
    }
    double center = Arrays.stream(values).sum() / n;
    for (int i = 0; i < n; i++) {
      // About means: a level of some hundreds beside a column of ones would cost digits.
      values[i] -= center;
      for (int j = 0; j < p; j++) {
        columns[j][i] = settings.get(j).x()[at[i]] - mean[j];
      }
    }
    SeriesRegression fit;
    try {
      fit = SeriesRegression.of(columns, values, Arrays.copyOf(at, n), Arrays.copyOf(stretch, n));
    } catch (IllegalArgumentException dependent) {
      // A combination of surer ones: together the record cannot tell them apart.
      return fit(y, settings.subList(0, p - 1), base);
    }
    List<Taken> taken = new ArrayList<>();
    int least = 0;
    double[] ratio = new double[p];
    for (int j = 0; j < p; j++) {
      // Widened, so that whoever takes Z of it has Student's interval.
      double error = StudentT.quantile(0.975, Math.max(1, fit.freedom(j))) / Z * fit.error(j);
      taken.add(new Taken(settings.get(j).setting(), fit.coefficient(j), error, mean[j]));
      ratio[j] = Math.abs(fit.coefficient(j)) / error;
      least = ratio[j] < ratio[least] ? j : least;
    }
    if (ratio[least] >= CLEAR) {
      return taken;
    }
    List<Acting> others = new ArrayList<>(settings);
    // One at a time, for without this one another may be clear.
    others.remove(least);
    return fit(y, others, base);
  }
}
