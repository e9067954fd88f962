package org.evenpour.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the spread comes from: one bar, cut by the parts' shares of the variance, each labeled
 * above or below its piece.
 *
 * @param parts from left to right
 */
public record SpreadBar(List<Part> parts) implements Picture {

  /** How much of the color each part has, of 255: a choice, so that neighbors differ. */
  private static final int[] SHADES = {255, 158, 82, 46};

  /** Copies the list. */
  public SpreadBar {
    parts = List.copyOf(parts);
  }

  /**
   * One part.
   *
   * @param share of the whole, 0 to 1
   * @param name what it is: {@code from mold to mold}
   * @param figure share and size: {@code 32 % · 1.4 kg}
   * @param says in words
   */
  public record Part(double share, String name, String figure, String says) {}

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    Font bold = ink.bold(1);
    Font plain = ink.font(0.92);
    double height = Math.min(ink.length(30), area.getHeight() * 0.4);
    double y = area.getY();
    double x = area.getX();
    double gap = ink.length(3);
    List<Spot> spots = new ArrayList<>();
    double free = area.getX();
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      double width = part.share() * area.getWidth();
      Rectangle2D piece = new Rectangle2D.Double(x, y, Math.max(pen.hair(), width - gap), height);
      pen.fill(piece, Pen.faint(ink.data(), SHADES[Math.min(3, i)]));
      double wide = Math.max(pen.width(part.name(), plain), pen.width(part.figure(), bold));
      double rest = 0;
      for (int k = i + 1; k < parts.size(); k++) {
        rest +=
            Math.max(pen.width(parts.get(k).name(), plain), pen.width(parts.get(k).figure(), bold))
                + ink.length(16);
      }
      double left = Math.max(free, Math.min(x, area.getMaxX() - wide - rest));
      // Where room is short the smallest parts go without words; pointing at them still says
      // theirs.
      if (left + wide <= area.getMaxX() + 1) {
        // Slanting, so that no two of them run into one.
        pen.line(x, y + height, left, y + height + ink.length(8), ink.dim(), pen.hair());
        pen.text(part.figure(), left, y + height + ink.length(16), 0, bold, ink.text());
        pen.text(part.name(), left, y + height + ink.length(33), 0, plain, ink.dim());
        free = left + wide + ink.length(16);
      }
      spots.add(new Spot(piece, "", "", part.says()));
      x += width;
    }
    return new Painted(spots, List.of());
  }
}
