package org.evenpour.view.screen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.SwingWorker;
import org.evenpour.view.model.Desk;

/** Saves what is seen on a page: pictures, tables, the workbook; says where, or why not. */
final class SaveButton {
  private final Desk desk;
  private final FileAsk ask;
  private final JButton button;
  private final JLabel said;
  private final Supplier<Page> page;

  SaveButton(Desk desk, FileAsk ask, Supplier<Page> page) {
    this.desk = desk;
    this.ask = ask;
    this.page = page;
    var look = desk.look();
    button = Parts.button("save", look.say("export"), look.say("export.tip"), look);
    button.addActionListener(event -> menu().show(button, 0, button.getHeight()));
    said = Parts.dim("save.said", "", look);
  }

  JButton button() {
    return button;
  }

  JLabel said() {
    return said;
  }

  /** What was said of another page is said no more. */
  void clear() {
    said.setText("");
  }

  /** What can be saved now. */
  List<Export> exports() {
    List<Export> exports = new ArrayList<>(page.get().exports());
    exports.add(Export.workbook(desk));
    return exports;
  }

  JPopupMenu menu() {
    JPopupMenu menu = new JPopupMenu();
    menu.setName("save.menu");
    for (Export export : exports()) {
      JMenuItem item = new JMenuItem(export.label());
      item.setName("save." + export.fileName());
      item.addActionListener(event -> save(export));
      menu.add(item);
    }
    return menu;
  }

  /** Asks where and saves on a worker thread. */
  void save(Export export) {
    Path file = ask.save(export.fileName());
    if (file == null) {
      return;
    }
    Export.File shown = export.shown().get();
    button.setEnabled(false);
    new SwingWorker<Path, Void>() {
      @Override
      protected Path doInBackground() throws IOException {
        shown.write(file);
        return file;
      }

      @Override
      protected void done() {
        button.setEnabled(true);
        var look = desk.look();
        try {
          said.setForeground(look.ink().dim());
          said.setText(look.say("export.done", get().getFileName()));
          said.setToolTipText(file.toString());
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
          said.setForeground(look.ink().heavyText());
          said.setText(look.say("export.failed", Reasons.of(e.getCause(), look)));
        }
        said.getAccessibleContext().setAccessibleName(said.getText());
      }
    }.execute();
  }
}
