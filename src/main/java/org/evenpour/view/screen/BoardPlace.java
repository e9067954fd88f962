package org.evenpour.view.screen;

import javax.swing.JComponent;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.Look;

/** The crew lead's place in the window. Owned by the event thread. */
public final class BoardPlace implements Place {
  private final BoardDesk desk;
  private final BoardActs acts;

  /**
   * @param desk what is known and chosen
   * @param acts what the window does for the board
   */
  public BoardPlace(BoardDesk desk, BoardActs acts) {
    this.desk = desk;
    this.acts = acts;
  }

  @Override
  public String key() {
    return "board";
  }

  @Override
  public JComponent screen(Look look) {
    return new BoardScreen(desk, look, acts);
  }
}
