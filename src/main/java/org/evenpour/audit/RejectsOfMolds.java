package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import org.evenpour.audit.RejectRows.Batches;
import org.evenpour.audit.RejectRows.Departure;
import org.evenpour.audit.RejectRows.Stretch;
import org.evenpour.control.Episode;
import org.evenpour.stats.IntervalScan;
import org.evenpour.stats.IntervalScan.Interval;
import org.evenpour.stats.Shares;

/**
 * Where one mold's rejects lie denser than chance makes them. Given how many it has, they may lie
 * anywhere among its casts, though rather where the other molds have theirs: a cold charge is no
 * mold's own.
 */
final class RejectsOfMolds {
  /** Below this chance of none since, a stretch has ended; a choice. */
  private static final double STILL = 0.1;

  /**
   * Half of the false alarms for rejects of any kind, half for defects, where there are several.
   */
  private static final double ANY_PART = 0.5;

  private final RejectRows rows;
  private final int[] begins;

  /** By defect, counted once for all molds. */
  private final Map<Integer, Batches> counts = new ConcurrentHashMap<>();

  private final int[][] casts;
  private final IntervalScan scan;

  RejectsOfMolds(RejectRows rows) {
    this.rows = rows;
    begins = rows.batches();
    int molds = rows.wheel().molds().size();
    int[] mold = IntStream.range(rows.begin(), rows.end()).map(rows.wheel().mold()::get).toArray();
    int[] n = new int[molds];
    for (int row = rows.begin(); row < rows.end(); row++) {
      n[mold[row - rows.begin()]] += rows.isJudged(row) ? 1 : 0;
    }
    casts = new int[molds][];
    Arrays.setAll(casts, m -> new int[n[m]]);
    Arrays.fill(n, 0);
    for (int row = rows.begin(); row < rows.end(); row++) {
      if (rows.isJudged(row)) {
        int m = mold[row - rows.begin()];
        casts[m][n[m]++] = row;
      }
    }
    scan = new IntervalScan(Arrays.stream(casts).mapToInt(its -> its.length).max().orElse(0));
  }

  private record Chart(int mold, int defect, int[] at) {}

  /**
   * The clearest stretch of each mold that has one; of a defect rather than of any.
   *
   * @param asked defects
   * @param alarms how many are told where nothing changed
   */
  List<Stretch> stretches(int[] asked, double alarms) {
    List<Chart> any = charts(RejectRows.ANY);
    List<Chart> defects = new ArrayList<>();
    for (int defect : asked) {
      defects.addAll(charts(defect));
    }
    double part = defects.isEmpty() ? 1 : ANY_PART;
    List<Stretch> found = new ArrayList<>();
    examine(defects, alarms * (1 - part), found);
    examine(any, alarms * part, found);
    return found;
  }

  private List<Chart> charts(int defect) {
    List<Chart> charts = new ArrayList<>();
    for (int m = 0; m < casts.length; m++) {
      int[] its = casts[m];
      int[] at = IntStream.range(0, its.length).filter(i -> rows.isHit(its[i], defect)).toArray();
      // A mold that is asked nothing leaves its part to the others: how many are rejected says
      // nothing of their order. One that is mostly rejected stands out, and needs no chart.
      if (at.length >= RejectRows.LEAST && at.length <= its.length / 2) {
        charts.add(new Chart(m, defect, at));
      }
    }
    return charts;
  }

  private void examine(List<Chart> charts, double alarms, List<Stretch> found) {
    double level = RejectWatch.level(alarms / charts.size());
    // In the list's order, whichever thread ends first.
    charts.parallelStream()
        .map(chart -> stretch(chart, level))
        .flatMap(List::stream)
        .toList()
        .forEach(
            one -> {
              if (found.stream().noneMatch(one::isLike)) {
                found.add(one);
              }
            });
  }

  private List<Stretch> stretch(Chart chart, double level) {
    int[] at = chart.at();
    int[] its = casts[chart.mold()];
    Interval dense = scan.clearest(at, its.length);
    if (dense == null || !IntervalScan.beyond(dense.statistic(), byChance(chart), level)) {
      return List.of();
    }
    double inside = (double) dense.successes() / dense.trials();
    boolean isOpen = Math.pow(1 - inside, its.length - dense.to()) > STILL;
    int last = isOpen ? its.length - 1 : dense.to() - 1;
    int otherHits = at.length - dense.successes();
    int otherCasts = its.length - dense.trials();
    return List.of(
        new Stretch(
            chart.defect(),
            rows.episode(
                Episode.Chart.MOLD,
                chart.mold(),
                its[dense.from()],
                its[last],
                isOpen,
                Departure.of(dense.successes(), dense.trials(), otherHits, otherCasts, 1, 1)),
            dense.successes(),
            dense.trials(),
            otherCasts == 0 ? 0 : (double) otherHits / otherCasts));
  }

  /** The mold's rejects as chance would lay them, given where the other molds have theirs. */
  private DoubleSupplier byChance(Chart chart) {
    int[] its = casts[chart.mold()];
    Batches all = counts.computeIfAbsent(chart.defect(), any -> rows.counted(begins, any));
    int[] hits = all.hits().clone();
    int[] others = all.casts().clone();
    int[] ends = new int[others.length];
    int b = 0;
    for (int i = 0; i < its.length; i++) {
      while (its[i] >= begins[b + 1]) {
        ends[b++] = i;
      }
      others[b]--;
      hits[b] -= rows.isHit(its[i], chart.defect()) ? 1 : 0;
    }
    Arrays.fill(ends, b, ends.length, its.length);
    long seed = RejectWatch.seed(chart.at());
    // What the others tell of a charge is an estimate: drawn anew each time from what it may be.
    return scan.byChance(
        chart.at().length, ends, Shares.drawn(hits, others, seed), new SplittableRandom(seed));
  }
}
