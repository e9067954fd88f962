package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/**
 * A setting over a characteristic, or several series, one over the other on the same turns: never
 * two scales in one plot.
 *
 * @param rows from top to bottom, all on the turns of the lowest
 */
public record StackPicture(List<SeriesPicture> rows) implements Picture {

  /** Copies the list. */
  public StackPicture {
    rows = List.copyOf(rows);
  }

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    CombinedDomainXYPlot over =
        new CombinedDomainXYPlot(Plots.turns(rows.get(rows.size() - 1).across(), ink));
    over.setInsets(RectangleInsets.ZERO_INSETS);
    over.setGap(ink.length(12));
    for (SeriesPicture row : rows) {
      XYPlot plot = row.plot(pen, area);
      RectangleInsets room = plot.getInsets();
      over.add(plot);
      plot.setInsets(room); // which add takes away
    }
    return Plots.draw(pen, over, area);
  }
}
