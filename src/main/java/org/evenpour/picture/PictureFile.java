package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import javax.imageio.ImageIO;

/** Pictures as files; each on paper's ground, with a margin. */
public final class PictureFile {
  private static final int MARGIN = 16;

  private PictureFile() {}

  /**
   * As pixels.
   *
   * @param scale pixels of the image per pixel of the picture
   */
  public static BufferedImage image(Picture picture, int width, int height, double scale, Ink ink) {
    BufferedImage image =
        new BufferedImage(
            (int) Math.round(width * scale),
            (int) Math.round(height * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(ink.field());
    g.fillRect(0, 0, image.getWidth(), image.getHeight());
    g.scale(scale, scale);
    g.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
    picture.paint(g, inner(width, height), ink);
    g.dispose();
    return image;
  }

  /** Writes a PNG of twice the given size. */
  public static void png(Picture picture, int width, int height, Ink ink, OutputStream out)
      throws IOException {
    ImageIO.write(image(picture, width, height, 2, ink), "png", out);
  }

  /** Writes an SVG; the same picture gives the same bytes. */
  public static void svg(Picture picture, int width, int height, Ink ink, OutputStream out)
      throws IOException {
    Drawing drawing = new Drawing(width, height);
    Graphics2D g = drawing.pen();
    g.setColor(ink.field());
    g.fillRect(0, 0, width, height);
    picture.paint(g, inner(width, height), ink);
    drawing.write(out);
  }

  private static Rectangle2D inner(int width, int height) {
    return new Rectangle2D.Double(
        MARGIN, MARGIN, Math.max(1, width - 2 * MARGIN), Math.max(1, height - 2 * MARGIN));
  }
}
