package org.evenpour.view.screen;

import com.formdev.flatlaf.FlatClientProperties;
import javax.swing.JButton;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.GoTo;
import org.evenpour.view.model.Stretch;
import org.jspecify.annotations.Nullable;

/** Goes to a stretch by its name, its turns or its day. Owned by the event thread. */
final class GoToButton {
  private static final int LETTERS = 28;

  private final Desk desk;
  private final JButton button;
  private @Nullable JPopupMenu open;

  /**
   * @param button opens the list
   */
  GoToButton(Desk desk, JButton button) {
    this.desk = desk;
    this.button = button;
    button.addActionListener(event -> open());
  }

  JButton button() {
    return button;
  }

  private void open() {
    JPopupMenu menu = menu();
    open = menu;
    if (button.isShowing()) {
      menu.show(button, 0, -menu.getPreferredSize().height);
      SwingUtilities.invokeLater(() -> menu.getComponent(0).requestFocusInWindow());
    }
  }

  /** What was opened last; null where nothing was. */
  @Nullable JPopupMenu opened() {
    return open;
  }

  private JPopupMenu menu() {
    var look = desk.look();
    JPopupMenu menu = new JPopupMenu();
    menu.setName("goto.menu");
    JTextField field = new JTextField(LETTERS);
    field.setName("goto.field");
    field.setDropTarget(null);
    field.putClientProperty(FlatClientProperties.PLACEHOLDER_TEXT, look.say("goto.field"));
    field.getAccessibleContext().setAccessibleName(look.say("strip.goto.tip"));
    JTextArea said = Parts.prose("goto.said", "", look.ink().font(0.92), look);
    said.setVisible(false);
    field.addActionListener(
        event -> {
          Stretch turns = GoTo.typed(desk, field.getText());
          if (turns != null) {
            menu.setVisible(false);
            desk.selection().chooseStretch(turns);
          } else {
            said.setText(Tips.wrapped(look.say("goto.none", field.getText().strip())));
            said.setVisible(true);
            menu.pack();
          }
        });
    menu.add(field);
    menu.add(said);
    for (GoTo.Named one : GoTo.named(desk)) {
      Stretch turns = one.turns();
      JMenuItem item =
          new JMenuItem(
              look.say(
                  "goto.entry", look.say(one.key()), (int) turns.from(), (int) turns.to() - 1));
      item.setName(one.key());
      item.addActionListener(event -> desk.selection().chooseStretch(turns));
      menu.add(item);
    }
    JMenuItem all = new JMenuItem(look.say("goto.whole"));
    all.setName("goto.whole");
    all.addActionListener(event -> desk.selection().chooseStretch(null));
    menu.add(all);
    return menu;
  }
}
