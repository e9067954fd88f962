package org.evenpour.view.screen;

import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Stretch;
import org.evenpour.view.model.WheelRows;

/** Moving along a picture's turns chooses the stretch that all pages show. */
final class Scrolling {
  private Scrolling() {}

  /** For the pictures of a desk. */
  static PictureView.Scroll of(Desk desk) {
    return (from, to) -> desk.selection().chooseStretch(stretch(desk.wheel(), from, to));
  }

  private static @org.jspecify.annotations.Nullable Stretch stretch(
      WheelRows wheel, double from, double to) {
    double length = to - from;
    double first = wheel.first();
    double last = wheel.last();
    if (length >= last - first) {
      return null;
    }
    double start = Math.rint(Math.max(first, Math.min(last - length, from)));
    return Stretch.between(start, start + Math.max(1, Math.rint(length)), first, last);
  }
}
