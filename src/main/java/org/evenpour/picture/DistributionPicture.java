package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.picture.SeriesPicture.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.statistics.HistogramDataset;
import org.jspecify.annotations.Nullable;

/**
 * How often each value came, as bars, against the tolerance as a soft band. Bars outside the
 * tolerance carry the color of heavy or light and the count outside stands beside the band in
 * words.
 *
 * @param values in the unit that is shown; NaN = missing, left out
 * @param across the values that are visible
 * @param countTitle title of the upright axis
 * @param band the tolerance
 * @param belowLabel what stands at the left of the band: {@code ▼ 3 under}; empty = nothing
 * @param aboveLabel what stands at the right of it
 */
@SuppressWarnings("ArrayRecordComponent") // handed on, compared by value
public record DistributionPicture(
    double[] values,
    Axis across,
    String countTitle,
    SeriesPicture.Band band,
    String belowLabel,
    String aboveLabel)
    implements Picture {

  private static final int LEAST_BARS = 24;

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof DistributionPicture its
        && Arrays.equals(values, its.values)
        && across.equals(its.across)
        && countTitle.equals(its.countTitle)
        && band.equals(its.band)
        && belowLabel.equals(its.belowLabel)
        && aboveLabel.equals(its.aboveLabel);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(values) + across.hashCode();
  }

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double step = step();
    double start = Math.floor(across.low() / step) * step;
    int bars = (int) Math.max(1, Math.ceil((across.high() - start) / step));
    double end = start + bars * step;
    HistogramDataset counts = new HistogramDataset();
    // What lies outside would be counted in the outermost bars, and what is missing in the first.
    counts.addSeries(
        "", Arrays.stream(values).filter(v -> v >= start && v < end).toArray(), bars, start, end);
    double most = 1;
    for (int bar = 0; bar < bars; bar++) {
      most = Math.max(most, counts.getYValue(0, bar));
    }
    NumberAxis values = Plots.axis(across, ink);
    values.setFixedDimension(ink.length(44));
    NumberAxis count = Plots.axis(new Axis(countTitle, 0, most * 1.06), ink);
    count.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    count.setNumberFormatOverride(Plots.format(0));
    count.setFixedDimension(ink.length(64));
    XYPlot plot = Plots.plot(values, count, 0);
    plot.setInsets(new RectangleInsets(ink.length(20), 0, 0, ink.length(12)));
    Plots.values(plot, 0, counts, bars(counts, ink));
    if (band.lower() != null || band.upper() != null) {
      plot.addDomainMarker(Plots.band(band, across, ink), Layer.BACKGROUND);
    }
    if (band.target() != null) {
      plot.addDomainMarker(Plots.level(band.target(), ink.hairline(), pen), Layer.BACKGROUND);
    }
    plot.addAnnotation(new Note(pen, field -> labels(pen, field)));
    plot.addAnnotation(new Note(pen, field -> spots(counts, step, field)));
    return Plots.draw(pen, plot, area);
  }

  /** Bars in the color of what their middle is. */
  @SuppressWarnings("serial") // never written
  private XYBarRenderer bars(HistogramDataset counts, Ink ink) {
    XYBarRenderer bars =
        new XYBarRenderer(0.08) {
          @Override
          public Paint getItemPaint(int series, int bar) {
            return ink.of(band.mark(counts.getXValue(series, bar)));
          }
        };
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setDefaultCreateEntities(false); // one points at a bar above it too
    return bars;
  }

  private double step() {
    double rough = (across.high() - across.low()) / LEAST_BARS;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double lead = rough / power;
    return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
  }

  private static List<Spot> spots(HistogramDataset counts, double step, Field field) {
    List<Spot> spots = new ArrayList<>();
    for (int bar = 0; bar < counts.getItemCount(0); bar++) {
      long count = Math.round(counts.getYValue(0, bar));
      if (count > 0) {
        double from = counts.getStartXValue(0, bar);
        Rectangle2D its = field.area().getBounds2D();
        double left = field.x(from);
        its.setRect(left, its.getY(), field.x(from + step) - left, its.getHeight());
        spots.add(
            new Spot(
                its,
                "",
                "",
                number(from, step) + " … " + number(from + step, step) + ": " + count));
      }
    }
    return spots;
  }

  private List<Spot> labels(Pen pen, Field field) {
    Ink ink = pen.ink();
    Font font = ink.font(0.85);
    Rectangle2D inner = field.area();
    double y = inner.getY() - ink.length(9);
    double from = band.lower() == null ? inner.getX() : field.x(band.lower());
    double to = band.upper() == null ? inner.getMaxX() : field.x(band.upper());
    double middle = (from + to) / 2;
    double half = pen.width(band.label(), font) / 2;
    double gap = ink.length(8);
    pen.text(band.label(), middle, y, 0.5, font, ink.dim());
    double right = Math.min(middle - half - gap, band.lower() == null ? middle : from);
    double width = pen.width(belowLabel, font);
    pen.text(belowLabel, Math.max(inner.getX(), right - width), y, 0, font, ink.textOf(Mark.LOW));
    double left = Math.max(middle + half + gap, band.upper() == null ? middle : to);
    width = pen.width(aboveLabel, font);
    pen.text(
        aboveLabel, Math.min(left, inner.getMaxX() - width), y, 0, font, ink.textOf(Mark.HIGH));
    return List.of();
  }

  private static String number(double value, double step) {
    return Plots.format((int) Math.max(0, -Math.floor(Math.log10(step)))).format(value);
  }
}
