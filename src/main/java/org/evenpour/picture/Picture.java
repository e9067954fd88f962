package org.evenpour.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/**
 * Something that can be drawn in any size: on a screen, into an image, into a vector file. It is
 * immutable and may be drawn on any thread; pictures that are equal look the same.
 */
public interface Picture {

  /**
   * Draws it.
   *
   * @param g where to
   * @param area the whole of which it may use
   * @param ink colors and type
   */
  Painted paint(Graphics2D g, Rectangle2D area, Ink ink);
}
