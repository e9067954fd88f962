package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.control.Episode;
import org.evenpour.stats.DispersedShares;
import org.jspecify.annotations.Nullable;

/** Some turns of a wheel as they are asked for rejects: who was hit, by what, in which charge. */
@SuppressWarnings("ArrayRecordComponent") // one per look, shared by its charts, never changed
record RejectRows(WheelRecord wheel, TurnIndex turns, int[] why, int begin, int end) {
  /** In place of a defect: whatever it was. */
  static final int ANY = -1;

  /** Fewer rejects are no pattern; a choice. */
  static final int LEAST = 3;

  /** The most frequent defects, so that a log of a hundred names does not take all sharpness. */
  private static final int MOST_DEFECTS = 8;

  /**
   * A stretch in which more was rejected.
   *
   * @param defect of which; {@link #ANY} of them together
   * @param episode its place and time; its size is the share within less that outside
   * @param rejected in it
   * @param of casts in it
   * @param usual share outside of it
   */
  record Stretch(int defect, Episode episode, int rejected, int of, double usual) {

    /** How many more were rejected than usual. */
    double excess() {
      return rejected - of * usual;
    }

    boolean isLike(Stretch other) {
      return episode.chart() == other.episode.chart()
          && episode.index() == other.episode.index()
          && episode.overlaps(other.episode);
    }
  }

  boolean isJudged(int row) {
    return why[row] >= 0;
  }

  boolean isHit(int row, int defect) {
    return defect == ANY ? why[row] > 0 : why[row] == defect + 1;
  }

  /** Whether a row is of an episode's place and time. */
  boolean isWithin(int row, Episode episode) {
    long at = wheel.castAtMillis().get(row);
    return at >= episode.sinceAtMillis()
        && at <= episode.lastAtMillis()
        && (episode.index() < 0 || wheel.mold().get(row) == episode.index());
  }

  /**
   * Which defects are asked for: none where one alone would say again what all say.
   *
   * @param defects how many names there are
   */
  int[] frequent(int defects) {
    int[] count = new int[defects];
    for (int row = begin; row < end; row++) {
      if (why[row] > 0) {
        count[why[row] - 1]++;
      }
    }
    int[] some =
        IntStream.range(0, defects)
            .filter(d -> count[d] >= LEAST)
            .boxed()
            .sorted(Comparator.comparingInt(d -> -count[d]))
            .limit(MOST_DEFECTS)
            .mapToInt(Integer::intValue)
            .toArray();
    return some.length > 1 ? some : new int[0];
  }

  /**
   * The row where each batch begins, and the row after the last: charges, or turns where no charge
   * is written down.
   */
  int[] batches() {
    List<Integer> begins = new ArrayList<>();
    Setting charge = setting();
    IntColumn charges = charge == null ? null : charge.categories();
    int last = -1;
    for (int row = begin; row < end; row++) {
      int its = charges != null ? charges.get(row) : turns.ofRow()[row];
      // An anode whose charge nobody wrote down belongs to the one that is being cast.
      if (row == begin || (its >= 0 && its != last)) {
        begins.add(row);
      }
      last = its >= 0 ? its : last;
    }
    begins.add(end);
    return begins.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * What is counted of each batch.
   *
   * @param begins the row where each begins, and the row after the last
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Batches(int[] begins, int[] hits, int[] casts, DispersedShares shares) {

    int all() {
      return IntStream.of(casts).sum();
    }

    int allHits() {
      return IntStream.of(hits).sum();
    }
  }

  /**
   * Counts a defect batch by batch.
   *
   * @param begins as {@link #batches} gives them
   */
  Batches counted(int[] begins, int defect) {
    int[] hits = new int[begins.length - 1];
    int[] casts = new int[hits.length];
    for (int b = 0; b < hits.length; b++) {
      for (int row = begins[b]; row < begins[b + 1]; row++) {
        casts[b] += isJudged(row) ? 1 : 0;
        hits[b] += isHit(row, defect) ? 1 : 0;
      }
    }
    return new Batches(begins, hits, casts, DispersedShares.of(hits, casts));
  }

  /** The same rows, some of them not judged. */
  RejectRows judging(int[] others) {
    return new RejectRows(wheel, turns, others, begin, end);
  }

  /** The rows from one to another. */
  RejectRows between(int from, int to) {
    return new RejectRows(wheel, turns, why, from, to);
  }

  /** How many turns the rows span. */
  int span() {
    return turns.ofRow()[end - 1] + 1 - turns.ofRow()[begin];
  }

  /** As an episode from one row to another. */
  Episode episode(
      Episode.Chart chart, int index, int first, int last, boolean isOpen, Departure its) {
    int since = wheel.turn().get(first);
    long sinceAt = wheel.castAtMillis().get(first);
    return new Episode(
        chart,
        index,
        1,
        since,
        wheel.turn().get(last),
        sinceAt,
        wheel.castAtMillis().get(last),
        since,
        sinceAt,
        isOpen,
        false,
        List.of("rejects"),
        its.casts(),
        its.size(),
        its.error(),
        its.sigmas(),
        0,
        0);
  }

  /** Names of the charges; null where none is written down. */
  @Nullable Labels charges() {
    Setting charge = setting();
    return charge == null || charge.categories() == null ? null : charge.labels();
  }

  /** Index of a row's charge; −1 where it is not written down. */
  int charge(int row) {
    Setting charge = setting();
    IntColumn its = charge == null ? null : charge.categories();
    return its == null ? -1 : its.get(row);
  }

  private @Nullable Setting setting() {
    for (Setting setting : wheel.settings()) {
      if (setting.name().equals("charge")) {
        return setting;
      }
    }
    return null;
  }

  /**
   * How far a stretch stands off.
   *
   * @param casts in it
   * @param size its share less the usual one
   * @param error of the size, one standard deviation
   * @param sigmas the size in standard deviations of a point of the chart
   */
  record Departure(int casts, double size, double error, double sigmas) {

    /**
     * @param dispersion variance of batches over what chance alone makes of them
     * @param perPoint casts in a point of the chart
     */
    static Departure of(
        int hits, int casts, int otherHits, int otherCasts, double dispersion, double perPoint) {
      double inside = (double) hits / casts;
      double usual = otherCasts == 0 ? 0 : (double) otherHits / otherCasts;
      double all = (double) (hits + otherHits) / (casts + otherCasts);
      double variance =
          inside * (1 - inside) / casts + (otherCasts == 0 ? 0 : usual * (1 - usual) / otherCasts);
      return new Departure(
          casts,
          inside - usual,
          Math.sqrt(dispersion * variance),
          (inside - usual) / Math.sqrt(dispersion * all * (1 - all) / perPoint));
    }
  }
}
