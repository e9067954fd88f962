package org.evenpour.picture;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** Which way something departs, as a shape: never by color alone. */
public enum Mark {
  /** It does not. */
  NONE(""),
  /** Heavier, thicker, higher. */
  HIGH("▲"),
  /** Lighter, thinner, lower. */
  LOW("▼"),
  /** More scattered. */
  SPREAD("◆");

  private final String sign;

  Mark(String sign) {
    this.sign = sign;
  }

  /** As a character. */
  public String sign() {
    return sign;
  }

  /** As a shape about a point. */
  public Shape at(double x, double y, double size) {
    double half = size / 2;
    Path2D path = new Path2D.Double();
    switch (this) {
      case HIGH -> {
        path.moveTo(x, y - half);
        path.lineTo(x + half, y + half);
        path.lineTo(x - half, y + half);
      }
      case LOW -> {
        path.moveTo(x, y + half);
        path.lineTo(x + half, y - half);
        path.lineTo(x - half, y - half);
      }
      case SPREAD -> {
        path.moveTo(x, y - half);
        path.lineTo(x + half, y);
        path.lineTo(x, y + half);
        path.lineTo(x - half, y);
      }
      case NONE -> {
        return new Ellipse2D.Double(x - half, y - half, size, size);
      }
    }
    path.closePath();
    return path;
  }
}
