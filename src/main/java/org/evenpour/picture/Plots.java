package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.DomainOrder;
import org.jfree.data.Range;
import org.jfree.data.xy.AbstractXYDataset;
import org.jfree.data.xy.XYDataset;

/** Plots in our look: few ticks, units in the titles, no frame, no legend. */
final class Plots {
  /** Above so many visible points a line has no dots. */
  private static final int DOTS = 400;

  private Plots() {}

  /** A number axis from {@code low} to {@code high}. */
  static NumberAxis axis(String title, double low, double high, Ink ink) {
    NumberAxis axis = new NumberAxis(title.isEmpty() ? null : title);
    axis.setRange(low, high > low ? high : low + 1);
    axis.setAutoRangeIncludesZero(false);
    axis.setStandardTickUnits(ticks());
    axis.setLabelFont(ink.font(0.92));
    axis.setTickLabelFont(ink.font(0.85));
    axis.setLabelPaint(ink.dim());
    axis.setTickLabelPaint(ink.dim());
    axis.setAxisLinePaint(ink.hairline());
    axis.setTickMarkPaint(ink.hairline());
    double gap = ink.length(4);
    axis.setTickLabelInsets(new RectangleInsets(gap, gap * 2.5, gap, gap));
    return axis;
  }

  /** A plot without grid or frame; {@code left} and {@code right} are kept free beside it. */
  static XYPlot plot(NumberAxis across, NumberAxis up, double left, double right, double below) {
    XYPlot plot = new XYPlot(null, across, up, null);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    AxisSpace beside = new AxisSpace();
    beside.setLeft(left);
    beside.setRight(right);
    plot.setFixedRangeAxisSpace(beside);
    AxisSpace under = new AxisSpace();
    under.setBottom(below);
    plot.setFixedDomainAxisSpace(under);
    return plot;
  }

  /**
   * Draws a plot and says where its values came to lie. A number at the very top of the upright
   * axis reaches a little above the area.
   */
  static Rectangle2D draw(Pen pen, XYPlot plot, Rectangle2D area) {
    double head = pen.ink().length(7);
    plot.setInsets(new RectangleInsets(head, 0, 0, 0));
    Rectangle2D headed =
        new Rectangle2D.Double(
            area.getX(), area.getY() - head, area.getWidth(), area.getHeight() + head);
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.setAntiAlias(true);
    org.jfree.chart.ChartRenderingInfo info = new org.jfree.chart.ChartRenderingInfo(null);
    chart.draw(pen.g(), headed, null, info);
    PlotRenderingInfo where = info.getPlotInfo();
    Pen.on(pen.g(), pen.ink());
    return where.getDataArea();
  }

  /** A plot of nothing but its axes. */
  static void empty(XYPlot plot) {
    plot.setDataset(new Dataset(Points.NONE, Points.NONE.visible(0, 0)));
  }

  /**
   * A line through points; where few of them are visible, and {@code dot} is not 0, each is a small
   * dot as well.
   *
   * @param index lines are drawn in this order
   * @param dot its diameter
   */
  static void line(XYPlot plot, int index, Points points, Color color, double width, double dot) {
    Range across = plot.getDomainAxis().getRange();
    Points.Range visible = points.visible(across.getLowerBound(), across.getUpperBound());
    LineRenderer renderer = new LineRenderer(points, visible, dot > 0 && areFew(visible));
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(
        0, new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL));
    renderer.setSeriesShape(0, new java.awt.geom.Ellipse2D.Double(-dot / 2, -dot / 2, dot, dot));
    renderer.setDefaultCreateEntities(false);
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
    plot.setDataset(index, new Dataset(points, visible));
    plot.setRenderer(index, renderer);
  }

  /** Whether each of so many visible points may be seen as one. */
  static boolean areFew(Points.Range visible) {
    return visible.size() < DOTS;
  }

  /** A line from point to point, or column by column where there are more points than pixels. */
  private static final class LineRenderer extends XYLineAndShapeRenderer {
    private final transient Points points;
    private final transient Points.Range range;
    private boolean isDense;

    LineRenderer(Points points, Points.Range range, boolean dots) {
      super(true, dots);
      this.points = points;
      this.range = range;
    }

    @Override
    public XYItemRendererState initialise(
        Graphics2D g, Rectangle2D area, XYPlot plot, XYDataset visible, PlotRenderingInfo info) {
      int columns = Columns.across(area, g);
      isDense = Columns.areFewer(range, columns);
      if (isDense) {
        Range across = plot.getDomainAxis().getRange();
        Range up = plot.getRangeAxis().getRange();
        Columns.of(points, across.getLowerBound(), across.getUpperBound(), columns)
            .paint(
                g,
                area,
                up.getLowerBound(),
                up.getUpperBound(),
                (Color) getSeriesPaint(0),
                ((BasicStroke) getSeriesStroke(0)).getLineWidth());
      }
      return super.initialise(g, area, plot, visible, info);
    }

    @Override
    public int getPassCount() {
      return isDense ? 0 : super.getPassCount();
    }
  }

  /** Round steps, with no more decimals than they need and a true minus sign. */
  private static TickUnits ticks() {
    TickUnits units = new TickUnits();
    for (int power = -4; power <= 9; power++) {
      for (int lead : new int[] {1, 2, 5}) {
        double step = lead * Math.pow(10, power);
        units.add(new NumberTickUnit(step, format(Math.max(0, -power))));
      }
    }
    return units;
  }

  /** Digits as everywhere in the program: a decimal point, no grouping, a true minus sign. */
  static NumberFormat format(int decimals) {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    symbols.setMinusSign('−');
    DecimalFormat format = new DecimalFormat("0", symbols);
    format.setMinimumFractionDigits(decimals);
    format.setMaximumFractionDigits(decimals);
    return format;
  }

  /** Some points, as a dataset whose order the plot may rely on. */
  private static final class Dataset extends AbstractXYDataset {
    private final transient Points points;
    private final transient Points.Range range;

    Dataset(Points points, Points.Range range) {
      this.points = points;
      this.range = range;
    }

    @Override
    public int getSeriesCount() {
      return 1;
    }

    @Override
    public String getSeriesKey(int series) {
      return "";
    }

    @Override
    public int getItemCount(int series) {
      return range.size();
    }

    @Override
    public DomainOrder getDomainOrder() {
      return DomainOrder.ASCENDING;
    }

    @Override
    public Number getX(int series, int item) {
      return getXValue(series, item);
    }

    @Override
    public Number getY(int series, int item) {
      return getYValue(series, item);
    }

    @Override
    public double getXValue(int series, int item) {
      return points.x()[range.first() + item];
    }

    @Override
    public double getYValue(int series, int item) {
      return points.y()[range.first() + item];
    }
  }
}
