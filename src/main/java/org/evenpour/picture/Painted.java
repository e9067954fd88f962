package org.evenpour.picture;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came out of drawing a picture.
 *
 * @param spots the places that can be pointed at, the topmost last
 * @param scale how the horizontal axis lies; null where there is none
 */
public record Painted(List<Spot> spots, @Nullable Scale scale) {

  /** Nothing to point at. */
  public static final Painted PLAIN = new Painted(List.of(), null);

  /** Copies the list. */
  public Painted {
    spots = List.copyOf(spots);
  }

  /**
   * A horizontal axis.
   *
   * @param area where its values lie
   * @param from value at the left edge
   * @param to value at the right edge
   */
  public record Scale(Rectangle2D area, double from, double to) {

    /** The value at a pixel. */
    public double value(double x) {
      return from + (x - area.getX()) / area.getWidth() * (to - from);
    }

    /** The pixel of a value. */
    public double x(double value) {
      return area.getX() + (value - from) / (to - from) * area.getWidth();
    }
  }
}
