package org.evenpour.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.Setting;
import org.evenpour.stats.SeriesRegression;
import org.evenpour.stats.StudentT;

/**
 * What the settings do to one characteristic, from the plant's own history outside its signals and
 * start-up.
 *
 * <p>Three regressions: mold against mold within turns, ladle side against side, turn against turn,
 * each on all numeric settings that vary there. The first takes its errors as independent and
 * allows for what is left by {@link SeriesRegression#robustErrors}; the others fit a wandering
 * error. A setting's effect is that with all settings held that act at the same pour or before it:
 * what is read after it (of a smaller lag) may be what carries the effect on.
 */
final class PlantHistory {
  /** A longer history adds little and costs time; the newest turns count. */
  static final int LONGEST_TURNS = 2_000;

  private static final int LEAST_ROWS = 24;
  private static final int LEAST_SEGMENT = 5;
  private static final int ROBUST_STEPS = 6;

  /** Beyond this correlation two settings move together. */
  private static final double TOGETHER = 0.8;

  private final TurnGrid grid;
  private final SignalMask mask;
  private final int from;
  private final int turns;
  private final int molds;
  private final int[] life;
  private final List<Setting> settings = new ArrayList<>();
  private final List<Table> tables = new ArrayList<>();
  private final Table y;

  private PlantHistory(TurnGrid grid, Characteristic characteristic, SignalMask mask) {
    this.grid = grid;
    this.mask = mask;
    from = Math.max(0, grid.turns() - LONGEST_TURNS);
    turns = grid.turns() - from;
    molds = grid.molds();
    life = new int[turns * molds];
    for (int mold = 0; mold < molds; mold++) {
      int now = 0;
      for (int t = 1; t < turns; t++) {
        boolean begins = !mask.cell(from + t, mold) && mask.cell(from + t - 1, mold);
        now += begins ? 1 : 0;
        life[t * molds + mold] = now;
      }
    }
    Table.Left left =
        new Table.Left() {
          @Override
          public boolean out(int turn, int mold) {
            return mask.cell(turn, mold) || grid.isStartUp(turn, mold);
          }

          @Override
          public int stretch(int turn, int mold) {
            return life[(turn - from) * molds + mold];
          }
        };
    y = Table.of(grid, characteristic.values(), 0, from, grid.turns(), left);
    for (Setting setting : grid.record().settings()) {
      DoubleColumn numbers = setting.numbers();
      if (numbers != null) {
        settings.add(setting);
        tables.add(Table.of(grid, numbers, setting.profile().lagTurns(), from, grid.turns(), left));
      }
    }
  }

  /** The effect of each numeric setting, by its name. */
  static Map<String, EffectSize.Levels> effects(
      TurnGrid grid, Characteristic characteristic, SignalMask mask) {
    PlantHistory history = new PlantHistory(grid, characteristic, mask);
    EffectSize[] byMold = history.sizes(history.pours());
    EffectSize[] bySide = history.sizes(history.turnRows(true));
    EffectSize[] byTurn = history.sizes(history.turnRows(false));
    Map<String, EffectSize.Levels> effects = new HashMap<>();
    for (int i = 0; i < history.settings.size(); i++) {
      effects.put(
          history.settings.get(i).name(), new EffectSize.Levels(byMold[i], bySide[i], byTurn[i]));
    }
    return effects;
  }

  /**
   * What one regression is made of.
   *
   * @param x one column a setting; empty where it does not vary
   * @param levels columns of the levels that are taken out
   */
  @SuppressWarnings("ArrayRecordComponent") // lives within one estimate
  private record Rows(
      double[] y, double[][] x, double[][] levels, int[] time, int[] stretch, boolean wanders) {}

  /** Pours, mold by mold. */
  private Rows pours() {
    int n = 0;
    int[] at = new int[turns * molds];
    for (int mold = 0; mold < molds; mold++) {
      for (int t = 0; t < turns; t++) {
        if (!Double.isNaN(y.molds()[t * molds + mold])) {
          at[n++] = t * molds + mold;
        }
      }
    }
    double[] values = new double[n];
    int[] time = new int[n];
    int[] stretch = new int[n];
    for (int i = 0; i < n; i++) {
      values[i] = y.molds()[at[i]];
      time[i] = at[i] / molds;
      stretch[i] = at[i] % molds + molds * life[at[i]];
    }
    double[][] x = new double[tables.size()][];
    for (int j = 0; j < x.length; j++) {
      x[j] = column(tables.get(j).molds(), at, n, tables.get(j).wheel());
    }
    return new Rows(values, x, new double[0][], time, stretch, false);
  }

  /** Turns: of the whole wheel, or of one ladle side against the other. */
  private Rows turnRows(boolean ofSides) {
    double[] series = ofSides ? y.sides() : y.wheel();
    int n = 0;
    int[] at = new int[turns];
    int[] segment = new int[turns];
    int[] stretch = new int[turns];
    int segments = 0;
    int stretches = 0;
    for (int t = 0; t < turns; t++) {
      boolean isMasked = mask.turn(from + t);
      boolean wasMasked = t > 0 && mask.turn(from + t - 1);
      segments += wasMasked && !isMasked ? 1 : 0;
      // What a stop leaves of a turn is little, and the series begins anew.
      stretches += isMasked || Double.isNaN(series[t]) ? 1 : 0;
      if (!isMasked && !Double.isNaN(series[t])) {
        at[n] = t;
        segment[n] = segments;
        stretch[n++] = stretches;
      }
    }
    int[] size = new int[segments + 1];
    for (int i = 0; i < n; i++) {
      size[segment[i]]++;
    }
    int kept = 0;
    for (int i = 0; i < n; i++) {
      if (size[segment[i]] >= LEAST_SEGMENT) {
        at[kept] = at[i];
        segment[kept] = segment[i];
        stretch[kept++] = stretch[i];
      }
    }
    double[] values = new double[kept];
    for (int i = 0; i < kept; i++) {
      values[i] = series[at[i]];
    }
    List<double[]> levels = new ArrayList<>();
    int[] ends = ends(segment, kept);
    for (int k = 0, begin = 0; k < ends.length; begin = ends[k++]) {
      levels.add(SeriesRegression.between(kept, begin, ends[k]));
    }
    center(values, ends);
    double[][] x = new double[tables.size()][];
    for (int j = 0; j < x.length; j++) {
      double[] whole = ofSides ? tables.get(j).sides() : tables.get(j).wheel();
      double[] column = column(whole, at, kept, whole);
      if (column.length > 0) {
        center(column, ends);
        column = varies(column, whole) ? column : new double[0];
      }
      x[j] = column;
    }
    return new Rows(
        values,
        x,
        levels.toArray(new double[0][]),
        Arrays.copyOf(at, kept),
        Arrays.copyOf(stretch, kept),
        true);
  }

  /** The index after the last of each segment. */
  private static int[] ends(int[] segment, int n) {
    return IntStream.rangeClosed(1, n)
        .filter(i -> i == n || segment[i] != segment[i - 1])
        .toArray();
  }

  /** Takes each segment's own mean out of a column that misses nothing. */
  private static void center(double[] column, int[] ends) {
    for (int k = 0, begin = 0; k < ends.length; begin = ends[k++]) {
      double sum = 0;
      for (int i = begin; i < ends[k]; i++) {
        sum += column[i];
      }
      for (int i = begin; i < ends[k]; i++) {
        column[i] -= sum / (ends[k] - begin);
      }
    }
  }

  /** A setting at some rows, its mean where it is missing; empty where it does not vary. */
  private static double[] column(double[] all, int[] at, int n, double[] scaleOf) {
    double[] column = new double[n];
    int known = 0;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      column[i] = all[at[i]];
      if (!Double.isNaN(column[i])) {
        known++;
        sum += column[i];
      }
    }
    if (known < Math.max(LEAST_ROWS, n / 3)) {
      return new double[0];
    }
    for (int i = 0; i < n; i++) {
      column[i] = Double.isNaN(column[i]) ? 0 : column[i] - sum / known;
    }
    return varies(column, scaleOf) ? column : new double[0];
  }

  /** What is left of a setting that is one for all is rounding, not variation. */
  private static boolean varies(double[] column, double[] scaleOf) {
    double scale = 0;
    for (double v : scaleOf) {
      scale = Double.isNaN(v) ? scale : Math.max(scale, Math.abs(v));
    }
    double squares = 0;
    for (double v : column) {
      squares += v * v;
    }
    return squares > 1e-18 * Math.max(1e-12, scale * scale) * column.length;
  }

  private EffectSize[] sizes(Rows rows) {
    EffectSize[] sizes = new EffectSize[settings.size()];
    Arrays.fill(sizes, EffectSize.UNKNOWN);
    TreeSet<Integer> lags = new TreeSet<>();
    for (int j = 0; j < sizes.length; j++) {
      if (rows.x()[j].length > 0) {
        lags.add(settings.get(j).profile().lagTurns());
      }
    }
    for (int lag : lags) {
      List<Integer> held = new ArrayList<>();
      for (int j = 0; j < sizes.length; j++) {
        if (rows.x()[j].length > 0 && settings.get(j).profile().lagTurns() >= lag) {
          held.add(j);
        }
      }
      if (rows.y().length < held.size() + rows.levels().length + LEAST_ROWS) {
        continue;
      }
      Joint joint = Joint.of(rows, held);
      for (int j : held) {
        if (settings.get(j).profile().lagTurns() == lag) {
          sizes[j] = size(rows, joint, j);
        }
      }
    }
    return sizes;
  }

  /**
   * A regression on some settings, with their errors.
   *
   * @param held indices of the settings, in the order of the columns
   */
  @SuppressWarnings("ArrayRecordComponent") // lives within one estimate
  private record Joint(SeriesRegression fit, List<Integer> held, double[] errors) {

    static Joint of(Rows rows, List<Integer> held) {
      double[][] columns = new double[held.size() + rows.levels().length][];
      for (int k = 0; k < held.size(); k++) {
        columns[k] = rows.x()[held.get(k)];
      }
      System.arraycopy(rows.levels(), 0, columns, held.size(), rows.levels().length);
      SeriesRegression fit;
      try {
        fit =
            rows.wanders()
                ? SeriesRegression.of(columns, rows.y(), rows.time(), rows.stretch())
                : SeriesRegression.with(columns, rows.y(), rows.time(), rows.stretch(), 0, 0);
      } catch (IllegalArgumentException dependent) {
        if (held.size() == 1) {
          throw dependent;
        }
        return of(rows, held.subList(0, held.size() - 1));
      }
      double[] errors =
          rows.wanders()
              ? modelled(fit, held.size())
              : fit.robustErrors(rows.stretch(), ROBUST_STEPS);
      return new Joint(fit, held, errors);
    }

    private static double[] modelled(SeriesRegression fit, int n) {
      double widened = StudentT.quantile(0.975, Math.max(3, fit.degreesOfFreedom())) / 1.96;
      double[] errors = new double[n];
      for (int j = 0; j < n; j++) {
        errors[j] = fit.error(j) * widened;
      }
      return errors;
    }

    double effect(int setting) {
      return fit.coefficient(held.indexOf(setting));
    }

    double error(int setting) {
      return errors[held.indexOf(setting)] + Double.MIN_NORMAL;
    }

    EffectSize sizeOf(int setting) {
      return new EffectSize(effect(setting), error(setting));
    }

    double ratio(int setting) {
      return Math.abs(effect(setting)) / error(setting);
    }

    /** The setting that moves with this one the most, beyond {@link #TOGETHER}; −1 for none. */
    int twin(int setting) {
      int twin = -1;
      double largest = TOGETHER;
      for (int other : held) {
        if (other != setting) {
          double r = Math.abs(fit.correlation(held.indexOf(setting), held.indexOf(other)));
          if (r > largest) {
            largest = r;
            twin = other;
          }
        }
      }
      return twin;
    }
  }

  /**
   * The effect of one setting; where it moves together with another and the record cannot tell
   * which of them acts, that of both moving as they did.
   */
  private EffectSize size(Rows rows, Joint joint, int j) {
    if (!joint.held().contains(j)) {
      // It is a combination of the others: what they do cannot be told from what it does.
      int twin = nearest(rows, joint, j);
      Joint alone = Joint.of(rows, List.of(j));
      return new EffectSize(
          alone.effect(j),
          alone.error(j),
          List.of(settings.get(twin).name()),
          true,
          EffectSize.UNKNOWN);
    }
    EffectSize own = joint.sizeOf(j);
    int twin = joint.twin(j);
    if (twin < 0 || own.isBeyondChance() || joint.sizeOf(twin).isBeyondChance()) {
      return own;
    }
    List<Integer> without = new ArrayList<>(joint.held());
    without.remove((Integer) twin);
    Joint apart = Joint.of(rows, without);
    return new EffectSize(
        apart.effect(j),
        apart.error(j),
        List.of(settings.get(twin).name()),
        joint.ratio(j) < joint.ratio(twin),
        own);
  }

  private static int nearest(Rows rows, Joint joint, int j) {
    int nearest = joint.held().get(0);
    double largest = -1;
    for (int other : joint.held()) {
      double xy = 0;
      double yy = 0;
      for (int i = 0; i < rows.y().length; i++) {
        xy += rows.x()[j][i] * rows.x()[other][i];
        yy += rows.x()[other][i] * rows.x()[other][i];
      }
      if (Math.abs(xy) / Math.sqrt(yy) > largest) {
        largest = Math.abs(xy) / Math.sqrt(yy);
        nearest = other;
      }
    }
    return nearest;
  }
}
