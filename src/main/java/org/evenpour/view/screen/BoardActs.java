package org.evenpour.view.screen;

/**
 * What the window does for the board, when its words at the lower edge are pressed by hand; on the
 * keyboard the window's own keys do the same.
 *
 * @param units changes to the other units
 * @param dark changes between light and dark
 * @param full changes to full screen and back
 * @param desk shows the desk
 */
public record BoardActs(Runnable units, Runnable dark, Runnable full, Runnable desk) {

  /** A window that does nothing. */
  public static final BoardActs NONE = new BoardActs(() -> {}, () -> {}, () -> {}, () -> {});
}
