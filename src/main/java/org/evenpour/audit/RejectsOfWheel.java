package org.evenpour.audit;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.RejectRows.Batches;
import org.evenpour.audit.RejectRows.Departure;
import org.evenpour.audit.RejectRows.Stretch;
import org.evenpour.control.Episode;
import org.evenpour.stats.IntervalScan;
import org.evenpour.stats.IntervalScan.Interval;
import org.evenpour.stats.Shares;

/**
 * Where the whole wheel's rejects lie denser: for some charges, or in a single turn. Charges differ
 * of themselves, and by how much they do is learned from neighbors.
 */
final class RejectsOfWheel {
  /**
   * Half of the false alarms for rejects of any kind, half for defects, where there are several.
   */
  private static final double ANY_PART = 0.5;

  /** The part of what is too much that makes it one defect's; a choice. */
  private static final double MOST_OF_IT = 0.6;

  private final RejectRows rows;
  private final int[] begins;

  /** Of any defect: asked for by every chart. */
  private final Batches ofAny;

  RejectsOfWheel(RejectRows rows) {
    this.rows = rows;
    begins = rows.batches();
    ofAny = rows.counted(begins, RejectRows.ANY);
  }

  /**
   * Spells of some charges, of a defect rather than of any.
   *
   * @param asked defects
   * @param alarms how many are told where nothing changed
   */
  List<Stretch> spells(int[] asked, double alarms) {
    double part = asked.length == 0 ? 1 : ANY_PART;
    List<Stretch> any = new ArrayList<>();
    spell(RejectRows.ANY, alarms * part, any);
    List<Stretch> found = new ArrayList<>();
    for (int defect : asked) {
      spell(defect, alarms * (1 - part) / asked.length, found);
    }
    // Where most of what is too much is one defect, that is what to say; and else that it is all.
    found.removeIf(one -> any.stream().anyMatch(all -> all.isLike(one) && !isMost(one, all)));
    any.stream().filter(all -> found.stream().noneMatch(all::isLike)).forEach(found::add);
    return found;
  }

  private static boolean isMost(Stretch one, Stretch all) {
    return one.excess() > MOST_OF_IT * all.excess();
  }

  private void spell(int defect, double alarms, List<Stretch> found) {
    Batches all = defect == RejectRows.ANY ? ofAny : rows.counted(begins, defect);
    int hits = all.allHits();
    if (hits < RejectRows.LEAST || hits == all.all()) {
      return;
    }
    IntervalScan scan = new IntervalScan(all.all());
    Interval dense = scan.clearest(all.hits(), all.casts(), all.shares().dispersion());
    if (dense == null
        || !IntervalScan.beyond(
            dense.statistic(),
            scan.likeBatches(all.hits(), all.casts(), RejectWatch.seed(all.hits())),
            RejectWatch.level(alarms))) {
      return;
    }
    int otherHits = hits - dense.successes();
    int otherCasts = all.all() - dense.trials();
    double inside = (double) dense.successes() / dense.trials();
    // Half a reject for none, so that the logarithm of the usual share is one.
    int[] edges = edges(dense, defect, inside, Math.max(otherHits, 0.5) / otherCasts);
    boolean isOpen = dense.to() == all.hits().length;
    Stretch one =
        new Stretch(
            defect,
            rows.episode(
                Episode.Chart.WHEEL,
                -1,
                edges[0],
                isOpen ? rows.end() - 1 : edges[1],
                isOpen,
                Departure.of(
                    dense.successes(),
                    dense.trials(),
                    otherHits,
                    otherCasts,
                    all.shares().dispersion(),
                    Math.max(1, (double) all.all() / rows.span()))),
            dense.successes(),
            dense.trials(),
            (double) otherHits / otherCasts);
    if (found.stream().noneMatch(one::isLike)) {
      found.add(one);
    }
  }

  /**
   * The rows between which the spell itself lies, for it begins and ends within a charge: each end
   * is where the likelihood of its share against the usual one is largest.
   */
  private int[] edges(Interval dense, int defect, double inside, double usual) {
    double hit = Math.log(inside / usual);
    double miss = Math.log1p(-Math.min(inside, 1 - 1e-9)) - Math.log1p(-usual);
    int earliest = begins[Math.max(0, dense.from() - 1)];
    int latest = begins[Math.min(begins.length - 1, dense.to() + 1)];
    int first = begins[dense.from()];
    double most = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (int row = begins[dense.from() + 1] - 1; row >= earliest; row--) {
      sum += rows.isHit(row, defect) ? hit : rows.isJudged(row) ? miss : 0;
      if (sum >= most) {
        most = sum;
        first = row;
      }
    }
    most = Double.NEGATIVE_INFINITY;
    sum = 0;
    int last = begins[dense.to()] - 1;
    for (int row = Math.max(first, begins[dense.to() - 1]); row < latest; row++) {
      sum += rows.isHit(row, defect) ? hit : rows.isJudged(row) ? miss : 0;
      if (sum >= most) {
        most = sum;
        last = row;
      }
    }
    return new int[] {first, last};
  }

  /**
   * How many of the alarms that single turns may tell they do: counts are whole, and few turns have
   * just as many as would spend all.
   *
   * @param alarms as {@link #turns} has them
   */
  double turnAlarms(double alarms) {
    Batches all = ofAny;
    if (all.allHits() < RejectRows.LEAST || all.allHits() == all.all()) {
      return 0;
    }
    double share = all.shares().share();
    double kappa = all.shares().kappa((double) all.allHits() / all.casts().length);
    double level = alarms / rows.span();
    double mean = share * all.all() / rows.span();
    int hits = RejectRows.LEAST;
    while (Shares.soMany(hits, mean, kappa) >= level) {
      hits++;
    }
    return rows.span() * Shares.soMany(hits, mean, kappa);
  }

  /**
   * Single turns with more than chance and the charges' own differences make of them.
   *
   * @param alarms how many are told where nothing changed
   */
  List<Stretch> turns(double alarms) {
    List<Stretch> found = new ArrayList<>();
    Batches all = ofAny;
    double share = all.shares().share();
    if (all.allHits() < RejectRows.LEAST || all.allHits() == all.all()) {
      return found;
    }
    double level = alarms / rows.span();
    int[] turn = rows.turns().ofRow();
    for (int row = rows.begin(), next; row < rows.end(); row = next) {
      int hits = 0;
      int casts = 0;
      for (next = row; next < rows.end() && turn[next] == turn[row]; next++) {
        casts += rows.isJudged(next) ? 1 : 0;
        hits += rows.isHit(next, RejectRows.ANY) ? 1 : 0;
      }
      if (hits >= RejectRows.LEAST
          && Shares.soMany(
                  hits,
                  casts * share,
                  all.shares().kappa((double) all.allHits() / all.casts().length))
              < level) {
        boolean isOpen = next == rows.end();
        Departure its =
            Departure.of(
                hits,
                casts,
                all.allHits() - hits,
                all.all() - casts,
                all.shares().dispersion(),
                casts);
        found.add(
            new Stretch(
                RejectRows.ANY,
                rows.episode(Episode.Chart.WHEEL, -1, row, next - 1, isOpen, its),
                hits,
                casts,
                share));
      }
    }
    return found;
  }
}
