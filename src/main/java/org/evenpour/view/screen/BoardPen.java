package org.evenpour.view.screen;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.Ink;

/**
 * Writes and draws on the board in multiples of one unit, a fortieth of its height. Owned by the
 * one call that paints.
 *
 * @param g where to
 * @param ink colors
 * @param unit in pixels
 */
record BoardPen(Graphics2D g, Ink ink, double unit) {

  static BoardPen on(Graphics2D g, Ink ink, double unit) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    return new BoardPen(g, ink, unit);
  }

  Font font(double units) {
    return ink.sized((float) unit).font(units);
  }

  Font bold(double units) {
    return font(units).deriveFont(Font.BOLD);
  }

  double width(String text, Font font) {
    return font.getStringBounds(text, g.getFontRenderContext()).getWidth();
  }

  /** The largest size up to {@code units} at which a text is no wider than {@code width}. */
  Font fitting(String text, Font font, double width) {
    double its = width(text, font);
    return its <= width
        ? font
        : font.deriveFont((float) Math.floor(2 * font.getSize2D() * width / its) / 2);
  }

  /** Writes with its baseline at y; returns the x after it. */
  double text(String text, double x, double y, Font font, Color color) {
    g.setFont(font);
    g.setColor(color);
    g.drawString(text, (float) x, (float) y);
    return x + width(text, font);
  }

  /** Writes so that it ends at x. */
  void textTo(String text, double x, double y, Font font, Color color) {
    text(text, x - width(text, font), y, font, color);
  }

  /** Cuts a text into lines that are no wider; words are kept whole where they can be. */
  List<String> lines(String text, Font font, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : Parts.words(text.strip())) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(longer, font) <= width) {
        line = longer;
      } else {
        if (!line.isEmpty()) {
          lines.add(line);
        }
        String rest = word;
        while (width(rest, font) > width && rest.length() > 1) {
          int end = rest.length() - 1;
          while (end > 1 && width(rest.substring(0, end), font) > width) {
            end--;
          }
          lines.add(rest.substring(0, end));
          rest = rest.substring(end);
        }
        line = rest;
      }
    }
    if (!line.isEmpty()) {
      lines.add(line);
    }
    return lines;
  }

  void fill(Shape shape, Color color) {
    g.setColor(color);
    g.fill(shape);
  }

  void line(double x1, double y1, double x2, double y2, Color color, double units) {
    g.setColor(color);
    g.setStroke(
        new BasicStroke(
            (float) Math.max(1, units * unit), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
    g.draw(new Line2D.Double(x1, y1, x2, y2));
  }

  void dashed(double x1, double x2, double y, Color color, double units) {
    float dash = (float) (unit * 0.45);
    g.setColor(color);
    g.setStroke(
        new BasicStroke(
            (float) Math.max(1, units * unit),
            BasicStroke.CAP_BUTT,
            BasicStroke.JOIN_ROUND,
            1,
            new float[] {dash, dash},
            0));
    g.draw(new Line2D.Double(x1, y, x2, y));
  }
}
