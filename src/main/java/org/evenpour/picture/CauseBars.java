package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * What comes most often, as one bar below the other: filled where it was right, an outline where it
 * was wrong. How much it and those above it make together stands in words, so that there is one
 * scale alone.
 *
 * @param bars the most frequent first
 */
public record CauseBars(List<Bar> bars) implements Picture {

  /** Copies the list. */
  public CauseBars {
    bars = List.copyOf(bars);
  }

  /**
   * One bar.
   *
   * @param name what it is
   * @param right how often it was right
   * @param wrong how often it was wrong
   * @param figure at the end of the bar: {@code 3 · 43 % · together 71 %}
   * @param says in words
   */
  public record Bar(String name, int right, int wrong, String figure, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    Font plain = ink.font(1);
    Font bold = ink.bold(1);
    double gap = ink.length(8);
    double names = 0;
    double figures = 0;
    int most = 1;
    for (Bar bar : bars) {
      names = Math.max(names, pen.width(bar.name(), plain));
      figures = Math.max(figures, pen.width(bar.figure(), bold));
      most = Math.max(most, bar.right() + bar.wrong());
    }
    names = Math.min(names, area.getWidth() * 0.4);
    double left = area.getX() + names + gap;
    double unit = Math.max(1, area.getMaxX() - left - gap - figures - gap) / most;
    // A single bar as long as the picture is wide would say much of little.
    unit = Math.min(unit, ink.length(120));
    double step = Math.min(ink.length(34), area.getHeight() / Math.max(1, bars.size()));
    double height = step * 0.6;
    List<Spot> spots = new ArrayList<>();
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      double y = area.getY() + i * step;
      double middle = y + step / 2;
      pen.text(pen.fit(bar.name(), plain, names), left - gap, middle, 1, plain, ink.text());
      double x = left;
      for (int k = 0; k < bar.right() + bar.wrong(); k++) {
        // One piece for each signal, so that they can be counted.
        Rectangle2D piece =
            new Rectangle2D.Double(
                x, middle - height / 2, Math.max(pen.hair(), unit - ink.length(2)), height);
        if (k < bar.right()) {
          pen.fill(piece, ink.data());
        } else {
          pen.draw(piece, ink.dim(), pen.hair());
        }
        x += unit;
      }
      pen.text(bar.figure(), x + gap, middle, 0, bold, ink.text());
      spots.add(
          new Spot(
              new Rectangle2D.Double(area.getX(), y, area.getWidth(), step), "", "", bar.says()));
    }
    pen.line(
        left - ink.length(2),
        area.getY(),
        left - ink.length(2),
        area.getY() + bars.size() * step,
        ink.hairline(),
        pen.hair());
    return new Painted(spots, List.of());
  }
}
