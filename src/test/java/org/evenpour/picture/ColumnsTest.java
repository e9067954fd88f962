package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class ColumnsTest {

  /** A random walk over turns that may share a place, with gaps. */
  private static Points walk(long seed, int size, double gaps) {
    Random random = new Random(seed);
    double[] x = new double[size];
    double[] y = new double[size];
    double at = 0;
    for (int i = 0; i < size; i++) {
      at += random.nextInt(4) == 0 ? 0 : 3 * random.nextDouble();
      x[i] = at;
      y[i] = random.nextDouble() < gaps ? Double.NaN : random.nextGaussian();
    }
    return new Points(x, y, new int[0]);
  }

  @Property(tries = 300)
  void coverWhatTheLineFromPointToPointCovers(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 600) int size,
      @ForAll @IntRange(min = 1, max = 40) int columns) {
    Points walk = walk(seed, size, 0.1);
    double from = walk.x()[size / 4] + 0.01;
    double to = Math.max(from + 1, walk.x()[size - 1 - size / 5]);
    Columns made = Columns.of(walk, from, to, columns);
    for (int column = 0; column < columns; column++) {
      double[] range = drawn(walk, from, to, columns, column);
      if (Double.isNaN(range[0])) {
        assertThat(made.low()[column]).isNaN();
        assertThat(made.high()[column]).isNaN();
      } else {
        assertThat(made.low()[column]).isCloseTo(range[0], within(1e-9));
        assertThat(made.high()[column]).isCloseTo(range[1], within(1e-9));
      }
    }
  }

  /** The least and the greatest height of all points and lines inside a column, cut one by one. */
  private static double[] drawn(Points walk, double from, double to, int columns, int column) {
    double left = from + column * (to - from) / columns;
    double right = column == columns - 1 ? to : from + (column + 1) * (to - from) / columns;
    double[] range = {Double.NaN, Double.NaN};
    for (int i = 0; i < walk.size(); i++) {
      double x = walk.x()[i];
      double y = walk.y()[i];
      if (x >= left && x < right || x == to && column == columns - 1) {
        widen(range, y);
      }
      if (i > 0) {
        double before = walk.x()[i - 1];
        double slope = (y - walk.y()[i - 1]) / (x - before);
        for (double edge : new double[] {left, right}) {
          if (before < edge && x >= edge) {
            widen(range, x == edge ? y : walk.y()[i - 1] + slope * (edge - before));
          }
        }
      }
    }
    return range;
  }

  private static void widen(double[] range, double value) {
    if (!Double.isNaN(value)) {
      range[0] = Double.isNaN(range[0]) ? value : Math.min(range[0], value);
      range[1] = Double.isNaN(range[1]) ? value : Math.max(range[1], value);
    }
  }

  @Test
  void aGapStaysAGapAndAValueBetweenGapsIsSeen() {
    double[] x = IntStream.range(0, 1000).asDoubleStream().toArray();
    double[] y = new double[1000];
    Arrays.fill(y, 400, 600, Double.NaN);
    y[550] = 3;
    Columns made = Columns.of(new Points(x, y, new int[0]), 0, 1000, 10);
    assertThat(made.high()).containsExactly(0, 0, 0, 0, Double.NaN, 3, 0, 0, 0, 0);
  }

  @Test
  void aSpikeAtTheNewestPointAndOneBeforeAGapAreSeen() {
    double[] x = IntStream.range(0, 100_000).asDoubleStream().toArray();
    double[] y = new double[100_000];
    y[99_999] = 9;
    y[49_999] = 9;
    y[50_000] = Double.NaN;
    Columns made = Columns.of(new Points(x, y, new int[0]), 0, 100_000, 500);
    assertThat(made.high()[499]).isEqualTo(9);
    assertThat(made.high()[249]).isEqualTo(9);
    assertThat(made.high()[250]).isZero();
  }

  @Test
  void ofNothingNothingIsSeen() {
    Columns made = Columns.of(Points.NONE, 0, 1, 3);
    assertThat(made.low()).containsOnly(Double.NaN);
  }

  /** A level line is as wide as it was asked for, a spike of one point in a million is there. */
  @Test
  void areDrawnWhereTheirValuesLie() {
    double[] x = IntStream.range(0, 1_000_000).asDoubleStream().toArray();
    double[] y = new double[1_000_000];
    y[506_000] = 40;
    BufferedImage image = new BufferedImage(120, 100, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.scale(2, 2);
    NumberAxis up = new NumberAxis();
    up.setRange(-50, 50);
    XYPlot plot = new XYPlot(null, new NumberAxis(), up, null);
    Columns.of(new Points(x, y, new int[0]), 0, 1_000_000, 80)
        .paint(g, new Field(plot, new Rectangle2D.Double(10, 0, 40, 50)), Color.WHITE, 2);
    g.dispose();
    assertThat(column(image, 60)).containsExactlyElementsOf(range(8, 52));
    assertThat(column(image, 59)).containsExactlyElementsOf(range(48, 52));
    assertThat(column(image, 19)).isEmpty();
    assertThat(column(image, 20)).isNotEmpty();
    assertThat(column(image, 99)).isNotEmpty();
    assertThat(column(image, 100)).isEmpty();
  }

  private static Iterable<Integer> range(int from, int to) {
    return IntStream.range(from, to).boxed().toList();
  }

  private static java.util.List<Integer> column(BufferedImage image, int x) {
    return IntStream.range(0, image.getHeight())
        .filter(y -> (image.getRGB(x, y) & 0xFFFFFF) != 0)
        .boxed()
        .toList();
  }
}
