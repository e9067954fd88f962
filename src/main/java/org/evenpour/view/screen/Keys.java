package org.evenpour.view.screen;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Keys that work wherever the focus is. */
final class Keys {
  private Keys() {}

  static void bind(JComponent root, int code, int with, String name, Runnable act) {
    root.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
        .put(KeyStroke.getKeyStroke(code, with), name);
    root.getActionMap()
        .put(
            name,
            new AbstractAction() {
              @Override
              public void actionPerformed(ActionEvent event) {
                act.run();
              }
            });
  }
}
