package org.evenpour.view.screen;

import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.JDialog;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.evenpour.view.model.Look;

/** What a page is for, and every key of the window. */
final class HelpSheet {

  /**
   * A key.
   *
   * @param name as it stands on keyboards
   * @param does key of what it does, among the words
   */
  record Key(String name, String does) {}

  /** Every key, in the order in which they are wanted. */
  static final List<Key> KEYS =
      List.of(
          new Key("Ctrl+1 … Ctrl+9, Ctrl+0", "help.pages"),
          new Key("Ctrl+B, Ctrl+L", "help.beside"),
          new Key("Enter", "help.enter"),
          new Key("Esc, Alt+←", "help.back"),
          new Key("Ctrl+G", "help.goto"),
          new Key("← → Home End, Shift+← →", "help.strip"),
          new Key("Ctrl+F", "help.filter"),
          new Key("Ctrl+C", "help.copy"),
          new Key("Ctrl+S", "help.save"),
          new Key("Ctrl+P", "help.print"),
          new Key("Ctrl+O, Ctrl+R", "help.open"),
          new Key("Ctrl+U, Ctrl+D", "help.dress"),
          new Key("F2, F3, F11", "help.places"),
          new Key("F1", "help.help"));

  private HelpSheet() {}

  /** Opens it in a window of its own, which Esc closes. */
  static void show(JFrame beside, String page, Look look) {
    String name = look.say(page.isEmpty() ? "place.desk" : "page." + page);
    JDialog dialog = new JDialog(beside, look.say("help.title", name), false);
    dialog.setName("help");
    dialog.setDefaultCloseOperation(JDialog.DISPOSE_ON_CLOSE);
    JPanel sheet = sheet(page, look);
    Keys.bind(sheet, KeyEvent.VK_ESCAPE, 0, "close", dialog::dispose);
    dialog.setContentPane(sheet);
    dialog.pack();
    dialog.setLocationRelativeTo(beside);
    dialog.setVisible(true);
  }

  /** The sheet itself. */
  static JPanel sheet(String page, Look look) {
    JPanel sheet =
        Parts.panel(
            "help.sheet",
            new MigLayout(
                "insets " + look.px(16) + ", wrap 2, gap " + look.px(16) + " " + look.px(5),
                "[][grow]"),
            look.ink().field());
    if (!page.isEmpty()) {
      sheet.add(Parts.title("help.page", look.say("page." + page), look), "span");
      sheet.add(
          Parts.prose("help.what", look.say("page." + page + ".tip"), look.ink().font(1), look),
          "span, growx, w " + look.px(560) + "!, gapbottom " + look.px(10));
    }
    sheet.add(Parts.heading("help.keys", look.say("help.keys"), look), "span");
    for (Key key : KEYS) {
      JLabel name = Parts.heading("help.key", key.name(), look);
      sheet.add(name);
      sheet.add(
          Parts.label("help.does", look.say(key.does()), look.ink().font(1), look.ink().text()));
    }
    return sheet;
  }
}
