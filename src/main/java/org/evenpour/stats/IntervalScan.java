package org.evenpour.stats;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleSupplier;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.random.RandomDataGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Where in a row of trials successes lie denser than in the rest: the scan statistic for an
 * interval of any length (Naus 1965), by the likelihood ratio of two shares against one (Kulldorff
 * 1997). Of single trials there are many more short intervals than long ones, and by chance some of
 * them are dense: √(2·ln ratio) is lessened by √(2·(1 + ln(trials/length))), which makes every
 * length as sharp as it can be (Dümbgen and Spokoiny 2001). Nothing is assumed of the share itself:
 * given how many there are, all orders are equally likely where nothing changed, and that is what
 * an interval is held against.
 */
public final class IntervalScan {
  /** Fewer are no stretch, however near they lie; a choice. */
  private static final int LEAST_SUCCESSES = 3;

  /**
   * Degrees of freedom of a sigma by moving ranges, for each range: its squared coefficient of
   * variation is 0.826/ranges, that of a sigma with ν degrees 1/(2ν).
   */
  private static final double MOVING_RANGES = 0.6;

  /** x·ln x by x: a scan asks for millions of them. */
  private final double[] entropy;

  /** By the number of trials, of which molds of a wheel have nearly the same. */
  private final Map<Integer, double[]> tooManyOf = new ConcurrentHashMap<>();

  /**
   * @param trials the most that will be scanned
   */
  public IntervalScan(int trials) {
    entropy = new double[trials + 1];
    for (int i = 2; i <= trials; i++) {
      entropy[i] = i * Math.log(i);
    }
  }

  /**
   * The clearest interval.
   *
   * @param from index of its first trial or batch
   * @param to index after its last
   * @param successes in it
   * @param trials in it
   * @param statistic by which it was chosen; may be below 0
   */
  public record Interval(int from, int to, int successes, int trials, double statistic) {}

  /**
   * The interval from one success to another that is denser than the rest by most. O(n²) for n
   * successes.
   *
   * @param at indices of the successes among the trials, ascending
   * @param trials how many in all
   * @return null where no interval is denser than the rest
   */
  public @Nullable Interval clearest(int[] at, int trials) {
    int n = at.length;
    Interval best = null;
    double most = Double.NEGATIVE_INFINITY;
    double all = likelihood(n, trials);
    double[] tooMany = tooManyOf.computeIfAbsent(trials, IntervalScan::tooMany);
    for (int i = 0; i + LEAST_SUCCESSES <= n; i++) {
      for (int j = i + LEAST_SUCCESSES - 1; j < n; j++) {
        int inside = j - i + 1;
        int length = at[j] - at[i] + 1;
        // Denser than the rest, without a division.
        if ((long) inside * trials > (long) n * length) {
          double ratio = likelihood(inside, length) + likelihood(n - inside, trials - length) - all;
          double bar = most + tooMany[length];
          // A root for each of millions would be most of the work: only where it may matter.
          if (bar <= 0 || 2 * ratio > bar * bar) {
            most = Math.sqrt(Math.max(0, 2 * ratio)) - tooMany[length];
            best = new Interval(at[i], at[j] + 1, inside, length, most);
          }
        }
      }
    }
    return best;
  }

  /**
   * The run of batches that is denser than the rest by most, all of them never. O(n²) for n
   * batches.
   *
   * @param successes of each batch
   * @param trials of each batch
   * @param dispersion variance of the batches' shares over what chance makes of them, 1 or more
   * @return null where none is denser than the rest
   */
  public @Nullable Interval clearest(int[] successes, int[] trials, double dispersion) {
    int n = successes.length;
    int good = Arrays.stream(successes).sum();
    int all = Arrays.stream(trials).sum();
    double whole = likelihood(good, all);
    Interval best = null;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      int inside = 0;
      int length = 0;
      for (int j = i; j < n && j - i < n - 1; j++) {
        inside += successes[j];
        length += trials[j];
        if (inside >= LEAST_SUCCESSES && (long) inside * all > (long) good * length) {
          double ratio =
              likelihood(inside, length) + likelihood(good - inside, all - length) - whole;
          double its = Math.sqrt(2 * ratio / dispersion);
          if (its > most) {
            most = its;
            best = new Interval(i, j + 1, inside, length, its);
          }
        }
      }
    }
    return best;
  }

  /** What chance makes of so many intervals, by their length. */
  private static double[] tooMany(int trials) {
    double[] tooMany = new double[trials + 1];
    for (int length = 1; length <= trials; length++) {
      tooMany[length] = Math.sqrt(2 * (1 + Math.log((double) trials / length)));
    }
    return tooMany;
  }

  /** Largest log-likelihood of so many successes, but for the number of orders. */
  private double likelihood(int successes, int trials) {
    return entropy[successes] + entropy[trials - successes] - entropy[trials];
  }

  /**
   * A scan of successes that fell among the trials by chance, for {@link #beyond}: some batches are
   * likelier to be hit than others, each of their trials alike.
   *
   * @param successes how many, no more than half of the trials that can be hit
   * @param ends of each batch the index after its last trial, ascending
   * @param share how likely a trial of a batch is to be hit, next to the others; asked once for
   *     each batch and scan
   */
  public DoubleSupplier byChance(
      int successes, int[] ends, IntToDoubleFunction share, SplittableRandom random) {
    int trials = ends[ends.length - 1];
    double[] reach = new double[ends.length];
    BitSet isHit = new BitSet(trials);
    return () -> {
      double all = 0;
      for (int i = 0, begin = 0; i < ends.length; begin = ends[i++]) {
        all += (ends[i] - begin) * share.applyAsDouble(i);
        reach[i] = all;
      }
      isHit.clear();
      for (int left = successes; left > 0; ) {
        int found = Arrays.binarySearch(reach, random.nextDouble() * all);
        int batch = found < 0 ? -found - 1 : Math.min(found + 1, ends.length - 1);
        int begin = batch == 0 ? 0 : ends[batch - 1];
        int length = ends[batch] - begin;
        // Each trial is hit once: another draw where this one was.
        int at = length == 0 ? -1 : begin + random.nextInt(length);
        if (at >= 0 && !isHit.get(at)) {
          isHit.set(at);
          left--;
        }
      }
      Interval interval = clearest(isHit.stream().toArray(), trials);
      return interval == null ? Double.NEGATIVE_INFINITY : interval.statistic();
    };
  }

  /**
   * A scan of batches as these where nothing changed, for {@link #beyond}: as many trials, and
   * shares that differ as much from batch to batch. By how much they do is an estimate, from few
   * batches a poor one, and is drawn anew each time.
   *
   * @param successes of each batch
   * @param trials of each batch
   */
  public DoubleSupplier likeBatches(int[] successes, int[] trials, long seed) {
    RandomDataGenerator random = new RandomDataGenerator(seed);
    DispersedShares shares = DispersedShares.of(successes, trials);
    double freedom = MOVING_RANGES * (trials.length - 1);
    double mean = (double) Arrays.stream(successes).sum() / trials.length;
    int[] drawn = new int[trials.length];
    return () -> {
      double dispersion = shares.dispersion() * freedom / random.nextGamma(freedom / 2, 2);
      double kappa = (dispersion - 1) / mean;
      for (int b = 0; b < trials.length; b++) {
        double own = kappa > 0 ? random.nextGamma(1 / kappa, kappa) : 1;
        double expected = own * trials[b] * shares.share();
        drawn[b] = expected > 0 ? Math.min(trials[b], random.nextPoisson(expected)) : 0;
      }
      Interval dense = clearest(drawn, trials, DispersedShares.of(drawn, trials).dispersion());
      return dense == null ? Double.NEGATIVE_INFINITY : dense.statistic();
    };
  }

  /**
   * Whether a statistic lies beyond chance, by drawing what chance makes of it: stops as soon as
   * enough draws reach it (Besag and Clifford 1991), which for most is soon, and keeps the level
   * exactly: where nothing changed it answers yes with probability {@code level}, or a little less
   * by rounding up the number of draws.
   *
   * @param statistic that was seen
   * @param chance draws it where nothing changed
   * @param level between 0 and 1, not included
   */
  public static boolean beyond(double statistic, DoubleSupplier chance, double level) {
    // Four draws may reach it: with one alone every answer would hang on the luck of one draw.
    int enough = 4;
    int draws = (int) Math.min(MOST_DRAWS, Math.ceil(enough / level) - 1);
    for (int i = 0; i < draws; i++) {
      if (chance.getAsDouble() >= statistic && --enough == 0) {
        return false;
      }
    }
    return true;
  }

  /** For what it costs; a level below a fifty-thousandth is not kept sharper than that. */
  private static final int MOST_DRAWS = 200_000;
}
