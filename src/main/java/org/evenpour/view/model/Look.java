package org.evenpour.view.model;

import org.evenpour.picture.Ink;

/**
 * How things are shown just now: colors and size of text, language, units. When one of them
 * changes, the screens are built anew from their models with another look; a screen never changes
 * its look.
 *
 * @param ink colors and type
 * @param language words
 * @param units for masses and lengths
 */
public record Look(Ink ink, Language language, DisplayUnits units) {

  /** Body text is a seventy-seventh of the window's height, and never under 13 pixels. */
  private static final double LINES = 77;

  private static final double LEAST_PX = 13;

  /** The size of body text in a window of this height, in pixels. */
  public static float textPx(int windowHeight) {
    return (float) Math.max(LEAST_PX, Math.rint(windowHeight / LINES));
  }

  /** A look for a window of this height. */
  public static Look of(boolean dark, Language language, DisplayUnits units, int windowHeight) {
    float px = textPx(windowHeight);
    return new Look(dark ? Ink.dark(px) : Ink.light(px), language, units);
  }

  /** A wording of the screens, filled in. */
  public String say(String key, Object... values) {
    return language.say(key, values);
  }

  /** A length that follows the size of text, rounded: {@code px} at body text of 13 pixels. */
  public int px(double px) {
    return (int) Math.round(ink.length(px));
  }
}
