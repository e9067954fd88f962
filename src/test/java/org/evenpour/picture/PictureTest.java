package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PictureTest {
  private static final Ink INK = Ink.light(13);

  private static SeriesPicture series(double[] y, int[] flagged) {
    double[] x = IntStream.range(0, y.length).asDoubleStream().toArray();
    return new SeriesPicture(
        new Points(x, y, flagged),
        new SeriesPicture.Axis("Turn", 0, y.length),
        new SeriesPicture.Axis("Mass, kg", -1, 10),
        SeriesPicture.Band.NONE,
        List.of(),
        List.of(),
        List.of());
  }

  private record Drawn(BufferedImage image, Painted painted) {}

  private static Drawn draw(Picture picture, int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(INK.field());
    g.fillRect(0, 0, width, height);
    Painted painted = picture.paint(g, new Rectangle2D.Double(0, 0, width, height), INK);
    g.dispose();
    return new Drawn(image, painted);
  }

  private static boolean isInked(BufferedImage image, double x, double y, int reach) {
    for (int i = (int) x - reach; i <= x + reach; i++) {
      for (int k = (int) y - reach; k <= y + reach; k++) {
        if (i >= 0 && k >= 0 && i < image.getWidth() && k < image.getHeight()) {
          Color color = new Color(image.getRGB(i, k));
          if (Math.abs(color.getRed() - INK.field().getRed()) > 40) {
            return true;
          }
        }
      }
    }
    return false;
  }

  // SamplingXYLineRenderer of JFreeChart 1.5.6 leaves exactly these out, which is why it is not
  // used.
  @ParameterizedTest
  @ValueSource(ints = {99_999, 99_998, 50_000, 0})
  void aSingleSpikeAmongManyPointsIsDrawn(int index) {
    double[] y = new double[100_000];
    y[index] = 9;
    Drawn drawn = draw(series(y, new int[0]), 800, 400);
    Field scale = scale(drawn);
    Rectangle2D area = scale.area();
    double top = area.getMaxY() - (9 - -1) / 11.0 * area.getHeight();
    assertThat(isInked(drawn.image(), scale.x(index), top + 3, 3)).isTrue();
    assertThat(isInked(drawn.image(), scale.x(25_000), top + 3, 3)).isFalse();
  }

  @Test
  void axesMapTurnsToPixelsAndBack() {
    Field scale = scale(draw(series(new double[100], new int[0]), 800, 400));
    assertThat(scale.value(scale.x(37.5))).isCloseTo(37.5, within());
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.data.Offset.offset(1e-9);
  }

  @Test
  void aSettingAndItsCharacteristicLieOnTheSameTurns() {
    SeriesPicture plain = series(new double[100], new int[0]);
    SeriesPicture labeled =
        new SeriesPicture(
            plain.points(),
            plain.across(),
            plain.up(),
            plain.band(),
            List.of(new SeriesPicture.Line(4, "a long label at the end of its line", false)),
            List.of(),
            List.of());
    double alone = scale(draw(plain, 800, 400)).area().getMaxX();
    double stacked =
        scale(draw(new StackPicture(List.of(plain, labeled)), 800, 800)).area().getMaxX();
    double lower = scale(draw(labeled, 800, 400)).area().getMaxX();
    assertThat(stacked).isEqualTo(lower).isLessThan(alone);
  }

  private static Field scale(Drawn drawn) {
    return Objects.requireNonNull(drawn.painted().scale());
  }

  private static MoldRing ring(int underLadle, double departure) {
    List<MoldRing.Mold> molds = new ArrayList<>();
    for (int i = 1; i <= 24; i++) {
      molds.add(
          new MoldRing.Mold(
              Integer.toString(i), i == 1 ? departure : 0.0, List.of(), "", "mold " + i, null));
    }
    return new MoldRing(
        molds, new MoldRing.Bearing(90, true, underLadle), 1, "±1 kg", "pouring", null);
  }

  private static Spot spot(Painted painted, String mold) {
    return painted.spots().stream()
        .filter(spot -> spot.name().equals(mold))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theMoldUnderTheLadleStandsAtThePouringSpot() {
    Drawn drawn = draw(ring(6, 0), 600, 600);
    Rectangle2D under = spot(drawn.painted(), "7").shape().getBounds2D();
    assertThat(under.getCenterX()).isCloseTo(300, org.assertj.core.data.Offset.offset(1.0));
    assertThat(under.getCenterY()).isLessThan(150);
  }

  @Test
  void oneLongLabelDoesNotMakeTheOthersSmall() {
    MoldRing plain = ring(6, 0);
    List<MoldRing.Mold> molds = new ArrayList<>(plain.molds());
    molds.set(20, new MoldRing.Mold("x".repeat(40_000), 0.0, List.of(), "", "mold", null));
    MoldRing withLong =
        new MoldRing(molds, plain.bearing(), 1, plain.spanLabel(), plain.pouring(), null);
    Drawn drawn = draw(plain, 600, 600);
    Rectangle2D pad = spot(drawn.painted(), "7").shape().getBounds2D();
    BufferedImage other = draw(withLong, 600, 600).image();
    for (int y = (int) pad.getMinY(); y < pad.getMaxY(); y++) {
      for (int x = (int) pad.getMinX(); x < pad.getMaxX(); x++) {
        assertThat(other.getRGB(x, y)).isEqualTo(drawn.image().getRGB(x, y));
      }
    }
  }

  @Test
  void theNextMoldComesToThePouringSpotAsTheWheelTurns() {
    // Clockwise from above, the pouring spot at the top: what comes next stands at its left.
    Drawn drawn = draw(ring(6, 0), 600, 600);
    assertThat(spot(drawn.painted(), "8").shape().getBounds2D().getCenterX()).isLessThan(290);
    assertThat(spot(drawn.painted(), "6").shape().getBounds2D().getCenterX()).isGreaterThan(310);
  }

  @Test
  void barsGrowOutwardWhenHeavyAndInwardWhenLight() {
    // Mold 1 stands at the top, its base circle at 0.315 of the ring's size from the center.
    double size = 600 / 1.17;
    Point2D outward = new Point2D.Double(300, 300 - (0.315 + 0.03) * size);
    Point2D inward = new Point2D.Double(300, 300 - (0.315 - 0.03) * size);
    BufferedImage heavy = draw(ring(0, 1), 600, 600).image();
    assertThat(isInked(heavy, outward.getX(), outward.getY(), 1)).isTrue();
    assertThat(isInked(heavy, inward.getX(), inward.getY(), 1)).isFalse();
    BufferedImage light = draw(ring(0, -1), 600, 600).image();
    assertThat(isInked(light, outward.getX(), outward.getY(), 1)).isFalse();
    assertThat(isInked(light, inward.getX(), inward.getY(), 1)).isTrue();
  }

  @Test
  void everyPictureBearsAnAreaTooSmallForIt() {
    List<Picture> pictures =
        List.of(
            series(new double[10], new int[0]),
            ring(0, 1),
            new StackPicture(List.of(series(new double[10], new int[0]))),
            new DistributionPicture(
                new double[] {1, 2, 2, 3},
                new SeriesPicture.Axis("Mass, kg", 0, 4),
                "Anodes",
                new SeriesPicture.Band(1.5, 2.0, 2.5, "tolerance"),
                "",
                ""),
            new AnodeOutline(
                List.of(new AnodeOutline.Point("top_left", 43, 0.1, "")), "mm", 1, "caption"),
            new MoldIntervals(
                List.of(new MoldIntervals.Row("1", -1, 0, 1, Mark.LOW, "0.0", "")), "kg", 1, null),
            new SpreadBar(List.of(new SpreadBar.Part(1, "all", "100 %", ""))),
            new SparkLine(new double[] {1, Double.NaN, 2}, 0, 3, 1.5),
            new IntervalBar(-1, 1, 0, null, null, null, Mark.NONE));
    for (Picture picture : pictures) {
      assertThat(draw(picture, 3, 2).image()).isNotNull();
      assertThat(draw(picture, 1200, 30).image()).isNotNull();
    }
  }

  @Test
  void aDistributionCountsEveryValueOnce() {
    double[] values = {1, 1, 1, 2, 2, 3, Double.NaN};
    Painted painted =
        draw(
                new DistributionPicture(
                    values,
                    new SeriesPicture.Axis("Mass, kg", 0, 4),
                    "Anodes",
                    SeriesPicture.Band.NONE,
                    "",
                    ""),
                600,
                300)
            .painted();
    long counted =
        painted.spots().stream()
            .mapToLong(spot -> Long.parseLong(spot.says().replaceAll(".*: ", "")))
            .sum();
    assertThat(counted).isEqualTo(6);
  }

  @Test
  void textHasTheContrastThatReadersNeed() {
    // WCAG 2.2, success criterion 1.4.3: at least 4.5 : 1 for text.
    for (Ink ink : List.of(Ink.light(13), Ink.dark(13))) {
      for (Color ground : List.of(ink.ground(), ink.field(), ink.chosen())) {
        for (Color text :
            List.of(
                ink.text(),
                ink.dim(),
                ink.heavyText(),
                ink.lightText(),
                ink.spreadText(),
                ink.event())) {
          assertThat(contrast(text, ground)).isGreaterThanOrEqualTo(4.5);
        }
      }
    }
  }

  /** As WCAG 2.2 defines it, from relative luminance. */
  private static double contrast(Color one, Color other) {
    double lighter = Math.max(luminance(one), luminance(other));
    double darker = Math.min(luminance(one), luminance(other));
    return (lighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
