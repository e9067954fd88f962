package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.evenpour.picture.SeriesPicture.Moment;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.entity.ChartEntity;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;
import org.jspecify.annotations.Nullable;

/** Plots in our look: few ticks, units in the titles, no frame, no legend. */
final class Plots {
  /** Above so many visible points a line has no dots. */
  private static final int DOTS = 400;

  private Plots() {}

  /** A number axis in our look. */
  static NumberAxis axis(Axis its, Ink ink) {
    return axis(new NumberAxis(its.title()), its, ink);
  }

  private static NumberAxis axis(NumberAxis axis, Axis its, Ink ink) {
    axis.setRange(its.low(), its.high() > its.low() ? its.high() : its.low() + 1);
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

  /**
   * The turns, along the foot of a plot; in the line of their title when it was, each date where it
   * begins.
   */
  @SuppressWarnings("serial") // never written
  static NumberAxis turns(Axis its, Ink ink) {
    NumberAxis dated =
        new NumberAxis(its.title()) {
          @Override
          protected AxisState drawLabel(
              String title,
              Graphics2D g,
              Rectangle2D whole,
              Rectangle2D area,
              RectangleEdge edge,
              AxisState state) {
            if (its.moments().isEmpty()) {
              return super.drawLabel(title, g, whole, area, edge, state);
            }
            Pen pen = Pen.on(g, ink);
            double y = state.getCursor() + ink.length(9);
            double after = area.getX();
            if (area.getX() - whole.getX() > pen.width(title, getLabelFont())) {
              pen.text(title, area.getX() - ink.length(8), y, 1, getLabelFont(), ink.dim());
            } else {
              after += pen.text(title, area.getX(), y, 0, getLabelFont(), ink.dim()).getWidth();
              after += ink.length(12);
            }
            moments(
                pen,
                its.moments(),
                at -> valueToJava2D(at, area, edge),
                y,
                new Rectangle2D.Double(after, 0, area.getMaxX() - after, 0));
            return state;
          }
        };
    NumberAxis axis = axis(dated, its, ink);
    axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    axis.setNumberFormatOverride(format(0));
    axis.setFixedDimension(ink.length(42));
    return axis;
  }

  /**
   * Writes dates, each behind a small stroke where it begins; one that another would cover is left
   * out.
   *
   * @param room from where to where along the axis
   */
  static void moments(
      Pen pen, List<Moment> moments, DoubleUnaryOperator place, double y, Rectangle2D room) {
    Ink ink = pen.ink();
    Font font = ink.font(0.85);
    double free = room.getX();
    for (Moment each : moments) {
      double x = place.applyAsDouble(each.at());
      double width = pen.width(each.label(), font);
      if (x < free) {
        continue;
      }
      pen.line(x, y - ink.length(7), x, y + ink.length(5), ink.hairline(), pen.hair());
      if (x + ink.length(4) + width > room.getMaxX()) {
        continue;
      }
      pen.text(each.label(), x + ink.length(4), y, 0, font, ink.dim());
      free = x + width + ink.length(14);
    }
  }

  /**
   * An upright axis whose title stands over it, where it is read without turning one's head.
   *
   * @param above room over the plot's area
   */
  @SuppressWarnings("serial") // never written
  static NumberAxis upright(Axis its, Pen pen, double above) {
    Ink ink = pen.ink();
    NumberAxis axis =
        new NumberAxis(its.title()) {
          @Override
          protected AxisState drawLabel(
              String title,
              Graphics2D g,
              Rectangle2D whole,
              Rectangle2D area,
              RectangleEdge edge,
              AxisState state) {
            pen.text(
                pen.fit(title, getLabelFont(), whole.getWidth()),
                whole.getX() + ink.length(4),
                area.getY() - above + ink.length(8),
                0,
                getLabelFont(),
                ink.dim());
            return state;
          }
        };
    axis.setFixedDimension(ink.length(56));
    return axis(axis, its, ink);
  }

  /**
   * A plot without grid or frame.
   *
   * @param across its axis; null = shared with other plots
   * @param above room over its area
   */
  static XYPlot plot(@Nullable NumberAxis across, @Nullable NumberAxis up, double above) {
    XYPlot plot = new XYPlot(null, across, up, null);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    plot.setInsets(new RectangleInsets(above, 0, 0, 0));
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
    return plot;
  }

  /** Draws a plot; its axes say where values lie, its entities what can be pointed at. */
  static Painted draw(Pen pen, XYPlot plot, Rectangle2D area) {
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    ChartRenderingInfo info = new ChartRenderingInfo();
    chart.draw(pen.g(), area, null, info);
    Pen.on(pen.g(), pen.ink());
    List<Spot> spots = new ArrayList<>();
    for (Object each : info.getEntityCollection().getEntities()) {
      ChartEntity entity = (ChartEntity) each;
      if (entity.getToolTipText() != null) {
        String stands = entity.getURLText() == null ? ":" : entity.getURLText();
        int end = stands.indexOf(':');
        spots.add(
            new Spot(
                entity.getArea(),
                stands.substring(0, end),
                stands.substring(end + 1),
                entity.getToolTipText()));
      }
    }
    List<Field> fields = new ArrayList<>();
    PlotRenderingInfo where = info.getPlotInfo();
    List<?> parts =
        plot instanceof CombinedDomainXYPlot over
            ? over.getSubplots()
            : plot instanceof CombinedRangeXYPlot beside ? beside.getSubplots() : List.of();
    for (int i = 0; i < parts.size(); i++) {
      add(fields, (XYPlot) parts.get(i), where.getSubplotInfo(i));
    }
    if (parts.isEmpty()) {
      add(fields, plot, where);
    }
    return new Painted(spots, fields);
  }

  private static void add(List<Field> fields, XYPlot plot, PlotRenderingInfo where) {
    if (where.getDataArea() != null && !where.getDataArea().isEmpty()) {
      fields.add(new Field(plot, where.getDataArea()));
    }
  }

  /** The tolerance of the upright axis as a soft band, its target as a hairline. */
  static IntervalMarker band(Band band, Axis axis, Ink ink) {
    Double lower = band.lower();
    Double upper = band.upper();
    return new IntervalMarker(
        lower == null ? axis.low() : lower,
        upper == null ? axis.high() : upper,
        ink.band(),
        new BasicStroke(),
        null,
        null,
        1);
  }

  /** A thin line at a value. */
  static ValueMarker level(double value, Color color, Pen pen) {
    return new ValueMarker(value, color, Pen.stroke(pen.hair()));
  }

  /** Puts values into a plot; they are drawn in the order of the indices. */
  static void values(XYPlot plot, int index, XYDataset values, XYItemRenderer renderer) {
    plot.setDataset(index, values);
    plot.setRenderer(index, renderer);
  }

  /**
   * A line through points; where few of them are visible, and {@code dot} is not 0, each is a small
   * dot as well.
   *
   * @param across what is visible
   * @param dot its diameter
   */
  static void line(
      XYPlot plot, int index, Points points, Axis across, Color color, double width, double dot) {
    boolean areFew = areFew(points.visible(across.low(), across.high()));
    DenseRenderer renderer =
        new DenseRenderer(
            true,
            dot > 0 && areFew,
            (g, field) -> {
              int columns = Columns.across(field.area(), g);
              boolean isDense = Columns.areFewer(points.visible(field.from(), field.to()), columns);
              if (isDense) {
                Columns.of(points, field.from(), field.to(), columns).paint(g, field, color, width);
              }
              return isDense;
            });
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(
        0, new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL));
    renderer.setSeriesShape(0, new Ellipse2D.Double(-dot / 2, -dot / 2, dot, dot));
    values(plot, index, new Values(points, true), renderer);
  }

  /** Whether each of so many visible points may be seen as one. */
  static boolean areFew(Points.Range visible) {
    return visible.size() < DOTS;
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
}
