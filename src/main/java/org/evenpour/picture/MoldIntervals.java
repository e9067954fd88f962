package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.EdgeLabels.Label;
import org.evenpour.picture.SeriesPicture.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;

/**
 * How far each mold stands from the wheel's center, with its 95 % interval, one row a mold on one
 * scale.
 *
 * @param rows from top to bottom
 * @param title of the scale, with its unit
 * @param span the scale goes from minus to plus this
 * @param chosen label of the chosen mold; null = none
 */
public record MoldIntervals(List<Row> rows, String title, double span, @Nullable String chosen)
    implements Picture {

  /** Copies the list. */
  public MoldIntervals {
    rows = List.copyOf(rows);
  }

  /**
   * One mold.
   *
   * @param value shown at the right, with its sign
   * @param says in words
   */
  public record Row(
      String label, double low, double middle, double high, Mark mark, String value, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double foot = ink.length(40);
    double pitch = (area.getHeight() - foot) / Math.max(1, rows.size());
    double times = Math.max(0.5, Math.min(1, pitch / ink.length(17)));
    Font font = ink.font(times);
    List<Label> names = new ArrayList<>();
    List<Label> values = new ArrayList<>();
    XYIntervalSeries intervals = new XYIntervalSeries("", false, true); // in order
    XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
    data.addSeries(intervals);
    Axis down = new Axis("", -0.5, Math.max(1, rows.size()) - 0.5);
    NumberAxis across = Plots.axis(new Axis(title, -span, span), ink);
    across.setFixedDimension(foot);
    across.setAxisLineVisible(false);
    double wide = ink.length(18); // few numbers stand far apart
    across.setTickLabelInsets(new RectangleInsets(ink.length(4), wide, ink.length(4), wide));
    XYPlot plot = Plots.plot(across, null, 0);
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      boolean isChosen = row.label().equals(chosen);
      Font type = isChosen ? ink.bold(times) : font;
      String name = (row.mark().sign() + " " + row.label()).strip();
      names.add(new Label(i, 0, name, type, ink.textOf(row.mark())));
      values.add(new Label(i, 0, row.value(), type, ink.textOf(row.mark())));
      intervals.add(row.middle(), row.low(), row.high(), i, i, i);
      if (isChosen) {
        plot.addRangeMarker(
            new IntervalMarker(i - 0.5, i + 0.5, ink.chosen(), Pen.stroke(1), null, null, 1),
            Layer.BACKGROUND);
      }
    }
    plot.setRangeAxis(0, labels(pen, names, down));
    plot.setRangeAxis(1, labels(pen, values, down));
    plot.setDomainGridlinesVisible(true);
    plot.setDomainGridlinePaint(ink.hairline());
    plot.setDomainGridlineStroke(Pen.stroke(pen.hair() * 0.6));
    plot.addDomainMarker(Plots.level(0, ink.dim(), pen), Layer.BACKGROUND);
    Plots.values(plot, 0, data, dots(ink, times));
    plot.addAnnotation(
        new Note(
            pen,
            field -> {
              List<Spot> spots = new ArrayList<>();
              for (int i = 0; i < rows.size(); i++) {
                double top = field.y(i - 0.5);
                Rectangle2D whole =
                    new Rectangle2D.Double(
                        area.getX(), top, area.getWidth(), field.y(i + 0.5) - top);
                spots.add(new Spot(whole, "mold", rows.get(i).label(), rows.get(i).says()));
              }
              return spots;
            }));
    return Plots.draw(pen, plot, area);
  }

  private static EdgeLabels labels(Pen pen, List<Label> labels, Axis down) {
    EdgeLabels axis = new EdgeLabels(pen, labels, down, 0);
    axis.setInverted(true);
    return axis;
  }

  /** A dot on its interval, in the color of its mark. */
  @SuppressWarnings("serial") // never written
  private XYErrorRenderer dots(Ink ink, double times) {
    XYErrorRenderer dots =
        new XYErrorRenderer() {
          @Override
          public Paint getItemPaint(int series, int item) {
            return ink.of(rows.get(item).mark());
          }
        };
    double size = ink.length(7) * times;
    dots.setSeriesShape(0, new Ellipse2D.Double(-size / 2, -size / 2, size, size));
    dots.setErrorStroke(Pen.stroke(ink.length(2) * times));
    dots.setCapLength(0);
    dots.setDrawYError(false);
    dots.setDrawOutlines(false);
    return dots;
  }

  /** A round number at least as large as every departure. */
  public static double roundSpan(double most) {
    if (!(most > 0) || Double.isInfinite(most)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(most)));
    for (double lead : new double[] {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8}) {
      if (lead * power >= most) {
        return lead * power;
      }
    }
    return 10 * power;
  }
}
