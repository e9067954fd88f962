package org.evenpour.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.control.LimitsInForce.SeriesLimits;

/** Makes one episode of what one disturbance does to several charts. */
final class Episodes {
  /**
   * A side that shifts alone moves the wheel by its share of the molds, and not by more than this
   * part of its shift.
   */
  private static final double SIDE_IN_WHEEL = 0.8;

  /** Molds that shift together make the turn look scattered until each is known. */
  private static final int SECTOR = 3;

  /** Turns within which onsets count as one. */
  private static final int TOGETHER = 3;

  private Episodes() {}

  /**
   * Episodes in the order of their onsets, without those that another one explains.
   *
   * <p>A wild pour within an episode of its mold, or within a turn that scatters, is part of it. A
   * shift of the wheel that a shift of one ladle side accounts for is that side's. A contrast
   * between two sides becomes the shift of the one that moved.
   *
   * @param all as the charts gave them
   * @param sideCharts how many charts of ladle sides there are
   * @param wheel limits of the turn effects, which tell the sides apart
   */
  static List<Episode> merged(List<Episode> all, int sideCharts, SeriesLimits wheel) {
    List<Episode> kept = new ArrayList<>();
    for (Episode episode : all) {
      kept.add(
          episode.chart() == Episode.Chart.SIDE && sideCharts == 1
              ? whichSide(episode, wheel)
              : episode);
    }
    kept.removeIf(
        episode ->
            switch (episode.chart()) {
              case POUR -> all.stream().anyMatch(other -> takesIn(other, episode));
              case WHEEL -> sides(kept).anyMatch(side -> accountsFor(side, episode));
              case SPREAD -> isOfASector(all, episode);
              default -> false;
            });
    kept.sort(
        // Ties by chart and place, so that the same record always gives the same order.
        Comparator.comparingLong(Episode::sinceAtMillis)
            .thenComparing(Episode::chart)
            .thenComparingInt(Episode::index));
    return kept;
  }

  /**
   * The second side against the first rose by {@code c} while the wheel rose by {@code w}: the
   * second stands at {@code w + c/2}, the first at {@code w − c/2}; the one further off is the one
   * that moved. Odds are e^(|w·c|/s²) for it, s² the variance of w, which wanders by itself: the
   * likelihoods of w about c/2 and about −c/2.
   */
  private static Episode whichSide(Episode contrast, SeriesLimits wheel) {
    double second = contrast.companion() + contrast.size() / 2;
    double first = contrast.companion() - contrast.size() / 2;
    boolean isSecond = Math.abs(second) >= Math.abs(first);
    // An innovation holds gain times a shift: so much the less does the mean of points tell.
    double error = wheel.sigma() / wheel.gain() / Math.sqrt(contrast.points());
    // May be infinite: 1/(1 + odds) is then 0, as it should be.
    double odds = Math.exp(Math.abs(contrast.companion() * contrast.size()) / (error * error));
    int sign = isSecond ? 1 : -1;
    return new Episode(
        contrast.chart(),
        isSecond ? 1 : 0,
        sign * contrast.direction(),
        contrast.firstTurn(),
        contrast.lastTurn(),
        contrast.firstAtMillis(),
        contrast.lastAtMillis(),
        contrast.sinceTurn(),
        contrast.sinceAtMillis(),
        contrast.open(),
        contrast.ramp(),
        contrast.tests(),
        contrast.points(),
        sign * contrast.size(),
        contrast.sizeError(),
        sign * contrast.sizeSigma(),
        contrast.companion(),
        1 / (1 + odds));
  }

  private static boolean takesIn(Episode other, Episode pour) {
    boolean within = pour.firstTurn() >= other.sinceTurn() && pour.firstTurn() <= other.lastTurn();
    return switch (other.chart()) {
      case MOLD -> within && other.index() == pour.index() && other.direction() == pour.direction();
      case SPREAD -> within;
      default -> false;
    };
  }

  private static boolean accountsFor(Episode side, Episode wheel) {
    boolean small = Math.abs(wheel.size()) <= SIDE_IN_WHEEL * Math.abs(side.size());
    // The mean of a side that drifts says little of where it stood at the end.
    boolean within = side.ramp() && wheel.sinceTurn() >= side.sinceTurn();
    return side.direction() == wheel.direction() && side.overlaps(wheel) && (small || within);
  }

  private static Stream<Episode> sides(List<Episode> episodes) {
    return episodes.stream().filter(episode -> episode.chart() == Episode.Chart.SIDE);
  }

  /**
   * Molds that shift together make the turn look scattered until each of them is a signal: from
   * then on they count for its scatter no more. Scatter that goes on is its own.
   */
  private static boolean isOfASector(List<Episode> all, Episode spread) {
    List<Episode> molds = all.stream().filter(mold -> beganWith(mold, spread)).toList();
    int known = molds.stream().mapToInt(Episode::firstTurn).max().orElse(Integer.MIN_VALUE);
    return molds.size() >= SECTOR && spread.lastTurn() <= known + TOGETHER;
  }

  private static boolean beganWith(Episode mold, Episode spread) {
    return mold.chart() == Episode.Chart.MOLD
        && Math.abs(mold.sinceTurn() - spread.sinceTurn()) <= TOGETHER;
  }
}
