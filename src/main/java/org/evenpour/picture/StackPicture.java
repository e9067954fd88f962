package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A setting over a characteristic, or several series, one over the other on the same turns: never
 * two scales in one plot.
 *
 * @param rows from top to bottom
 */
public record StackPicture(List<SeriesPicture> rows) implements Picture {

  /** Copies the list. */
  public StackPicture {
    rows = List.copyOf(rows);
  }

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    List<Spot> spots = new ArrayList<>();
    Painted.@Nullable Scale scale = null;
    double gap = ink.length(8);
    double titled = rows.stream().filter(row -> !row.across().title().isEmpty()).count();
    double extra = ink.length(34);
    double height =
        (area.getHeight() - gap * (rows.size() - 1) - extra * titled) / Math.max(1, rows.size());
    Pen pen = Pen.on(g, ink);
    double right = rows.stream().mapToDouble(row -> row.rightMargin(pen)).max().orElse(0);
    double y = area.getY();
    for (SeriesPicture row : rows) {
      double own = height + (row.across().title().isEmpty() ? 0 : extra);
      Painted painted =
          row.paint(g, new Rectangle2D.Double(area.getX(), y, area.getWidth(), own), ink, right);
      spots.addAll(painted.spots());
      Painted.Scale its = painted.scale();
      if (its != null) {
        Rectangle2D whole = its.area();
        scale =
            new Painted.Scale(
                new Rectangle2D.Double(
                    whole.getX(), area.getY(), whole.getWidth(), area.getHeight()),
                its.from(),
                its.to());
      }
      y += own + gap;
    }
    return new Painted(spots, scale);
  }
}
