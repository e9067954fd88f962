package org.evenpour.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.column.DoubleColumn;
import org.evenpour.stats.SeriesRegression;
import org.jspecify.annotations.Nullable;

/**
 * What the settings do to one characteristic, from the plant's own history outside its signals and
 * start-up.
 *
 * <p>Three regressions: mold against mold within turns, ladle side against side, turn against turn,
 * each on all numeric settings that vary there. A setting's effect is that with all settings held
 * as they stood when it was set, or before: those of a larger lag as they act, those of a smaller
 * one as they were at that time, for what they are read as later may be what carries the effect on.
 *
 * <p>What a pour leaves in its mold may act on the next ones too, as a coat of wash does. Where
 * pours show that, beyond any doubt, a setting is carried over at a rate from pour to pour, and its
 * effect is that of a lasting change in the end.
 */
final class PlantHistory {
  /** A longer history adds little and costs time; the newest turns count. */
  static final int LONGEST_TURNS = 2_000;

  private static final int LEAST_ROWS = 24;
  private static final int LEAST_SEGMENT = 5;

  /** Parts of a setting that may stay in a mold from one pour to the next. */
  private static final double[] KEPT = {0.3, 0.5, 0.7, 0.85};

  private static final double[] NONE = {};

  /** Standard errors beyond which a setting counts as carried over: many are asked, everywhere. */
  private static final double CARRIED = 5;

  private final TurnGrid grid;
  private final SignalMask mask;
  private final int from;
  private final int turns;
  private final int molds;
  private final int[] life;
  private final List<Setting> settings = new ArrayList<>();
  private final List<DoubleColumn> numbers = new ArrayList<>();
  private final int[] lags;
  private final Table[][] tables;
  private final Table.Layout layout;
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
        // A new level once a signal is over: its end may not have brought all of it back.
        boolean begins = !mask.cell(from + t, mold) && mask.cell(from + t - 1, mold);
        now += begins ? 1 : 0;
        life[t * molds + mold] = now;
      }
    }
    BitSet out = startUp(grid, from);
    for (int i = 0; i < life.length; i++) {
      // Not those of the wheel and sides: within a turn and side molds differ as ever.
      out.set(i, out.get(i) || mask.cell(from + i / molds, i % molds));
    }
    layout = Table.Layout.of(grid, from, out, life);
    y = Table.of(layout, characteristic.values(), 0);
    for (Setting setting : grid.record().settings()) {
      DoubleColumn values = setting.numbers();
      if (values != null) {
        settings.add(setting);
        numbers.add(values);
      }
    }
    lags = IntStream.range(0, settings.size()).map(this::lagTurns).sorted().distinct().toArray();
    tables = new Table[lags.length][settings.size()];
    for (int k = 0; k < lags.length; k++) {
      for (int j = 0; j < settings.size(); j++) {
        tables[k][j] =
            // Its own lag is the larger one: the same table again.
            k > 0 && lags[k] <= lagTurns(j)
                ? tables[k - 1][j]
                : Table.of(layout, numbers.get(j), Math.max(lags[k], lagTurns(j)));
      }
    }
  }

  /**
   * What was learned.
   *
   * @param effects of each numeric setting, by its name
   * @param clearest the regression that shows each best, by the setting's name
   * @param turns the characteristic, turn by turn, the level of each mold taken out; NaN within
   *     signals of the wheel or a side
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Learned(
      Map<String, EffectSize.Levels> effects, Map<String, Clearest> clearest, double[] turns) {

    /** Whether a setting's effect is a straight line; null where the record cannot tell. */
    @Nullable LineCheck line(String setting) {
      return clearest.getOrDefault(setting, Clearest.NONE).line();
    }
  }

  /**
   * The regression that shows a setting's effect with the smallest error.
   *
   * @param setting its index
   */
  private record Clearest(double error, int setting, @Nullable HeldRegression fit) {
    static final Clearest NONE = new Clearest(Double.POSITIVE_INFINITY, -1, null);

    @Nullable LineCheck line() {
      return fit == null ? null : fit.line(setting);
    }
  }

  /** Learns from the newest turns. */
  static Learned of(TurnGrid grid, Characteristic characteristic, SignalMask mask) {
    PlantHistory history = new PlantHistory(grid, characteristic, mask);
    int n = history.settings.size();
    Clearest[] clearest = new Clearest[n];
    Arrays.fill(clearest, Clearest.NONE);
    double[] kept = new double[n];
    // First without: only what pours show to act is asked whether it stays.
    @Nullable Table[][] carried = history.carried(kept);
    List<Joint> pours = history.joints(history.pours(carried));
    if (history.isAnyCarried(pours, kept)) {
      carried = history.carried(kept);
      pours = history.joints(history.pours(carried));
    }
    EffectSize[] pairs = new EffectSize[n];
    Arrays.fill(pairs, EffectSize.UNKNOWN);
    EffectSize[] byMold = history.sizes(pours, clearest, pairs);
    EffectSize[] bySide =
        history.sizes(history.joints(history.turnRows(true, carried)), clearest, pairs);
    EffectSize[] byTurn =
        history.sizes(history.joints(history.turnRows(false, carried)), clearest, pairs);
    Map<String, EffectSize.Levels> effects = new HashMap<>();
    Map<String, Clearest> shown = new HashMap<>();
    for (int i = 0; i < n; i++) {
      String name = history.settings.get(i).name();
      effects.put(name, new EffectSize.Levels(byMold[i], bySide[i], byTurn[i], pairs[i]));
      shown.put(name, clearest[i]);
    }
    double[] series = history.y.wheel().clone();
    for (int t = 0; t < series.length; t++) {
      series[t] = mask.turn(history.from + t) ? Double.NaN : series[t];
    }
    return new Learned(effects, shown, series);
  }

  /** The wheel's mean in the newest turns, molds' levels taken out, in signals too. */
  static double[] everyTurn(TurnGrid grid, Characteristic characteristic) {
    int from = Math.max(0, grid.turns() - LONGEST_TURNS);
    int[] stretch = new int[(grid.turns() - from) * grid.molds()];
    Table.Layout layout = Table.Layout.of(grid, from, startUp(grid, from), stretch);
    return Table.of(layout, characteristic.values(), 0).wheel();
  }

  /** Which pours from a turn on are start-up, by turn and mold. */
  private static BitSet startUp(TurnGrid grid, int from) {
    BitSet out = new BitSet();
    for (int t = from; t < grid.turns(); t++) {
      for (int mold = 0; mold < grid.molds(); mold++) {
        out.set((t - from) * grid.molds() + mold, grid.isStartUp(t, mold));
      }
    }
    return out;
  }

  /**
   * Finds the part of each setting that stays in a mold from one pour to the next, as pours show
   * it.
   *
   * @param kept into which; 0 stays where they do not, or where the setting shows no effect at all
   */
  private boolean isAnyCarried(List<Joint> pours, double[] kept) {
    int[] cells = cells();
    boolean isAny = false;
    for (Joint joint : pours) {
      for (int j : joint.asked()) {
        // The fit left as it is, so that each part of a setting costs one column and no regression.
        double clearest = CARRIED;
        for (double part : joint.fit().size(j, names()).isBeyondChance() ? KEPT : NONE) {
          double[] scaleOf = tables[joint.lag()][j].wheel();
          double[] column = column(carried(joint.lag(), j, part).molds(), cells, scaleOf);
          double ratio = column.length == 0 ? 0 : Math.abs(joint.fit().ratioIfAdded(column));
          if (ratio > clearest) {
            clearest = ratio;
            kept[j] = part;
            isAny = true;
          }
        }
      }
    }
    return isAny;
  }

  /** What is carried over, by lag and setting; null where nothing is known to be. */
  private @Nullable Table[][] carried(double[] kept) {
    @Nullable Table[][] carried = new Table[lags.length][kept.length];
    for (int k = 0; k < lags.length; k++) {
      for (int j = 0; j < kept.length; j++) {
        carried[k][j] = kept[j] > 0 ? carried(k, j, kept[j]) : null;
      }
    }
    return carried;
  }

  private Table carried(int k, int setting, double kept) {
    int lag = Math.max(lags[k], lagTurns(setting));
    return Table.carried(layout, numbers.get(setting), lag, kept);
  }

  /** Pours, mold by mold. */
  private HistoryRows pours(@Nullable Table[][] carried) {
    int[] at = cells();
    int n = at.length;
    double[] values = new double[n];
    int[] time = new int[n];
    int[] stretch = new int[n];
    for (int i = 0; i < n; i++) {
      values[i] = y.molds()[at[i]];
      time[i] = at[i] / molds;
      stretch[i] = at[i] % molds + molds * life[at[i]];
    }
    double[][][] x = new double[lags.length][settings.size()][];
    double[][][] c = new double[lags.length][settings.size()][];
    for (int k = 0; k < lags.length; k++) {
      for (int j = 0; j < x[k].length; j++) {
        double[] scaleOf = tables[k][j].wheel();
        x[k][j] = column(tables[k][j].molds(), at, scaleOf);
        Table more = carried[k][j];
        c[k][j] = more == null || x[k][j].length == 0 ? NONE : column(more.molds(), at, scaleOf);
      }
    }
    BitSet means = new BitSet();
    for (int i = 0; i < n; i++) {
      // Each mean that was taken out of a turn and side costs a degree of freedom.
      means.set(2 * time[i] + Math.min(1, grid.side(from + time[i], at[i] % molds)));
    }
    int levels = (int) Arrays.stream(stretch).distinct().count();
    return new HistoryRows(
        values, x, c, new double[0][], time, stretch, false, means.cardinality() + levels);
  }

  /** The pours that are known, mold by mold, as turn times molds plus mold. */
  private int[] cells() {
    int n = 0;
    int[] at = new int[turns * molds];
    for (int mold = 0; mold < molds; mold++) {
      for (int t = 0; t < turns; t++) {
        if (!Double.isNaN(y.molds()[t * molds + mold])) {
          at[n++] = t * molds + mold;
        }
      }
    }
    return Arrays.copyOf(at, n);
  }

  /** Turns: of the whole wheel, or of one ladle side against the other. */
  private HistoryRows turnRows(boolean ofSides, @Nullable Table[][] carried) {
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
      // A level of its own would take most of what so short a piece tells.
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
    // The fit has these levels too; out beforehand, they take no digits from the rest.
    center(values, ends);
    int[] turnsKept = Arrays.copyOf(at, kept);
    double[][][] x = new double[lags.length][settings.size()][];
    double[][][] c = new double[lags.length][settings.size()][];
    for (int k = 0; k < lags.length; k++) {
      for (int j = 0; j < x[k].length; j++) {
        double[] whole = ofSides ? tables[k][j].sides() : tables[k][j].wheel();
        x[k][j] = centered(whole, turnsKept, whole, ends);
        Table more = carried[k][j];
        c[k][j] =
            more == null || x[k][j].length == 0
                ? NONE
                : centered(ofSides ? more.sides() : more.wheel(), turnsKept, whole, ends);
      }
    }
    return new HistoryRows(
        values,
        x,
        c,
        levels.toArray(new double[0][]),
        turnsKept,
        Arrays.copyOf(stretch, kept),
        true,
        0);
  }

  private static double[] centered(double[] all, int[] at, double[] scaleOf, int[] ends) {
    double[] column = column(all, at, scaleOf);
    if (column.length > 0) {
      center(column, ends);
    }
    // Only now is seen that a setting moved between pieces alone, which the levels take.
    return varies(column, scaleOf) ? column : NONE;
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
  private static double[] column(double[] all, int[] at, double[] scaleOf) {
    int n = at.length;
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
      // Its mean: one setting that is missing must not take the pour from all others.
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

  private int lagTurns(int setting) {
    return settings.get(setting).profile().lagTurns();
  }

  private List<String> names() {
    return settings.stream().map(Setting::name).toList();
  }

  /**
   * All settings in one regression, for one lag.
   *
   * @param lag which of the lags
   * @param asked indices of the settings whose effects it shows
   */
  private record Joint(int lag, List<Integer> asked, HeldRegression fit) {}

  /** One kind of variation: a regression for each lag that it can tell of. */
  private List<Joint> joints(HistoryRows rows) {
    List<Joint> joints = new ArrayList<>();
    for (int k = 0; k < lags.length; k++) {
      int lag = lags[k];
      List<Integer> held = held(rows, k);
      List<Integer> asked = held.stream().filter(j -> lagTurns(j) == lag).toList();
      boolean isLong = rows.y().length >= held.size() + rows.levels().length + LEAST_ROWS;
      if (!asked.isEmpty() && isLong) {
        joints.add(new Joint(k, asked, HeldRegression.of(rows, k, held)));
      }
    }
    return joints;
  }

  /**
   * The effects that one kind of variation shows.
   *
   * @param clearest what showed each setting best so far; what does better takes its place
   * @param pairs the same for what a setting does together with another
   */
  private EffectSize[] sizes(List<Joint> joints, Clearest[] clearest, EffectSize[] pairs) {
    EffectSize[] sizes = new EffectSize[settings.size()];
    Arrays.fill(sizes, EffectSize.UNKNOWN);
    for (Joint joint : joints) {
      for (int j : joint.asked()) {
        sizes[j] = joint.fit().size(j, names());
        if (sizes[j].error() < clearest[j].error()) {
          clearest[j] = new Clearest(sizes[j].error(), j, joint.fit());
        }
        EffectSize pair = joint.fit().pair(j, names());
        // The negation, for the first pair is unknown and has no p.
        if (pair.isKnown() && !(pairs[j].p() <= pair.p())) {
          pairs[j] = pair;
        }
      }
    }
    return sizes;
  }

  /** Settings that vary; those that are only held last, for what is dropped is dropped there. */
  private List<Integer> held(HistoryRows rows, int k) {
    double[][] x = rows.settings()[k];
    return IntStream.range(0, x.length)
        .filter(j -> x[j].length > 0)
        .boxed()
        .sorted(Comparator.comparingInt(j -> lagTurns(j) < lags[k] ? 1 : 0))
        .toList();
  }
}
