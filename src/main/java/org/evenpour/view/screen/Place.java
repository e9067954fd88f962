package org.evenpour.view.screen;

import javax.swing.JComponent;
import org.evenpour.view.model.Look;

/**
 * One of the places in the window: the board, the desk. It outlives its screens: what it remembers
 * is kept in its models.
 */
public interface Place {

  /** Its key: {@code place.KEY} is its name among the words, and the component's name. */
  String key();

  /**
   * Builds its screen. Called again whenever the look changes; the screen before is then removed
   * (stop timers in {@code removeNotify}).
   */
  JComponent screen(Look look);
}
