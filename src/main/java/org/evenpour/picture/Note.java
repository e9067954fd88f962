package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Function;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jspecify.annotations.Nullable;

/**
 * What is drawn over a plot at the places of values, beside its area too: flags and their words.
 * The plot keeps what can be pointed at.
 */
@SuppressWarnings("serial") // never written
final class Note extends AbstractXYAnnotation {
  private final transient Function<Field, List<Spot>> strokes;
  private final transient @Nullable Shape clip;

  /**
   * @param pen that draws
   * @param strokes draws on the field, and says what can be pointed at
   */
  Note(Pen pen, Function<Field, List<Spot>> strokes) {
    this.strokes = strokes;
    clip = pen.g().getClip(); // a plot clips notes at its area
  }

  @Override
  public void draw(
      Graphics2D g,
      XYPlot plot,
      Rectangle2D area,
      ValueAxis across,
      ValueAxis up,
      int index,
      PlotRenderingInfo info) {
    Shape inner = g.getClip();
    g.setClip(clip);
    for (Spot spot : strokes.apply(new Field(plot, area))) {
      addEntity(info, spot.shape(), index, spot.says(), spot.kind() + ":" + spot.name());
    }
    g.setClip(inner);
  }
}
