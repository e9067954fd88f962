package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/**
 * Draws lines and words in an ink. Owned by the one call that draws.
 *
 * @param g where to
 * @param ink colors and type
 */
record Pen(Graphics2D g, Ink ink) {

  static Pen on(Graphics2D g, Ink ink) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    return new Pen(g, ink);
  }

  void fill(Shape shape, Color color) {
    g.setColor(color);
    g.fill(shape);
  }

  void draw(Shape shape, Color color, double width) {
    Stroke before = g.getStroke();
    g.setStroke(stroke(width));
    g.setColor(color);
    g.draw(shape);
    g.setStroke(before);
  }

  /** A solid line of some width. */
  static BasicStroke stroke(double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
  }

  /** A dashed line one hairline wide. */
  BasicStroke dashes() {
    float dash = (float) ink.length(5);
    return new BasicStroke(
        (float) hair(),
        BasicStroke.CAP_BUTT,
        BasicStroke.JOIN_ROUND,
        1,
        new float[] {dash, dash},
        0);
  }

  void line(double x1, double y1, double x2, double y2, Color color, double width) {
    draw(new Line2D.Double(x1, y1, x2, y2), color, width);
  }

  /** One hairline wide. */
  double hair() {
    return Math.max(1, ink.length(1));
  }

  double width(String text, Font font) {
    return font.getStringBounds(text, context()).getWidth();
  }

  /**
   * Writes a line of text.
   *
   * @param x of the anchor
   * @param y middle of the line
   * @param anchor 0 = x is the left end, 0.5 = the middle, 1 = the right end
   * @return where it stands
   */
  Rectangle2D text(String text, double x, double y, double anchor, Font font, Color color) {
    double width = width(text, font);
    double capHeight = capHeight(font);
    double left = x - anchor * width;
    g.setFont(font);
    g.setColor(color);
    g.drawString(text, (float) left, (float) (y + capHeight / 2));
    return new Rectangle2D.Double(left, y - capHeight, width, capHeight * 2);
  }

  /** Covers most of what lies behind a small line of text. */
  void plate(double x, double y, double width) {
    Rectangle2D plate =
        new Rectangle2D.Double(
            x - ink.length(2), y - ink.length(8), width + ink.length(4), ink.length(16));
    fill(plate, faint(ink.field(), 215));
  }

  /** A color that lets through what lies behind: 0 = all, 255 = nothing. */
  static Color faint(Color color, int alpha) {
    return new Color(color.getRed(), color.getGreen(), color.getBlue(), alpha);
  }

  /** A line of text cut to a width, with an ellipsis. */
  String fit(String text, Font font, double width) {
    return Lines.fit(text, width, each -> width(each, font));
  }

  private double capHeight(Font font) {
    GlyphVector glyphs = font.createGlyphVector(context(), "H");
    return glyphs.getVisualBounds().getHeight();
  }

  private FontRenderContext context() {
    return g.getFontRenderContext();
  }
}
