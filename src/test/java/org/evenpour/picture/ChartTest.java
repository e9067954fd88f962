package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.evenpour.picture.SeriesPicture.Change;
import org.evenpour.picture.SeriesPicture.Flag;
import org.evenpour.picture.SeriesPicture.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Charts by their pixels: where a value lies is figured here from the area and the two ends. */
class ChartTest {
  private static final Ink INK = Ink.light(13);
  private static final Axis UP = new Axis("Mass, kg", 0, 10);

  private record Drawn(BufferedImage image, Painted painted) {
    Rectangle2D area() {
      return painted.fields().get(0).area();
    }

    /** Where a value from 0 to 10 lies. */
    double y(double value) {
      return area().getMaxY() - value / 10 * area().getHeight();
    }

    double x(double part) {
      return area().getX() + part * area().getWidth();
    }

    Color at(double x, double y) {
      return new Color(image.getRGB((int) Math.floor(x), (int) Math.floor(y)));
    }

    /** How many pixels of a row inside the area are not as the ground there. */
    long inked(double y, Color ground) {
      return IntStream.range((int) area().getX() + 2, (int) area().getMaxX() - 2)
          .filter(x -> !at(x, y).equals(ground))
          .count();
    }
  }

  private static Drawn draw(Picture picture) {
    BufferedImage image = new BufferedImage(800, 400, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(INK.field());
    g.fillRect(0, 0, 800, 400);
    Painted painted = picture.paint(g, new Rectangle2D.Double(0, 0, 800, 400), INK);
    g.dispose();
    return new Drawn(image, painted);
  }

  private static Points points(double... y) {
    return new Points(IntStream.range(0, y.length).asDoubleStream().toArray(), y, new int[0])
        .saying(index -> "point " + index);
  }

  private static SeriesPicture series(Points points, Band band, List<Line> lines) {
    Axis across = new Axis("Turn", 0, Math.max(1, points.size()));
    return new SeriesPicture(points, across, UP, band, lines, List.of(), List.of());
  }

  @Test
  void aLimitIsADashedLineAtItsValueAndTheCenterASolidOne() {
    Drawn drawn =
        draw(
            series(
                Points.NONE,
                Band.NONE,
                List.of(new Line(7, "limit 7", false), new Line(4, "center 4", true))));
    double width = drawn.area().getWidth();
    assertThat(most(drawn, 7)).isBetween((long) (0.4 * width), (long) (0.75 * width));
    assertThat(most(drawn, 4)).isGreaterThan((long) (0.95 * width));
    for (double elsewhere : new double[] {1, 3, 5, 6.5, 7.5, 9}) {
      assertThat(most(drawn, elsewhere)).isZero();
    }
  }

  /** Of the rows of pixels that a hairline at the value may take. */
  private static long most(Drawn drawn, double value) {
    double y = drawn.y(value);
    return Math.max(drawn.inked(y - 0.9, INK.field()), drawn.inked(y + 0.9, INK.field()));
  }

  @Test
  void aLineIsNamedWhereItEnds() {
    Drawn drawn = draw(series(Points.NONE, Band.NONE, List.of(new Line(7, "limit 7.00", true))));
    assertThat(beside(drawn, 7)).isPositive();
    assertThat(beside(drawn, 4)).isZero();
  }

  private static long beside(Drawn drawn, double value) {
    return IntStream.range((int) drawn.area().getMaxX() + 4, 800)
        .filter(x -> !drawn.at(x, drawn.y(value)).equals(INK.field()))
        .count();
  }

  @Test
  void theToleranceIsASoftBandFromItsLowerToItsUpperEnd() {
    Drawn drawn = draw(series(Points.NONE, new Band(2.0, null, 8.0, "tolerance"), List.of()));
    double x = drawn.area().getCenterX();
    for (double inside : new double[] {2.1, 5, 7.9}) {
      assertThat(drawn.at(x, drawn.y(inside))).isEqualTo(INK.band());
    }
    for (double outside : new double[] {1.9, 8.1}) {
      assertThat(drawn.at(x, drawn.y(outside))).isEqualTo(INK.field());
    }
    Drawn open = draw(series(Points.NONE, new Band(2.0, null, null, "tolerance"), List.of()));
    assertThat(open.at(x, open.y(9.9))).isEqualTo(INK.band());
  }

  @Test
  void whoPointsAtAValueIsToldIt() {
    Drawn drawn = draw(series(points(1, 9, 5, Double.NaN, 2), Band.NONE, List.of()));
    for (int i : new int[] {1, 2, 4}) {
      double value = new double[] {1, 9, 5, 0, 2}[i];
      Point2D near = new Point2D.Double(drawn.x(i / 5.0) + 3, drawn.y(value) - 3);
      assertThat(drawn.painted().says(near)).isEqualTo("point " + i);
    }
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.2) + 9, drawn.y(9)))).isEmpty();
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.6), drawn.y(5)))).isEmpty();
  }

  @Test
  void ofAMillionValuesTheNearestTells() {
    double[] y = new double[1_000_000];
    Arrays.fill(y, 2);
    y[500_100] = 6.4;
    y[500_200] = 6.3; // as near a column, and within reach, but farther
    Drawn drawn = draw(series(points(y), Band.NONE, List.of()));
    Point2D near = new Point2D.Double(drawn.x(0.5001), drawn.y(6.45));
    assertThat(drawn.painted().says(near)).isEqualTo("point 500100");
  }

  @Test
  void aSignalIsToldBeforeTheValuesAndCanBeChosen() {
    SeriesPicture plain = series(points(1, 9, 5, 3, 2), Band.NONE, List.of());
    SeriesPicture flagged =
        new SeriesPicture(
            plain.points(),
            plain.across(),
            UP,
            Band.NONE,
            List.of(),
            List.of(new Flag(2, 4, Mark.LOW, "▼ thin", "S:7", "Mold 17 runs thin.")),
            List.of(new Change(1, "mold change", "Mold change, Tue 06:20")));
    Drawn drawn = draw(flagged);
    assertThat(drawn.painted().spot(new Point2D.Double(drawn.x(0.6), drawn.area().getY() - 2)))
        .extracting(Spot::kind, Spot::name, Spot::says)
        .containsExactly("signal", "S:7", "Mold 17 runs thin.");
    assertThat(drawn.at(drawn.x(0.6), drawn.area().getY() - 1.5)).isEqualTo(INK.light());
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.2), drawn.y(5))))
        .isEqualTo("Mold change, Tue 06:20");
  }

  /** Sparse and dense, with values far beyond the axes and turns before and after. */
  @ParameterizedTest
  @ValueSource(ints = {50, 20_000})
  void noValueIsDrawnOutsideThePlotsArea(int size) {
    SplittableRandom random = new SplittableRandom(size);
    double[] x = new double[size];
    double[] y = new double[size];
    Arrays.setAll(x, i -> 3.0 * i / size - 1);
    Arrays.setAll(y, i -> 5 + 40 * (random.nextDouble() - 0.5));
    int[] all = IntStream.range(0, size).toArray();
    Axis across = new Axis("Turn", 0, 1);
    Picture series =
        new SeriesPicture(
            new Points(x, y, all), across, UP, Band.NONE, List.of(), List.of(), List.of());
    Picture empty =
        new SeriesPicture(Points.NONE, across, UP, Band.NONE, List.of(), List.of(), List.of());
    assertSameOutside(draw(series), draw(empty));
    ScatterPicture.Slope steep = new ScatterPicture.Slope(0.5, 5, -90, 60, 90, "+60");
    ScatterPicture.Slope label = new ScatterPicture.Slope(0.5, 5, 0, 0, 0, "+60");
    Picture scatter = new ScatterPicture(new Points(x, y, new int[0]), across, UP, steep, "says");
    Picture noDots = new ScatterPicture(Points.NONE, across, UP, label, "says");
    assertSameOutside(draw(scatter), draw(noDots));
  }

  private static void assertSameOutside(Drawn one, Drawn other) {
    assertThat(one.area()).isEqualTo(other.area());
    Rectangle2D area = one.area();
    int inside = 0;
    for (int y = 0; y < 400; y++) {
      for (int x = 0; x < 800; x++) {
        if (area.contains(x + 0.5, y + 0.5)) {
          inside += one.image().getRGB(x, y) == other.image().getRGB(x, y) ? 0 : 1;
        } else {
          assertThat(one.image().getRGB(x, y)).isEqualTo(other.image().getRGB(x, y));
        }
      }
    }
    assertThat(inside).isPositive();
  }

  @Test
  void aDotOfAScatterTellsItsAnodeAndTheLineWhatItMeans() {
    Points dots =
        new Points(new double[] {8, 1, 5}, new double[] {2, 9, 5}, new int[0])
            .saying(index -> "anode " + index);
    ScatterPicture.Slope slope = new ScatterPicture.Slope(5, 2, -0.1, 0, 0.1, "0 kg");
    Drawn drawn = draw(new ScatterPicture(dots, new Axis("Flow", 0, 10), UP, slope, "the effect"));
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.1) + 2, drawn.y(9))))
        .isEqualTo("anode 1");
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.3), drawn.y(2))))
        .isEqualTo("the effect");
    assertThat(drawn.at(drawn.x(0.3), drawn.y(2))).isEqualTo(INK.accent());
  }

  @Test
  void eachMoldOfTheRankingHasItsOwnColorAtItsOwnValue() {
    List<MoldIntervals.Row> rows = new ArrayList<>();
    double[] middles = {1.6, -0.2, 0.4, -1.2}; // not in order, as the library would have them
    Mark[] marks = {Mark.NONE, Mark.HIGH, Mark.NONE, Mark.LOW};
    for (int i = 0; i < 4; i++) {
      double middle = middles[i];
      rows.add(
          new MoldIntervals.Row(
              "m" + i, middle - 0.1, middle, middle + 0.1, marks[i], "", "says " + i));
    }
    Drawn drawn = draw(new MoldIntervals(rows, "Off center, kg", 2, null));
    for (int i = 0; i < 4; i++) {
      int row = i;
      Spot spot =
          drawn.painted().spots().stream()
              .filter(one -> one.name().equals("m" + row))
              .findFirst()
              .orElseThrow();
      assertThat(spot.says()).isEqualTo("says " + i);
      double y = spot.shape().getBounds2D().getCenterY();
      Rectangle2D area = drawn.area();
      double x = area.getCenterX() + middles[i] / 4 * area.getWidth();
      assertThat(drawn.at(x, y)).isEqualTo(INK.of(marks[i]));
      assertThat(drawn.at(x + 30, y)).isEqualTo(INK.field());
    }
  }

  @Test
  void aDistributionHasTallBarsWhereMostValuesAreAndColorsOutsideTheTolerance() {
    double[] values = new double[100];
    Arrays.fill(values, 0, 80, 5.1);
    Arrays.fill(values, 80, 100, 9.1);
    Drawn drawn =
        draw(
            new DistributionPicture(
                values, UP, "Anodes", new Band(2.0, null, 8.0, "tolerance"), "", "20 over ▲"));
    double foot = drawn.area().getMaxY() - 3;
    double half = drawn.area().getMaxY() - 0.5 * drawn.area().getHeight();
    assertThat(drawn.at(drawn.x(0.51), foot)).isEqualTo(INK.data());
    assertThat(drawn.at(drawn.x(0.91), foot)).isEqualTo(INK.heavy());
    assertThat(drawn.at(drawn.x(0.51), half)).isEqualTo(INK.data());
    assertThat(drawn.at(drawn.x(0.91), half)).isEqualTo(INK.field());
    assertThat(drawn.painted().says(new Point2D.Double(drawn.x(0.91), half))).endsWith(": 20");
  }

  @Test
  void whatRulesWouldHaveMadeOfARecordIsOnTheScaleOfTheRecord() {
    Points level = points(0, 4, 0, -4, 0);
    SetPointPicture.Rule rule = new SetPointPicture.Rule("left alone", "2 kg", level);
    SetPointPicture picture =
        new SetPointPicture(
            List.of(
                new SetPointPicture.Side(
                    "Side A: leave it",
                    Mark.NONE,
                    level,
                    Points.NONE,
                    2,
                    "±2 kg",
                    "forecast",
                    List.of(rule, rule, rule))),
            new Axis("Turn", 0, 5),
            new Axis("Off target, kg", -5, 5));
    Drawn drawn = draw(picture);
    List<Field> fields = drawn.painted().fields();
    assertThat(fields).hasSize(4);
    for (Field field : fields) {
      assertThat(field.area().getY()).isEqualTo(drawn.area().getY());
      assertThat(field.area().getMaxY()).isEqualTo(drawn.area().getMaxY());
      Point2D peak =
          new Point2D.Double(field.area().getX() + 0.2 * field.area().getWidth(), drawn.y(5 + 4));
      assertThat(drawn.painted().says(peak)).isEqualTo("point 1");
    }
    double x = drawn.x(0.5);
    assertThat(drawn.at(x, drawn.y(5 + 1.8))).isEqualTo(INK.band());
    assertThat(drawn.at(x, drawn.y(5 + 2.3))).isEqualTo(INK.field());
  }

  @Test
  void rowsOfAStackShareTheirTurns() {
    SeriesPicture row = series(points(1, 9, 5, 3, 2), Band.NONE, List.of());
    Painted painted = draw(new StackPicture(List.of(row, row))).painted();
    assertThat(painted.fields()).hasSize(2);
    Field upper = painted.fields().get(0);
    Field lower = painted.fields().get(1);
    assertThat(upper.area().getMaxY()).isLessThan(lower.area().getY());
    assertThat(upper.x(3.5)).isCloseTo(lower.x(3.5), within(1e-9));
    assertThat(painted.says(new Point2D.Double(lower.x(1), lower.y(9)))).isEqualTo("point 1");
  }
}
