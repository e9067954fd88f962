package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.function.BiPredicate;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;

/**
 * Lines and dots point by point, as the library draws them; or, where there are too many, all of
 * them at once in a way of our own, for the library takes seconds for a million.
 */
@SuppressWarnings("serial") // never written
final class DenseRenderer extends XYLineAndShapeRenderer {
  private final transient BiPredicate<Graphics2D, Field> atOnce;
  private boolean isDrawn;

  /**
   * @param atOnce draws all that is visible, and tells so; or tells that the library may
   */
  DenseRenderer(boolean lines, boolean dots, BiPredicate<Graphics2D, Field> atOnce) {
    super(lines, dots);
    this.atOnce = atOnce;
    setDefaultCreateEntities(false); // one points at the nearest value instead
  }

  @Override
  public XYItemRendererState initialise(
      Graphics2D g, Rectangle2D area, XYPlot plot, XYDataset data, PlotRenderingInfo info) {
    isDrawn = atOnce.test(g, new Field(plot, area));
    return super.initialise(g, area, plot, data, info);
  }

  @Override
  public int getPassCount() {
    return isDrawn ? 0 : super.getPassCount();
  }
}
