package org.evenpour.view.screen;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Keys, wherever the focus is or on one part. */
final class Keys {
  private Keys() {}

  static void bind(JComponent root, int code, int with, String name, Runnable act) {
    root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
        .put(KeyStroke.getKeyStroke(code, with), name);
    root.getActionMap().put(name, doing(act));
  }

  /** A key that works where the focus is on one part. */
  static void bindFocused(JComponent part, int code, String name, Runnable act) {
    part.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(code, 0), name);
    part.getActionMap().put(name, doing(act));
  }

  private static AbstractAction doing(Runnable act) {
    return new AbstractAction() {
      @Override
      public void actionPerformed(ActionEvent event) {
        act.run();
      }
    };
  }
}
