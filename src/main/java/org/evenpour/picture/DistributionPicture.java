package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
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
    SeriesPicture.Axis across,
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
    int bars = (int) Math.ceil((across.high() - start) / step);
    long[] counts = new long[Math.max(1, bars)];
    long most = 1;
    for (double value : values) {
      int bar = (int) Math.floor((value - start) / step);
      if (!Double.isNaN(value) && bar >= 0 && bar < counts.length) {
        counts[bar]++;
        most = Math.max(most, counts[bar]);
      }
    }
    double left = ink.length(64);
    double below = ink.length(44);
    double top = ink.length(20);
    Rectangle2D inner =
        new Rectangle2D.Double(
            area.getX() + left,
            area.getY() + top,
            Math.max(1, area.getWidth() - left - ink.length(12)),
            Math.max(1, area.getHeight() - below - top));
    paintBand(pen, inner);
    List<Spot> spots = new ArrayList<>();
    double ceiling = most * 1.06;
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] == 0) {
        continue;
      }
      double from = start + i * step;
      double x = x(from, inner);
      double width = Math.max(1, x(from + step, inner) - x - pen.hair());
      double height = counts[i] / ceiling * inner.getHeight();
      Rectangle2D bar =
          new Rectangle2D.Double(x, inner.getMaxY() - height, width, height)
              .createIntersection(inner);
      pen.fill(bar, ink.of(mark(from + step / 2)));
      spots.add(
          new Spot(
              new Rectangle2D.Double(x, inner.getY(), width, inner.getHeight()),
              "",
              "",
              number(from, step) + " … " + number(from + step, step) + ": " + counts[i]));
    }
    NumberAxis values = Plots.axis(across.title(), across.low(), across.high(), ink);
    NumberAxis count = Plots.axis(countTitle, 0, ceiling, ink);
    count.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    count.setNumberFormatOverride(Plots.format(0));
    XYPlot plot = Plots.plot(values, count, left, ink.length(12), below);
    Plots.empty(plot);
    Plots.draw(
        pen,
        plot,
        new Rectangle2D.Double(
            area.getX(), area.getY() + top, area.getWidth(), area.getHeight() - top));
    labels(pen, inner);
    return new Painted(spots, null);
  }

  private double step() {
    double rough = (across.high() - across.low()) / LEAST_BARS;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double lead = rough / power;
    return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
  }

  private Mark mark(double value) {
    Double lower = band.lower();
    Double upper = band.upper();
    return lower != null && value < lower
        ? Mark.LOW
        : upper != null && value > upper ? Mark.HIGH : Mark.NONE;
  }

  private double x(double value, Rectangle2D inner) {
    return inner.getX()
        + (value - across.low()) / (across.high() - across.low()) * inner.getWidth();
  }

  private void paintBand(Pen pen, Rectangle2D inner) {
    Double lower = band.lower();
    Double upper = band.upper();
    if (lower == null && upper == null) {
      return;
    }
    double from = lower == null ? inner.getX() : Math.max(inner.getX(), x(lower, inner));
    double to = upper == null ? inner.getMaxX() : Math.min(inner.getMaxX(), x(upper, inner));
    pen.fill(
        new Rectangle2D.Double(from, inner.getY(), Math.max(0, to - from), inner.getHeight()),
        pen.ink().band());
    Double target = band.target();
    if (target != null) {
      double at = x(target, inner);
      pen.line(at, inner.getY(), at, inner.getMaxY(), pen.ink().hairline(), pen.hair());
    }
  }

  private void labels(Pen pen, Rectangle2D inner) {
    Ink ink = pen.ink();
    Font font = ink.font(0.85);
    double y = inner.getY() - ink.length(9);
    double middle = inner.getCenterX();
    Double lower = band.lower();
    Double upper = band.upper();
    if (lower != null && upper != null) {
      middle = (x(lower, inner) + x(upper, inner)) / 2;
    } else if (upper != null) {
      middle = (inner.getX() + x(upper, inner)) / 2;
    } else if (lower != null) {
      middle = (inner.getMaxX() + x(lower, inner)) / 2;
    }
    double half = pen.width(band.label(), font) / 2;
    double gap = ink.length(8);
    pen.text(band.label(), middle, y, 0.5, font, ink.dim());
    if (!belowLabel.isEmpty()) {
      double right = Math.min(middle - half - gap, lower == null ? middle : x(lower, inner));
      double width = pen.width(belowLabel, font);
      pen.text(belowLabel, Math.max(inner.getX(), right - width), y, 0, font, ink.textOf(Mark.LOW));
    }
    if (!aboveLabel.isEmpty()) {
      double from = Math.max(middle + half + gap, upper == null ? middle : x(upper, inner));
      double width = pen.width(aboveLabel, font);
      pen.text(
          aboveLabel, Math.min(from, inner.getMaxX() - width), y, 0, font, ink.textOf(Mark.HIGH));
    }
  }

  private static String number(double value, double step) {
    return Plots.format((int) Math.max(0, -Math.floor(Math.log10(step)))).format(value);
  }
}
