package org.evenpour.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.evenpour.stats.Moments;
import org.evenpour.stats.OneWayAnova;
import org.evenpour.stats.StudentT;
import org.jspecify.annotations.Nullable;

/**
 * What each level of a category (a crew, a wash batch) goes with in the wheel's mean, by this
 * plant's own history.
 *
 * <p>A <em>visit</em> is a run of turns of one level, unbroken by another, of which at least
 * {@value #LEAST_TURNS} are known. Visits are the replicates, each with the mean of its known turns
 * and with equal weight: however turns within a visit resemble each other, a visit is one value.
 *
 * <p>One-way analysis of variance of the levels that came again: twice or more, the first and the
 * last time at least half of the record apart. What drifts slowly through the record reaches all of
 * these, and makes the standard deviation larger rather than the effects; a level whose visits all
 * lie close together it would reach as a whole. Such a one, like one that came once, takes no part,
 * and its error is that of one visit. Known where two levels came again and at least {@value
 * #LEAST_DEGREES} degrees of freedom are left.
 *
 * @param levels that came for a visit, in the order of their labels
 * @param sd between visits of one level; NaN where it is not known
 * @param degreesOfFreedom visits less levels, of those that came again
 * @param p probability of levels that differ so much by chance, by the F test; NaN where it is not
 *     known
 */
public record LevelEffects(List<Level> levels, double sd, int degreesOfFreedom, double p) {
  static final int LEAST_TURNS = 3;
  static final int LEAST_DEGREES = 3;
  private static final int LEAST_LEVELS = 2;

  /** Chance below which two levels differ beyond doubt: that of three standard errors. */
  private static final double BEYOND_CHANCE = 0.0027;

  /** First to last visit, as a part of the record, from which on a level came again; a choice. */
  private static final double SPREAD_OUT = 0.5;

  /**
   * One level.
   *
   * @param label its index among the category's labels
   * @param effect mean of its visits less the mean over the levels that came again, each counted
   *     once; NaN where the levels cannot be compared
   * @param error standard error of that
   * @param visits how often it came
   * @param turns known turns of these visits
   * @param cameAgain whether it takes part in the comparison
   */
  public record Level(
      int label, double effect, double error, int visits, int turns, boolean cameAgain) {
    private int worth() {
      return cameAgain ? visits : 1;
    }
  }

  /**
   * How one level differs from another.
   *
   * @param by the effect of the one less that of the other
   * @param half half of its 95 % interval, by Student's t
   * @param isProven whether it is beyond chance as three standard errors are, by Student's t
   */
  public record Difference(double by, double half, boolean isProven) {}

  /** Whether the record can tell. */
  public boolean isKnown() {
    return sd > 0;
  }

  /** Half of the 95 % interval of a level's effect, by Student's t. */
  public double half(Level level) {
    return t() * level.error();
  }

  private double t() {
    return StudentT.quantile(0.975, degreesOfFreedom);
  }

  /** What goes with a change from one level to another; null where that is not known. */
  public @Nullable Difference between(int before, int after) {
    Level from = level(before);
    Level to = level(after);
    return !isKnown() || from == null || to == null ? null : difference(from, to);
  }

  private @Nullable Level level(int label) {
    return levels.stream().filter(level -> level.label() == label).findFirst().orElse(null);
  }

  private Difference difference(Level from, Level to) {
    return difference(
        to.effect() - from.effect(), sd * Math.sqrt(1.0 / from.worth() + 1.0 / to.worth()));
  }

  private Difference difference(double by, double error) {
    boolean isProven = StudentT.twoSided(Math.abs(by) / error, degreesOfFreedom) < BEYOND_CHANCE;
    return new Difference(by, t() * error, isProven);
  }

  /**
   * What goes with a level that stood from the record's first turn on, as against the mean of the
   * others that came again; null where that is not known.
   */
  @Nullable Difference besideOthers(int label) {
    Level own = level(label);
    List<Level> others =
        levels.stream().filter(each -> each.cameAgain() && each.label() != label).toList();
    if (!isKnown() || own == null || others.isEmpty()) {
      return null;
    }
    double mean = 0;
    double inverse = 0;
    for (Level each : others) {
      mean += each.effect() / others.size();
      // The level itself is not among the others, so that the two errors just add.
      inverse += 1.0 / each.worth() / others.size() / others.size();
    }
    return difference(own.effect() - mean, sd * Math.sqrt(1.0 / own.worth() + inverse));
  }

  /**
   * How far two levels that came again may lie apart at most, by the intervals of their
   * differences.
   */
  public double widest() {
    double widest = 0;
    List<Level> again = levels.stream().filter(Level::cameAgain).toList();
    for (int i = 0; i < again.size(); i++) {
      for (int j = 0; j < i; j++) {
        Difference difference = difference(again.get(i), again.get(j));
        // The end of the interval: "next to nothing" must hold for all that the record leaves open.
        widest = Math.max(widest, Math.abs(difference.by()) + difference.half());
      }
    }
    return widest;
  }

  /**
   * The variance that the levels that came again make from turn to turn, each weighed by its known
   * turns: {@code Σ w (effect − mean)² − s² Σ w (1 − w)/visits}, the latter being what chance alone
   * would give. Below 0 by chance where they make none.
   */
  public double variance() {
    List<Level> again = levels.stream().filter(Level::cameAgain).toList();
    double turns = again.stream().mapToInt(Level::turns).sum();
    double mean = 0;
    for (Level level : again) {
      mean += level.turns() / turns * level.effect();
    }
    double variance = 0;
    for (Level level : again) {
      double weight = level.turns() / turns;
      double off = level.effect() - mean;
      // 1 − weight: each level is part of the mean that it is measured from
      variance += weight * (off * off - sd * sd * (1 - weight) / level.visits());
    }
    return variance;
  }

  /**
   * The visits of one level while they are gathered.
   *
   * <p>Owned by the thread that compares.
   */
  private static final class Visits {
    private final Moments means = new Moments();
    private final List<Double> each = new ArrayList<>();
    private int turns;
    private int came;
    private int from = -1;
    private int to;

    /** A visit; one that is left out came all the same, and the turns tell when. */
    void add(Moments visit, int begin, int end, boolean isLeftOut) {
      if (!isLeftOut) {
        means.add(visit.mean());
        each.add(visit.mean());
        turns += (int) visit.count();
      }
      // Left out or not: whether a level came again is asked of the record, not of what is left.
      came++;
      from = from < 0 ? begin : from;
      to = end;
    }

    boolean cameAgain(int all) {
      return !each.isEmpty() && came >= 2 && to - from >= SPREAD_OUT * all;
    }
  }

  /**
   * Compares the levels by all visits but those that some turns are part of: whatever is to be
   * explained by the levels must not have taught what they do.
   *
   * @param turns the wheel's mean, turn by turn; NaN = not known
   * @param labels the level of each turn; −1 = not written down, which does not end a visit
   * @param from first of these turns
   * @param to the turn after the last
   */
  static LevelEffects without(double[] turns, int[] labels, int from, int to) {
    // By label, and only of those that came: a long record has thousands of charges.
    SortedMap<Integer, Visits> visits = new TreeMap<>();
    int now = -1;
    int begin = 0;
    Moments visit = new Moments();
    for (int t = 0; t <= turns.length; t++) {
      boolean isEnd = t == turns.length;
      if (isEnd || (labels[t] >= 0 && labels[t] != now)) {
        if (visit.count() >= LEAST_TURNS) {
          // Any turn in common leaves a visit out: half a visit would still hold the signal.
          visits
              .computeIfAbsent(now, label -> new Visits())
              .add(visit, begin, t, begin < to && t > from);
        }
        visit = new Moments();
        begin = t;
        now = isEnd ? -1 : labels[t];
      }
      if (!isEnd && labels[t] >= 0 && !Double.isNaN(turns[t])) {
        visit.add(turns[t]);
      }
    }
    return of(visits, turns.length);
  }

  private static LevelEffects of(SortedMap<Integer, Visits> visits, int turns) {
    OneWayAnova again = new OneWayAnova(0);
    double sum = 0;
    double inverse = 0;
    int k = 0;
    for (Visits own : visits.values()) {
      if (own.cameAgain(turns)) {
        for (double mean : own.each) {
          again.add(k, mean);
        }
        // Each level once, or the one that came most would be what all are measured from.
        sum += own.means.mean();
        inverse += 1.0 / own.each.size();
        k++;
      }
    }
    OneWayAnova.Result result = again.result();
    // Without scatter between visits there is nothing to hold a difference against.
    boolean isKnown = k >= LEAST_LEVELS && result.df2() >= LEAST_DEGREES && result.ssWithin() > 0;
    double sd = isKnown ? Math.sqrt(result.componentWithin()) : Double.NaN;
    double reference = isKnown ? sum / k : Double.NaN;
    List<Level> levels = new ArrayList<>();
    for (Map.Entry<Integer, Visits> one : visits.entrySet()) {
      Visits own = one.getValue();
      if (!own.each.isEmpty()) {
        boolean came = own.cameAgain(turns);
        // Visits close together are alike by drift as well: they are worth one.
        int n = came ? own.each.size() : 1;
        // A level that came again is part of the mean that it is measured from.
        double shared = came ? 2.0 / n / k : 0;
        levels.add(
            new Level(
                one.getKey(),
                own.means.mean() - reference,
                sd * Math.sqrt(1.0 / n - shared + inverse / k / k),
                own.each.size(),
                own.turns,
                came));
      }
    }
    return new LevelEffects(levels, sd, (int) result.df2(), isKnown ? result.p() : Double.NaN);
  }
}
