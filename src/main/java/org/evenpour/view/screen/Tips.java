package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.event.InputEvent;
import java.awt.event.MouseEvent;
import javax.swing.ToolTipManager;

/** Texts under the pointer. */
final class Tips {
  private static final int LINE = 60;

  private Tips() {}

  /**
   * What lay under the pointer is gone. Swing remembers it until the pointer is over something else
   * that explains itself, and with it all that it stood in; a press makes it forget.
   *
   * @param instead stands there now
   */
  static void forget(Component instead) {
    MouseEvent press =
        new MouseEvent(
            instead, MouseEvent.MOUSE_PRESSED, 0, InputEvent.BUTTON1_DOWN_MASK, 0, 0, 1, false);
    ToolTipManager.sharedInstance().mousePressed(press);
  }

  /** A text broken into lines of a readable length; nothing in it is read as markup. */
  static String wrapped(String text) {
    if (text.length() <= LINE) {
      return text;
    }
    StringBuilder lines = new StringBuilder();
    int column = 0;
    for (String word : Parts.words(text)) {
      if (column > 0 && column + word.length() > LINE) {
        lines.append('\n');
        column = 0;
      }
      lines.append(column == 0 ? "" : " ").append(word);
      column += word.length() + 1;
    }
    return lines.toString();
  }
}
