package org.evenpour.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.MoldVerdict.ThickSide;
import org.evenpour.stats.Autocorrelation;
import org.evenpour.stats.LeastSquares;
import org.evenpour.stats.Moments;
import org.jspecify.annotations.Nullable;

/**
 * Which side of each mold's anodes is thick: a plane fitted by least squares to the thickness
 * points of every anode, where their names tell where they lie.
 */
final class ThickSides {
  /** A smaller difference between two sides is not spoken of: a choice. */
  static final double LEAST_MM = 0.2;

  /** The tilt must be this many standard errors: a choice. */
  private static final double ERRORS = 3;

  /** Beyond this ratio of the two tilts it is a side and no corner: tan 22.5°. */
  private static final double CORNER = Math.sqrt(2) - 1;

  private static final Set<String> CENTER = Set.of("center", "centre", "middle", "mid");

  private ThickSides() {}

  /** A place on the anode: −1 left or bottom, 1 right or top. */
  record Place(double x, double y) {}

  /** Where a point lies by its name; null where the name does not tell. */
  static @Nullable Place place(String point) {
    double x = 0;
    double y = 0;
    for (String word : point.toLowerCase(Locale.ROOT).split("_", -1)) {
      switch (word) {
        case "left" -> x--;
        case "right" -> x++;
        case "bottom", "lower" -> y--;
        case "top", "upper" -> y++;
        default -> {
          if (!CENTER.contains(word)) {
            return null;
          }
        }
      }
    }
    return Math.abs(x) > 1 || Math.abs(y) > 1 ? null : new Place(x, y);
  }

  /** One for each mold, null where the points do not tell; over its last life. */
  static List<@Nullable ThickSide> of(WheelRecord record, MoldLives lives) {
    List<ThicknessPoint> points = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    for (ThicknessPoint point : record.points()) {
      Place place = place(point.point());
      if (place != null) {
        points.add(point);
        places.add(place);
      }
    }
    int molds = record.molds().size();
    List<@Nullable ThickSide> sides = new ArrayList<>();
    double[][] weights = weights(places);
    if (weights == null) {
      for (int m = 0; m < molds; m++) {
        sides.add(null);
      }
      return sides;
    }
    int rows = lives.life().length;
    double[] right = new double[rows];
    double[] top = new double[rows];
    for (int i = 0; i < rows; i++) {
      for (int p = 0; p < places.size(); p++) {
        double mm = points.get(p).values().get(lives.from() + i);
        // Twice the slope, for places lie at −1 and 1.
        right[i] += 2 * weights[0][p] * mm;
        top[i] += 2 * weights[1][p] * mm;
      }
    }
    List<int[]> ofLife = MoldStandings.rowsOf(lives.life(), lives.lives());
    for (int m = 0; m < molds; m++) {
      int its = lives.latest()[m];
      sides.add(its < 0 ? null : side(at(right, ofLife.get(its)), at(top, ofLife.get(its))));
    }
    return sides;
  }

  private static double[] at(double[] values, int[] rows) {
    return Arrays.stream(rows)
        .mapToDouble(row -> values[row])
        .filter(v -> !Double.isNaN(v))
        .toArray();
  }

  /**
   * The linear combinations of the points that are a plane's slope across and along; null where the
   * places do not span a plane.
   */
  static double @Nullable [][] weights(List<Place> places) {
    int n = places.size();
    if (n < 3) {
      return null;
    }
    double[][] x = new double[n][];
    for (int p = 0; p < n; p++) {
      x[p] = new double[] {places.get(p).x(), places.get(p).y()};
    }
    double[][] weights = new double[2][n];
    for (int p = 0; p < n; p++) {
      // A fit is linear in its points: of ones and zeros it gives weights, once for all anodes.
      double[] one = new double[n];
      one[p] = 1;
      try {
        double[] plane = LeastSquares.fit(x, one, true).coefficients();
        weights[0][p] = plane[1];
        weights[1][p] = plane[2];
      } catch (IllegalArgumentException dependent) {
        return null;
      }
    }
    return weights;
  }

  private static @Nullable ThickSide side(double[] right, double[] top) {
    Moments across = Moments.of(right);
    Moments along = Moments.of(top);
    if (across.count() < 2) {
      return null;
    }
    // The larger of both, for a corner is told by the two together.
    double error = Math.max(error(right, across), error(top, along));
    double tilt = Math.hypot(across.mean(), along.mean());
    boolean told = tilt >= LEAST_MM && tilt > ERRORS * error;
    return new ThickSide(
        across.mean(), along.mean(), error, told ? name(across.mean(), along.mean()) : null);
  }

  private static double error(double[] values, Moments moments) {
    // From 0, or anodes would count for more than they are; below 1, or for nothing.
    double phi = Autocorrelation.lag1(values);
    double effective =
        Double.isNaN(phi)
            ? values.length
            : Autocorrelation.effectiveSampleSize(values.length, Math.min(0.95, Math.max(0, phi)));
    return moments.sd() / Math.sqrt(effective);
  }

  /** The thick side, or corner where both tilts are alike. */
  static String name(double right, double top) {
    boolean across = Math.abs(right) > CORNER * Math.abs(top);
    boolean along = Math.abs(top) > CORNER * Math.abs(right);
    String x = right > 0 ? "right" : "left";
    String y = top > 0 ? "top" : "bottom";
    return across && along ? y + "_" + x : across ? x : y;
  }
}
