package org.evenpour.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.stats.SeriesRegression;
import org.jspecify.annotations.Nullable;

/**
 * One regression of a characteristic on some settings, each with the others held.
 *
 * <p>Errors of series that wander are those of {@link SeriesRegression}, at Student's t. Those of
 * pours allow for what is left of runs ({@link SeriesRegression#robustErrors}) and for the means
 * that were taken out before.
 */
final class HeldRegression {
  /** Turns over which the errors of pours may hang together. */
  private static final int ROBUST_STEPS = 6;

  /** Beyond this correlation two settings move together. */
  private static final double TOGETHER = 0.8;

  private final HistoryRows rows;
  private final double[][] x;
  private final double[][] carried;
  private final SeriesRegression fit;
  private final List<Integer> held;
  private final double[] errors;
  private final double[] freedom;

  private HeldRegression(
      HistoryRows rows,
      double[][] x,
      double[][] carried,
      SeriesRegression fit,
      List<Integer> held,
      double[] freedom) {
    this.rows = rows;
    this.x = x;
    this.carried = carried;
    this.fit = fit;
    this.held = held;
    this.freedom = freedom;
    errors = rows.wanders() ? modelled(fit, freedom) : within(fit, rows, freedom);
  }

  /**
   * Fits; what is a combination of the settings before it is left out.
   *
   * <p>With {@code a·x + b·c = (a + b)·x + b·(c − x)} the coefficient of a setting that is carried
   * over is what a lasting change of one unit does in the end.
   *
   * @param lag which of the rows' lags
   * @param held indices of the settings that take part, in the order of their columns
   */
  static HeldRegression of(HistoryRows rows, int lag, List<Integer> held) {
    return of(rows, rows.settings()[lag], rows.carried()[lag], held);
  }

  private static HeldRegression of(
      HistoryRows rows, double[][] x, double[][] carried, List<Integer> held) {
    List<double[]> all = new ArrayList<>();
    held.forEach(j -> all.add(x[j]));
    held.stream().map(j -> carried[j]).filter(column -> column.length > 0).forEach(all::add);
    all.addAll(List.of(rows.levels()));
    double[][] columns = all.toArray(new double[0][]);
    try {
      SeriesRegression fit =
          rows.wanders()
              ? SeriesRegression.of(columns, rows.y(), rows.time(), rows.stretch())
              : SeriesRegression.with(columns, rows.y(), rows.time(), rows.stretch(), 0, 0);
      double[] freedom = new double[held.size()];
      for (int j = 0; j < freedom.length; j++) {
        // Pours: their number says nothing where a setting moves by the turn.
        freedom[j] = rows.wanders() ? Math.max(1, fit.freedom(j)) : turns(rows);
      }
      // Columns that just pass the fit may fail when each is asked what the others leave of it.
      return new HeldRegression(rows, x, carried, fit, held, freedom);
    } catch (IllegalArgumentException dependent) {
      // What is carried over goes first: it was added to a setting, and none is lost without it.
      if (Stream.of(carried).anyMatch(column -> column.length > 0)) {
        return of(rows, x, new double[x.length][0], held);
      }
      if (held.size() == 1) {
        throw dependent;
      }
      // The last ones are held only for the sake of others, which is why they stand last.
      return of(rows, x, carried, held.subList(0, held.size() - 1));
    }
  }

  /** What pours of one turn have in common they may also have to say in common. */
  private static double turns(HistoryRows rows) {
    return Math.max(1, Arrays.stream(rows.time()).distinct().count() - 1.0);
  }

  private static double[] within(SeriesRegression fit, HistoryRows rows, double[] freedom) {
    double[] errors = fit.robustErrors(rows.stretch(), ROBUST_STEPS);
    int free = fit.degreesOfFreedom();
    // Means taken out before were fitted too, and the fit doesn't know what they cost.
    double widened = Math.sqrt(free / (double) Math.max(1, free - rows.takenOut()));
    for (int j = 0; j < freedom.length; j++) {
      errors[j] *= widened * EffectSize.widened(freedom[j]);
    }
    return errors;
  }

  private static double[] modelled(SeriesRegression fit, double[] freedom) {
    double[] errors = new double[freedom.length];
    for (int j = 0; j < errors.length; j++) {
      errors[j] = fit.error(j) * EffectSize.widened(freedom[j]);
    }
    return errors;
  }

  /**
   * The effect of one setting; where it moves together with another and the record cannot tell
   * which of them acts, that of both moving as they did.
   *
   * @param names of all settings
   */
  EffectSize size(int setting, List<String> names) {
    EffectSize pair = pair(setting, names);
    if (!held.contains(setting)) {
      return pair;
    }
    EffectSize own = own(setting);
    int twin = twin(setting);
    // Where either stands with the other held, the record can tell them apart.
    if (twin < 0 || own.isBeyondChance() || own(twin).isBeyondChance()) {
      return own;
    }
    return new EffectSize(
        pair.perUnit(),
        pair.error(),
        pair.freedom(),
        pair.togetherWith(),
        own.ratio() < own(twin).ratio(),
        own);
  }

  /**
   * The effect of one setting and the one that it moves with, both moving as they did, whatever can
   * be told of either; unknown where it moves with none.
   *
   * @param names of all settings
   */
  EffectSize pair(int setting, List<String> names) {
    boolean isHeld = held.contains(setting);
    int twin = isHeld ? twin(setting) : nearest(setting);
    if (twin < 0) {
      return EffectSize.UNKNOWN;
    }
    // What is a combination of the others stands alone: it cannot be told from what they do.
    List<Integer> without = new ArrayList<>(isHeld ? held : List.of(setting));
    without.remove((Integer) twin);
    // Without the twin a setting takes over what both do, moving as they did.
    EffectSize both = of(rows, x, carried, without).own(setting);
    return new EffectSize(
        both.perUnit(),
        both.error(),
        both.freedom(),
        List.of(names.get(twin)),
        !isHeld,
        EffectSize.UNKNOWN);
  }

  /** The effect, in standard errors, that a column would have which takes no part. */
  double ratioIfAdded(double[] column) {
    return fit.ratioIfAdded(column, rows.time(), rows.stretch());
  }

  /** Whether one held setting acts by a straight line; null where it is not held. */
  @Nullable LineCheck line(int setting) {
    if (!held.contains(setting)) {
      return null;
    }
    double[] squares = x[setting].clone();
    double mean = 0;
    for (int i = 0; i < squares.length; i++) {
      squares[i] *= squares[i];
      mean += squares[i] / squares.length;
    }
    for (int i = 0; i < squares.length; i++) {
      // Pours have no level in the fit: a square that kept its mean would be one.
      squares[i] -= mean;
    }
    return new LineCheck(
        fit.addedColumn(squares, rows.time(), rows.stretch()),
        fit.residualLagOne(rows.stretch()),
        squares.length);
  }

  private EffectSize own(int setting) {
    int k = held.indexOf(setting);
    // An exact fit has the error 0, which would read as not known.
    return new EffectSize(fit.coefficient(k), errors[k] + Double.MIN_NORMAL, freedom[k]);
  }

  private static double correlation(double[] one, double[] other) {
    double xy = 0;
    double xx = 0;
    double yy = 0;
    for (int i = 0; i < one.length; i++) {
      xy += one[i] * other[i];
      xx += one[i] * one[i];
      yy += other[i] * other[i];
    }
    return xx == 0 || yy == 0 ? 0 : xy / Math.sqrt(xx * yy);
  }

  /** The setting that moves with this one the most, beyond {@link #TOGETHER}; −1 for none. */
  private int twin(int setting) {
    int twin = -1;
    double largest = TOGETHER;
    for (int other : held) {
      if (other != setting) {
        double r =
            // What wanders together is alike as recorded, what jumps together once it is white.
            Math.max(
                Math.abs(fit.correlation(held.indexOf(setting), held.indexOf(other))),
                Math.abs(correlation(x[setting], x[other])));
        if (r > largest) {
          largest = r;
          twin = other;
        }
      }
    }
    return twin;
  }

  /** The held setting that goes best with one that is not. */
  private int nearest(int setting) {
    int nearest = held.get(0);
    double largest = -1;
    for (int other : held) {
      double r = Math.abs(correlation(x[setting], x[other]));
      if (r > largest) {
        largest = r;
        nearest = other;
      }
    }
    return nearest;
  }
}
